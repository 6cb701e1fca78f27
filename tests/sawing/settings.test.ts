import { describe, expect, test } from 'vitest';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { inches } from '../../src/quantity/rational.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { blocksOf } from '../../src/sawing/blocks.ts';
import { sawOrder } from '../../src/sawing/index.ts';
import type { Step } from '../../src/sawing/model.ts';
import { ripsInto, ripsOfPieces } from '../../src/sawing/rips.ts';
import { setUpsOf } from '../../src/sawing/set-ups.ts';
import { tapingOf, tapingWords } from '../../src/sawing/tape.ts';
import type { EndCut, Piece } from '../../src/takeoff/model.ts';
import { job, piece, stock } from '../cutting/samples.ts';

/** Settings of the saw, by tables: what is expected was worked out by hand. */
const pine = stock({ feet: [8] });
const MITER: EndCut = { cut: 'miter', degrees: 45 }, SQUARE: EndCut = { cut: 'square' };
const laid = (pieces: readonly Piece[]) => sawOrder(planBoards(pieces, job()), job()).boards;
const ripped = (id: string, width: string, thickness: string, fence?: string): Piece => piece(id, pine, inches(30), {
    part: 'cleat', width: inches(width), thickness: inches(thickness), ripped: true,
    work: [{ kind: 'rip', width: inches(width), thickness: inches(thickness), ...fence !== undefined && { fence } }],
});

describe('fences', () => {
    // Out of a board of 3/4" x 5 1/2". What is as wide as the board is thick lies on edge: its thickness comes off the board's width.
    test.each([
        ['as thick as its board', '2', '3/4', ['2"']],
        ['thinner, and as wide as the board is thick', '3/4', '1/2', ['1/2"']],
        ['thinner both ways', '1', '1/2', ['1"', '1/2"']],
        ['thicker than its board is: on edge', '1/2', '1', ['1"', '1/2"']],
        ['as wide as its board, thinner', '5 1/2', '1/2', ['1/2"']],
        ['as wide and as thick as its board', '5 1/2', '3/4', []],
    ])('a piece %s', (_, width, thickness, wanted) => {
        // a piece of full width beside it, so that it is ripped after it is cut to length
        const boards = laid([ripped('c', width, thickness)]).map(board => ({ ...board, strips: board.strips.map(({ rippedTo: _was, ...strip }) => strip) }));
        expect(ripsOfPieces(boards).map(step => printInches(step.width))).toEqual(wanted);
    });
    test('the widest first, of one width by the names of their fences, the nameless before; each names its pieces once', () => {
        const pieces = [
            ripped('a', '1', '3/4', 'late'), ripped('b', '2', '3/4'), ripped('c', '1', '3/4', 'early'), ripped('d', '1', '3/4'),
            ripped('e', '1', '3/4', 'late'),
        ];
        const boards = laid(pieces).map(board => ({ ...board, strips: board.strips.map(({ rippedTo: _was, ...strip }) => strip) }));
        expect(ripsOfPieces(boards).map(step => [printInches(step.width), step.fence ?? null, step.pieces.map(({ id }) => id).sort().join('')])).toEqual([
            ['2"', null, 'b'], ['1"', null, 'd'], ['1"', 'early', 'c'], ['1"', 'late', 'ae'],
        ]);
        expect(ripsOfPieces(boards).every(step => 'fence' in step === (step.fence !== undefined))).toBe(true);
    });
    test('whole boards: a strip has its number on its board, and what is thinner both ways is ripped once more', () => {
        const long = { cutBack: inches(80), back: inches(80), overall: inches(80), cutOverall: inches(80) };
        const boards = laid(['a', 'b', 'c'].map(id => ({ ...ripped(id, '1/2', '1/2'), ...long })));
        const steps = ripsInto(boards, 'boards');
        expect(steps.map(step => [step.what, printInches(step.width)])).toEqual([['boards', '1/2"'], ['on edge', '1/2"']]);
        expect(steps[0]!.boards.flatMap(({ strips }) => strips)).toEqual([1, 2, 3]);
        // without a thickness nobody knows a second direction
        const unknown = boards.map(board => ({ ...board, stock: { ...board.stock, thickness: undefined } }) as typeof board);
        expect(ripsInto(unknown, 'boards').map(({ what }) => what)).toEqual(['boards']);
    });
});

describe('set-ups', () => {
    test('are counted by machine; a stop at two angles counts twice, an end without one not at all', () => {
        const cuts = (...stops: (string | undefined)[]) => stops.map(stop => ({ ...stop !== undefined && { stop: inches(stop) }, pieces: [] }));
        const steps = [
            { do: 'rip' }, { do: 'crosscut' }, { do: 'crosscut' }, { do: 'rabbet' }, { do: 'ease' }, { do: 'slots' }, { do: 'pocket holes' }, { do: 'blocks' },
            { do: 'miter', cuts: cuts('30', '30', undefined, '20') }, { do: 'miter', cuts: cuts('30') },
        ] as unknown as Step[];
        // 1 fence + 2 stops + 2 angles + stops 30 and 20, and 30 again + 4 machines
        expect(setUpsOf(steps, [])).toEqual({ fences: 1, stops: 2, angles: 2, miterStops: 3, machines: 4, total: 12, pickUps: 0 });
    });
    test('a board is taken up once for each length it holds', () => {
        expect(setUpsOf([], laid([piece('a', pine, inches(30)), piece('b', pine, inches(30)), piece('c', pine, inches(20))])).pickUps).toBe(2);
    });
});

describe('the tape', () => {
    const side = (ends: [EndCut, EndCut], over: Partial<Piece> = {}): Piece => piece('s', pine, inches(30), { part: 'side', on: 'south', ends, ...over });
    const rabbet = (edge: 'lower' | 'upper', face: 'back' | 'front'): Pick<Piece, 'work'> =>
        ({ work: [{ kind: 'rabbet', width: inches('1/4'), height: inches('1/4'), edge, face }] });
    test.each([
        ['square', side([SQUARE, SQUARE]), 'hook either end'],
        ['square, rabbeted', side([SQUARE, SQUARE], rabbet('lower', 'back')), 'hook either end'],
        ['mitered at both', side([MITER, MITER]), 'hook one long point; along the back to the other'],
        ['mitered at both, a rabbet on the lower back edge', side([MITER, MITER], rabbet('lower', 'back')),
            'hook one long point; along the upper back edge to the other'],
        ['mitered at both, a rabbet on the upper back edge', side([MITER, MITER], rabbet('upper', 'back')),
            'hook one long point; along the lower back edge to the other'],
        ['mitered at both, a rabbet in front', side([MITER, MITER], rabbet('lower', 'front')), 'hook one long point; along the back to the other'],
        ['mitered at one, no hand', side([MITER, SQUARE]), 'hook the square end; along the back to the long point'],
        ['a left', side([MITER, SQUARE], { hand: 'left' }), 'hook the square end, its right; along the back to the long point'],
        ['a right', side([SQUARE, MITER], { hand: 'right' }), 'hook the square end, its left; along the back to the long point'],
    ])('%s', (_, one, words) => {
        expect(tapingWords(tapingOf(one))).toBe(words);
    });
});

test('test pieces: a gauge for each stock that a cleat is pressed against, a pair for an angle, one for a rabbet, a pair for a biscuit', () => {
    const fir = stock({ name: 'fir-1x6', feet: [8] });
    const cleat = (line: string): Piece => piece(`cleat-${line}`, pine, inches(20), { part: 'cleat', line, width: inches('3/4') });
    const slots = { kind: 'slots', count: 1, size: '#10', places: 1, where: 'in the west end' } as const;
    const pieces = [
        cleat('A'), cleat('B'), piece('a', pine, inches(20), { line: 'A', work: [slots] }),
        piece('b', fir, inches(20), { line: 'B', work: [slots, { ...slots, size: '#20' }] }),
        piece('c', fir, inches(21), { line: 'B' }), piece('d', stock({ name: 'ash-1x6', feet: [8] }), inches(20), { line: 'C' }),
        piece('s', pine, inches(25), { part: 'side', ends: [MITER, MITER], work: [{
            kind: 'rabbet', width: inches('1/4'), height: inches('3/8'), edge: 'lower', face: 'back',
        }] }),
        piece('t', pine, inches(25), { part: 'side', ends: [MITER, { cut: 'miter', degrees: 30 }] }),
    ];
    // line C has no cleats, so its ash needs no gauge
    expect(blocksOf(laid(pieces), inches('1/8')).map(block => `${block.count} ${block.kind} ${block.stock.name}: ${block.for}`).sort()).toEqual([
        '1 rabbet test pine-1x6: rabbet', '2 cleat gauge fir-1x6: cleats, held between them and the lower edge of the side',
        '2 cleat gauge pine-1x6: cleats, held between them and the lower edge of the side',
        '2 miter test pine-1x6: 30° pair', '2 miter test pine-1x6: 45° pair', '2 slot test fir-1x6: #10 biscuit', '2 slot test fir-1x6: #20 biscuit',
    ]);
});
