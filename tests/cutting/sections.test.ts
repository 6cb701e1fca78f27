import { describe, expect, test } from 'vitest';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { lookCloser } from '../../src/cutting/look-closer.ts';
import type { BoardPlan } from '../../src/cutting/model.ts';
import { questionsOf, type Answer } from '../../src/cutting/questions.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { checkPlan } from './checker.ts';
import { job, piece, stock } from './samples.ts';
import { solver } from './solve/problems.ts';

function closely(pieces: readonly Piece[]): BoardPlan {
    const { asked, answered } = questionsOf(pieces, job());
    const answers = new Map<number, Answer>();
    for (const { index, answer } of lookCloser(asked, solver, 5e6)) answers.set(index, answer);
    const plan = answered(answers);
    checkPlan(plan, pieces, job());
    return plan;
}
const several = (count: number, name: string, make: (id: string) => Piece): Piece[] => Array.from({ length: count }, (_, i) => make(`${name}-${i}`));
const boardCount = (plan: BoardPlan): number => plan.stocks.reduce((sum, { boards }) => sum + boards.length, 0);

describe('what is left of a board beside full pieces is ripped', () => {
    const pine = stock({ feet: [16], perFoot: '2' });
    // 120 + 1/8 + 60 + 1" of trim: what is left of the board beside the bottom gives six cleats of 3/4" abreast
    const bottom = piece('bottom', pine, inches(120));
    const cleats = several(6, 'cleat', id => piece(id, pine, inches(60), { width: inches('3/4'), ripped: true }));

    test('one board does for a bottom and six cleats, at once and looked at closer', () => {
        for (const plan of [planBoards([bottom, ...cleats], job()), closely([bottom, ...cleats])]) {
            checkPlan(plan, [bottom, ...cleats], job());
            expect(boardCount(plan)).toBe(1);
            expect(plan.stocks[0]!.boards[0]!.sections).toEqual([inches(60)]);
            expect(plan.stocks[0]!.rips).toEqual([{ section: inches(60), widths: [{ width: inches('3/4'), count: 6 }], boards: [1], left: inches('1/4') }]);
        }
    });
    test('a seventh does not lie abreast of them', () => {
        expect(boardCount(closely([bottom, ...cleats, piece('cleat-6', pine, inches(60), { width: inches('3/4'), ripped: true })]))).toBe(2);
    });
    test('what is left keeps its width: the cleats alone come out of a section, not out of a board that is ripped to its end', () => {
        const [board] = closely(several(6, 'long', id => piece(id, pine, inches(100), { width: inches('3/4'), ripped: true }))).stocks[0]!.boards;
        expect(board!.sections).toEqual([inches(100)]);
        // 192 less 1" of trim, 100 and a kerf
        expect(board!.strips.find(strip => strip.rippedTo === undefined)).toMatchObject({ pieces: [], offcut: inches('90 7/8'), kept: true });
    });
});

// 8' less 1" of trim, 70 7/8" and a kerf are 24", the shortest offcut worth keeping; behind 71" it is less
test.each([['70 7/8', [inches('70 7/8')]], ['71', undefined]])('strips of %s" on 8 feet', (length, sections) => {
    const [board] = planBoards([0, 1].map(i => piece(`cleat-${i}`, stock({ feet: [8] }), inches(length), { width: inches('3/4'), ripped: true })), job()).stocks[0]!.boards;
    expect(board!.sections).toEqual(sections);
});

test('one mitered piece does not lengthen the cuts beside square ones', () => {
    // two of 95 7/16" with a kerf between and 1" of trim are 192"
    const pine = stock({ feet: [16], perFoot: '2' });
    const squares = several(4, 'square', id => piece(id, pine, inches('95 7/16')));
    const mitered = piece('mitered', pine, inches(100), { ends: [{ cut: 'miter', degrees: 45 }, { cut: 'square' }] });
    expect(boardCount(closely([...squares, mitered]))).toBe(3);
});
