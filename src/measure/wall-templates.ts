import { isForward } from '../ceiling/shape.ts';
import { scribeCuts, type ScribeCut } from '../plane/scribe-cuts.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { BowedWall } from './bowed.ts';

/** A stretch over which what runs along a wall is scribed to it: places along the wall from its west or north end, depths from the edge at the wall. */
export interface WallTemplate extends ScribeCut {
    readonly bowed: BowedWall;
    /** Seen from below by who faces the wall, its west or north end is at the left. */
    readonly beginsLeft: boolean;
}

/** What a template is longer than the stretch at either end, where the wall has as much. */
const BESIDE: Ticks = inches(1);

/** A template for every stretch of a band's back, or of the bottom of a half beam, that is scribed to its wall. */
export function wallTemplatesOf(walls: readonly BowedWall[]): WallTemplate[] {
    return walls.flatMap(bowed => {
        const { wall, profile, moved, allowance, scribes } = bowed;
        return scribeCuts(profile.map(({ along, into }) => ({ along, depth: into - moved + allowance })), scribes, wall.length, BESIDE)
            .map((cut): WallTemplate => ({ ...cut, bowed, beginsLeft: isForward(wall) }));
    });
}
