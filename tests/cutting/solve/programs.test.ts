import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { columnsFor } from '../../../src/cutting/solve/alike.ts';
import { plannedAnew } from '../../../src/cutting/solve/anew.ts';
import { allCounts, VerifiedBound } from '../../../src/cutting/solve/bound.ts';
import { columnsOf } from '../../../src/cutting/solve/columns.ts';
import { dive } from '../../../src/cutting/solve/dive.ts';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import { columnsWithin } from '../../../src/cutting/solve/enumerate.ts';
import { planByFlow } from '../../../src/cutting/solve/flow.ts';
import { generate } from '../../../src/cutting/solve/generate.ts';
import { faultOf, picksOf } from '../../../src/cutting/solve/layouts.ts';
import { Master } from '../../../src/cutting/solve/master.ts';
import { planByPatterns } from '../../../src/cutting/solve/patterns.ts';
import { pickPlan } from '../../../src/cutting/solve/pick.ts';
import { Pricing } from '../../../src/cutting/solve/pricing.ts';
import { costOfLayouts, costStep, type CuttingProblem, type Layout } from '../../../src/cutting/solve/problem.ts';
import { SectionTables } from '../../../src/cutting/solve/sections.ts';
import { sequentialPlan } from '../../../src/cutting/solve/sequential.ts';
import { runs } from '../../support/full.ts';
import { checkLayouts } from './check-layouts.ts';
import { leastCost } from './exhaustive.ts';
import { proved, quick, solver } from './problems.ts';
import { begun, from, plain, ripped, worths } from './small-jobs.ts';

/** The programs that the search asks, each by itself, of jobs so small that everything can be tried. */
const effort = (): Effort => new Effort(Infinity);
describe('boards that may be ripped, of pieces without end', () => {
    /** What the best content of a board is worth, by trying what is cut off first; and of so much of it that is cut across. */
    function bestOf({ items, boards, strips, shortestSection = Infinity }: CuttingProblem, values: readonly number[], board: number) {
        const { capacity, across, ripOnly } = boards[board]!;
        const known = new Map<string, number>();
        const once = (key: string, make: () => number): number => { if (!known.has(key)) known.set(key, make()); return known.get(key)!; };
        const inLane = (lane: number, length: number): number => once(`lane ${lane} ${length}`, () => Math.max(0, ...items.flatMap(({ size, lanes }, i) =>
            (lanes.includes(lane) && size <= length ? [values[i]! + inLane(lane, length - size)] : []))));
        const abreast = (length: number, width: number): number => once(`abreast ${length} ${width}`, () => Math.max(0, ...strips.flatMap((own, i) =>
            (own <= width ? [inLane(i + 1, length) + abreast(length, width - own)] : []))));
        const cutAcross = (length: number): number => once(`across ${length}`, () => Math.max(0,
            ...items.flatMap(({ size, lanes }, i) => (!ripOnly && lanes.includes(0) && size <= length ? [values[i]! + cutAcross(length - size)] : [])),
            ...Array.from({ length }, (_, i) => i + 1).filter(size => size >= shortestSection).map(size => abreast(size, across) + cutAcross(length - size))));
        return { whole: Math.max(abreast(capacity, across), cutAcross(capacity)), cutAcross };
    }
    test('the tables say what the best content is worth, and tell one that is worth it', () => {
        fc.assert(fc.property(ripped, worths, (some, values) => {
            const problem = { ...some, items: some.items.map(item => ({ ...item, count: 999 })) };
            const tables = new SectionTables(problem, problem.items.map(() => 999), effort());
            const best = problem.boards.map((_, board) => bestOf(problem, values, board)), wanted = best.map(({ whole }) => whole);
            expect([tables.isExact, tables.isSmall]).toEqual([true, true]);
            expect(tables.worth(values, 'at most')).toEqual(wanted);
            expect(tables.worth(values, 'cut')).toEqual(wanted);
            problem.boards.forEach(({ capacity }, board) => {
                const lengths = Array.from({ length: capacity + 1 }, (_, length) => length), family = tables.family(board);
                expect(lengths.map(length => family.worthCut(length))).toEqual(lengths.map(best[board]!.cutAcross));
            });
            for (const how of ['as wanted', 'too often'] as const) problem.boards.forEach((_, board) => {
                const cut = tables.content(board, how), picks = picksOf(cut), counts = new Map(picks);
                expect(picks.reduce((sum, [item, count]) => sum + values[item]! * count, 0)).toBe(wanted[board]);
                const own = { ...problem, items: problem.items.map((item, i) => ({ ...item, count: counts.get(i) ?? 0 })) };
                expect(faultOf(own, [{ ...cut, times: 1 }])).toBeUndefined();
            });
        }), { seed: 80, numRuns: runs(900) });
    });
    test('of pieces that are few no content is worth more than the tables say, and what they tell is cut no more often than it is wanted', () => {
        fc.assert(fc.property(ripped, worths, (problem, values) => {
            const tables = new SectionTables(problem, problem.items.map(({ count }) => count), effort());
            const worth = tables.worth(values, 'cut');
            problem.boards.forEach((_, board) => {
                const cut = tables.content(board), picks = picksOf(cut), counts = new Map(picks);
                for (const [item, count] of picks) expect(count).toBeLessThanOrEqual(problem.items[item]!.count);
                expect(picks.reduce((sum, [item, count]) => sum + values[item]! * count, 0)).toBeLessThanOrEqual(worth[board]!);
                const own = { ...problem, items: problem.items.map((item, i) => ({ ...item, count: counts.get(i) ?? 0 })) };
                expect(faultOf(own, [{ ...cut, times: 1 }])).toBeUndefined();
            });
        }), { seed: 81, numRuns: runs(900) });
    });
});

describe('ways to cut that are worth more than their board', () => {
    test('are found where there are any, by search and by tables', () => {
        fc.assert(fc.property(plain, worths, fc.array(from(-5, 40), { minLength: 3, maxLength: 3 }), (problem, values, prices) => {
            fc.pre(problem.items.some(({ size }) => problem.boards.some(({ capacity }) => size <= capacity)));
            const { items } = problem, counts = items.map(({ count }) => count), usable = problem.boards.map((_, k) => k !== 1);
            const pricing = new Pricing(problem, counts, effort());
            const worth = problem.boards.map(({ capacity }) => {
                const fill = (i: number, room: number): number => (i === items.length ? 0 : Math.max(...Array.from({ length: 1 + counts[i]! }, (_, n) =>
                    (n * items[i]!.size <= room ? n * values[i]! + fill(i + 1, room - n * items[i]!.size) : 0))));
                return fill(0, capacity);
            });
            const asked = { items: values, boards: prices.slice(0, problem.boards.length), sections: [] };
            const above = asked.boards.map(price => Math.max(0, price));
            const { columns, worth: found, exact } = pricing.offer(asked, usable, 1, 1e6, 5), tables = pricing.offerByTables(asked, usable)!;
            expect(exact).toBe(true);
            expect(found).toEqual(worth.map((value, k) => (usable[k] ? Math.max(value, above[k]!) : 0)));
            expect(tables.worth).toEqual(worth.map((value, k) => (usable[k] ? value : 0)));
            expect(pricing.worthOfBoards(values)).toEqual(worth);
            const dear = ({ gives }: (typeof columns)[number]): number => gives.reduce((sum, [item, count]) => sum + values[item]! * count, 0);
            for (const column of columns) {
                const { board, gives, strips } = column;
                expect(usable[board] && dear(column) > above[board]!).toBe(true);
                expect(strips).toEqual([{ lane: 0, picks: gives }]);
            }
            const best = (all: typeof columns, k: number): number[] => all.filter(({ board }) => board === k).map(dear);
            problem.boards.forEach((_, k) => {
                expect(best(columns, k).length > 0).toBe(usable[k] === true && worth[k]! > above[k]!);
                if (best(columns, k).length > 0) expect(Math.max(...best(columns, k))).toBe(worth[k]);
                expect(best(tables.columns, k)).toEqual(usable[k] && worth[k]! > asked.boards[k]! ? [worth[k]] : []);
            });
        }), { seed: 82, numRuns: runs(600) });
    });
});

describe('a solution in parts', () => {
    test('costs no more than any plan, and no plan less than its bound', () => {
        fc.assert(fc.property(fc.oneof(plain, ripped), problem => {
            const { start, cost, least } = begun(problem), demand = problem.items.map(({ count }) => count), counts = allCounts(problem, cost);
            const master = new Master(problem, demand, counts, solver, effort()), hair = 1e-6 * Math.max(1, cost);
            for (const column of columnsOf(start)) expect([master.add(column), master.add(column)]).toEqual([true, false]);
            const { answer, bound, complete, values } = generate(problem, demand, master, new Pricing(problem, demand, effort()), counts, effort())!;
            expect([complete, answer.lacking]).toEqual([true, false]);
            expect(answer.objective).toBeLessThanOrEqual(least + hair);
            expect(bound).toBeLessThanOrEqual(least + hair);
            expect(new VerifiedBound(problem, cost, costStep(problem), effort()).of(values, counts)).toBeLessThanOrEqual(least);
            // where nothing is ripped both are the same
            if (problem.strips.length === 0) expect(Math.abs(bound - answer.objective)).toBeLessThanOrEqual(10 * hair);
            for (const [item, wanted] of demand.entries()) {
                const cut = answer.used.reduce((sum, { column: { gives }, times }) => sum + times * (gives.find(([i]) => i === item)?.[1] ?? 0), 0);
                expect(cut).toBeGreaterThanOrEqual(wanted - 1e-6);
            }
            const paid = answer.used.reduce((sum, { column: { board }, times }) => sum + times * problem.boards[board]!.cost, 0);
            expect(paid).toBeLessThanOrEqual(answer.objective + hair);
            // from nothing it comes to the same
            const bare = new Master(problem, demand, counts, solver, effort());
            const again = generate(problem, demand, bare, new Pricing(problem, demand, effort()), counts, effort())!;
            expect([again.complete, again.answer.lacking, Math.abs(again.answer.objective - answer.objective) <= 10 * hair]).toEqual([true, false, true]);
            bare.dispose();
            // and plans are dived for from it: sound ones, cheaper than was asked for
            const free = problem.boards.map(({ available }) => available ?? Infinity);
            const parts = { used: answer.used, columns: master.allColumns(), values: answer.prices.items };
            for (const variant of [0, 1, 5]) {
                const dived = dive(problem, parts, solver, effort(), { free, below: cost + 1, target: least, variant });
                if (dived) expect(checkLayouts(problem, dived)).toBeLessThan(cost + 1);
                expect(dive(problem, parts, solver, effort(), { free, below: least, target: 0, variant })).toBeUndefined();
            }
            master.dispose();
        }), { seed: 83, numRuns: runs(300) });
    });
});

test('a piece that comes out of no board is said to be lacking', () => {
    const boards = [{ capacity: 20, cost: 9, available: null, across: 1 }], item = (size: number) => ({ size, count: 2, lanes: [0] });
    const problem: CuttingProblem = { items: [item(10), item(21)], boards, strips: [] }, demand = [2, 2], counts = allCounts(problem, 1000);
    const master = new Master(problem, demand, counts, solver, effort());
    expect(generate(problem, demand, master, new Pricing(problem, demand, effort()), counts, effort())!.answer.lacking).toBe(true);
    master.dispose();
});

test('boards that have to be bought and are not needed are counted, and nothing is lacking for them', () => {
    const boards = [{ capacity: 20, cost: 9, available: null, across: 1 }];
    const problem: CuttingProblem = { items: [{ size: 10, count: 2, lanes: [0] }], boards, strips: [] };
    const counts = { least: [3], most: [9] }, master = new Master(problem, [2], counts, solver, effort());
    const { answer } = generate(problem, [2], master, new Pricing(problem, [2], effort()), counts, effort())!;
    expect([answer.lacking, answer.boards.map(count => Math.round(count * 1e6) / 1e6), Math.round(answer.objective * 1e6) / 1e6]).toEqual([false, [3], 27]);
    master.dispose();
});

describe('programs of whole numbers', () => {
    test('out of all ways to cut a board the cheapest plan is picked, or it is said that there is none', () => {
        fc.assert(fc.property(plain, problem => {
            const { cost, least } = begun(problem), step = costStep(problem);
            const prices = { items: problem.items.map(() => 1), boards: problem.boards.map(() => 0), sections: [] };
            const columns = columnsWithin(problem, prices, problem.boards.map(() => true), 1e6, 1e5, effort())!;
            const pick = (dearest: number) => pickPlan(problem, columns, allCounts(problem, dearest), dearest, solver, effort(), { nodes: 1000, step });
            const { layouts, finished } = pick(cost);
            expect([checkLayouts(problem, layouts!), finished]).toEqual([least, true]);
            if (least > 0) expect(pick(least - step)).toEqual({ finished: true });
        }), { seed: 84, numRuns: runs(150) });
    });
    test('as a flow too, of boards that are ripped or not', () => {
        fc.assert(fc.property(fc.oneof(plain, ripped), fc.boolean(), (problem, isValued) => {
            const { cost, least } = begun(problem), step = costStep(problem), values = problem.items.map(({ size }) => (isValued ? size / 20 : 0));
            const prices = { items: values, boards: [], sections: [] };
            const flow = (dearest: number, arcs = 20_000) =>
                planByFlow(problem, prices, allCounts(problem, dearest), dearest, step, solver, effort(), { arcs, nodes: 1000 });
            const { layouts, finished } = flow(cost), cheaper = flow(least - step);
            expect(finished).toBe(true);
            expect(checkLayouts(problem, layouts!)).toBe(least);
            expect(cheaper.layouts).toBeUndefined();
            // where no board is as cheap there is no program, and nothing is said
            if (!isValued && problem.boards.some(board => board.cost <= least - step)) expect(cheaper.finished).toBe(true);
            expect(flow(cost, 0)).toEqual({ finished: false });
        }), { seed: 85, numRuns: runs(150) });
    });
});

/**
 * The program as a flow of boards of 10, which has no more in it than a plan so cheap can hold: every piece worth what it is long, no board may lose
 * any. Cut to length: over 6, 5, 5 again, 4, and 4 behind 6, that is five arcs, and with a cut at 5, 6 and 10 three over nothing; one column for the
 * board. Ripped: one arc over the section and one over nothing; on its strips 6, 4, and 4 behind 6, and with a cut at 6 and 10 two over nothing; one
 * for the board, and one for the two strips abreast. Nine columns each.
 */
test.each<[string, CuttingProblem]>([
    ['cut to length', {
        items: [6, 4, 5].map((size, i) => ({ size, count: i < 2 ? 1 : 2, lanes: [0] })), boards: [{ capacity: 10, cost: 10, available: null, across: 1 }],
        strips: [],
    }],
    ['ripped', { items: [6, 4].map(size => ({ size, count: 2, lanes: [1] })), boards: [{ capacity: 10, cost: 20, available: null, across: 10 }], strips: [5] }],
    ['ripped, of which a section may be as long', { items: [6, 4].map(size => ({ size, count: 2, lanes: [1] })), boards: [{ capacity: 10, cost: 20, available: null, across: 10 }], strips: [5], shortestSection: 10 }],
    // one that costs more than all of the plan may is in none
    ['cut to length, beside dearer ones as long', {
        items: [6, 4, 5].map((size, i) => ({ size, count: i < 2 ? 1 : 2, lanes: [0] })), strips: [],
        boards: [10, 30].map(cost => ({ capacity: 10, cost, available: null, across: 1 })),
    }],
])('nothing is in the program as a flow that no plan can hold: boards that are %s', (_, problem) => {
    const prices = { items: problem.items.map(({ size }) => size), boards: [], sections: [] };
    const flow = (arcs: number) => planByFlow(problem, prices, allCounts(problem, 20), 20, costStep(problem), solver, effort(), { arcs, nodes: 100 });
    expect(checkLayouts(problem, flow(9).layouts!)).toBe(20);
    expect([flow(9).finished, flow(8)]).toEqual([true, { finished: false }]);
});

describe('the whole problem as boards, sections and strips, each listed', () => {
    test.each(['nothing', 'something'])('it finds the cheapest plan, and that none is cheaper; pieces are worth %s', worth => {
        const isValued = worth === 'something';
        let strips = 0, sections = 0;
        fc.assert(fc.property(ripped, problem => {
            const { cost, least } = begun(problem), step = costStep(problem), values = problem.items.map(({ size }) => (isValued ? size / 20 : 0));
            const patterns = (dearest: number, cheapest = 0, most = 20_000) => planByPatterns(
                problem, values, allCounts(problem, dearest), { cheapest, dearest }, step, solver, effort(), { most, nodes: 1000 });
            for (const cheapest of [0, least]) {
                const { layouts, finished } = patterns(cost, cheapest);
                expect(finished).toBe(true);
                expect(checkLayouts(problem, layouts!)).toBe(least);
                if (layouts!.some(layout => layout.sections)) sections++;
                else if (layouts!.some(layout => layout.strips.some(({ lane }) => lane > 0))) strips++;
            }
            const cheaper = patterns(least - step);
            expect(cheaper.layouts).toBeUndefined();
            if (!isValued && problem.boards.some(board => board.cost <= least - step)) expect(cheaper.finished).toBe(true);
            expect(patterns(cost, 0, 0)).toEqual({ finished: false });
        }), { seed: 87, numRuns: runs(150) });
        expect([strips > 0, sections > 0]).toEqual([true, true]);
    });
});

describe('what is known of a problem that is like it', () => {
    test('ways to cut become such of the other: sound, and of pieces that it has', () => {
        let same = 0;
        fc.assert(fc.property(ripped, fc.array(fc.nat(3), { minLength: 4, maxLength: 4 }), fc.boolean(), (problem, counts, isCut) => {
            const { start } = begun(problem);
            const items = problem.items.map((item, i) => ({ ...item, count: counts[i]! })).filter(({ count }) => count > 0);
            const { shortestSection: _, ...others } = problem;
            const like: CuttingProblem = { ...(isCut ? problem : others), items };
            for (const { gives, ...column } of columnsFor(like, problem, columnsOf(start))) {
                expect(gives.length).toBeGreaterThan(0);
                const wanted = new Map(gives), own = { ...like, items: items.map((item, i) => ({ ...item, count: wanted.get(i) ?? 0 })) };
                expect(faultOf(own, [{ ...column, times: 1 }])).toBeUndefined();
            }
            expect(columnsFor(problem, problem, columnsOf(start)).length).toBe(start.length);
            same += start.length;
            const [first, ...rest] = problem.boards;
            expect(columnsFor({ ...problem, boards: [{ ...first!, cost: first!.cost + 1 }, ...rest] }, problem, columnsOf(start))).toEqual([]);
            expect(columnsFor({ ...problem, strips: [7, 8, 9] }, problem, columnsOf(start))).toEqual([]);
        }), { seed: 88, numRuns: runs(200) });
        expect(same).toBeGreaterThan(0);
    });
});

describe('board after board', () => {
    test('a plan is sound and cheaper than was asked for; where a piece fits nowhere there is none', () => {
        fc.assert(fc.property(fc.oneof(plain, ripped), problem => {
            const { least } = begun(problem), demand = problem.items.map(({ count }) => count);
            const free = problem.boards.map(({ available }) => available ?? Infinity);
            const values = problem.items.map(({ size }) => size), how = { rounds: 4, budget: 1000 };
            const plan = sequentialPlan(problem, demand, free, values, effort(), how);
            if (plan) expect(checkLayouts(problem, plan)).toBeGreaterThanOrEqual(least);
            expect(sequentialPlan(problem, demand, free, values, effort(), { ...how, below: least })).toBeUndefined();
            expect(sequentialPlan(problem, demand, free.map(() => 0), values, effort(), how)).toBeUndefined();
            // a plan that is cheap enough ends it: the first one
            const first = sequentialPlan(problem, demand, free, values, effort(), { ...how, rounds: 1 });
            expect(sequentialPlan(problem, demand, free, values, effort(), { ...how, target: 1e9 })).toEqual(first);
        }), { seed: 86, numRuns: runs(300) });
    });
});

test('boards of which nothing that is wanted can be ripped are left out', () => {
    const problem: CuttingProblem = {
        items: [{ size: 4, count: 3, lanes: [0] }], strips: [6, 2], boards: [
            { capacity: 10, cost: 34, available: 1, across: 5, ripOnly: true }, { capacity: 12, cost: 2, available: null, across: 6, ripOnly: true },
            { capacity: 9, cost: 30, available: null, across: 7 },
        ],
    };
    const { cost, bound } = proved(problem, 2e7);
    expect([cost, bound]).toEqual([60, 60]);
});

describe('the board that comes next', () => {
    const next = (boards: CuttingProblem['boards'], count: number): Layout[] | undefined => {
        const free = boards.map(({ available }) => available ?? Infinity), items = [{ size: 10, count, lanes: [0] }];
        return sequentialPlan({ items, boards, strips: [] }, [count], free, [10], effort(), { rounds: 1, budget: 1000 });
    };
    const board = (capacity: number, cost: number, available: number | null = null) => ({ capacity, cost, available, across: 1 });
    const used = (plan: Layout[] | undefined): number[][] | undefined =>
        plan?.map(({ board: kind, times, strips: [strip] }) => [kind, times, strip!.picks[0]![1]]);
    test('is that whose content is worth most for its price', () => {
        // one for 9, or two of them for 5
        expect(used(next([board(10, 9), board(20, 5)], 2))).toEqual([[1, 1, 2]]);
        expect(used(next([board(10, 3), board(20, 9)], 2))).toEqual([[0, 2, 1]]);
    });
    test('costs nothing, if there is one, and of those that is best used', () => {
        expect(used(next([board(30, 0, 1), board(12, 0, 1), board(10, 1)], 1))).toEqual([[1, 1, 1]]);
        expect(used(next([board(10, 1), board(30, 0, 1), board(12, 0, 1)], 2))).toEqual([[2, 1, 1], [1, 1, 1]]);
    });
});

test('where the boards that are long enough for some pieces are few, there is a plan all the same', () => {
    const board = (capacity: number, cost: number, available: number | null = null) => ({ capacity, cost, available, across: 1 });
    const items = (...counts: readonly (readonly [size: number, count: number])[]) => counts.map(([size, count]) => ({ size, count, lanes: [0] }));
    const few = { items: items([15, 2], [14, 2], [11, 2], [5, 2]), boards: [board(17, 13, 2), board(14, 21), board(10, 36), board(11, 18, 2)], strips: [] };
    expect(checkLayouts(few, quick(few))).toBeGreaterThanOrEqual(leastCost(few));
    const one = { items: items([17, 2], [10, 2], [6, 1], [1, 3]), boards: [board(23, 19, 2), board(11, 40), board(12, 23), board(13, 34)], strips: [] };
    expect(checkLayouts(one, quick(one))).toBeGreaterThanOrEqual(leastCost(one));
});

describe('a plan of which some boards are planned anew', () => {
    test.each([['boards cut to length', plain], ['boards that are ripped', ripped]])('%s: it is sound, and never dearer', (_, jobs) => {
        fc.assert(fc.property(jobs, worths, (problem, worth) => {
            const start = sequentialPlan(problem, problem.items.map(({ count }) => count), problem.boards.map(kind => kind.available ?? Infinity),
                problem.items.map(({ size }) => size), effort(), { rounds: 1, budget: 1 });
            fc.pre(start !== undefined);
            const anew = plannedAnew(problem, start!, problem.items.map(({ size }, i) => size + worth[i]!), effort(), 20_000);
            expect(checkLayouts(problem, anew)).toBeLessThanOrEqual(costOfLayouts(problem, start!));
        }), { seed: 11, numRuns: runs(400) });
    });

    test('is cheaper where boards that are badly used can be cut together', () => {
        // six of half a board and six of a quarter, each on a board of its own: five boards hold them
        const problem: CuttingProblem = {
            items: [{ size: 50, count: 6, lanes: [0] }, { size: 25, count: 6, lanes: [0] }],
            boards: [{ capacity: 100, cost: 7, available: null, across: 1 }], strips: [],
        };
        const alone = [0, 1].map((item): Layout => ({ board: 0, times: 6, strips: [{ lane: 0, picks: [[item, 1]] }] }));
        expect(costOfLayouts(problem, plannedAnew(problem, alone, [50, 25], effort(), 50_000))).toBe(35);
    });

    // 20 boards that are full of four quarters, and eight with a fifth each: a handful of eight holds the four worst and some from all over the plan,
    // which are a fifth more, since there are eight, and three full ones. The five fifths fill one board, so four boards at 7 are saved
    test('the boards that cost most for what is on them come first', () => {
        const problem: CuttingProblem = {
            items: [{ size: 25, count: 80, lanes: [0] }, { size: 20, count: 8, lanes: [0] }],
            boards: [{ capacity: 100, cost: 7, available: null, across: 1 }], strips: [],
        };
        const all = [[20, 0, 4], [8, 1, 1]] as const;
        const plan = all.map(([times, item, count]): Layout => ({ board: 0, times, strips: [{ lane: 0, picks: [[item, count]] }] }));
        const afterSteps = (steps: number): number => costOfLayouts(problem, plannedAnew(problem, plan, [25, 20], effort(), steps)) / 7;
        expect([afterSteps(0), afterSteps(1)]).toEqual([28, 24]);
        expect(plannedAnew(problem, plan, [25, 20], effort(), 0)).toEqual(plan);
    });
});

describe('a program of whole numbers', () => {
    // as many wanted of each kind of thing, in packs of all kinds: more ways than can be gone through soon
    const rows = Array.from({ length: 12 }, (_, r) => ({ least: 40 + 7 * r, most: Infinity }));
    const columns = Array.from({ length: 300 }, (_, j) => ({
        cost: 100 + j * 37 % 61, most: 50,
        entries: rows.flatMap((_, r): [number, number][] => ((j * 31 + r * 17) % 5 < 2 ? [[r, 1 + (j * 7 + r * 3) % 4]] : [])),
    }));
    const ask = (work: number) => solver.wholeNumbers(rows, columns, { nodes: 100_000, step: 1, work });

    test('ends soon after it has taken as many steps as it may, and says so', () => {
        const { finished, work } = ask(150_000);
        expect(finished).toBe(false);
        expect(work).toBeGreaterThan(100_000);
        expect(work).toBeLessThan(600_000);
        expect(ask(150_000)).toEqual(ask(150_000));
        expect(ask(2_000_000).work).toBeGreaterThan(work);
    });

    test('is not begun where that would take more', () => {
        expect(ask(10_000)).toEqual({ finished: false, work: 0 });
    });
});
