import type { Direction } from './model.ts';

/** Lines are 1, 2, 3 … running north-south, and A … Z, AA, AB … running east-west; `index` counts from zero. */
export function lineName(runs: Direction, index: number): string {
    if (runs === 'north-south') return String(index + 1);
    const letter = String.fromCharCode(65 + index % 26);
    return index < 26 ? letter : lineName(runs, Math.floor(index / 26) - 1) + letter;
}
