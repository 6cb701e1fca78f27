import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { USUAL_STEPS } from '../../../src/cutting/look-closer.ts';
import { VerifiedBound } from '../../../src/cutting/solve/bound.ts';
import type { BranchWatch, WholeBoards } from '../../../src/cutting/solve/aside.ts';
import { add, around, branchOnBoards, split, splitSections, type Branch } from '../../../src/cutting/solve/branch.ts';
import { columnsOf } from '../../../src/cutting/solve/columns.ts';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import { costStep, type CuttingProblem } from '../../../src/cutting/solve/problem.ts';
import { prove } from '../../../src/cutting/solve/prove.ts';
import { quickPlan } from '../../../src/cutting/solve/quick.ts';
import type { LinearSolver } from '../../../src/cutting/solve/solver.ts';
import { chooseBoards } from '../../../src/cutting/solve/whole-boards.ts';
import { jobKinds } from '../../bench/made-boards.ts';
import { runs } from '../../support/full.ts';
import { checkLayouts } from './check-layouts.ts';
import { leastCost } from './exhaustive.ts';
import { solver } from './problems.ts';
import { begun, plain, ripped } from './small-jobs.ts';

/** Numbers of boards, at least and at most, and some that lie between. */
const box = fc.array(fc.tuple(fc.nat(3), fc.nat(3), fc.nat(3)), { minLength: 1, maxLength: 3 })
    .map(kinds => kinds.map(([least, more, some]) => ({ least, most: least + more, some: least + some % (more + 1) })));
const branchOf = (kinds: readonly { least: number; most: number }[]): Branch =>
    ({ counts: { least: kinds.map(({ least }) => least), most: kinds.map(({ most }) => most) }, bound: 7, depth: 3 });

/** All numbers of boards within the limits. */
function numbers(kinds: readonly { least: number; most: number }[]): number[][] {
    const [first, ...others] = kinds;
    return first ? Array.from({ length: first.most - first.least + 1 }, (_, i) => numbers(others).map(rest => [first.least + i, ...rest])).flat() : [[]];
}
const holds = ({ counts: { least, most } }: Branch, own: readonly number[]): boolean => own.every((n, k) => n >= least[k]! && n <= most[k]!);
const isNext = (all: readonly Branch[]): void => all.forEach(({ bound, depth }) => expect([bound, depth]).toEqual([7, 4]));

describe('branches of the search', () => {
    test('all other numbers of boards than those that are done with are in one branch each, and those in none', () => {
        fc.assert(fc.property(box, kinds => {
            const done = kinds.map(({ some }) => some), branches = around(branchOf(kinds), done, 7);
            isNext(branches);
            for (const own of numbers(kinds))
                expect(branches.filter(branch => holds(branch, own)).length, String(own)).toBe(own.every((n, k) => n === done[k]) ? 0 : 1);
            // and none of them is without any
            for (const { counts: { least, most } } of branches) expect(least.every((n, k) => n <= most[k]!)).toBe(true);
        }), { seed: 90, numRuns: runs(400) });
    });
    test('at most so many of a kind, or more: no number is lost, none in both', () => {
        fc.assert(fc.property(box, fc.nat(2), (kinds, nth) => {
            const kind = nth % kinds.length, floor = kinds[kind]!.some, [few, many] = split(branchOf(kinds), kind, floor, 7) as [Branch, Branch];
            isNext([few, many]);
            for (const own of numbers(kinds)) expect([holds(few, own), holds(many, own)]).toEqual([own[kind]! <= floor, own[kind]! > floor]);
        }), { seed: 91, numRuns: runs(200) });
    });
    test('the same of sections of one length or longer; limits to those of other lengths stay', () => {
        const long = { from: 40, least: 1, most: 9 }, short = { from: 20, least: 0, most: Infinity }, own = branchOf([{ least: 0, most: 2 }]);
        const branches = splitSections(own, [long, short], 20, 3, 7);
        isNext(branches);
        expect(branches.map(({ counts: { sections } }) => sections)).toEqual([[long, { ...short, most: 3 }], [long, { ...short, least: 4 }]]);
        expect(branches.map(({ counts: { least, most } }) => [least, most])).toEqual([[[0], [2]], [[0], [2]]]);
    });
    test('that with the lowest bound comes next, of those alike the deepest, of those the first to be there', () => {
        const few = fc.array(fc.record({ bound: fc.nat(4), depth: fc.nat(3) }), { maxLength: 4 });
        fc.assert(fc.property(fc.array(few, { maxLength: 6 }), batches => {
            const open: Branch[] = [], all = batches.map(batch => batch.map((own): Branch => ({ ...own, counts: { least: [], most: [] } })));
            for (const batch of all) add(open, batch);
            expect(open.toReversed()).toEqual(all.flat().sort((a, b) => a.bound - b.bound || b.depth - a.depth));
            const order = open.toReversed().map(branch => all.flat().indexOf(branch));
            expect(order).toEqual(all.flat().map((branch, i) => ({ ...branch, i })).sort((a, b) => a.bound - b.bound || b.depth - a.depth).map(({ i }) => i));
        }), { seed: 92, numRuns: runs(300) });
    });
});

/** Whether the pieces can be cut from just so many boards, by trying everything. */
const areEnough = (problem: CuttingProblem, boards: readonly number[]): boolean =>
    leastCost({ ...problem, boards: problem.boards.map((kind, k) => ({ ...kind, available: boards[k]! })) }) < Infinity;

describe('whole numbers of boards, told by trying everything whether the pieces come out of them', () => {
    /** `patience`: how often one is asked again before that is told. `isChosen`: by what is known of how many are enough, also where boards are ripped. */
    function searched(
        problem: CuttingProblem, patience: number, isChosen: boolean, lp: LinearSolver = solver,
    ): { best: number; bound: number; asked: Map<string, number[]>; least: number; known: number } {
        const { start, cost, least } = begun(problem), step = costStep(problem), asked = new Map<string, number[]>();
        // as if nothing were known that is nearly as cheap, so that more is looked at
        let best = cost + 5 * step, bound = 0, known = best;
        const tell = ({ boards, cost: own, counts }: WholeBoards): boolean => {
            expect([counts.least, counts.most]).toEqual([boards, boards]);
            expect(own).toBe(boards.reduce((sum, n, k) => sum + n * problem.boards[k]!.cost, 0));
            const is = areEnough(problem, boards);
            if (is) best = Math.min(best, own);
            return is;
        };
        const bounds = new VerifiedBound(problem, best, step, new Effort(Infinity));
        const watch: BranchWatch = {
            best: () => best,
            onBound: own => { bound = Math.max(bound, own); expect(own).toBeLessThanOrEqual(least); },
            onWholeBoards(found) {
                const key = found.boards.join(' ') + JSON.stringify(found.counts.sections);
                expect(asked.has(key), 'twice').toBe(false);
                // what costs as much as is known need not be asked about again
                if (found.cost < best) { asked.set(key, []); known = Math.min(known, found.cost); }
                return patience < 0 && tell(found);
            },
            onStubborn(found, tries) {
                asked.get(found.boards.join(' ') + JSON.stringify(found.counts.sections))!.push(tries);
                if (tries < patience) return false;
                tell(found);
                return true;
            },
        };
        const columns = columnsOf(start), effort = new Effort(Infinity);
        const search = problem.strips.length > 0 && !isChosen ? branchOnBoards(problem, columns, bounds, step, lp, effort, watch)
            : chooseBoards(problem, columns, bounds, 0, step, lp, effort, watch);
        for (const _ of search);
        return { best, bound, asked, least, known };
    }
    test('the least cost is found and proved, be it told at once, or when it is asked about for the first, second or third time', () => {
        fc.assert(fc.property(fc.oneof(plain, ripped), fc.integer({ min: -1, max: 2 }), fc.boolean(), (problem, patience, isChosen) => {
            const { best, bound, least } = searched(problem, patience, isChosen);
            expect([best, bound]).toEqual([least, least]);
        }), { seed: 93, numRuns: runs(200, 25) });
    });
    test('of just so many boards the search section by section tells whether they do', () => {
        let few = 0;
        fc.assert(fc.property(ripped, fc.array(fc.nat(3), { minLength: 4, maxLength: 4 }), (problem, some) => {
            const { start, cost } = begun(problem), step = costStep(problem);
            const boards = problem.boards.map(({ available }, k) => Math.min(available ?? 3, some[k % 4]!));
            const own = boards.reduce((sum, n, k) => sum + n * problem.boards[k]!.cost, 0);
            let best = Math.max(cost, own) + step, bound = 0;
            const tell = ({ boards: found }: WholeBoards): boolean => {
                expect(found).toEqual(boards);
                if (!areEnough(problem, found)) return true;
                best = own;
                return true;
            };
            const watch: BranchWatch = { best: () => best, onBound: known => { bound = known; }, onWholeBoards: tell, onStubborn: tell };
            const every = { least: boards, most: boards }, bounds = new VerifiedBound(problem, best, step, new Effort(Infinity));
            for (const _ of branchOnBoards(problem, columnsOf(start), bounds, step, solver, new Effort(Infinity), watch, every));
            expect(bound).toBe(best);
            expect(best === own).toBe(areEnough(problem, boards));
            if (best === own) few++;
        }), { seed: 97, numRuns: runs(200, 25) });
        expect(few).toBeGreaterThan(2);
    });
    test('where it is never told, each is asked about three times, and no more is claimed than is known', () => {
        let open = 0;
        fc.assert(fc.property(fc.oneof(plain, ripped), fc.boolean(), (problem, isChosen) => {
            const { bound, asked, least, known } = searched(problem, 9, isChosen);
            for (const tries of asked.values()) expect(tries).toEqual([0, 1, 2]);
            expect(bound).toBeLessThanOrEqual(least);
            // the cheapest boards of which nobody knows
            expect(bound).toBe(known);
            open += asked.size;
        }), { seed: 94, numRuns: runs(200, 25) });
        expect(open).toBeGreaterThan(20);
    });
    test('where a program cannot be solved, what is found and claimed still holds', () => {
        fc.assert(fc.property(fc.oneof(plain, ripped), fc.nat(12), fc.boolean(), (problem, nth, isChosen) => {
            let solved = 0;
            const failing: LinearSolver = { ...solver, program: rows => {
                const own = solver.program(rows);
                return {
                    add: columns => own.add(columns), limit: (row, limits) => own.limit(row, limits), dispose: () => own.dispose(),
                    solve: () => (solved++ === nth ? undefined : own.solve()),
                };
            } };
            const { best, bound, least } = searched(problem, -1, isChosen, failing);
            expect(best).toBeGreaterThanOrEqual(least);
            expect(bound).toBeLessThanOrEqual(least);
            // and the whole search
            solved = 0;
            const { start, cost } = begun(problem);
            for (const standing of prove(problem, start, failing, 1e6)) {
                expect(checkLayouts(problem, standing.layouts)).toBe(standing.cost);
                expect([standing.cost <= cost, standing.bound <= least]).toEqual([true, true]);
            }
        }), { seed: 96, numRuns: runs(200, 25) });
    });
});

test('numbers of boards by what is known of how many are enough: a house of 60 pieces, a third of them ripped, that took 55 million steps without', () => {
    const [, problems] = jobKinds().find(([kind]) => kind === '60 pieces, a third ripped, sections too')!, problem = problems[14]!;
    const search = prove(problem, quickPlan(problem, new Effort(Infinity))!, solver, USUAL_STEPS);
    let last = search.next();
    while (!last.done) last = search.next();
    expect(checkLayouts(problem, last.value.layouts)).toBe(last.value.bound);
});

test('what may be spent is spent when all of it is gone', () => {
    const effort = new Effort(5), told: [number, boolean][] = [];
    for (const spent of [0, 4, 5, 6]) {
        effort.spent = spent;
        told.push([effort.left, effort.isSpent]);
    }
    expect(told).toEqual([[5, false], [1, false], [0, true], [0, true]]);
});
