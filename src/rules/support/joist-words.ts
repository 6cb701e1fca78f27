import type { Line } from '../../ceiling/model.ts';

export const WAYS = 'cross-block between the joists, or have backing put in before the ceiling is closed';

/** Across joists that run so: towards the side that places are counted from, and away from it. */
export const WAY = { 'north-south': ['west', 'east'], 'east-west': ['north', 'south'] } as const;

export function beamNamed(of: string, line: Line | undefined): string {
    return line ? `line ${of}` : `the half beam along the ${of} wall`;
}
