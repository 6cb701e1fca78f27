import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { triangulate } from '../../src/plane/triangulation.ts';
import { Surface } from '../../src/survey/surface.ts';
import { runs } from '../support/full.ts';

type Read = readonly [number, number, number];
interface Compared { readonly readings: readonly Read[]; readonly asked: readonly (readonly [number, number])[]; readonly found: readonly (number | null)[] }
const surfaceOf = (points: readonly (readonly [number, number, number])[]): Surface => new Surface(points.map(([x, y, up]) => ({ x, y, up })));

// scipy.interpolate.LinearNDInterpolator, see tests/reference/surface/by_qhull.py
const compared = JSON.parse(readFileSync(new URL('../reference/surface/by_qhull.json', import.meta.url), 'utf8')) as readonly Compared[];
test.each(compared.map(one => [one.readings.length, one] as const))('is what another library interpolates between %i readings, and unknown where it says so', (_, { readings, asked, found }) => {
    const surface = surfaceOf(readings);
    expect(asked.map(([x, y], i) => {
        const up = surface.at({ x, y }), other = found[i]!;
        return up === undefined || other === null ? up === undefined && other === null : Math.abs(up - other) < 0.01;
    })).toEqual(asked.map(() => true));
    expect(found.some(up => up === null)).toBe(true);
});

const places = fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 9 })), {
     minLength: 3, maxLength: 40, selector: ([x, y]) => `${x} ${y}` });

describe('the triangulation', () => {
    test('covers the hull once, with no reading inside of a circle: on a coarse grid, where many lie in rows and on circles', () => {
        fc.assert(fc.property(places, spots => {
            const points = spots.map(([x, y]) => ({ x, y })), triangles = triangulate(points);
            const area = (a: number, b: number, c: number): number => {
                const [p, q, r] = [points[a]!, points[b]!, points[c]!];
                return (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
            };
            for (const [a, b, c] of triangles) {
                expect(area(a, b, c)).toBeGreaterThan(0);
                points.forEach((point, i) => {
                    if (i === a || i === b || i === c) return;
                    expect(inCircle(points[a]!, points[b]!, points[c]!, point)).toBeLessThanOrEqual(0);
                });
            }
            expect(triangles.reduce((sum, [a, b, c]) => sum + area(a, b, c), 0)).toBe(twiceHull(points));
        }), { seed: 11, numRuns: runs(600) });
    });
});

/** The determinant as it stands in books, of small whole numbers: over 0 where d is inside the circle of a, b, c, clockwise on the plan. */
function inCircle(...[a, b, c, d]: readonly { x: number; y: number }[]): number {
    const [m, n, o] = [a!, b!, c!].map(point => {
        const x = point.x - d!.x, y = point.y - d!.y;
        return [x, y, x * x + y * y] as const;
    });
    return m![0] * (n![1] * o![2] - n![2] * o![1]) - m![1] * (n![0] * o![2] - n![2] * o![0]) + m![2] * (n![0] * o![1] - n![1] * o![0]);
}

/** Twice the area of the convex hull (Andrew 1979). */
function twiceHull(points: readonly { x: number; y: number }[]): number {
    const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
    const half = (list: typeof sorted): typeof sorted => {
        const hull: typeof sorted = [];
        for (const p of list) {
            const turns = (a: typeof p, b: typeof p): number => (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x);
            while (hull.length > 1 && turns(hull.at(-2)!, hull.at(-1)!) <= 0) hull.pop();
            hull.push(p);
        }
        return hull.slice(0, -1);
    };
    const hull = [...half(sorted), ...half(sorted.toReversed())];
    return hull.reduce((sum, a, i) => {
        const b = hull[(i + 1) % hull.length]!;
        return sum + a.x * b.y - b.x * a.y;
    }, 0);
}

describe('a ceiling of a known shape', () => {
    const grid = (step: number, up: (x: number, y: number) => number): Surface => surfaceOf(
        Array.from({ length: 11 * 9 }, (_, i): [number, number, number] => {
            const x = (i % 11) * step, y = Math.floor(i / 11) * step;
            return [x, y, up(x, y)];
        }),
    );
    const step = 390_144, spots = Array.from({ length: 200 }, (_, i) => ({ x: (i * 7919 * 97) % (10 * step), y: (i * 104_729 * 31) % (8 * step) }));

    test('a plane is found exactly', () => {
        const plane = (x: number, y: number): number => 30_000 + x / 128 - y / 256;
        const surface = grid(step, plane);
        for (const { x, y } of spots) expect(surface.at({ x, y })).toBeCloseTo(plane(x, y), 4);
    });
    // Waldron, "The error in linear interpolation at the vertices of a simplex", SIAM J. Numer. Anal. 35 (1998): |error| <= R² max |second derivative| / 2
    test.each([
        ['a saddle', (x: number, y: number) => 40_000 + (x - 2e6) * (y - 1.5e6) / 3e9, 1 / 3e9],
        ['a bowl', (x: number, y: number) => 30_000 + ((x - 2e6) ** 2 + (y - 1.5e6) ** 2) / 1e9, 2 / 1e9],
    ])('%s within the bound of the interpolation', (_, up, curvature) => {
        const surface = grid(step, up), bound = (step * Math.SQRT1_2) ** 2 * curvature / 2;
        const errors = spots.map(({ x, y }) => Math.abs(surface.at({ x, y })! - up(x, y)));
        expect(Math.max(...errors)).toBeLessThanOrEqual(bound * 1.0001);
        expect(Math.max(...errors)).toBeGreaterThan(bound / 4);
    });

    test('along a line the ceiling is what it is at every spot of it, and known only between the readings', () => {
        const surface = grid(step, (x, y) => 30_000 + ((x - 2e6) ** 2 + (y - 1.5e6) ** 2) / 1e9);
        fc.assert(fc.property(fc.array(fc.integer({ min: -400_000, max: 4_300_000 }), { minLength: 4, maxLength: 4 }), ([x1, y1, x2, y2]) => {
            const from = { x: x1!, y: y1! }, to = { x: x2!, y: y2! }, length = Math.hypot(to.x - from.x, to.y - from.y);
            fc.pre(length > 1000);
            const stretches = surface.along(from, to);
            for (let i = 0; i <= 40; i++) {
                const along = length * (i + 0.37) / 41, point = { x: from.x + (to.x - from.x) * along / length, y: from.y + (to.y - from.y) * along / length };
                const own = stretches.find(stretch => stretch[0]!.along <= along && along <= stretch.at(-1)!.along), up = surface.at(point);
                expect(own !== undefined).toBe(up !== undefined);
                if (!own || up === undefined) continue;
                const after = own.findIndex(station => station.along >= along), a = own[Math.max(0, after - 1)]!, b = own[Math.max(1, after)]!;
                expect(a.up + (b.up - a.up) * (along - a.along) / (b.along - a.along)).toBeCloseTo(up, 1);
            }
        }), { seed: 5, numRuns: runs(300) });
    });
});

test('of no three readings that stand around something nothing is known', () => {
    expect(surfaceOf([]).at({ x: 0, y: 0 })).toBeUndefined();
    expect(surfaceOf([[0, 0, 5], [100, 100, 5]]).triangles).toEqual([]);
    expect(surfaceOf([[0, 0, 5], [100, 100, 5], [300, 300, 9], [200, 200, 7]]).triangles).toEqual([]);
    expect(surfaceOf([[0, 0, 5], [100, 100, 5], [300, 300, 9]]).along({ x: 0, y: 0 }, { x: 300, y: 300 })).toEqual([]);
});
