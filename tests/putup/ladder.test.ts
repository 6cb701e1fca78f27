import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { atOnce } from '../../src/plain/steps.ts';
import type { Point } from '../../src/plane/point.ts';
import { leastWay } from '../../src/putup/ladder/least-way.ts';
import { hop, stretchOf, type Stretch } from '../../src/putup/ladder/stretch.ts';
import type { PutUp, Step } from '../../src/putup/model.ts';
import { putUp } from '../../src/putup/put-up.ts';
import { waitsOf } from '../../src/putup/steps-of-pieces.ts';
import { exampleRoom } from '../support/example-room.ts';
import { runs } from '../support/full.ts';

/** Every order of the numbers below `count` in which each comes after what it waits for. */
function* everyOrder(count: number, waits: Stretch['waits'], so: readonly number[] = []): Generator<readonly number[]> {
    if (so.length === count) yield so;
    for (let i = 0; i < count; i++) if (!so.includes(i) && [...waits[i]!].every(first => so.includes(first))) yield* everyOrder(count, waits, [...so, i]);
}
function lengthOf(places: readonly Point[]): number {
    return places.slice(1).reduce((sum, at, i) => sum + hop(places[i]!, at), 0);
}
function placesOf(stretches: readonly Stretch[], orders: readonly (readonly number[])[]): Point[] {
    return orders.flatMap((order, i) => order.map(one => stretches[i]!.at[one]!));
}
/** The length of the shortest of all orders of all stretches, by trying each: for every last place of a stretch the shortest way there. */
function leastOfAll(stretches: readonly Stretch[]): number {
    let ways: { readonly at: Point; readonly far: number }[] = [];
    stretches.forEach(({ at, waits }, i) => {
        const next: typeof ways = [];
        for (const order of everyOrder(at.length, waits)) {
            const own = order.map(one => at[one]!), far = lengthOf(own);
            next.push({ at: own.at(-1)!, far: far + (i === 0 ? 0 : Math.min(...ways.map(way => way.far + hop(way.at, own[0]!)))) });
        }
        ways = next;
    });
    return Math.min(...ways.map(({ far }) => far));
}

const spot = fc.record({ x: fc.integer({ min: 0, max: 3_000_000 }), y: fc.integer({ min: 0, max: 3_000_000 }) });
/** Each waits for some of those before it in the list. */
const stretches = (most: number): fc.Arbitrary<Stretch> => fc.array(fc.tuple(spot, fc.array(fc.nat(), { maxLength: 3 })), { minLength: 1, maxLength: most })
    .map(places => stretchOf(places.map(([at]) => at), places.map(([, waits], i) => new Set(i === 0 ? [] : waits.map(one => one % i)))));
/**
 * A grid of coffers is gone through row by row, back and forth, and nothing is shorter: every place but one costs a step of the shorter kind at least, every
 * row but one of the other.
 */
function grid(rows: number, columns: number, [wide, high]: readonly [number, number], order: (i: number) => number): Stretch {
    const at = Array.from({ length: rows * columns }, (_, i) => ({ x: order(i) % columns * wide, y: Math.floor(order(i) / columns) * high }));
    return stretchOf(at, at.map(() => new Set<number>()));
}

describe('the way of the ladder', () => {
    test('of short stretches is the least there is, and that is proved: against every order of all of them, whatever waits for what', () => {
        fc.assert(fc.property(fc.array(stretches(6), { minLength: 1, maxLength: 3 }), all => {
            const { orders, length, atLeast } = atOnce(leastWay(all));
            expect(lengthOf(placesOf(all, orders))).toBe(length);
            expect([length, atLeast]).toEqual([leastOfAll(all), leastOfAll(all)]);
        }), { seed: 41, numRuns: runs(150, 40) });
    });
    test('of a stretch of twelve, by dynamic programming, is no longer than any other that keeps to what waits', () => {
        fc.assert(fc.property(fc.array(spot, { minLength: 12, maxLength: 12 }), fc.integer({ min: 1, max: 5 }), (at, every) => {
            const waits = at.map((_, i) => new Set(i >= every ? [i - every] : [])), all = [stretchOf(at, waits)], { length, atLeast } = atOnce(leastWay(all));
            expect(length).toBe(atLeast);
            let tried = 0;
            for (const order of everyOrder(12, waits)) {
                expect(lengthOf(order.map(one => at[one]!))).toBeGreaterThanOrEqual(length);
                if (++tried === 300) break;
            }
        }), { seed: 42, numRuns: runs(60, 12) });
    });
    test('of longer ones is one that keeps to what waits, and never shorter than what none is shorter than', () => {
        /** What waits for the one right before it and for one long before: places that are moved together wait for each other and for others. */
        const chained = fc.array(fc.tuple(spot, fc.boolean(), fc.option(fc.nat(), { freq: 2 })), { minLength: 16, maxLength: 26 }).map(places => stretchOf(
            places.map(([at]) => at),
            places.map(([, next, far], i) => new Set(i === 0 ? [] : [...next ? [i - 1] : [], ...far === null ? [] : [far % i]])),
        ));
        fc.assert(fc.property(fc.array(fc.oneof(stretches(30), chained), { minLength: 1, maxLength: 3 }), all => {
            const { orders, length, atLeast } = atOnce(leastWay(all));
            expect(lengthOf(placesOf(all, orders))).toBe(length);
            expect(atLeast).toBeLessThanOrEqual(length);
            orders.forEach((order, i) => {
                expect([...order].sort((a, b) => a - b)).toEqual(all[i]!.at.map((_, one) => one));
                order.forEach((one, at) => { for (const first of all[i]!.waits[one]!) expect(order.indexOf(first)).toBeLessThan(at); });
            });
        }), { seed: 43, numRuns: runs(200, 40) });
    });
    test('what none is shorter than holds where the least is known: sixteen and more in a line, in whatever order they are given', () => {
        const line = fc.record({ at: fc.array(fc.integer({ min: 0, max: 2_000_000 }), { minLength: 16, maxLength: 40 }) });
        fc.assert(fc.property(line, ({ at }) => {
            const { length, atLeast } = atOnce(leastWay([stretchOf(at.map(x => ({ x, y: 7 })), at.map(() => new Set<number>()))]));
            // from one end to the other
            const least = Math.max(...at) - Math.min(...at);
            expect(atLeast).toBeLessThanOrEqual(least);
            expect(length).toBeGreaterThanOrEqual(least);
        }), { seed: 44, numRuns: runs(100, 30) });
    });
    test.each([[4, 4], [5, 8], [9, 9]])('of a grid of %i by %i goes back and forth, and that is proved to be the least', (rows, columns) => {
        const far = [500_000, 600_000] as const, least = rows * (columns - 1) * far[0] + (rows - 1) * far[1];
        const inOrder = (i: number): number => {
            const row = Math.floor(i / columns), at = i % columns;
            return row * columns + (row % 2 === 0 ? at : columns - 1 - at);
        };
        expect(atOnce(leastWay([grid(rows, columns, far, inOrder)]))).toMatchObject({ length: least, atLeast: least });
        // as they are counted it is found, too, or near it, and told honestly
        const { length, atLeast } = atOnce(leastWay([grid(rows, columns, far, i => i)]));
        expect(length).toBeGreaterThanOrEqual(least);
        expect(length).toBeLessThan(least * 1.06);
        expect(atLeast).toBeLessThanOrEqual(least);
    });
});

/** The steps, one kind of work after the other. */
function kindsOf({ steps }: PutUp): Step[][] {
    const kinds: Step[][] = [];
    for (const step of steps) if (kinds.at(-1)?.[0]!.kind === step.kind) kinds.at(-1)!.push(step); else kinds.push([step]);
    return kinds;
}

describe('in a ceiling', () => {
    const room = (north: number, east: number): Ceiling => layOut(exampleRoom({ width: `${north * 4}' 4"`, length: `${east * 4}' 2"`, north: { coffers: north }, east: { coffers: east } })).ceiling!;
    test.each([[2, 2], [3, 2]])('of %i by %i coffers no order of the steps is shorter that keeps kinds and what waits, by trying all of them', (north, east) => {
        const order = putUp(room(north, east)), kinds = kindsOf(order), waits = waitsOf(order);
        const before = (number: number, own: readonly Step[]): Set<number> =>
            new Set(own.flatMap((other, i) => (waits.get(number)!.has(other.number) ? [i] : [])));
        const all = kinds.map(own => stretchOf(own.map(({ at }) => at), own.map(({ number }) => before(number, own))));
        expect(order.moves.distance).toBe(leastOfAll(all));
        expect(order.moves.atLeast).toBe(order.moves.distance);
    });
    test('of forty coffers what none is shorter than is within a tenth of what was found', () => {
        const { moves: { distance, atLeast } } = putUp(room(8, 5));
        expect(atLeast).toBeLessThanOrEqual(distance);
        expect(atLeast).toBeGreaterThan(distance * 0.9);
    });
});
