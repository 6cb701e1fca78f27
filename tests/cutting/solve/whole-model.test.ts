import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import { pieceCount, type CuttingProblem, type Layout } from '../../../src/cutting/solve/problem.ts';
import { quickPlan } from '../../../src/cutting/solve/quick.ts';
import { runs } from '../../support/full.ts';
import { checkLayouts } from './check-layouts.ts';
import { leastCost } from './exhaustive.ts';
import { leastCostBy, whatIsMissing } from './flow-model.ts';
import { proved } from './problems.ts';
import { wholeModel } from './whole-model.ts';

// Lengths in inches and widths in eighths, kerfs in both: boards of 5 1/2" by 8' to 12', cleats of 3/4", strips of 2 1/4", pieces of the whole width.
const stock: fc.Arbitrary<CuttingProblem> = fc.record({
    items: fc.array(fc.record({
        size: fc.integer({ min: 13, max: 70 }), count: fc.integer({ min: 1, max: 3 }), lanes: fc.constantFrom([0], [0], [1], [1], [2], [0, 2]),
    }), { minLength: 2, maxLength: 4 }),
    boards: fc.tuple(
        fc.integer({ min: 90, max: 200 }), fc.integer({ min: 120, max: 280 }), fc.option(fc.integer({ min: 40, max: 90 }), { nil: undefined }),
    ).map(
        ([short, long, offcut]) => [
            { capacity: 95, cost: short, available: null, across: 45 }, { capacity: 143, cost: long, available: null, across: 45 },
            ...offcut === undefined ? [] : [{ capacity: offcut, cost: 0, available: 1, across: 45 }],
        ]),
    strips: fc.constant([7, 19]),
    shortestSection: fc.constant(12),
});

/** As many boards as the plan has and one more, and strips abreast as it has, three at least: a cheaper plan of more than that would not be seen. */
function room(layouts: readonly Layout[]) {
    const abreast = layouts.flatMap(({ strips }) =>
        [undefined, 0, 1].map(section => strips.filter(strip => strip.lane > 0 && strip.section === section).length));
    return { boards: layouts.reduce((sum, { times }) => sum + times, 0) + 1, sections: 2, strips: Math.max(3, ...abreast) };
}

const missing = whatIsMissing('cbc');
test.skipIf(missing !== undefined)(`none cheaper exists among all ways to cut, says a program of whole numbers${missing ? `: ${missing}` : ''}`, () => {
    fc.assert(fc.property(stock, problem => {
        fc.pre(pieceCount(problem) <= 7);
        const { layouts, cost, bound } = proved(problem, 2e7, quickPlan(problem, new Effort(Infinity))!);
        expect(checkLayouts(problem, layouts)).toBe(cost);
        const least = leastCostBy('cbc', wholeModel(problem, room(layouts)));
        expect(bound).toBeLessThanOrEqual(least);
        if (bound === cost) expect(least).toBe(cost);
        else expect(least).toBeLessThanOrEqual(cost);
    }), { seed: 61, numRuns: runs(40, 5) });
}, 300_000);

test.skipIf(missing !== undefined)('that program says of a handful of pieces what trying everything does', () => {
    fc.assert(fc.property(stock, problem => {
        fc.pre(pieceCount(problem) <= 4);
        const most = { boards: pieceCount(problem), sections: 2, strips: pieceCount(problem) };
        expect(leastCostBy('cbc', wholeModel(problem, most))).toBe(leastCost(problem));
    }), { seed: 62, numRuns: runs(20, 4) });
}, 300_000);
