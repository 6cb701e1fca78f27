import type { Given, Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Corner } from './compass.ts';
import type { Recorded } from './status.ts';

export interface Fixture {
    readonly name: string;
    readonly at: Source;
    readonly kind: string;
    /** Centre, from the room's north-west corner: x to the east, y to the south. */
    readonly x?: Ticks; readonly y?: Ticks;
    readonly diameter?: Given<Ticks>;
    readonly width?: Given<Ticks>;
    /** Of something rectangular: along the north wall, and along the east wall. */
    readonly size?: Given<{ readonly across: Ticks; readonly down: Ticks }>;
    readonly keepClear?: Given<Ticks>;
    /** How wide its recessed part is, and how a recessed light is marked. */
    readonly housing?: Given<Ticks>; readonly rated?: Given<'ic' | 'non-ic'>;
    /** How far it hangs down from the ceiling. */
    readonly hangs?: Given<Ticks>;
    /** Of a junction box: the name of the fixture that it stays reachable by. */
    readonly reachedBy?: Given<string>;
    readonly wants?: Given<'coffer-center' | 'beam-center' | 'anywhere'>;
    /** How its place is known. */
    readonly known?: Recorded;
    /** Of what stands at a wall, where its line says enough of it. */
    readonly atWall?: AtWall;
}
/** What is rarely round in a ceiling. Common practice, no source. */
const RECTANGULAR: ReadonlySet<string> = new Set(['register', 'speaker', 'access-panel', 'junction-box']);

/**
 * What a fixture reaches along the north wall, and along the east wall, where it is a rectangle: as its `size` says. Of one that says its `width` alone, and is
 * rarely round, a square: how far it reaches the other way nobody said, and a square reaches nowhere less than a circle. What says a `diameter` is round.
 */
export function rectangleOf({ kind, size, diameter, width }: Pick<Fixture, 'kind' | 'size' | 'diameter' | 'width'>): { readonly across: Ticks; readonly down: Ticks } | undefined {
    if (diameter) return undefined;
    return size?.value ?? (width && RECTANGULAR.has(kind) ? { across: width.value, down: width.value } : undefined);
}

/** What stands at a wall: a casing, a cabinet, a soffit, a pocket, a stair opening. */
export interface AtWall {
    readonly wall: Given<string>;
    /** Where it begins: so far from the end of the wall that lies that way. Not said, nor its width: all along the wall. */
    readonly begins?: Given<Ticks>; readonly from: Corner;
    readonly width?: Given<Ticks>;
    /** Out from the wall. */
    readonly depth: Ticks;
    /** From the ceiling down to its top: of a casing or a cabinet. */
    readonly below?: Ticks;
}
