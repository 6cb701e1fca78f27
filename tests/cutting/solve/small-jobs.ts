import fc from 'fast-check';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import { costOfLayouts, pieceCount, type CuttingProblem, type Layout } from '../../../src/cutting/solve/problem.ts';
import { quickPlan } from '../../../src/cutting/solve/quick.ts';
import { leastCost } from './exhaustive.ts';

/** Jobs so small that everything can be tried. */
export const from = (min: number, max: number) => fc.integer({ min, max });

const kind = (across: fc.Arbitrary<number>) => fc.record({ capacity: from(8, 24), cost: from(0, 30), available: fc.constantFrom(null, null, 1, 2), across });
const pieces = (...lanes: number[][]) =>
    fc.array(fc.record({ size: from(1, 18), count: from(1, 3), lanes: fc.constantFrom(...lanes) }), { minLength: 1, maxLength: 4 });
export const worths = fc.array(fc.nat(20), { minLength: 4, maxLength: 4 });
export const plain: fc.Arbitrary<CuttingProblem> = fc.record({
    items: pieces([0]), boards: fc.array(kind(fc.constant(1)), { minLength: 1, maxLength: 3 }), strips: fc.constant([]),
});
export const ripped: fc.Arbitrary<CuttingProblem> = fc.tuple(fc.record({
    items: pieces([0], [1], [2], [0, 1], [0, 2]),
    boards: fc.array(fc.tuple(kind(from(5, 12)), fc.boolean()).map(([own, ripOnly]) => (ripOnly ? { ...own, ripOnly } : own)), { minLength: 1, maxLength: 3 }),
    strips: fc.tuple(from(2, 6), from(2, 6)),
}), fc.option(from(1, 12), { nil: undefined })).map(([problem, shortestSection]) => ({ ...problem, ...shortestSection !== undefined && { shortestSection } }));

/** With a plan to begin with, and what the cheapest one costs. */
export function begun(problem: CuttingProblem): { start: Layout[]; cost: number; least: number } {
    fc.pre(pieceCount(problem) <= 7);
    const start = quickPlan(problem, new Effort(Infinity));
    fc.pre(start !== undefined);
    return { start: start!, cost: costOfLayouts(problem, start!), least: leastCost(problem) };
}
