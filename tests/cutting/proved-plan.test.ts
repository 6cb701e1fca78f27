import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { knownBy, knownText } from '../../src/cutting/known.ts';
import { lookCloser } from '../../src/cutting/look-closer.ts';
import type { BoardPlan } from '../../src/cutting/model.ts';
import { questionsOf, type Answer } from '../../src/cutting/questions.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT } from '../../src/quantity/ticks.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { checkPlan } from './checker.ts';
import { given, job, piece, stock } from './samples.ts';
import { solver } from './solve/problems.ts';
import { runs } from '../support/full.ts';

function closely(pieces: readonly Piece[], settings = job(), steps = 5e6): BoardPlan {
    const { asked, answered } = questionsOf(pieces, settings);
    const answers = new Map<number, Answer>();
    for (const { index, answer } of lookCloser(structuredClone(asked) as typeof asked, solver, steps)) answers.set(index, answer);
    const plan = answered(answers);
    checkPlan(plan, pieces, settings);
    return plan;
}
const several = (count: number, name: string, make: (id: string) => Piece): Piece[] => Array.from({ length: count }, (_, i) => make(`${name}-${String(i).padStart(3, '0')}`));
const bought = (plan: BoardPlan): string[] => plan.stocks.flatMap(s => s.buy.map(p => `${p.count} x ${p.length / TICKS_PER_FOOT}'`));
const words = (plan: BoardPlan): string[] => plan.stocks.map(s => knownText(s.known));

describe('a plan that was looked at closer', () => {
    test('says that none cheaper exists, and what it costs is its own lower bound', () => {
        const pine = stock({ feet: [8, 12, 16], perFoot: '2' });
        const plan = closely([...several(7, 'a', id => piece(id, pine, inches('50 7/8'))), ...several(5, 'b', id => piece(id, pine, inches('37 1/4')))]);
        expect(words(plan)).toEqual(['none cheaper exists (ways of cutting compared: cut across; no piece turned)']);
        expect(plan.stocks[0]!.known.lowerBound!.equals(plan.costs[0]!.amount)).toBe(true);
    });

    test('without a price the least length is bought', () => {
        const plan = closely(several(5, 'a', id => piece(id, stock({ feet: [8, 12] }), inches(47))));
        expect(words(plan)).toEqual(['none shorter exists (ways of cutting compared: cut across; no piece turned)']);
        expect(bought(plan)).toEqual(["1 x 12'", "1 x 8'"]);
    });

    test('where a length without a price is bought, nothing is claimed', () => {
        expect(words(closely([piece('a', stock({ feet: [8, 16], each: { 8: '10' } }), inches(180))]))).toEqual(['a first plan; a cheaper one may exist']);
    });

    test('a piece on hand that is worth more than a board stays on the rack', () => {
        const pine = (worth: string) => {
            const made = stock({ feet: [8], each: { 8: '12' } });
            return { ...made, onHand: [given({ count: 1, length: inches(100), worth: { amount: new Rational(worth), currency: 'USD' } })] };
        };
        expect(bought(closely([piece('a', pine('15'), inches(90))]))).toEqual(["1 x 8'"]);
        expect(bought(closely([piece('a', pine('11'), inches(90))]))).toEqual([]);
    });

    test('strips of two widths share a board where that is cheaper', () => {
        const pine = stock({ feet: [8], perFoot: '1' });
        // 3 1/2 + 1/8 + 3/4 + 1/8 + 3/4 = 5 1/4 of 5 1/2
        const plan = closely([
            ...several(2, 'wide', id => piece(id, pine, inches(94), { width: inches('3 1/2'), ripped: true })),
            ...several(4, 'cleat', id => piece(id, pine, inches(94), { width: inches('3/4'), ripped: true })),
        ]);
        expect(bought(plan)).toEqual(["2 x 8'"]);
        expect(plan.stocks[0]!.rips.map(({ widths, boards, left }) => [widths.map(w => [w.count, w.width]), boards, left]))
            .toEqual([[[[1, inches('3 1/2')], [2, inches('3/4')]], [1, 2], inches('1/8')]]);
    });

    test('a sheet without grain is ripped the way that needs fewer sheets', () => {
        const sheet = (grain: 'none' | 'lengthwise') => ({
            ...stock({ width: inches(48), feet: [8], each: { 8: '60' } }), sheet: given({ width: inches(48), length: inches(96), grain }),
        });
        // across its length a sheet gives floor((96 + 1/8) / (30 + 1/8)) = 3 strips of 30" x 47", along it one strip with 2
        const panels = (grain: 'none' | 'lengthwise'): Piece[] => several(3, 'panel', id => piece(id, sheet(grain), inches(46), { width: inches(30), ripped: true }));
        expect(bought(closely(panels('lengthwise')))).toEqual(["2 x 8'"]);
        const turned = closely(panels('none'));
        expect(bought(turned)).toEqual(["1 x 8'"]);
        expect(turned.stocks[0]!.boards[0]!.crosswise).toBe(true);
    });

    test('any job: sound, never dearer than the first plan, and no plan is below what is claimed', () => {
        const cut = fc.record({ length: fc.integer({ min: 100, max: 12_000 }), width: fc.option(fc.constantFrom(inches('3/4'), inches('1 1/2'), inches('3 1/2'), inches('5 7/16'))), miter: fc.constantFrom(0, 0, 45) });
        fc.assert(fc.property(fc.array(
            cut, { minLength: 1, maxLength: 30 },
        ), fc.uniqueArray(fc.integer({ min: 7, max: 16 }), { minLength: 1, maxLength: 4 }), fc.integer({ min: 1, max: 900 }), (cuts, feet, cents) => {
            const pine = stock({ feet, perFoot: `${cents}/100`, onHand: [[2, inches(40)], [1, inches(70)]] });
            const pieces = cuts.map((c, i) => piece(`p${i}`, pine, c.length * 127, {
                ...(c.width === null ? {} : { width: c.width, ripped: true }), ...(c.miter ? { ends: [{ cut: 'miter' as const, degrees: c.miter }, { cut: 'square' as const }] as const } : {}),
            }));
            const first = planBoards(pieces, job());
            const plan = closely(pieces, job(), 2e6);
            const cost = (of: BoardPlan): Rational => of.costs[0]?.amount ?? new Rational(0);
            expect(cost(plan).lte(cost(first))).toBe(true);
            for (const { known } of plan.stocks) {
                if (known.as === 'none cheaper') expect(known.percent).toBe(0);
                if (known.lowerBound) expect(known.lowerBound.lte(cost(first))).toBe(true);
            }
        }), { seed: 41, numRuns: runs(60) });
    });
});

describe('the distance to the cheapest possible', () => {
    test.each([['1004', '1000', 'at most 0.4 % above the cheapest possible'], ['10037', '10000', 'at most 0.37 % above the cheapest possible'],
        ['100000001', '100000000', 'at most 0.000001 % above the cheapest possible'], ['3', '2', 'at most 50 % above the cheapest possible'],
        ['7', '7', 'none cheaper exists'], ['7', '0', 'a first plan; a cheaper one may exist']])('%s where nothing is below %s', (cost, bound, text) => {
        expect(knownText(knownBy(new Rational(cost), new Rational(bound), 'money'))).toBe(text);
    });
    test('is rounded up, so that it is never promised too small', () => {
        fc.assert(fc.property(fc.integer({ min: 1, max: 1e9 }), fc.integer({ min: 0, max: 1e6 }), (bound, more) => {
            const { percent } = knownBy(new Rational(bound + more), new Rational(bound), 'money');
            expect(percent! * (1 + 1e-9) + 1e-9).toBeGreaterThanOrEqual(more / bound * 100);
            expect(percent! > 0).toBe(more > 0);
            // two figures: at the most a tenth more than it is, or the least that is said
            if (more > 0) expect(percent!).toBeLessThanOrEqual(Math.max(more / bound * 100 * 1.1 + 1e-9, 0.000001));
        }), { seed: 42 });
    });
});

describe('what nobody meant is answered at once', () => {
    test('a mistyped count on hand, and five thousand pieces that are all different', () => {
        const pine = stock({ feet: [8, 16], perFoot: '1', onHand: [[999_999_999, inches(20)], [1, 1e15], [0, inches(30)]] });
        const pieces = several(5000, 'p', id => piece(id, pine, inches(3) + Number(id.slice(2)) * 127));
        expect(closely(pieces, job(), 1e5).unplaced).toEqual([]);
    });
    test('a kerf that no tape shows, lengths without a common measure', () => {
        const pine = stock({ feet: [8, 12], perFoot: '2' });
        const pieces = [inches(41) + 3, inches(37) + 1, inches(29) + 7, inches(53)].flatMap((length, n) => several(6, `p${n}`, id => piece(id, pine, length)));
        expect(words(closely(pieces, job({ kerf: given(1537) })))[0]).toMatch(/exists|may exist|at most/);
    });
});

test('what has few lengths is looked at first, and leaves its steps to what has many', () => {
    const pine = stock({ feet: [8, 12, 16], perFoot: '2' }), ash = stock({ name: 'ash-1x6', feet: [8, 12], perFoot: '3' });
    const many = Array.from({ length: 6 }, (_, i) => piece(`a${i}`, ash, inches(30 + 7 * i))), few = several(4, 'b', id => piece(id, pine, inches(50)));
    const { asked } = questionsOf([...many, ...few], job());
    expect(asked.map(({ problem }) => problem.items.length)).toEqual([6, 1]);
    expect([...lookCloser(asked, solver, 5e6)].filter(({ isLast }) => isLast).map(({ index }) => index)).toEqual([1, 0]);
    expect([...lookCloser([asked[0]!, asked[0]!], solver, 5e6)].filter(({ isLast }) => isLast).map(({ index }) => index)).toEqual([0, 1]);
});
