import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { RoomOnPage } from '../../src/pages/page.ts';
import { orderInView, type OrderInView } from '../../src/pages/view/order.ts';
import { arrivalsIn, momentAt, placeOn, poseOn } from '../../src/pages/view/playing.ts';
import { inStretches } from '../../src/panes/view/arriving.ts';
import { dryFitOf } from '../../src/pipeline/inspect-closely.ts';
import type { Move, Step } from '../../src/putup/model.ts';
import { putUpOf } from '../../src/putup/put-up.ts';
import { putUpContent } from '../../src/report/put-up/content.ts';
import { roomOnPage, serve } from './support/content.ts';

const example = (path: string): string => readFileSync(new URL(`../../examples/${path}`, import.meta.url), 'utf8');
const files = Object.fromEntries(['yard.coffer', 'rates.coffer', 'details/plain-box.coffer', 'quince-lane/house.coffer', 'quince-lane/parlor.coffer'].map(path => [path, example(path)]));
let room: RoomOnPage, order: OrderInView;
beforeAll(async () => {
    room = roomOnPage(await serve(files), 'quince-lane/parlor.coffer');
    order = orderInView(putUpContent(room.ceiling, room.takeOff), dryFitOf(room.ceiling).solids);
});

describe('watching how a ceiling is put up', () => {
    test('every piece comes once, in the order of the core and on its moves', () => {
        const placings = putUpOf(room.ceiling).steps.flatMap(step => step.placings), arrivals = arrivalsIn(order);
        expect(arrivals.map(({ key }) => key)).toEqual(placings.map(({ piece }) => piece.id));
        for (const [i, { way }] of arrivals.entries()) expect(order.ways[way]).toEqual(placings[i]!.path?.moves);
        expect(order.ways.length).toBeLessThan(arrivals.length / 4);
    });

    test('at whole numbers steps are done and nothing moves; between them one piece at most is on its way, and all before it are up', () => {
        let up = 0;
        for (const [i, { pieces }] of order.steps.entries()) {
            expect(momentAt(order, i)).toEqual({ up, moving: null });
            for (const [nth, piece] of pieces.entries()) {
                const { up: there, moving } = momentAt(order, i + (nth + 0.5) / pieces.length);
                expect(there).toBe(up + nth);
                expect(moving?.arrival ?? { key: piece.key, way: -1 }).toMatchObject({ key: piece.key });
            }
            up += pieces.length;
        }
        expect(momentAt(order, order.steps.length)).toEqual({ up, moving: null });
        expect(momentAt(order, order.steps.length + 3)).toEqual({ up, moving: null });
        expect(momentAt(order, -1).moving).toBe(null);
    });

    test('a way begins where the first move does, passes every pose and ends in the place, never jumping', () => {
        for (const moves of order.ways) {
            expect(poseOn(moves, 0)).toMatchObject({ aside: moves[0]!.from.aside, below: moves[0]!.from.below });
            const end = poseOn(moves, 1);
            expect([end.aside.x, end.aside.y, end.below, end.shape === 'straight' ? 0 : end.angle].map(value => Math.round(value) + 0)).toEqual([0, 0, 0, 0]);
            const step = moves[0]!.from.below / 50;
            for (let i = 0; i < 200; i++) {
                const [a, b] = [poseOn(moves, i / 200), poseOn(moves, (i + 1) / 200)];
                expect(Math.hypot(a.aside.x - b.aside.x, a.aside.y - b.aside.y, a.below - b.below)).toBeLessThan(step);
            }
        }
    });

    test('what leans or bends on its way has a frame, and ends exactly where it stands in the dry fit', () => {
        const { steps } = putUpContent(room.ceiling, room.takeOff), { solids } = dryFitOf(room.ceiling);
        const straight = { aside: { x: 0, y: 0 }, below: 0, angle: 0, low: 1 } as const;
        for (const shape of ['leaning', 'bowed', 'kneed', 'arched'] as const) {
            const moves: Move[] = [{ kind: 'straighten', from: { ...straight, shape, angle: 0.08 }, to: { ...straight, shape } }];
            const bends = (step: Step): Step => ({ ...step, placings: step.placings.map(placing => ({ ...placing, path: { ...placing.path!, moves } })) });
            const bent = orderInView({ steps: steps.map(one => ({ ...one, step: bends(one.step) })) }, solids);
            const bottoms = arrivalsIn(bent).filter(({ key }) => key.includes('.bottom-'));
            expect(bottoms.length).toBeGreaterThan(4);
            for (const { key, way, frame } of bottoms) {
                const { prisms } = solids.find(({ piece }) => piece.id === key)!;
                for (const { outline, top, foot } of prisms) for (const [x, y] of outline) for (const z of [top, foot]) {
                    const home = placeOn({ x, y, z }, poseOn(bent.ways[way]!, 1), frame!), off = placeOn({ x, y, z }, poseOn(bent.ways[way]!, 0), frame!);
                    expect(Math.hypot(home.x - x, home.y - y, home.z - z)).toBeLessThan(1);
                    expect(Math.hypot(off.x - x, off.y - y, off.z - z)).toBeGreaterThan(1);
                }
            }
        }
    });

    test('cut into stretches a triangle keeps its area and its plane, an edge its length', () => {
        const cut = inStretches(new Float32Array([0, 0, 0, 12, 0, 0, 0, 8, 0]), 3), ends = inStretches(new Float32Array([1, 1, 1, 4, 5, 1]), 2);
        let area = 0, length = 0;
        for (let i = 0; i < cut.length; i += 9) {
            const [ax, ay, , bx, by, , cx, cy] = cut.subarray(i, i + 9) as unknown as number[];
            area += ((bx! - ax!) * (cy! - ay!) - (by! - ay!) * (cx! - ax!)) / 2;
        }
        for (let i = 0; i < ends.length; i += 6) length += Math.hypot(ends[i + 3]! - ends[i]!, ends[i + 4]! - ends[i + 1]!, ends[i + 5]! - ends[i + 2]!);
        expect([area, length].map(value => value.toFixed(3))).toEqual(['48.000', '5.000']);
    });
});
