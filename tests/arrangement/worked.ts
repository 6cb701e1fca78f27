import { readFileSync } from 'node:fs';
import type { Cut, Part } from '../../src/arrangement/model.ts';
import type { Exact, HalfBeam, Perimeter, Plan, BoxBeam } from '../../src/arrangement/plan.ts';
import { Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';

/**
 * Ten rooms worked out to every piece. The figures in worked.json come from an independent model of the same definitions, which
 * reckons in exact fractions where it can. That both agree shows that the arithmetic is right, not that the definitions are.
 * Lengths in inches: fractions are exact, decimals are rounded to a millionth. Angles in degrees from square, to four places.
 */
export interface WorkedRoom {
    readonly name: string;
    readonly walls: readonly (readonly [name: string, from: InchSpot, perimeter: 'bare' | readonly ['band', string] | readonly ['half-beam', string, string, string]])[];
    readonly lines: readonly (readonly [
        name: string, family: string, from: string, to: string, spot: InchSpot, heading: readonly [number, number], beam: readonly string[],
    ])[];
    readonly through: string;
    readonly clearance: string;
    /** Thickness, and of a crown its spring. */
    readonly trim: readonly [string, number?];
    readonly coffers: readonly { readonly edges: readonly (readonly [string, string])[]; readonly angles: readonly number[]; readonly area: string }[];
    readonly pieces: readonly WorkedPiece[];
}
type InchSpot = readonly [string, string];

/** Equal pieces are one entry; `at` says where each is. */
export interface WorkedPiece {
    readonly part: Part;
    readonly of?: string;
    readonly edges: readonly [string, string];
    readonly cuts?: readonly [Cut, Cut];
    readonly angles: readonly [number, number];
    readonly hand?: 'left' | 'right' | null;
    readonly width?: string;
    readonly overall?: string;
    /** The way it looks and what it runs between; of a trim its coffer and edge; of what runs along a whole wall nothing. */
    readonly at: readonly (readonly (string | number)[])[];
}

export const workedRooms = JSON.parse(readFileSync(new URL('worked.json', import.meta.url), 'utf8')) as WorkedRoom[];

function ticks(inches: string): Exact {
    const exact = new Rational(inches).mul(TICKS_PER_INCH);
    return exact.d === 1n ? Number(exact.s * exact.n) : exact;
}
export function number(inches: string): number {
    return new Rational(inches).mul(TICKS_PER_INCH).valueOf();
}

/** Every beam of these rooms has bottoms, blocking and cleats of one board; what differs is said in the room. */
const BOARD = number('3/4');
const common = { blocking: { thickness: BOARD, narrower: 0 }, cleats: { width: BOARD, height: BOARD, short: number('1/4') } };

export function planOf(room: WorkedRoom): Plan {
    const [thickness, spring] = room.trim;
    return {
        walls: room.walls.map(([name, [x, y], perimeter]) => ({ name, from: { x: ticks(x), y: ticks(y) }, perimeter: perimeterOf(perimeter) })),
        lines: room.lines.map(([name, family, from, to, [x, y], heading, beam]) => ({
            name, family, from, to, spot: { x: ticks(x), y: ticks(y) }, heading: { x: heading[0], y: heading[1] }, beam: beamOf(beam, number(room.clearance)),
        })),
        through: room.through, corners: { kind: 'mitered' },
        trims: [{ name: 'trim', thickness: number(thickness), top: 0, foot: BOARD, corners: 'mitered', ...spring !== undefined && { spring } }],
    };
}

function perimeterOf(perimeter: WorkedRoom['walls'][number][2]): Perimeter {
    if (perimeter === 'bare') return { kind: 'bare' };
    if (perimeter[0] === 'band') return { kind: 'band', thickness: number(perimeter[1]), top: 0, foot: TICKS_PER_INCH };
    const [, inside, side, depth] = perimeter;
    const bottom: HalfBeam['bottom'] = { place: 'between-sides', by: 0, play: 0, thickness: BOARD };
    return {
        kind: 'half-beam', inside: number(inside), depth: number(depth), side: { thickness: number(side), heldDown: 0 }, bottom, ...common,
        wallCleat: { width: BOARD, height: BOARD },
    };
}

function beamOf([inside, side, depth, overhang]: readonly string[], clearance: number): BoxBeam {
    const board = { thickness: number(side!), heldDown: 0 };
    const place = overhang === undefined ? { place: 'between-sides' as const, by: 0 } : { place: 'under-sides' as const, by: number(overhang) };
    return {
        kind: 'box', inside: number(inside!), depth: number(depth!), left: board, right: board, bottom: { ...place, play: 0, thickness: BOARD },
        ...common, blocking: { ...common.blocking, clearance },
    };
}
