import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { add, around, split, splitSections, type Branch } from '../../../src/cutting/solve/branch.ts';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import { runs } from '../../support/full.ts';

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

test('what may be spent is spent when all of it is gone', () => {
    const effort = new Effort(5), told: [number, boolean][] = [];
    for (const spent of [0, 4, 5, 6]) {
        effort.spent = spent;
        told.push([effort.left, effort.isSpent]);
    }
    expect(told).toEqual([[5, false], [1, false], [0, true], [0, true]]);
});
