import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { onHandLines } from '../../src/cutting/cut-line.ts';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { leftoversOf } from '../../src/cutting/leftovers.ts';
import { lookCloser } from '../../src/cutting/look-closer.ts';
import type { BoardPlan } from '../../src/cutting/model.ts';
import { questionsOf, type Answer } from '../../src/cutting/questions.ts';
import { restToCut } from '../../src/cutting/rest.ts';
import type { CutBoard, Stock } from '../../src/job/model.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import { sawOrder } from '../../src/sawing/index.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { exampleRoom } from '../support/example-room.ts';
import { runs } from '../support/full.ts';
import { checkSawOrder } from '../sawing/checker.ts';
import { checkPlan } from './checker.ts';
import { given, job, piece, stock } from './samples.ts';
import { solver } from './solve/problems.ts';

/** Strips that were ripped for an earlier job, beside boards of 5 1/2" that the yard sells. */
const feet = (count: number): number => inches(12 * count);
const pine = (...onHand: NonNullable<Parameters<typeof stock>[0]>['onHand'] & object): Stock => stock({ feet: [8], perFoot: '2', onHand });
const cut = (id: string, of: Stock, length: string, width: string): Piece =>
    piece(id, of, inches(length), { width: inches(width), ripped: true, work: [{ kind: 'rip', width: inches(width) }] });

/** At once and looked at closer, each gone over, and sawn. */
function plans(pieces: readonly Piece[]): BoardPlan[] {
    const { asked, answered, first } = questionsOf(pieces, job()), answers = new Map<number, Answer>();
    for (const { index, answer } of lookCloser(asked, solver, 2e6)) answers.set(index, answer);
    const both = [first, answered(answers)];
    for (const plan of both) {
        checkPlan(plan, pieces, job());
        checkSawOrder(sawOrder(plan, job()), plan, job());
    }
    return both;
}
const told = ({ stocks }: BoardPlan) => stocks.flatMap(({ boards }) => boards.map(board => [
    board.from, board.width === undefined ? '-' : printInches(board.width), board.strips.map(strip => strip.pieces.length),
]));

test('a strip that is as wide as its pieces is only cut to length', () => {
    // 2 x 35 + 1/8 and 1" of trim are 71 1/8" of six feet
    const of = pine([1, feet(6), inches('2 1/2')]), pieces = ['a', 'b'].map(id => cut(id, of, '35', '2 1/2'));
    for (const plan of plans(pieces)) {
        expect(told(plan)).toEqual([['on hand', '2 1/2"', [2]]]);
        expect([plan.costs, plan.stocks[0]!.rips, plan.stocks[0]!.boards[0]!.sections]).toEqual([[], [], undefined]);
        expect(sawOrder(plan, job()).steps.map(step => step.do)).toEqual(['crosscut']);
    }
});

test('of a wider one what is narrower is ripped, also what fills most of a board; what is wider than it is bought for', () => {
    const of = pine([1, feet(6), inches('4 1/2')]);
    for (const plan of plans([cut('a', of, '40', '4'), cut('b', of, '40', '5')])) {
        expect(told(plan).map(([from, width]) => [from, width])).toEqual([['on hand', '4 1/2"'], ['bought', '-']]);
        expect(sawOrder(plan, job()).steps.map(step => step.do)).toContain('rip');
    }
    // 2 x 2 1/8 + 1/8 are 4 3/8": two abreast
    for (const plan of plans(['a', 'b'].map(id => cut(id, of, '70', '2 1/8')))) expect(told(plan)).toEqual([['on hand', '4 1/2"', [1, 1]]]);
});

test('one that is ripped is cut across first where what is left is worth keeping; one that is as wide as its pieces never', () => {
    const of = pine([1, feet(8), inches('4 1/2')]);
    // 30 + 1/8 + 30 are cut off and ripped: behind them 96 - 1 - 60 1/8 - 1/8 = 34 3/4" keep their 4 1/2"
    for (const plan of plans(['a', 'b'].map(id => cut(id, of, '30', '2 1/8')))) {
        const [board] = plan.stocks[0]!.boards;
        expect([board!.sections?.map(size => printInches(size)), board!.strips.map(({ rippedTo, offcut }) => [rippedTo === undefined ? '-' : printInches(rippedTo), printInches(offcut)])])
            .toEqual([['60 1/8"'], [['-', '34 3/4"'], ['2 1/8"', '0"']]]);
    }
    for (const plan of plans([cut('a', of, '30', '4 1/2')])) expect(plan.stocks[0]!.boards.map(({ sections, width }) => [sections, printInches(width!)])).toEqual([[undefined, '4 1/2"']]);
});

test('strips of one length and of two widths are two kinds, each of which there are so many', () => {
    const of = pine([1, feet(6), inches(2)], [2, feet(6), inches(4)], [1, feet(6)]);
    const pieces = ['2', '4', '4', '4'].map((width, i) => cut(String(i), of, '60', width));
    for (const plan of plans(pieces)) {
        expect(plan.costs).toEqual([]);
        expect(told(plan).map(([, width]) => String(width)).sort((a, b) => (a < b ? -1 : 1))).toEqual(['-', '2"', '4"', '4"']);
    }
});

test('a piece of the full width is never on a strip', () => {
    const of = pine([3, feet(6), inches('5 1/4')]);
    for (const plan of plans([piece('a', of, inches(30))])) expect(told(plan)).toEqual([['bought', '-', [1]]]);
});

describe('what is left', () => {
    test('strips that are not used stay, as many as there were; of one that is cut a strip is left', () => {
        const of = pine([3, feet(6), inches('2 1/2')]), [plan] = plans([cut('a', of, '35', '2 1/2')]);
        // 6' less 1" of trim, 35" and a kerf
        const [left] = leftoversOf([{ plan: plan!, job: job() }]);
        expect(left!.pieces).toEqual([]);
        expect(left!.strips.map(({ count, length, width }) => [count, printInches(length), printInches(width)])).toEqual([[2, '72"', '2 1/2"'], [1, '35 7/8"', '2 1/2"']]);
        expect(onHandLines(left!.strips.map(({ worth: _, ...strip }) => strip), 'feet-inches')).toEqual(['on-hand 2 x 6\', 1 x 2\' 11 7/8" ripped-to 2 1/2"']);
    });
    test('what was ripped on edge too is thinner than its stock', () => {
        const of = pine(), thin = piece('a', of, inches(60), { width: inches('1 1/2'), thickness: inches('1/2'), ripped: true, work: [{ kind: 'rip', width: inches('1 1/2'), thickness: inches('1/2') }] });
        const plan = planBoards([thin, { ...thin, id: 'b' }], job({ shortestOffcut: given(inches(12)) }));
        const [left] = leftoversOf([{ plan, job: job({ shortestOffcut: given(inches(12)) }) }]);
        expect(left!.strips.filter(({ width }) => width === inches('1 1/2')).every(({ isThin }) => isThin)).toBe(true);
    });
});

test('a record of a board that was cut takes a board before a strip of that length, and what is left of a strip is one', () => {
    const room = exampleRoom();
    const left = (of: Stock): unknown => {
        const board: CutBoard = { at: of.at, stock: given(of), length: given(feet(6)), into: [], left: [given(inches(20))] };
        return restToCut([{ room: { ...room, cutBoards: [board], spoiled: [], measuredBoards: [] }, pieces: [] }]).now(of).onHand.map(({ value: { count, length, width } }) => [count, printInches(length), width === undefined ? '-' : printInches(width)]);
    };
    expect(left(pine([1, feet(6), inches(2)], [1, feet(6)]))).toEqual([[1, '72"', '2"'], [1, '20"', '-']]);
    expect(left(pine([2, feet(6), inches(2)]))).toEqual([[1, '72"', '2"'], [1, '20"', '2"']]);
});

test('with strips on hand no plan costs more than without', () => {
    const width = fc.constantFrom('1', '1 3/4', '2 1/2', '4'), strip = fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 30, max: 96 }), width);
    const pieces = fc.array(fc.tuple(fc.integer({ min: 13, max: 90 }), width), { minLength: 1, maxLength: 10 });
    fc.assert(fc.property(fc.array(strip, { maxLength: 4 }), pieces, (strips, wanted) => {
        const costOf = (of: Stock): Rational => plans(wanted.map(([length, wide], i) => cut(`p${i}`, of, String(length), wide)))[1]!.costs[0]?.amount ?? new Rational(0);
        const [without, withStrips] = [costOf(pine()), costOf(pine(...strips.map(([count, length, wide]) => [count, inches(length), inches(wide)] as const)))];
        expect(withStrips!.lte(without!)).toBe(true);
    }), { seed: 5, numRuns: runs(25) });
});
