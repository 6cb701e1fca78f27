import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawView, pictureSvg, type Picture } from '../../src/drawing/index.ts';
import type { Point } from '../../src/drawing/display-list.ts';
import { eyeFor, seenAt, type Vector } from '../../src/drawing/view/eye.ts';
import { meshesOf, meshOf } from '../../src/drawing/view/mesh.ts';
import { paintOrder } from '../../src/drawing/view/order.ts';
import { shadowOn } from '../../src/drawing/view/shadow.ts';
import type { Prism, Solid } from '../../src/dryfit/model.ts';
import { solidsOf } from '../../src/dryfit/solids.ts';
import { entry, wrongSpots } from './support/rays.ts';
import { laid, ROOMS } from './support/rooms.ts';
import { all, readXml } from './support/xml.ts';
import { FULL, runs } from '../support/full.ts';

const rooms = Object.entries(ROOMS).filter(([name]) => !['many small', 'ten by eight'].includes(name)).map(([name, wishes]) => {
    const { ceiling, pieces } = laid(wishes);
    return [name, { ceiling, solids: solidsOf(ceiling, pieces) }] as const;
});

const piecesOf = ({ things }: Picture) => things.flatMap(each => ('wall' in each ? [] : [each]));
/** Rays shot each way. */
const ACROSS = FULL ? 30 : 14;
describe.each(rooms)('%s, seen from the floor', (_name, { ceiling, solids }) => {
    const picture = drawView(ceiling, solids);

    test('stands whole in its frame and is the same every time', () => {
        const spots = [...picture.ground, ...picture.things.flatMap(({ faces }) => faces)].flatMap(({ points }) => points);
        expect(spots.filter(([x, y]) => x < 0 || y < 0 || x > picture.width || y > picture.height)).toEqual([]);
        expect(pictureSvg(picture)).toBe(pictureSvg(drawView(ceiling, solids)));
    });

    test('what is painted last at a spot is what a ray from the eye meets first', () => {
        const { looked, wrong } = wrongSpots(picture, ceiling, solids, ACROSS);
        expect(wrong).toEqual([]);
        expect(looked).toBeGreaterThan(ACROSS ** 2 / 45);
    });
});

describe('the order of painting', () => {
    test('boxes in random places are painted as rays meet them', () => {
        const size = fc.integer({ min: 1, max: 8 }), place = fc.integer({ min: 0, max: 11 });
        const box = fc.record({ x: place, y: place, z: place, w: size, l: size, h: size });
        fc.assert(fc.property(fc.array(
            box, { minLength: 2, maxLength: 7 },
        ), fc.tuple(fc.integer({ min: -80, max: 100 }), fc.integer({ min: -80, max: 100 }), fc.integer({ min: 30, max: 120 })), (boxes, eyeAt) => {
            const prisms = boxes.map(({ x, y, z, w, l, h }): Prism => ({
                outline: [[x, y], [x + w, y], [x + w, y + l], [x, y + l]].map(([a, b]) => [a! * 1000, b! * 1000] as const), top: z * 1000, foot: (z + h) * 1000,
            }));
            const apart = prisms.filter((prism, i) =>
                prisms.slice(0, i).every(other => prism.top >= other.foot || other.top >= prism.foot || !overlap(prism, other)));
            const eye = eyeAt.map(v => v * 1000) as unknown as Vector;
            const all = apart.map(prism => ({
                prism, frame: { left: 0, right: 1, top: 0, foot: 1 }, depth: Math.hypot(...prism.outline[0]!.map((v, i) => v - eye[i]!), prism.top - eye[2]),
            }));
            const order = paintOrder(all, eye).map(({ prism }) => prism);
            expect([...order].sort(byTop)).toEqual([...apart].sort(byTop));
            for (const target of apart) {
                const middle: Vector = [(target.outline[0]![0]
                    + target.outline[2]![0]) / 2, (target.outline[0]![1] + target.outline[2]![1]) / 2, (target.top + target.foot) / 2];
                const along: Vector = [middle[0] - eye[0], middle[1] - eye[1], middle[2] - eye[2]];
                const met = apart.map(prism => ({ prism, at: entry(prism, eye, along) })).filter(({ at }) => at < Infinity).sort((a, b) => a.at - b.at);
                // whatever lies over the target along this ray is painted after it
                for (const { prism, at } of met) if (prism !== target
                    && at < met.find(each => each.prism === target)!.at - 1e-9) cyclesAllowed(order, prism, target, apart, eye);
            }
        }), { seed: 4, numRuns: runs(400) });
    });
});

function byTop(a: Prism, b: Prism): number {
    return JSON.stringify(a) < JSON.stringify(b) ? -1 : 1;
}
function overlap(a: Prism, b: Prism): boolean {
    const span = ({ outline }: Prism, axis: 0 | 1): readonly [number, number] =>
        [Math.min(...outline.map(p => p[axis])), Math.max(...outline.map(p => p[axis]))];
    return ([0, 1] as const).every(axis => span(a, axis)[0] < span(b, axis)[1] && span(b, axis)[0] < span(a, axis)[1]);
}
/** Boxes that hide each other in a circle have no order; three are the least that can. */
function cyclesAllowed(order: readonly Prism[], front: Prism, back: Prism, all: readonly Prism[], eye: Vector): void {
    if (order.indexOf(front) > order.indexOf(back)) return;
    const pair = [front, back].map(prism => ({ prism, frame: { left: 0, right: 1, top: 0, foot: 1 }, depth: 0 }));
    expect(paintOrder(pair, eye).map(({ prism }) => prism)).toEqual([back, front]);
    expect(all.length).toBeGreaterThan(2);
}

describe('surfaces', () => {
    const board = (prisms: readonly Prism[]): Solid => ({ piece: {} as Solid['piece'], prisms });
    const box: Prism = { outline: [[0, 0], [100, 0], [100, 30], [0, 30]], top: 0, foot: 70 };

    test('a box has six faces, twelve edges and eight corners', () => {
        const { corners, faces, edges } = meshOf(board([box]));
        expect([corners.length, faces.length, edges.length]).toEqual([8, 6, 12]);
    });

    test('a rabbeted board has the edges of one board: eighteen, none along its seam', () => {
        const solid = board([{ ...box, foot: 60 }, { outline: [[0, 0], [100, 0], [100, 20], [0, 20]], top: 60, foot: 70 }]);
        const { corners, edges } = meshOf(solid);
        const spoken = edges.map(([a, b]) => [corners[a]!, corners[b]!]);
        // edges that meet end to end at the seam are one edge to the eye
        const level = spoken.filter(([a, b]) => a![2] === b![2]);
        expect(level.filter(([a]) => a![2] === 60).map(pair => pair.map(corner => corner.join(' ')).sort().join(' - ')).sort()).toEqual(['0 20 60 - 0 30 60', '0 20 60 - 100 20 60', '0 30 60 - 100 30 60', '100 20 60 - 100 30 60']);
        expect(level.length).toBe(4 + 4 + 4);
        expect(meshesOf(solid).map(({ faces }) => faces.length)).toEqual([6, 6]);
    });

    test('every face of every piece is counterclockwise from outside: volumes come out positive', () => {
        for (const [, { solids }] of rooms) {
            for (const solid of solids) {
                const { corners, faces } = meshOf(solid);
                const volume = faces.reduce((sum, face) => sum + face.slice(2).reduce((part, _, i) => {
                    const [[ax, ay, az], [bx, by, bz], [cx, cy, cz]] = [corners[face[0]!]!, corners[face[i + 1]!]!, corners[face[i + 2]!]!];
                    return part + (ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx)) / 6;
                }, 0), 0);
                expect(volume, solid.piece.id).toBeGreaterThan(0);
            }
        }
    });
});

describe('the eye', () => {
    test('sees all of the box, and as much of it on the left as on the right', () => {
        const side = fc.integer({ min: 100, max: 1000 });
        fc.assert(fc.property(side, side, side, fc.integer({ min: -9, max: 9 }), fc.integer({ min: 1, max: 9 }), (w, l, h, x, z) => {
            const bounds = { least: [0, 0, 0] as Vector, most: [w, l, h] as Vector };
            const eye = eyeFor(bounds, [x, 7, z], 1.5);
            const seen = [0, w].flatMap(a => [0, l].flatMap(b => [0, h].map(c => seenAt(eye, [a, b, c]))));
            const [left, right] = [Math.min(...seen.map(([at]) => at)), Math.max(...seen.map(([at]) => at))];
            const [foot, top] = [Math.min(...seen.map(([, at]) => at)), Math.max(...seen.map(([, at]) => at))];
            expect([left >= -1.5 - 1e-3, right <= 1.5 + 1e-3, foot >= -1 - 1e-3, top <= 1 + 1e-3]).toEqual([true, true, true, true]);
            expect(Math.max(right / 1.5, top, -left / 1.5, -foot)).toBeGreaterThan(0.9);
            expect(Math.abs(left + right)).toBeLessThan(0.05);
            expect(Math.abs(top + foot)).toBeLessThan(0.05);
        }), { seed: 2, numRuns: runs(200) });
    });
});

describe('shadows', () => {
    const HALL: readonly Point[] = [[0, 0], [100, 0], [100, 100], [0, 100]];
    const post: Prism = { outline: [[40, 40], [60, 40], [60, 60], [40, 60]], top: 0, foot: 10 };
    test('fall away from the light, by as much as the thing hangs down', () => {
        const shadow = shadowOn(post, [-1, 0, 1], HALL);
        expect([Math.min(...shadow.map(([x]) => x)), Math.max(...shadow.map(([x]) => x))]).toEqual([40, 70]);
        expect([Math.min(...shadow.map(([, y]) => y)), Math.max(...shadow.map(([, y]) => y))]).toEqual([40, 60]);
    });
    test('end at the wall', () => {
        const shadow = shadowOn(post, [-8, 0, 1], HALL);
        expect(Math.max(...shadow.map(([x]) => x))).toBe(100);
    });
});

describe('the picture as SVG', () => {
    test.each(rooms)('%s: well-formed, every piece by name, nothing from elsewhere', (_name, { ceiling, solids }) => {
        const picture = drawView(ceiling, solids);
        for (const theme of ['auto', 'light', 'dark', 'print'] as const) {
            const svg = pictureSvg(picture, { theme });
            const tags = all(readXml(svg));
            expect(tags.filter(({ name }) => name === 'g').map(({ attributes }) => attributes['data-piece'])).toEqual(piecesOf(picture).map(({ piece }) => piece));
            expect(svg).not.toMatch(/NaN|Infinity|undefined|href=|url\(|<script/);
        }
    });
});
