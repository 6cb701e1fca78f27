export type Direction = 'north-south' | 'east-west';
export type Side = 'north' | 'east' | 'south' | 'west';
export type Corner = 'north-west' | 'north-east' | 'south-west' | 'south-east';
export const SIDES: readonly Side[] = ['north', 'east', 'south', 'west'];
