import { describe, expect, test } from 'vitest';
import { planBoards } from '../../src/cutting/first-plan.ts';
import type { Board, BoardPlan } from '../../src/cutting/model.ts';
import { inches } from '../../src/quantity/rational.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { blocksOf } from '../../src/sawing/blocks.ts';
import { cautionsOf } from '../../src/sawing/cautions.ts';
import { cutOff } from '../../src/sawing/cut-off.ts';
import { crosscutsOf } from '../../src/sawing/crosscuts.ts';
import { sawOrder } from '../../src/sawing/index.ts';
import { layBoards } from '../../src/sawing/lay-boards.ts';
import { edgesOf, pocketsOf, slotStepsOf } from '../../src/sawing/machining.ts';
import { copesOf, mitersOf } from '../../src/sawing/miters.ts';
import type { MiterStep, Step, Take } from '../../src/sawing/model.ts';
import { ripsInto, ripsOfPieces } from '../../src/sawing/rips.ts';
import { pickUpsOf, setUpsOf } from '../../src/sawing/set-ups.ts';
import { tapingOf, tapingWords } from '../../src/sawing/tape.ts';
import type { Stock } from '../../src/job/model.ts';
import type { EndCut, Piece } from '../../src/takeoff/model.ts';
import { job, piece, stock } from '../cutting/samples.ts';

/** Settings of the saw, by tables: what is expected was worked out by hand. */
const pine = stock({ feet: [8] });
const MITER: EndCut = { cut: 'miter', degrees: 45 }, OUTSIDE: EndCut = { cut: 'miter', degrees: -45 }, SQUARE: EndCut = { cut: 'square' };
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
    test.each<[string, Partial<Stock>, string[]]>([
        ['thickness', { thickness: undefined }, ['2"']], ['width', { width: undefined }, ['2"', '1/2"']], ['size', { thickness: undefined, width: undefined }, ['2"']],
    ])('of a stock without a %s a piece is ripped to what it is narrower than', (_, unknown, wanted) => {
        const one = ripped('c', '2', '1/2'), same = { ...one, stock: { ...pine, ...unknown } };
        const boards = laid([one]).map(board => ({
            ...board, strips: board.strips.map(({ rippedTo: _was, ...strip }) => ({ ...strip, pieces: strip.pieces.map(each => ({ ...each, piece: same })) })),
        }));
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
    test('what is rabbeted too is ripped all the same', () => {
        const rabbet: Piece['work'][number] = { kind: 'rabbet', width: inches('1/4'), height: inches('1/4'), edge: 'lower', face: 'back' };
        const one = ripped('a', '2', '3/4', 'fence A'), boards = laid([{ ...one, work: [rabbet, ...one.work] }, piece('plain', pine, inches(20), { work: [rabbet] })])
            .map(board => ({ ...board, strips: board.strips.map(({ rippedTo: _was, ...strip }) => strip) }));
        expect(ripsOfPieces(boards).map(step => [step.fence, step.pieces.map(({ id }) => id)])).toEqual([['fence A', ['a']]]);
    });
    test('whole boards: a strip has its number on its board, and what is thinner both ways is ripped once more', () => {
        const long = { cutBack: inches(80), back: inches(80), overall: inches(80), cutOverall: inches(80) };
        const boards = laid(['a', 'b', 'c'].map(id => ({ ...ripped(id, '1/2', '1/2'), ...long })));
        const steps = ripsInto(boards, 'boards');
        expect(steps.map(step => [step.what, printInches(step.width)])).toEqual([['boards', '1/2"'], ['on edge', '1/2"']]);
        expect(steps[0]!.boards.flatMap(({ strips }) => strips)).toEqual([1, 2, 3]);
        // 5/8" x 1/2" out of 3/4": across the board first, then the other way on edge
        const unequal = laid(['a', 'b', 'c'].map(id => ({ ...ripped(id, '5/8', '1/2', id === 'c' ? 'fence C' : undefined), ...long })));
        expect(ripsInto(unequal, 'boards').map(({ what, width, fence = '-' }) => `${what} ${printInches(width)} ${fence}`)).toEqual([
            'boards 5/8" -', 'boards 5/8" fence C', 'on edge 1/2" -', 'on edge 1/2" fence C',
        ]);
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
    // a section of 60" and a piece of 128" are two stops for the board, the two lengths of the section's strips two more; one as long as its section has none
    test('a section is taken up again for each length of its strips', () => {
        const strip = (id: string, length: string): Piece => piece(id, pine, inches(length), { part: 'cleat', width: inches('3/4'), ripped: true });
        const long = stock({ feet: [16] }), boards = laid([piece('a', long, inches(128)), ...[60, 60, 35, 35, 24, 24].map((length, i) => ({ ...strip(`c${i}`, String(length)), stock: long }))]);
        expect(boards.map(({ sections }) => sections.map(({ from, to }) => printInches(to - from)))).toEqual([['60"']]);
        expect(boards.map(pickUpsOf)).toEqual([4]);
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
        ['mitered at both, ripped before it is rabbeted', side([MITER, MITER], { work: [{ kind: 'rip', width: inches(5) }, ...rabbet('lower', 'back').work] }),
            'hook one long point; along the upper back edge to the other'],
        ['mitered at both, a rabbet in front', side([MITER, MITER], rabbet('lower', 'front')), 'hook one long point; along the back to the other'],
        ['mitered at both, a rabbet on the upper front edge', side([MITER, MITER], rabbet('upper', 'front')), 'hook one long point; along the back to the other'],
        ['round an outside corner, longer at its face', side([OUTSIDE, OUTSIDE]), 'hook one long point; along the face to the other'],
        ['round an outside corner, a rabbet on the lower front edge', side([OUTSIDE, OUTSIDE], rabbet('lower', 'front')), 'hook one long point; along the upper face edge to the other'],
        ['round an outside corner, a rabbet on the upper front edge', side([OUTSIDE, SQUARE], rabbet('upper', 'front')), 'hook the square end; along the lower face edge to the long point'],
        ['round an outside corner, a rabbet behind', side([OUTSIDE, OUTSIDE], rabbet('lower', 'back')), 'hook one long point; along the face to the other'],
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
        // of the cleats' own stock no gauge is wanted: what is gauged is where the bottom comes to lie
        cleat('A'), cleat('B'), { ...cleat('B'), id: 'cleat-of-elm', stock: stock({ name: 'elm-1x6', feet: [8] }) }, piece('a', pine, inches(20), { line: 'A', work: [slots] }),
        piece('b', fir, inches(20), { line: 'B', work: [slots, { ...slots, size: '#20' }] }),
        piece('c', fir, inches(21), { line: 'B' }), piece('d', stock({ name: 'ash-1x6', feet: [8] }), inches(20), { line: 'C' }),
        piece('s', pine, inches(25), { part: 'side', ends: [MITER, MITER], work: [{
            kind: 'rabbet', width: inches('1/4'), height: inches('3/8'), edge: 'lower', face: 'back',
        }] }),
        piece('t', pine, inches(25), { part: 'side', ends: [MITER, { cut: 'miter', degrees: 30 }] }),
    ];
    // line C has no cleats, so its ash needs no gauge
    expect(blocksOf(laid(pieces), job()).map(block => `${block.count} ${block.kind} ${block.stock.name}: ${block.for}`).sort()).toEqual([
        '1 rabbet test pine-1x6: rabbet', '2 cleat gauge fir-1x6: cleats, held between them and the lower edge of the side',
        '2 cleat gauge pine-1x6: cleats, held between them and the lower edge of the side',
        '2 miter test pine-1x6: 30° pair', '2 miter test pine-1x6: 45° pair', '2 slot test fir-1x6: #10 biscuit', '2 slot test fir-1x6: #20 biscuit',
    ]);
});

describe('what blocks come out of', () => {
    const gaugeOut = (pieces: readonly Piece[]): string[] =>
        blocksOf(laid(pieces), job()).filter(({ kind }) => kind === 'cleat gauge').flatMap(({ out }) => out.map(({ name }) => name));
    const cleats = (count: number, length: string, of = pine): Piece[] => Array.from({ length: count }, (_, i) =>
        piece(`c${i}`, of, inches(length), { part: 'cleat', width: inches('1 1/2'), ripped: true, work: [{ kind: 'rip', width: inches('1 1/2'), thickness: inches('3/4') }] }));
    // 8' less 1" of trim and 90" and a kerf are 4 7/8": too short for a block of 8". So it has to come from the board of the cleats.
    const bottom = piece('bottom', pine, inches(90));

    // two strips of 1 1/2" and their kerfs are 3 1/4" of 5 1/2": 2 1/4" stay beside them, and a gauge block is 2" wide
    test('what stays beside the strips of a whole board does for a block that is narrow enough', () => {
        const [first, second] = gaugeOut([bottom, ...cleats(2, '94')]);
        expect(first).toBe(second);
        expect(laid([bottom, ...cleats(2, '94')]).find(({ name }) => name === first)!.strips.map(({ rippedTo }) => rippedTo)).toEqual([inches('1 1/2'), inches('1 1/2')]);
    });
    // a block of 8" and a kerf come out of what is 20" long, be it 5 1/2" wide or a strip of 2 1/4": the wide one stays whole
    test('of two that are as long the narrower is taken', () => {
        const board = (name: string, rippedTo: string) => ({
            ...laid([bottom])[0]!, name, strips: [{ ...laid([bottom])[0]!.strips[0]!, rippedTo: inches(rippedTo), offcut: inches(20), pieces: name === 'wide' ? laid([bottom, ...cleats(1, '20')])[0]!.strips[0]!.pieces : [] }],
        });
        for (const boards of [[board('wide', '5 1/2'), board('narrow', '2 1/4')], [board('narrow', '2 1/4'), board('wide', '5 1/2')]]) {
            const all = [...boards, ...laid([bottom, ...cleats(1, '20')]).map(one => ({ ...one, sections: [], besideStrips: 0, strips: one.strips.map(strip => ({ ...strip, offcut: 0 })) }))];
            expect(blocksOf(all, job()).find(({ kind }) => kind === 'cleat gauge')!.out.map(({ name }) => name)).toEqual(['narrow', 'narrow']);
        }
    });
    // a third strip leaves 5/8"
    test('nothing is named that is too narrow', () => {
        expect(gaugeOut([bottom, ...cleats(3, '94')])).toEqual([]);
    });
    // 16' less 1" of trim: 128", a kerf, a section of 60" and its kerf leave 2 3/4". Beside the strips of the section 2 1/4" stay, but no
    // longer than the section, and beside the strips of another it may be less
    test('beside the strips of a section nothing is promised', () => {
        const long = stock({ feet: [16] }), pieces = [piece('bottom', long, inches(128)), ...cleats(2, '60', long)];
        expect(laid(pieces).map(({ sections }) => sections.length)).toEqual([1]);
        expect(gaugeOut(pieces)).toEqual([]);
    });
});

describe('the order at an angle', () => {
    const side = (id: string, length: string, ends: [EndCut, EndCut], over: Partial<Piece> = {}): Piece => piece(id, pine, inches(length), { part: 'side', on: 'south', ends, ...over });
    const FACE: EndCut = { cut: 'miter', degrees: -45 };
    const cutsOf = (...pieces: Piece[]) => mitersOf(pieces).map(({ degrees, cuts }) =>
        [degrees, cuts.map(({ stop, end, hand, long, flat, pieces: own }) => [stop === undefined ? '-' : printInches(stop), hand, end, long, flat ? 'flat' : 'on edge', own.map(({ id }) => id).join(' ')].join(' | '))]);

    // what is cut to the corner of its blank needs no stop; then each stop is set once, and at it the saw is swung over once for each hand
    test('ends without a stop, then the long stops, at one stop lefts, rights, what fits either way, second ends', () => {
        expect(cutsOf(
            side('either', '30', [MITER, SQUARE]), side('right', '30', [SQUARE, MITER], { hand: 'right' }), side('left', '30', [MITER, SQUARE], { hand: 'left' }),
            side('both', '30', [MITER, MITER]), side('long', '31', [MITER, SQUARE]),
        )).toEqual([[45, [
            '- | both ends | left | back | on edge | both',
            '31" | either | right | back | on edge | long',
            '30" | left | left | back | on edge | left',
            '30" | right | right | back | on edge | right',
            '30" | either | right | back | on edge | either',
            '30" | both ends | right | back | on edge | both',
        ]]]);
    });
    // the right end is the steeper and cut first, so that the left one makes the length: at 45 degrees both ends come to a stop of 30"
    test('of pieces mitered at both ends those whose left end is cut before those whose right end is', () => {
        expect(cutsOf(side('r', '30', [{ cut: 'miter', degrees: 50 }, MITER]), side('l', '30', [MITER, { cut: 'miter', degrees: 50 }]))[1]).toEqual([45, [
            '30" | both ends | left | back | on edge | l', '30" | both ends | right | back | on edge | r',
        ]]);
    });
    test('an end that needs no stop has none', () => {
        expect(mitersOf([side('both', '30', [MITER, MITER])])[0]!.cuts.map(cut => 'stop' in cut)).toEqual([false, true]);
    });
    test('what stands on edge before what lies flat, a long point at the back before one at the face', () => {
        expect(cutsOf(
            side('flat', '30', [MITER, SQUARE], { part: 'bottom', hand: 'left' }), side('face', '30', [FACE, SQUARE], { hand: 'left' }), side('back', '30', [MITER, SQUARE], { hand: 'left' }),
        )).toEqual([[45, [
            '30" | left | left | back | on edge | back', '30" | left | left | face | on edge | face', '30" | left | left | back | flat | flat',
        ]]]);
    });
    // the saw stands at 45 already when the crown's bevel is added
    test('the steepest angle first; a crown has a setting of its own, after what is cut at the same angle', () => {
        const crown: EndCut = { cut: 'miter', degrees: 45, flat: { miter: 35.26, bevel: 30 } };
        expect(mitersOf([
            side('flatter', '30', [{ cut: 'miter', degrees: 30 }, SQUARE]), side('crown', '30', [crown, SQUARE], { part: 'trim' }), side('plain', '30', [MITER, SQUARE]),
        ]).map(({ degrees, flat, cuts }) => [degrees, flat?.bevel ?? 0, cuts[0]!.pieces[0]!.id])).toEqual([[45, 0, 'plain'], [45, 30, 'crown'], [30, 0, 'flatter']]);
    });
    // a saw is set to a tenth of a degree
    test('angles that no saw tells apart are one setting', () => {
        const angles = (...degrees: number[]): number[] => mitersOf(degrees.map((own, i) => side(`s${i}`, '30', [{ cut: 'miter', degrees: own }, SQUARE]))).map(step => step.degrees);
        expect([angles(45.001, 45), angles(45.04, 44.96), angles(45.06, 44.94), angles(0.04)]).toEqual([[45], [45], [45.1, 44.9], []]);
        // what is as good as square there is square for its stop and the tape too
        const nearly: EndCut = { cut: 'angled', degrees: 0.03 };
        expect(mitersOf([side('n', '30', [nearly, MITER])]).flatMap(({ degrees, cuts }) => cuts.map(({ stop, hand }) => [degrees, stop, hand]))).toEqual([[45, inches(30), 'either']]);
        expect(tapingWords(tapingOf(side('n', '30', [nearly, nearly])))).toBe('hook either end');
    });
});

test('coped ends are counted, of the pieces that have any', () => {
    const COPED: EndCut = { cut: 'coped', degrees: 45 };
    const trim = (id: string, ends: [EndCut, EndCut]): Piece => piece(id, pine, inches(30), { part: 'trim', ends });
    expect(copesOf([trim('b', [COPED, SQUARE]), trim('c', [SQUARE, MITER]), trim('a', [COPED, COPED])]))
        .toMatchObject([{ do: 'cope', ends: 3, pieces: [{ id: 'a' }, { id: 'b' }] }]);
    expect(copesOf([trim('c', [SQUARE, MITER])])).toEqual([]);
});

describe('the stop', () => {
    const stops = (...lengths: string[]) => crosscutsOf(laid(lengths.map((length, i) => piece(`p${i}`, stock({ feet: [12] }), inches(length)))), 'boards');
    // common practice, no source
    test('reaches 8 feet; what is longer is measured by the tape', () => {
        expect(stops('96', '96 1/32').map(({ stop, by }) => [printInches(stop), by])).toEqual([['96 1/32"', 'tape'], ['96"', 'stop']]);
    });
});

describe('machines', () => {
    const holes = (id: string, count: number): Piece => piece(id, pine, inches(20), { work: [{ kind: 'pocket-holes', count }] });
    test('pocket holes by how many a piece has, its pieces in the order of their names', () => {
        expect(pocketsOf([holes('c', 2), holes('b', 1), holes('a', 2)]).map(({ each, pieces }) => [each, pieces.map(({ id }) => id).join('')])).toEqual([[2, 'ac'], [1, 'b']]);
    });
    // the joiner's fence is set to the middle of the thickness: another thickness is another setting
    test('slots of one biscuit are a setting for each thickness', () => {
        const slot = (id: string, thickness: string, places: number): Piece => piece(id, pine, inches(20), {
            thickness: inches(thickness), work: [{ kind: 'slots', count: 2, size: '#10', places, where: 'in the ends' }, { kind: 'slots', count: 1, size: '#10', places: 1, where: 'in the back' }],
        });
        expect(slotStepsOf([slot('b', '3/4', 2), slot('a', '3/4', 1), slot('c', '1/2', 1)]).map(({ fence, count, pieces }) => [printInches(fence), count, pieces.map(({ id }) => id).join('')]))
            .toEqual([['3/8"', 8, 'ab'], ['1/4"', 3, 'c']]);
    });
    // 3/8" wide and 1/4" high at 1/8" a pass are three; to ease 1/8" takes one pass, along both back edges
    test('as many passes as the larger side of a rabbet takes; boards that hold nothing else may be run whole', () => {
        const rabbet: Piece['work'][number] = { kind: 'rabbet', width: inches('3/8'), height: inches('1/4'), edge: 'lower', face: 'back' };
        const boards = laid([piece('a', pine, inches(94), { work: [rabbet] }), piece('b', pine, inches(50), { work: [rabbet, { kind: 'ease', by: inches('1/8') }] }), piece('c', pine, inches(40))]);
        expect(edgesOf(boards, job()).map(step => [step.do, step.passes, printInches(step.run), step.whole.map(({ strips }) => strips[0]!.pieces.map(p => p.piece.id).join(''))])).toEqual([
            ['rabbet', 3, '144"', ['a']], ['ease', 1, '100"', []],
        ]);
        // two strips abreast: what runs over the whole board would run over the other one too
        const two = boards.map(board => ({ ...board, strips: [board.strips[0]!, ...boards.flatMap(({ strips }) => strips).filter(({ pieces }) => pieces[0]!.piece.id === 'b')] }));
        expect(edgesOf(two.slice(0, 1), job()).flatMap(({ whole }) => whole)).toEqual([]);
    });
});

describe('cautions', () => {
    test('those of every machine come first; each of the others once, at the first work that it is for', () => {
        const cautions = cautionsOf([{ do: 'rabbet' }, { do: 'ease' }, { do: 'rabbet' }, { do: 'miter' }]);
        expect(cautions.map(({ at }) => at)).toEqual(['all', 'all', 'all', 'rabbet', 'rabbet', 'miter']);
        expect(new Set(cautions.map(({ words }) => words)).size).toBe(cautions.length);
        expect(cautionsOf([{ do: 'ease' }]).at(-1)).toMatchObject({ at: 'ease', words: expect.stringContaining('against the rotation of the bit') });
    });
});

describe('boards as they lie', () => {
    const long = stock({ feet: [16] });
    const strips = (of: string, length: string): Piece[] => [1, 2, 3, 4, 5, 6].map(i => piece(`${of}${i}`, long, inches(length), { part: 'cleat', width: inches('3/4'), ripped: true }));

    // the stop is set from long to short: whatever is longer, piece or section, is cut off before, and of equal ones a piece first, then section 1
    test('pieces and sections, the longest nearest to the hooked end; of one length pieces before sections, and these by their numbers', () => {
        const plan = planBoards([piece('bottom', long, inches(50)), ...strips('c', '50'), ...strips('d', '60')], job());
        const [board] = plan.stocks[0]!.boards;
        expect(plan.stocks[0]!.boards).toHaveLength(1);
        const lie = (order: readonly number[]) => {
            const lengths = order.map(i => inches(i));
            const [one] = sawOrder({ ...plan, stocks: [{ ...plan.stocks[0]!, boards: [{ ...board!, sections: lengths }] }] }, job()).boards;
            return [
                ...one!.sections.map(({ number, from, to }) => ({ from, what: `${number}: ${printInches(to - from)}` })),
                ...one!.strips.flatMap(strip => (strip.rippedTo === undefined ? strip.pieces.map(({ from, piece: { id } }) => ({ from, what: id })) : [])),
            ].toSorted((a, b) => a.from - b.from).map(({ what }) => what);
        };
        expect(lie([60, 50])).toEqual(['1: 60"', 'bottom', '2: 50"']);
        expect(lie([50, 60])).toEqual(['2: 60"', 'bottom', '1: 50"']);
        expect(lie([50, 50])).toEqual(['bottom', '1: 50"', '2: 50"']);
        const numbers = sawOrder({ ...plan, stocks: [{ ...plan.stocks[0]!, boards: [{ ...board!, sections: [inches(50), inches(60)] }] }] }, job()).boards[0]!;
        expect(numbers.sections.map(({ number }) => number)).toEqual([1, 2]);
        expect(new Set(numbers.strips.map(({ number }) => number)).size, 'each strip has a number of its own').toBe(board!.strips.length);
    });
});

test('a sheet that is ripped across lies as long as it is wide, and what is beside its strips is as long', () => {
    const sheet: Stock = { ...pine, name: 'ply', width: { ...pine.width!, value: { ...pine.width!.value, ticks: inches(48) } } };
    const strip = { rippedTo: inches(12), pieces: [piece('a', sheet, inches(40), { width: inches(12), ripped: true })], offcut: 0, kept: false };
    const lay = (crosswise: boolean) => {
        const board: Board = { number: 1, length: inches(96), from: 'bought', strips: [strip], ...crosswise && { crosswise } };
        const stocks = [{ ...planBoards(strip.pieces, job()).stocks[0]!, stock: sheet, boards: [board] }];
        const plan: BoardPlan = { stocks, costs: [], unpriced: [], unplaced: [] };
        return layBoards(plan, job()).map(({ along, across, besideStrips }) => [along, across!, besideStrips].map(length => printInches(length)));
    };
    // a strip of 12" and its kerf
    expect([lay(false), lay(true)]).toEqual([[['96"', '48"', '35 7/8"']], [['48"', '96"', '83 7/8"']]]);
});

test('what is cut off boards at one stop: square, or straight to its miters where a stop is set for that', () => {
    const takes: Take[] = [], at = { number: 7, stop: inches(40), takes };
    const miter = (...cuts: Partial<MiterStep['cuts'][number]>[]): Step => ({ do: 'miter', number: 8, cuts }) as unknown as Step;
    const cuts = [{ stop: inches(30), takes }, { takes }, { stop: inches(20) }, {}];
    const crosscut = { do: 'crosscut', ...at } as unknown as Step, blocks = { do: 'blocks', number: 9 } as unknown as Step;
    expect([cutOff(crosscut), cutOff(miter(...cuts)), cutOff(blocks)]).toEqual([
        [{ do: 'crosscut', ...at }], [{ number: 8, stop: inches(30), takes }], [],
    ]);
});
