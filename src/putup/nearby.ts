import { TICKS_PER_FOOT } from '../quantity/ticks.ts';
import type { Box } from './stood.ts';

/** Finds what stands near a place on the plan: squares of two feet, each with what reaches into it. */
export class Nearby<Thing extends { readonly box: Box }> {
    private readonly squares = new Map<number, Thing[]>();

    constructor(things: readonly Thing[]) {
        for (const thing of things) for (const key of squaresOf(thing.box)) {
            const there = this.squares.get(key);
            if (there) there.push(thing); else this.squares.set(key, [thing]);
        }
    }

    /** Each once, in no order that means anything. */
    within(box: Box): Set<Thing> {
        const found = new Set<Thing>();
        for (const key of squaresOf(box)) for (const thing of this.squares.get(key) ?? []) {
            const { west, east, north, south } = thing.box;
            if (west <= box.east && box.west <= east && north <= box.south && box.north <= south) found.add(thing);
        }
        return found;
    }
}

const SQUARE = 2 * TICKS_PER_FOOT;
/** More squares than lie abreast in the longest room; two that share a number would only be looked at together. */
const ROW = 4096;

function* squaresOf({ west, east, north, south }: Box): Generator<number> {
    for (let x = Math.floor(west / SQUARE); x <= Math.floor(east / SQUARE); x++) {
        for (let y = Math.floor(north / SQUARE); y <= Math.floor(south / SQUARE); y++) yield x * ROW + y;
    }
}
