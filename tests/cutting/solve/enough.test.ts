import fc from 'fast-check';
import { expect, test } from 'vitest';
import { allCounts, VerifiedBound } from '../../../src/cutting/solve/bound.ts';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import { areTooFew, Enough } from '../../../src/cutting/solve/enough.ts';
import { costStep, type CuttingProblem } from '../../../src/cutting/solve/problem.ts';
import { runs } from '../../support/full.ts';
import { leastCost } from './exhaustive.ts';
import { begun, plain } from './small-jobs.ts';

/** What pieces may be worth: nothing, too much, or about what they cost. */
const worths = fc.array(fc.array(fc.double({ min: 0, max: 3, noNaN: true }), { minLength: 8, maxLength: 8 }), { minLength: 1, maxLength: 5 });

/** All numbers of boards that cost at most this. */
function numbers({ boards }: CuttingProblem, dearest: number): number[][] {
    return boards.reduce<number[][]>((all, { cost, available }, k) => all.flatMap(own => {
        const spent = own.reduce((sum, n, i) => sum + n * boards[i]!.cost, 0);
        const most = Math.min(available ?? Infinity, cost > 0 ? Math.floor((dearest - spent) / cost) : 6);
        return Array.from({ length: most + 1 }, (_, n) => [...own, n]).filter(each => each.length === k + 1);
    }), [[]]);
}

test('by trying everything: no boards that suffice are too few, and what none of is left is dearer', () => {
    let told = 0, none = 0;
    fc.assert(fc.property(plain, worths, fc.nat(30), (problem, values, less) => {
        const { cost } = begun(problem), step = costStep(problem), effort = new Effort(Infinity);
        const bounds = new VerifiedBound(problem, cost, step, effort), enough = new Enough(problem, effort);
        const rate = Math.max(1, ...problem.boards.map(kind => kind.cost)) / Math.max(...problem.boards.map(kind => kind.capacity));
        const limits = values.map(row => bounds.worthOf(problem.items.map(({ size }, i) => row[i % row.length]! * size * rate))!);
        for (const limit of limits) enough.add(limit);
        const dearest = Math.max(0, cost - less * step), counts = allCounts(problem, dearest);
        const allowed = numbers(problem, dearest).filter(boards => limits.every(limit => !areTooFew(limit, boards)));
        for (const boards of numbers(problem, dearest)) {
            const sufficient = leastCost({ ...problem, boards: problem.boards.map((kind, k) => ({ ...kind, available: boards[k]! })) }) < Infinity;
            if (sufficient) expect(allowed.some(each => each.join() === boards.join()), boards.join(' ')).toBe(true); else told++;
        }
        const parts = enough.cheapest(counts, dearest);
        if (allowed.length > 0) {
            expect(parts, 'there are some').toBeDefined();
            const least = Math.min(...allowed.map(boards => boards.reduce((sum, n, k) => sum + n * problem.boards[k]!.cost, 0)));
            expect(parts!.reduce((sum, n, k) => sum + n * problem.boards[k]!.cost, 0)).toBeLessThanOrEqual(least + 1e-6 * Math.max(1, least));
        } else if (!parts) none++;
    }), { seed: 97, numRuns: runs(120, 20) });
    expect(told).toBeGreaterThan(50);
    expect(none).toBeGreaterThan(0);
});

test('a limit holds to the last part: as much as all pieces are worth is enough, a part less is not', () => {
    const limit = { pieces: 2 ** 50 + 1, boards: [2 ** 49, 1], scale: 2 ** 24 };
    expect([[2, 0], [2, 1], [1, 2 ** 49], [3, 0]].map(boards => areTooFew(limit, boards))).toEqual([true, false, true, false]);
});
