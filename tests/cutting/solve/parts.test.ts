import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Abreast } from '../../../src/cutting/solve/abreast.ts';
import { allCounts, VerifiedBound } from '../../../src/cutting/solve/bound.ts';
import { coarsened } from '../../../src/cutting/solve/coarse.ts';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import { columnsWithin } from '../../../src/cutting/solve/enumerate.ts';
import { Knapsack } from '../../../src/cutting/solve/knapsack.ts';
import { cheapestFor, faultOf, gathered, lengthNeeded, picksOf, roomOf, sectionLengths, sectionsFrom, tidied, trimmed, wantedOf } from '../../../src/cutting/solve/layouts.ts';
import { MasterRows } from '../../../src/cutting/solve/master.ts';
import { costStep, pieceCount, widthShares, type Cut, type CuttingProblem, type Layout, type Picks } from '../../../src/cutting/solve/problem.ts';
import { rippingsOf } from '../../../src/cutting/solve/rippings.ts';
import { lotsOf, Table } from '../../../src/cutting/solve/table.ts';
import { runs } from '../../support/full.ts';
import { leastCost } from './exhaustive.ts';

/** What the search is put together from, each part against trying everything, or against a case worked by hand. */
const effort = (): Effort => new Effort(Infinity);

interface Wanted { readonly size: number; readonly count: number; readonly value: number }
const from = (min: number, max: number) => fc.integer({ min, max });
const wanted = fc.array(fc.record({ size: from(1, 12), count: from(0, 3), value: fc.nat(20) }), { minLength: 1, maxLength: 4 });
const columnOf = <K extends keyof Wanted>(items: readonly Wanted[], key: K): number[] => items.map(item => item[key]);

/** All contents of a length: how many of each item. */
function contents(items: readonly Pick<Wanted, 'size' | 'count'>[], capacity: number): number[][] {
    const [item, ...others] = items;
    if (!item) return [[]];
    const most = Math.min(item.count, Math.floor(capacity / item.size));
    return Array.from({ length: 1 + most }, (_, n) => contents(others, capacity - n * item.size).map(counts => [n, ...counts])).flat();
}
const worthOf = (items: readonly Wanted[], counts: readonly number[]): number => counts.reduce((sum, count, i) => sum + count * items[i]!.value, 0);
const bestOf = (items: readonly Wanted[], capacity: number): number => Math.max(...contents(items, capacity).map(counts => worthOf(items, counts)));

function isContent(items: readonly Wanted[], picks: Picks, capacity: number): void {
    expect(picks.reduce((sum, [item, count]) => sum + items[item]!.size * count, 0)).toBeLessThanOrEqual(capacity);
    for (const [item, count] of picks) expect(count > 0 && count <= items[item]!.count).toBe(true);
    expect(new Set(picks.map(([item]) => item)).size).toBe(picks.length);
}
const worthOfPicks = (items: readonly Wanted[], picks: Picks): number => picks.reduce((sum, [item, count]) => sum + items[item]!.value * count, 0);

describe('what a board holds at best', () => {
    test('by search: nothing is worth more, what is told is worth it, and only what is asked about is used', () => {
        fc.assert(fc.property(wanted, fc.nat(30), fc.nat(40), fc.integer({ min: 1, max: 3 }), (items, capacity, above, keep) => {
            const among = items.flatMap((_, i) => (i === 1 ? [] : [i])), usable = items.map((item, i) => (i === 1 ? { ...item, count: 0 } : item));
            const knapsack = new Knapsack(columnOf(items, 'size'), effort(), 0);
            knapsack.worth(columnOf(items, 'value'), among);
            const { value, picks, exact } = knapsack.fill(capacity, columnOf(items, 'count'), above, 1e6, keep), best = bestOf(usable, capacity);
            expect([value, exact]).toEqual([Math.max(best, above), true]);
            expect(picks.length > 0).toBe(best > above);
            expect(picks.length).toBeLessThanOrEqual(keep);
            picks.forEach(each => isContent(usable, each, capacity));
            const worths = picks.map(each => worthOfPicks(items, each));
            expect(worths).toEqual([...new Set(worths)].sort((a, b) => a - b));
            if (picks.length > 0) expect([worths.at(-1), worths[0]! > above]).toEqual([best, true]);
        }), { seed: 70, numRuns: runs(2000) });
    });
    test('a search that is given up says so, and what it has found is a content', () => {
        const items = [{ size: 5, count: 9, value: 11 }, { size: 3, count: 9, value: 6 }, { size: 7, count: 9, value: 15 }];
        const knapsack = new Knapsack([5, 3, 7], effort(), 0);
        knapsack.worth([11, 6, 15], [0, 1, 2]);
        const { exact, picks: [found], value } = knapsack.fill(58, [9, 9, 9], 0, 2);
        expect(exact).toBe(false);
        isContent(items, found!, 58);
        expect(worthOfPicks(items, found!)).toBe(value);
        // one node is the empty board
        expect(knapsack.fill(2, [9, 9, 9], 0, 1).exact).toBe(true);
    });
    test('by a table: of every length, and the content that is worth it', () => {
        fc.assert(fc.property(wanted, fc.nat(24), (items, capacity) => {
            const table = new Table(columnOf(items, 'size'), columnOf(items, 'count'), items.map((_, i) => i), capacity, effort()), values = columnOf(items, 'value');
            const all = Array.from({ length: capacity + 1 }, (_, room) => bestOf(items, room));
            expect([...table.fill(values, false)]).toEqual(all);
            // once more with other worth, and back: nothing of what it held is left
            table.fill(values.map(value => 20 - value), true);
            expect([...table.fill(values, true)]).toEqual(all);
            for (let room = 0; room <= capacity; room++) {
                const picks = table.picksAt(room);
                isContent(items, picks, room);
                expect(worthOfPicks(items, picks)).toBe(all[room]);
            }
        }), { seed: 71, numRuns: runs(600) });
    });
    test('lots of 1, 2, 4 and the rest make every number up to what there is, and no more', () => {
        expect(lotsOf(3, 5, 11)).toEqual([[1, 5], [2, 10], [4, 20], [4, 20]].map(([count, size]) => ({ item: 3, count, size })));
        expect(lotsOf(3, 5, 0)).toEqual([]);
    });
    test('all contents that nothing could be added to and that are worth so much', () => {
        fc.assert(fc.property(wanted, from(1, 20), from(1, 20), fc.nat(40), fc.nat(30), (items, capacity, other, price, gap) => {
            const problem: CuttingProblem = {
                items: [...items.map(({ size, count }) => ({ size, count, lanes: [0] })), { size: 1, count: 5, lanes: [1] }], strips: [1],
                boards: [capacity, other, 99].map(each => ({ capacity: each, cost: 1, available: null, across: 1 })),
            };
            const prices = { items: [...columnOf(items, 'value'), 9], boards: [price, price + 3, 0], sections: [] };
            const found = columnsWithin(problem, prices, [true, true, false], gap, 1e5, effort())!;
            const wantedOn = (board: number, room: number): string[] => contents(items, room).filter(counts => {
                const left = room - counts.reduce((sum, count, i) => sum + count * items[i]!.size, 0);
                return counts.some(count => count > 0) && worthOf(items, counts) >= prices.boards[board]! - gap
                    && items.every(({ size, count }, i) => counts[i] === count || size > left);
            }).map(counts => `${board}: ${counts.flatMap((count, i) => (count > 0 ? [`${i}x${count}`] : [])).join(' ')}`).sort();
            const told = found.map(({ board, gives, strips }) => {
                expect(strips).toEqual([{ lane: 0, picks: gives }]);
                return `${board}: ${gives.map(([item, count]) => `${item}x${count}`).join(' ')}`;
            }).sort();
            expect(told).toEqual([...wantedOn(0, capacity), ...wantedOn(1, other)].sort());
            if (found.length > 0) expect(columnsWithin(problem, prices, [true, true, false], gap, found.length - 1, effort())).toBeUndefined();
        }), { seed: 72, numRuns: runs(900) });
    });
    test('strips abreast: no more than so many times the best one, and no more than all of it in one', () => {
        fc.assert(fc.property(wanted, fc.uniqueArray(from(1, 14), { minLength: 1, maxLength: 3 }), from(1, 3), (items, lengths, most) => {
            const places = lengths.sort((a, b) => a - b), strip = Float64Array.from({ length: 15 }, (_, room) => bestOf(items, room));
            const abreast = new Abreast(columnOf(items, 'size'), columnOf(items, 'count'), items.map((_, i) => i), places, most, effort());
            abreast.fill(columnOf(items, 'value'), strip);
            places.forEach((length, p) => {
                const inOne = (n: number): number => bestOf(items.filter(({ size }) => size <= length), n * length);
                for (let n = 1; n <= most; n++) expect(abreast.at(n, p)).toBe(Math.min(n * strip[length]!, inOne(n)));
            });
        }), { seed: 73, numRuns: runs(600) });
    });
});

test('every way to rip a width to which nothing could be added', () => {
    fc.assert(fc.property(fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 1, maxLength: 3 }), fc.nat(16), fc.boolean(), (strips, across, all) => {
        const lanes = strips.map((_, i) => i + 1).filter(lane => all || lane !== 2);
        const items = strips.map((size, i) => ({ size, count: lanes.includes(i + 1) ? 16 : 0 }));
        const maximal = contents(items, across).filter(counts => {
            const left = across - counts.reduce((sum, count, i) => sum + count * strips[i]!, 0);
            return counts.some(count => count > 0) && lanes.every(lane => strips[lane - 1]! > left);
        });
        const found = rippingsOf(strips, lanes, across, 1000)!;
        expect(found.map(String).sort()).toEqual(maximal.map(String).sort());
        if (found.length > 1) expect(rippingsOf(strips, lanes, across, found.length - 1)).toBeUndefined();
    }), { seed: 74, numRuns: runs(900) });
});

/** Boards of 30 and 20, one offcut of 12 for nothing, and a sheet on hand that is only ripped; strips of 3 and 5 of 10; pieces of 10, 6 and 4. */
const shop: CuttingProblem = {
    items: [{ size: 10, count: 3, lanes: [0] }, { size: 6, count: 4, lanes: [1] }, { size: 4, count: 6, lanes: [0, 2] }],
    boards: [
        { capacity: 30, cost: 9, available: null, across: 10 }, { capacity: 20, cost: 7, available: 2, across: 10 },
        { capacity: 12, cost: 0, available: 1, across: 10 }, { capacity: 30, cost: 5, available: 1, across: 10, ripOnly: true },
    ],
    strips: [3, 5], shortestSection: 8,
};
const whole = (...picks: [number, number][]) => ({ lane: 0, picks }), strip = (lane: number, section: number | undefined, ...picks: [number, number][]) =>
    ({ lane, picks, ...section !== undefined && { section } });

describe('plans', () => {
    const sound: Layout[] = [
        { board: 0, times: 1, sections: [8], strips: [whole([0, 2]), strip(1, 0, [1, 1]), strip(2, 0, [2, 2])] },
        { board: 3, times: 1, strips: [strip(1, undefined, [1, 3]), strip(2, undefined, [2, 4])] },
        { board: 2, times: 1, strips: [whole([0, 1])] },
    ];
    test('a sound one has no fault', () => {
        expect(faultOf(shop, sound)).toBeUndefined();
        expect(pieceCount(shop)).toBe(13);
    });
    test.each<[string, (plan: Layout[]) => Layout[]]>([
        ['board kind 7 x 1', plan => [...plan, { board: 7, times: 1, strips: [] }]], ['board kind 0 x 0', plan => plan.with(0, { ...plan[0]!, times: 0 })],
        ['a whole board in several strips', plan => plan.with(2, { ...plan[2]!, strips: [whole([0, 1]), whole()] })],
        ['the whole width of a board of which nothing is cut in its whole width', plan => plan.with(2, { ...plan[2]!, board: 3 })],
        ['a board ripped over its whole length and cut across', plan => plan.with(0, { ...plan[0]!, strips: [...plan[0]!.strips, strip(1, undefined, [1, 1])] })],
        ['a board ripped over its whole length and cut across', plan => plan.with(1, { ...plan[1]!, board: 0, strips: [...plan[1]!.strips, whole()] })],
        ['more than the board is long', plan => plan.with(0, { ...plan[0]!, sections: [11] })], ['more than the board is long', plan => plan.with(1, { ...plan[1]!, board: 2 })],
        ['a section too short to be ripped', plan => plan.with(0, { ...plan[0]!, sections: [7] })],
        ['strips too wide for the board', plan => plan.with(1, { ...plan[1]!, strips: [...plan[1]!.strips, strip(1, undefined)] })],
        ['strips too wide for the board', plan => plan.with(0, { ...plan[0]!, strips: [...plan[0]!.strips, strip(1, 0)] })],
        ['a strip too long for its section', plan => plan.with(0, { ...plan[0]!, strips: [whole([0, 2]), strip(1, 0, [1, 1]), strip(2, 0, [2, 3])] })],
        ['item 0 in lane 1', plan => plan.with(1, { ...plan[1]!, strips: [strip(1, undefined, [0, 1])] })],
        ['10 of 13 pieces, or not each once', plan => plan.toSpliced(2, 1).with(0, { ...plan[0]!, sections: [8], strips: [whole([0, 2]), strip(2, 0, [2, 1])] })],
        ['13 of 13 pieces, or not each once', plan => plan.with(0, { ...plan[0]!, strips: [whole([0, 2]), strip(2, 0, [2, 2])] }).with(1, { ...plan[1]!, strips: [strip(1, undefined, [1, 5]), strip(2, undefined, [2, 3])] })],
        ['more boards than there are', plan => [...plan.toSpliced(2, 1).with(0, { ...plan[0]!, strips: plan[0]!.strips.slice(1) }), { board: 2, times: 3, strips: [whole([0, 1])] }]],
    ])('%s', (fault, spoiled) => {
        expect(faultOf(shop, spoiled(sound))).toBe(fault);
    });
    test('how long a board has to be, and what room there is on it', () => {
        const [first, second] = sound;
        expect([lengthNeeded(shop, first!), lengthNeeded(shop, second!), lengthNeeded(shop, { strips: [], sections: [8, 9] })]).toEqual([28, 18, 17]);
        const room = (cut: Layout, nth: number): number => roomOf(shop, cut, cut.strips[nth]!);
        expect([room(first!, 0), room(first!, 1), room(second!, 0)]).toEqual([22, 8, 30]);
        expect(roomOf(shop, { board: 0, strips: [], sections: [8] }, { lane: 1, picks: [] })).toBe(30);
    });
    test('its sections, and how many of them are so long: one that is ripped over its whole length is one', () => {
        const [first, second, third] = sound, two = { strips: [], sections: [12, 9] };
        // 18 long, since three of 6 are; of one of 4 as long as may be ripped
        const all = [first!, second!, third!, two, { strips: [strip(2, undefined, [2, 1])] }];
        expect(all.map(cut => sectionLengths(shop, cut))).toEqual([[8], [18], [], [12, 9], [8]]);
        expect([8, 9, 10, 12, 13].map(from => sectionsFrom(shop, two, from))).toEqual([2, 2, 1, 1, 0]);
        expect([18, 19].map(from => sectionsFrom(shop, second!, from))).toEqual([1, 0]);
    });
    test('pieces of all strips together, in the order of the items', () => {
        expect(picksOf({ strips: [strip(2, 0, [2, 1]), whole([0, 2], [2, 3])] })).toEqual([[0, 2], [2, 4]]);
    });
    test('of a cut what nobody wants is left out', () => {
        const left = [1, 9, 0];
        const cut: Cut = { board: 0, strips: [whole([0, 2], [2, 1]), strip(1, undefined, [1, 4])] };
        expect(wantedOf(cut, left).strips).toEqual([whole([0, 1]), strip(1, undefined, [1, 4])]);
        expect(left).toEqual([0, 5, 0]);
    });
    test('sections that can be ripped together become one, as long as its longest strip and no shorter than may be ripped, the longest first', () => {
        const three = [strip(2, 0, [2, 1]), strip(1, 1, [1, 2]), strip(1, 2, [1, 1])];
        const cut: Cut = { board: 0, sections: [9, 12, 8], strips: [...three, whole(), whole([0, 1])] };
        expect(tidied(shop, cut)).toEqual({ board: 0, sections: [18], strips: [whole([0, 1]), strip(1, 0, [1, 3]), strip(2, 0, [2, 1])] });
        // beside each other they would be wider than the board
        const narrow = { ...shop, boards: shop.boards.map(kind => ({ ...kind, across: Math.max(...shop.strips) })) };
        expect(tidied(narrow, cut)).toEqual({ board: 0, sections: [18, 8], strips: [whole([0, 1]), strip(1, 0, [1, 3]), strip(2, 1, [2, 1])] });
        // in whatever order their strips were named
        const two = [strip(2, 0, [2, 1]), strip(1, 0, [1, 1]), strip(1, 1, [1, 1]), strip(2, 1, [2, 1])];
        expect(tidied(shop, { board: 0, sections: [9, 9], strips: [...two, whole([0, 1])] }))
            .toEqual({ board: 0, sections: [12], strips: [whole([0, 1]), strip(1, 0, [1, 2]), strip(2, 0, [2, 2])] });
    });
    test('a section alone is the board, an empty one none', () => {
        expect(tidied(shop, { board: 0, sections: [12, 9], strips: [strip(1, 0, [1, 2]), strip(2, 1)] }))
            .toEqual({ board: 0, strips: [strip(1, undefined, [1, 2])] });
        expect(tidied(shop, { board: 0, sections: [12], strips: [strip(1, 0), whole([0, 1])] })).toEqual({ board: 0, strips: [whole([0, 1])] });
        const plain: Cut = { board: 0, strips: [whole([0, 1])] };
        expect(tidied(shop, plain)).toBe(plain);
        expect(tidied(shop, { board: 0, strips: [whole([0, 1]), strip(1, undefined)] })).toEqual(plain);
    });
    test('boards that are cut alike are one layout, empty ones none', () => {
        const alike: Layout = { board: 2, times: 2, strips: [whole([0, 1])] }, empty: Layout = { board: 0, times: 1, strips: [whole()] };
        expect(gathered(shop, [sound[2]!, alike, empty, { ...sound[0]!, times: 0 }])).toEqual([{ ...alike, times: 3 }]);
    });
    test('the cheapest board that a cut comes out of: long enough, there, and cut that way', () => {
        const of = (own: Cut['strips'][number]): Cut => ({ board: 0, strips: [own] });
        const one = of(whole([0, 1])), two = of(whole([0, 2])), ripped = of(strip(1, undefined, [1, 3]));
        expect([one, two, ripped].map(cut => cheapestFor(shop, cut, [9, 2, 1, 1]))).toEqual([2, 1, 3]);
        expect([one, two, ripped].map(cut => cheapestFor(shop, cut, [9, 0, 0, 0]))).toEqual([0, 0, 0]);
        expect(cheapestFor(shop, { ...one, board: 2 }, [9, 2, 0, 1])).toBe(2);
    });
    test('what is cut too often goes, and what is left on a board comes out of a cheaper one, as far as there are any', () => {
        const often: Layout[] = [{ board: 0, times: 3, strips: [whole([0, 3])] }];
        expect(trimmed(shop, often, [4, 0, 0])).toEqual([{ board: 0, times: 1, strips: [whole([0, 3])] }, { board: 2, times: 1, strips: [whole([0, 1])] }]);
        expect(trimmed(shop, [...often, { board: 2, times: 1, strips: [whole([2, 3])] }], [4, 0, 3])).toEqual([
            { board: 0, times: 1, strips: [whole([0, 3])] }, { board: 1, times: 1, strips: [whole([0, 1])] }, { board: 2, times: 1, strips: [whole([2, 3])] },
        ]);
    });
});

describe('figures of a problem', () => {
    test('the share of the widest board that a piece takes, what all costs are multiples of, how many boards a plan may use', () => {
        expect(widthShares({ ...shop, boards: [{ ...shop.boards[0]!, across: 20 }, shop.boards[1]!] })).toEqual([1, 3 / 20, 5 / 20]);
        const step = (...costs: number[]): number => costStep({ ...shop, boards: costs.map(cost => ({ ...shop.boards[0]!, cost })) });
        expect([step(9, 7, 0, 5), step(12, 0, 18), step(0), step()]).toEqual([1, 6, 1, 1]);
        expect(allCounts(shop, 30)).toEqual({ least: [0, 0, 0, 0], most: [3, 2, 1, 1] });
        expect(allCounts(shop, 8).most).toEqual([0, 1, 1, 1]);
        expect(allCounts({ ...shop, boards: [{ ...shop.boards[0]!, cost: 0 }] }, 8).most).toEqual([13]);
    });
    test('pieces of nearly one length are planned together, all as the longest of them, and given their places from the longest on', () => {
        const sizes = [8, 10, 9, 3, 7], problem = { ...shop, items: sizes.map((size, i) => ({ size, count: i + 1, lanes: [size === 3 ? 1 : 0] })) };
        const coarse = coarsened(problem, 3);       // two to a group
        expect(coarse.problem.items).toEqual([{ size: 10, count: 5, lanes: [0] }, { size: 8, count: 6, lanes: [0] }, { size: 3, count: 4, lanes: [1] }]);
        const plan = coarse.refined([{ board: 0, times: 2, strips: [whole([0, 2], [1, 1])] }, { board: 0, times: 1, strips: [whole([0, 1], [1, 4])] }]);
        expect(plan.map(({ strips }) => strips[0]!.picks)).toEqual([[[1, 2], [0, 1]], [[2, 2], [4, 1]], [[2, 1], [4, 4]]]);
        expect(plan.every(({ times }) => times === 1)).toBe(true);
        // ways to cut with the longest of each group and with the next, no piece more often than it is wanted
        const columns = coarse.columns([{ board: 0, times: 1, strips: [whole([0, 4], [1, 1])] }]);
        expect(columns.map(({ gives }) => gives)).toEqual([[[1, 2], [0, 1]], [[2, 3], [4, 1]]]);
    });
    test('rows of the linear program: what is wanted, then the boards; what pieces are worth is never less than nothing', () => {
        const rows = new MasterRows(shop, [2, 0, 5]);
        expect([rows.itemCount, rows.count, rows.itemRows, rows.boardRow(3)]).toEqual([2, 6, [0, -1, 1], 5]);
        expect(rows.limits([2, 0, 5], { least: [0, 0, 1, 0], most: [9, 2, 1, 1] }))
            .toEqual([[2, Infinity], [5, Infinity], [0, 9], [0, 2], [1, 1], [0, 1]].map(([least, most]) => ({ least, most })));
        expect(rows.entries({ board: 1, strips: [], gives: [[0, 1], [1, 7], [2, 3]] })).toEqual([[0, 1], [1, 3], [3, 1]]);
        const withSections = new MasterRows(shop, [2, 0, 5], [{ from: 8, least: 0, most: 2 }, { from: 12, least: 0, most: 1 }]);
        expect([withSections.count, withSections.boardRow(3), withSections.sectionRow(1)]).toEqual([8, 5, 7]);
        expect(rows.prices([4, -1, 2, -3, 0, 5])).toEqual({ items: [4, 0, 0], boards: [9 - 2, 7 + 3, 0, 5 - 5], sections: [] });
    });
});

describe('what no plan costs less than', () => {
    const kind = fc.record({ capacity: from(8, 24), cost: from(0, 30), available: fc.constantFrom(null, null, 1, 2), across: fc.constant(1) });
    const problems: fc.Arbitrary<CuttingProblem> = fc.record({
        items: fc.array(fc.record({ size: from(1, 20), count: from(1, 3), lanes: fc.constant([0]) }), { minLength: 1, maxLength: 4 }),
        boards: fc.array(kind, { minLength: 1, maxLength: 3 }), strips: fc.constant([]),
    });
    test('whatever the pieces are taken to be worth', () => {
        fc.assert(fc.property(problems, fc.array(fc.integer({ min: -20, max: 300 }), { minLength: 4, maxLength: 4 }), (problem, tenths) => {
            fc.pre(pieceCount(problem) <= 7);
            const bounds = new VerifiedBound(problem, 1000, costStep(problem), effort()), least = leastCost(problem);
            const bound = bounds.of(tenths.map(value => value / 10), allCounts(problem, Infinity))!;
            expect(bound).toBeLessThanOrEqual(least);
            expect(Math.abs(bound % costStep(problem))).toBe(0);
        }), { seed: 75, numRuns: runs(900) });
    });
    // two pieces of 10 on a board of 20 that costs 9, five in all: at 4.5 each they are worth 22.5, and no plan costs less than that, rounded up to 27
    test('at the right worth it is what has to be paid, rounded up to what costs are multiples of', () => {
        const boards = [{ capacity: 20, cost: 9, available: null, across: 1 }];
        const problem: CuttingProblem = { items: [{ size: 10, count: 5, lanes: [0] }], boards, strips: [] };
        const bound = (worth: number, most = 5): number | undefined =>
            new VerifiedBound(problem, 100, 9, effort()).of([worth], { least: [0], most: [most] });
        expect([bound(4.5), bound(3), bound(0)]).toEqual([27, 18, 0]);
        // at 6 each a board carries 12 and costs 9, so that each of five might bring 3 more than it costs: 30 - 15
        expect(bound(6)).toBe(18);
        expect(bound(6, 1)).toBe(27);
    });
});
