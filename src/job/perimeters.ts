import type { Perimeter, Profile, Room } from './model.ts';
import type { Given } from '../provenance/source.ts';

/** What is said to run along the walls of a room, each as it is said once. */
export function perimetersOf({ grid }: Pick<Room, 'grid'>): Perimeter[] {
    return grid ? [...new Set(Object.values(grid.around).flatMap(own => own ?? []))] : [];
}

/** The profiles of its beams, wherever they are said: in the grid, of a line, along the walls. */
export function beamsOf({ grid, lines }: Pick<Room, 'grid' | 'lines'>): Given<Profile>[] {
    return [grid?.beams, ...lines.map(({ beams }) => beams), ...perimetersOf({ grid }).map(({ beams }) => beams)].flatMap(beams => beams ?? []);
}
