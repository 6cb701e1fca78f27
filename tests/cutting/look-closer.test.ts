import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lookCloser, type Found } from '../../src/cutting/look-closer.ts';
import type { Asked } from '../../src/cutting/questions.ts';
import { costOfLayouts, type CuttingProblem } from '../../src/cutting/solve/problem.ts';
import { runs } from '../support/full.ts';
import { checkLayouts } from './solve/check-layouts.ts';
import { quick, solver } from './solve/problems.ts';

/** Inches and eighths, kerfs in both, as in solve/whole-model.test.ts. */
const stock = fc.record({
    items: fc.array(fc.record({ size: fc.integer({ min: 13, max: 70 }), count: fc.integer({ min: 1, max: 4 }), lanes: fc.constantFrom([0], [0], [1], [2]) }),
        { minLength: 2, maxLength: 4 }),
    boards: fc.tuple(fc.integer({ min: 90, max: 200 }), fc.integer({ min: 120, max: 280 })).map(([short, long]) =>
        [{ capacity: 95, cost: short, available: null, across: 45 }, { capacity: 143, cost: long, available: null, across: 45 }]),
});

test('boards without sections, asked about after those with sections, are the cheapest of their own, also where the answer is the same', () => {
    const answered = (asked: readonly Asked[]): Found[] => [...lookCloser(asked, solver, 1e7)].filter(({ isLast }) => isLast);
    let same = 0, other = 0;
    fc.assert(fc.property(stock, ({ items, boards }) => {
        const whole: CuttingProblem = { items, boards, strips: [7, 19] }, sections = { ...whole, shortestSection: 12 };
        const [first, second] = answered([{ problem: sections, layouts: quick(sections) }, { problem: whole, layouts: quick(whole), withSections: 0 }]);
        const [alone] = answered([{ problem: whole, layouts: quick(whole) }]);
        expect(checkLayouts(whole, second!.answer.layouts)).toBe(costOfLayouts(whole, alone!.answer.layouts));
        expect(second!.answer.bound).toBe(alone!.answer.bound);
        if (second!.answer === first!.answer) same++;
        else other++;
    }), { seed: 63, numRuns: runs(100, 8) });
    expect([same > 0, other > 0]).toEqual([true, true]);
}, 120_000);
