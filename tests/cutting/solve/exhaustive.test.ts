import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { stripsAcross } from '../../../src/cutting/blank.ts';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import { pieceCount, type CuttingProblem } from '../../../src/cutting/solve/problem.ts';
import { quickPlan } from '../../../src/cutting/solve/quick.ts';
import { checkLayouts } from './check-layouts.ts';
import { leastCost } from './exhaustive.ts';
import { proved } from './problems.ts';
import { runs } from '../../support/full.ts';

const kind = (across: fc.Arbitrary<number>) => fc.record({
    capacity: fc.integer({ min: 8, max: 30 }), cost: fc.integer({ min: 0, max: 40 }), available: fc.constantFrom(null, null, 1, 2), across,
});
const plain: fc.Arbitrary<CuttingProblem> = fc.record({
    items: fc.array(
        fc.record({ size: fc.integer({ min: 1, max: 20 }), count: fc.integer({ min: 1, max: 3 }), lanes: fc.constant([0]) }), { minLength: 1, maxLength: 5 },
    ),
    boards: fc.array(kind(fc.constant(1)), { minLength: 1, maxLength: 4 }), strips: fc.constant([]),
});
const ripped: fc.Arbitrary<CuttingProblem> = fc.record({
    items: fc.array(
        fc.record({ size: fc.integer({ min: 1, max: 20 }), count: fc.integer({ min: 1, max: 3 }), lanes: fc.constantFrom([0], [1], [2], [0, 1], [0, 2]) }),
        { minLength: 1, maxLength: 5 },
    ),
    boards: fc.array(
        fc.oneof(kind(fc.integer({ min: 5, max: 12 })), kind(fc.integer({ min: 5, max: 12 })).map(k => ({ ...k, ripOnly: true }))),
        { minLength: 1, maxLength: 3 },
    ),
    strips: fc.tuple(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 2, max: 6 })),
});
const sectioned: fc.Arbitrary<CuttingProblem> = fc.tuple(ripped, fc.integer({ min: 1, max: 12 }))
    .map(([problem, shortestSection]) => ({ ...problem, shortestSection }));

/** What is proved is what trying everything finds; a plan is found wherever there are boards without end that are long enough. */
function agrees(problem: CuttingProblem): void {
    fc.pre(pieceCount(problem) <= 8);
    const start = quickPlan(problem, new Effort(Infinity));
    const least = leastCost(problem);
    if (!start) {
        const enough = problem.items.every(({ size, lanes }) => problem.boards.some(k => k.available === null && k.capacity >= size
            && lanes.some(lane => (lane === 0 ? !k.ripOnly : problem.strips[lane - 1]! <= k.across))));
        expect(enough, 'no plan though there are boards').toBe(false);
        return;
    }
    expect(checkLayouts(problem, start)).toBeGreaterThanOrEqual(least);
    const { layouts, cost, bound } = proved(problem, 2e7, start);
    expect(checkLayouts(problem, layouts)).toBe(cost);
    expect(bound).toBeLessThanOrEqual(least);
    expect(cost).toBe(least);
    expect(bound).toBe(least);
}

describe('small jobs, against trying everything', () => {
    test('boards cut to length', () => {
        fc.assert(fc.property(plain, agrees), { seed: 20, numRuns: runs(300) });
    });
    test('boards and sheets that are ripped first, in any mix of widths', () => {
        fc.assert(fc.property(ripped, agrees), { seed: 21, numRuns: runs(300) });
    });
    test('boards cut across into pieces and sections that are ripped, in any mix of widths', () => {
        fc.assert(fc.property(sectioned, agrees), { seed: 23, numRuns: runs(300) });
    });
    test('how many strips come out of a width', () => {
        fc.assert(fc.property(fc.integer({ min: 1, max: 400 }), fc.integer({ min: 1, max: 60 }), fc.integer({ min: 0, max: 8 }), (board, strip, kerf) => {
            let strips = 0;
            for (let left = board; left >= strip; left -= strip + kerf) strips++;
            expect(stripsAcross(board, strip, kerf)).toBe(strips);
        }), { seed: 22 });
    });
});
