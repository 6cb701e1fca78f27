import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/plane/point.ts';
import { inches, millimeters } from '../../src/quantity/rational.ts';
import { contoursOf, contourStep, edgeOfKnown, offPlane, swellsOf } from '../../src/survey/contours.ts';
import { Surface, type Plane } from '../../src/survey/surface.ts';
import { runs } from '../support/full.ts';

const FLAT: Plane = { at: 0, east: 0, south: 0 };
const STEP = 100_000;
/** Readings of a ceiling of a known shape, on a raster. */
const grid = (across: number, down: number, up: (x: number, y: number) => number): Surface => new Surface(
    Array.from({ length: across * down }, (_, i) => ({ x: (i % across) * STEP, y: Math.floor(i / across) * STEP }))
        .map(({ x, y }) => ({ x, y, up: Math.round(up(x, y)) })),
);
const cross = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
/** Stretches of all contours at a level. */
const pieces = (surface: Surface, plane: Plane, step: number, level: number): (readonly [Point, Point])[] =>
    contoursOf(surface, plane, step).filter(contour => contour.level === level).flatMap(({ points, closed }) =>
        points.flatMap((from, i) => (i + 1 < points.length || closed ? [[from, points[(i + 1) % points.length]!] as const] : [])));

describe('contours', () => {
    test('of a bowl are circles, one inside the other, closed', () => {
        const middle = 10 * STEP;
        const radius = (x: number, y: number): number => Math.hypot(x - middle, y - middle);
        // up = r^2 / 10^8: between readings 10^5 apart flat triangles stand at most a quarter of a cell's diagonal squared above it
        const surface = grid(21, 21, (x, y) => radius(x, y) ** 2 / 1e8), step = 2000, over = 2 * STEP ** 2 / 4 / 1e8 + 1;
        const all = contoursOf(surface, FLAT, step).filter(({ level }) => level > 0 && level < middle ** 2 / 1e8 - over);
        expect(all.map(({ level }) => level)).toEqual([2000, 4000, 6000, 8000]);
        for (const { level, points, closed } of all) {
            expect(closed).toBe(true);
            for (const { x, y } of points) {
                const exact = radius(x, y) ** 2 / 1e8;
                expect(exact).toBeLessThanOrEqual(level + 1);
                expect(exact).toBeGreaterThanOrEqual(level - over);
            }
        }
    });

    test('of a tilted ceiling are straight, from edge to edge, and over a plane that is tilted like it there are none', () => {
        const surface = grid(9, 7, (x, y) => 30_000 + x / 64 + y / 128), all = contoursOf(surface, FLAT, 3000);
        expect(all.length).toBeGreaterThan(3);
        for (const { level, points, closed } of all) {
            expect(closed).toBe(false);
            for (const { x, y } of points) expect(Math.abs(30_000 + x / 64 + y / 128 - level)).toBeLessThan(1);
            for (const end of [points[0]!, points.at(-1)!]) expect(Math.min(end.x, end.y, 8 * STEP - end.x, 6 * STEP - end.y)).toBeLessThan(1);
        }
        expect(contoursOf(surface, { at: 30_000 - 50, east: 1 / 64, south: 1 / 128 }, 3000)).toEqual([]);
    });

    test('are crossed by a straight line as often as the ceiling along it passes their level', () => {
        const surface = grid(9, 7, (x, y) => 20_000 + 4000 * Math.sin(x / 170_000) * Math.cos(y / 130_000) + x / 90);
        const plane = { at: 20_300, east: 1 / 200, south: -1 / 300 }, step = 1500;
        const four = fc.array(fc.integer({ min: 0, max: 8 * STEP }), { minLength: 4, maxLength: 4 });
        fc.assert(fc.property(four, fc.integer({ min: -1, max: 4 }), ([x1, y1, x2, y2], nth) => {
            const from = { x: x1!, y: Math.min(y1!, 6 * STEP) }, to = { x: x2!, y: Math.min(y2!, 6 * STEP) }, level = nth * step;
            fc.pre(Math.hypot(to.x - from.x, to.y - from.y) > 1000);
            const offs = surface.along(from, to).flatMap(stretch => stretch.map(({ x, y, up }) => up - plane.at - plane.east * x - plane.south * y - level));
            fc.pre(offs.every(off => Math.abs(off) > 0.01));
            const passes = offs.slice(1).filter((off, i) => off > 0 !== offs[i]! > 0).length;
            const crossed = pieces(surface, plane, step, level)
                .filter(([a, b]) => cross(from, to, a) > 0 !== cross(from, to, b) > 0 && cross(a, b, from) > 0 !== cross(a, b, to) > 0).length;
            expect(crossed).toBe(passes);
        }), { seed: 3, numRuns: runs(200) });
    });

    test('are as far apart as a mark that one says, and not too many', () => {
        expect(contourStep([0, inches('1/4')], 'feet-inches')).toBe(inches('1/32'));
        expect(contourStep([0, inches(1)], 'feet-inches')).toBe(inches('1/8'));
        expect(contourStep([0, millimeters(12)], 'millimeters')).toBe(millimeters(1));
        expect(contourStep([0, millimeters(70)], 'millimeters')).toBe(millimeters(10));
        expect(contourStep([5, 5], 'feet-inches')).toBe(inches('1/32'));
        expect(contourStep([0, inches(1000)], 'feet-inches')).toBe(inches(8));
    });
});

describe('humps and hollows', () => {
    test('of a ceiling with a hump and two hollows are these, the most prominent first', () => {
        const bump = (x: number, y: number, x0: number, y0: number): number => Math.exp(-((x - x0 * STEP) ** 2 + (y - y0 * STEP) ** 2) / (1.2 * STEP) ** 2);
        const rough = (x: number, y: number): number => ((x * 7 + y * 3) / STEP % 5) * 20;
        const surface = grid(13, 9, (x, y) => 50_000 - 6000 * bump(x, y, 3, 4) + 4000 * bump(x, y, 9, 2) + 2000 * bump(x, y, 9, 7) + rough(x, y));
        const found = swellsOf(surface, { at: 50_000, east: 0, south: 0 }, 1000);
        expect(found.filter(({ kind }) => kind === 'hump').map(({ x, y }) => [x / STEP, y / STEP])).toEqual([[3, 4]]);
        expect(found.filter(({ kind }) => kind === 'hollow').map(({ x, y }) => [x / STEP, y / STEP])).toEqual([[9, 2], [9, 7]]);
        expect(found[0]!.off).toBe(-6000 + rough(3 * STEP, 4 * STEP));
        // what is flat has none
        expect(swellsOf(grid(5, 5, () => 50_000), { at: 50_000, east: 0, south: 0 }, 1000)).toEqual([]);
    });

    test('are those that cannot be left without so much of a climb: every way to a lower reading tried', () => {
        fc.assert(fc.property(fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 20, maxLength: 20 }), fc.integer({ min: 1, max: 20 }), (ups, least) => {
            const surface = grid(5, 4, (x, y) => ups[x / STEP + 5 * (y / STEP)]!), n = ups.length;
            fc.pre(Math.max(...ups) - Math.min(...ups) >= least);
            // the lowest pass between any two readings (Floyd and Warshall, of the highest on the way)
            const pass = ups.map((_, i) => ups.map((__, j) => (i === j ? ups[i]! : Infinity)));
            for (const [a, b, c] of surface.triangles) {
                for (const [i, j] of [[a, b], [b, c], [c, a]] as const) pass[i]![j] = pass[j]![i] = Math.max(ups[i]!, ups[j]!);
            }
            for (let k = 0; k < n; k++) {
                for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) pass[i]![j] = Math.min(pass[i]![j]!, Math.max(pass[i]![k]!, pass[k]![j]!));
            }
            // of readings that are equally low the first in the list counts as the lower one
            const isLower = (j: number, i: number): boolean => ups[j]! < ups[i]! || ups[j] === ups[i] && j < i;
            const climb = ups.map((up, i) => Math.min(Infinity, ...ups.flatMap((_, j) => (isLower(j, i) ? [pass[i]![j]! - up] : []))));
            const wanted = climb.flatMap((by, i) => (by >= least && by > 0 ? [i] : []));
            const found = swellsOf(surface, FLAT, least).filter(({ kind }) => kind === 'hump').map(({ x, y }) => x / STEP + 5 * (y / STEP));
            expect(found.sort((a, b) => a - b)).toEqual(wanted);
        }), { seed: 17, numRuns: runs(300) });
    });
});

test('the edge of what is known goes once round all readings', () => {
    const surface = grid(6, 4, x => x), edge = edgeOfKnown(surface);
    const twice = edge.reduce((sum, a, i) => {
        const b = edge[(i + 1) % edge.length]!;
        return sum + a.x * b.y - b.x * a.y;
    }, 0);
    expect(twice).toBe(30 * STEP ** 2);
    expect(edgeOfKnown(new Surface([]))).toEqual([]);
    expect(offPlane(surface, { at: 10, east: 1, south: 0 })[7]).toBe(-10);
});
