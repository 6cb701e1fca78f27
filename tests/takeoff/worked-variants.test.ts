import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';

/**
 * Rooms of tests/arrangement/worked.json laid out or built another way: split, fanned, of boxes made at the bench, round what stands there. Figures come
 * from an independent model of the same definitions, which told those parts alone that the change makes different; inches.
 */
interface Wanted {
    readonly part: Piece['part']; readonly line: string; readonly count: number;
    readonly long: number; readonly short: number; readonly overall?: number; readonly width?: number;
    /** Of a side. */
    readonly cuts?: readonly string[]; readonly angles?: readonly number[];
    /** Of what lies: where the end is, degrees from square, the longer edge; not said: both square. */
    readonly ends?: readonly (readonly [string, number, string | null])[];
    readonly between?: readonly string[];
}
interface Variant { readonly room: string; readonly centers?: Readonly<Record<string, readonly [number, number]>>; readonly pieces: readonly Wanted[] }
const read = (name: string): string => readFileSync(new URL(name, import.meta.url), 'utf8');
const VARIANTS = JSON.parse(read('worked-variants.json')) as readonly Variant[], INCH = 16256;

const ceilings = new Map<string, Ceiling>();
beforeAll(async () => { for (const { room, ceiling } of await layoutsOf(read('worked-variants.coffer'))) ceilings.set(room.name, ceiling!); });

describe.each(VARIANTS)('$room', ({ room, centers, pieces }) => {
    test('every piece that is told, as often as it is told', () => {
        const ceiling = ceilings.get(room)!, made = [...takeOff(ceiling).pieces], missing: string[] = [];
        for (const wanted of pieces) for (let i = 0; i < wanted.count; i++) {
            const at = made.findIndex(piece => isIt(piece, wanted));
            if (at < 0) missing.push(JSON.stringify([wanted, made.filter(({ part, line }) => part === wanted.part && line === wanted.line).map(told)]));
            else made.splice(at, 1);
        }
        expect(missing).toEqual([]);
        const parts = new Set(pieces.map(({ part, line }) => `${part} ${line}`));
        expect(made.filter(({ part, line }) => parts.has(`${part} ${line}`)).map(({ id }) => id)).toEqual([]);
    });
    test('all of it goes together', () => {
        const ceiling = ceilings.get(room)!, { faults } = dryFit(ceiling, takeOff(ceiling));
        expect(faults.filter(fault => ceiling.square || fault.kind !== 'misfit' || fault.clashes.some(({ kind }) => kind !== 'rounded'))).toEqual([]);
    });
    if (centers) test('centers of lines where they meet the walls, from their west or north corner', () => {
        const { lines, walls } = ceilings.get(room)!;
        for (const [name, wanted] of Object.entries(centers)) {
            const { from, to, spot, heading } = lines.find(line => line.name === name)!;
            [from, to].forEach((end, i) => {
                const wall = walls.find(each => each.name === end)!;
                const at = crossing(spot, heading, wall.from, { x: wall.to.x - wall.from.x, y: wall.to.y - wall.from.y });
                const corner = i === 0 ? wall.name === 'west' ? wall.to : wall.from : wall.name === 'east' ? wall.from : wall.to;
                expect(Math.hypot(at.x - corner.x, at.y - corner.y) / INCH, `${name} at ${end}`).toBeCloseTo(wanted[i]!, 3);
            });
        }
    });
});

interface Point { readonly x: number; readonly y: number }
function crossing(a: Point, u: Point, b: Point, v: Point): Point {
    const t = ((b.x - a.x) * v.y - (b.y - a.y) * v.x) / (u.x * v.y - u.y * v.x);
    return { x: a.x + u.x * t, y: a.y + u.y * t };
}

function isIt({ part, line, face, back, overall, width, ends, meets }: Piece, wanted: Wanted): boolean {
    const near = (ticks: number, inches: number): boolean => Math.abs(ticks / INCH - inches) < 0.0003;
    const degrees = ends.map(end => end.degrees ?? 0), how = ends.map(end => end.how ?? 'square');
    const sorted = [...degrees].sort((a, b) => a - b);
    const leans = (wanted.angles ?? []).every((angle, i) => Math.abs(sorted[i]! - angle) < 0.001);
    const cuts = wanted.cuts === undefined || [...how].sort().join() === wanted.cuts.join() && leans;
    const lies = wanted.cuts !== undefined || ends.every((end, i) => {
        const [, angle, longer] = wanted.ends?.[i] ?? ['', 0, null];
        return Math.abs(Math.abs(end.degrees ?? 0) - angle) < 0.001 && (angle === 0 || end.longer === longer);
    });
    return part === wanted.part && line === wanted.line && near(Math.max(face, back), wanted.long) && near(Math.min(face, back), wanted.short)
        && near(overall, wanted.overall ?? wanted.long) && (wanted.width === undefined || near(width, wanted.width)) && cuts && lies
        && (wanted.between === undefined || wanted.count > 1 || [...meets].map(String).sort().join() === wanted.between.join());
}

function told({ face, back, overall, width, ends, meets }: Piece): unknown {
    return [face / INCH, back / INCH, overall / INCH, width / INCH, ends.map(({ how, degrees, longer }) => [how, degrees, longer]), meets];
}
