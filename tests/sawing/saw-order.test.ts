import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { planBoards } from '../../src/cutting/first-plan.ts';
import type { JobSettings } from '../../src/job/model.ts';
import { inches } from '../../src/quantity/rational.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { sawOrder } from '../../src/sawing/index.ts';
import type { MiterStep, SawOrder, Step } from '../../src/sawing/model.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import type { EndCut, Piece } from '../../src/takeoff/model.ts';
import { given, job, piece, stock } from '../cutting/samples.ts';
import { exampleRoom } from '../support/example-room.ts';
import { randomRooms } from '../support/random-rooms.ts';
import { checkSawOrder } from './checker.ts';
import { runs } from '../support/full.ts';

const MITER: EndCut = { cut: 'miter', degrees: 45 };
const SQUARE: EndCut = { cut: 'square' };

function orderOf(pieces: readonly Piece[], settings: JobSettings = job()): SawOrder {
    const plan = planBoards(pieces, settings);
    const order = sawOrder(plan, settings);
    checkSawOrder(order, plan, settings);
    return order;
}
const steps = <Kind extends Step['do']>(order: SawOrder, kind: Kind): Extract<Step, { do: Kind }>[] =>
    order.steps.filter((s): s is Extract<Step, { do: Kind }> => s.do === kind);
const inch = (ticks: number | undefined): string => (ticks === undefined ? '-' : printInches(ticks));

describe('the readings of the tape', () => {
    // An 8' board is 96". End trim 1", so 1/2" at the hooked end. Kerf 1/8".
    //   30" from 1/2" to 30 1/2"; the next begins at 30 5/8"
    //   20" from 30 5/8" to 50 5/8"; the next begins at 50 3/4"
    //   20" from 50 3/4" to 70 3/4"; its kerf ends at 70 7/8"
    //   rest 96 - 70 7/8 = 25 1/8"; less 1/2" of trim 24 5/8" to use
    test('longest first, kerfs and end trim counted', () => {
        const pine = stock({ feet: [8] });
        const { boards } = orderOf([piece('b', pine, inches(20)), piece('c', pine, inches(20)), piece('a', pine, inches(30))]);
        const [strip] = boards[0]!.strips;
        expect(strip!.pieces.map(p => [p.piece.id, inch(p.from), inch(p.to)])).toEqual([
            ['a', '1/2"', '30 1/2"'], ['b', '30 5/8"', '50 5/8"'], ['c', '50 3/4"', '70 3/4"'],
        ]);
        expect([inch(strip!.trim), inch(strip!.rest), inch(strip!.offcut), strip!.kept]).toEqual(['1/2"', '25 1/8"', '24 5/8"', true]);
    });

    // Two pieces of 47 7/16" fill what 96" - 1" = 95" leave: 2 x 47 7/16 + 1/8 = 95 exactly. The last kerf falls into the far trim.
    test('the last piece may end where the far trim begins', () => {
        const pine = stock({ feet: [8] });
        const [strip] = orderOf([piece('a', pine, inches('47 7/16')), piece('b', pine, inches('47 7/16'))]).boards[0]!.strips;
        expect([inch(strip!.pieces[1]!.to), inch(strip!.rest), strip!.offcut]).toEqual(['95 1/2"', '3/8"', 0]);
    });

    // A kerf of 1/8" at 45 degrees is 0.1768" along the board, 0.0518" more than square: 1/32" of it on a tape of thirty-seconds.
    test('the blank of a mitered piece is longer by what a slanted kerf leaves over a square one', () => {
        const fir = stock({ name: 'fir-1x8', width: inches('7 1/4'), feet: [8] });
        const side = piece('a', fir, inches('40 1/2'), { part: 'side', face: inches(39), cutFace: inches(39), ends: [MITER, MITER] });
        const order = orderOf([side]);
        const [strip] = order.boards[0]!.strips;
        expect([inch(strip!.pieces[0]!.from), inch(strip!.pieces[0]!.to)]).toEqual(['1/2"', '41 1/32"']);
        expect(steps(order, 'crosscut').map(s => [inch(s.stop), inch(s.over)])).toEqual([['40 17/32"', '1/32"']]);
    });

    // Six strips of 3/4" take 6 x 3/4 + 5 x 1/8 = 5 1/8" of a 5 1/2" board; after one more kerf 1/4" is left beside them.
    test('strips lie side by side', () => {
        const pine = stock({ feet: [8] });
        const cleats = [1, 2, 3, 4, 5, 6].map(i => piece(`c${i}`, pine, inches(80), { part: 'cleat', width: inches('3/4'), work: [{ kind: 'rip', width: inches('3/4'), thickness: inches('3/4') }] }));
        const order = orderOf(cleats);
        expect(order.boards[0]!.strips.map(s => inch(s.rippedTo))).toEqual(Array(6).fill('3/4"'));
        expect(inch(order.boards[0]!.besideStrips)).toBe('1/4"');
        expect(steps(order, 'rip').map(s => [inch(s.width), s.what, s.boards.map(b => [b.board.name, b.strips.length])])).toEqual([['3/4"', 'boards', [['pine-1x6 #1', 6]]]]);
    });
});

describe('settings', () => {
    const pine = stock({ feet: [8] });
    const oak = stock({ name: 'oak-1x4', width: inches('3 1/2'), feet: [8] });

    test('one stop serves all boards and stocks; it goes from long to short', () => {
        const order = orderOf([piece('a', pine, inches(60)), piece('b', pine, inches(60)), piece('c', oak, inches(60)), piece('d', pine, inches(20)), piece('e', oak, inches(30))]);
        expect(steps(order, 'crosscut').map(s => [inch(s.stop), s.takes.map(t => `${t.board.name}: ${t.pieces.map(p => p.piece.id).join(' ')}`)])).toEqual([
            ['60"', ['oak-1x4 #1: c', 'pine-1x6 #1: a', 'pine-1x6 #2: b']],
            ['30"', ['oak-1x4 #1: e']],
            ['20"', ['pine-1x6 #1: d']],
        ]);
        // three settings; oak #1 comes twice, pine #1 twice, pine #2 once
        expect(order.setUps).toMatchObject({ stops: 3, total: 3, pickUps: 5 });
    });

    test('what is longer than a stop reaches is measured', () => {
        const long = stock({ feet: [12] });
        expect(steps(orderOf([piece('a', long, inches(100)), piece('b', long, inches(96))]), 'crosscut').map(s => s.by)).toEqual(['tape', 'stop']);
    });

    test('a piece that shares its board with pieces of full width is ripped after it is cut to length, at the fence the job names', () => {
        const bottom = piece('bottom', pine, inches(40), { width: inches('5 7/16'), work: [{ kind: 'rip', width: inches('5 7/16'), fence: 'fence A' }] });
        const order = orderOf([bottom, piece('a', pine, inches(20))]);
        expect(order.steps.map(s => s.do)).toEqual(['crosscut', 'crosscut', 'rip']);
        expect(steps(order, 'rip')).toMatchObject([{ what: 'pieces', fence: 'fence A', width: inches('5 7/16'), pieces: [{ id: 'bottom' }] }]);
    });

    test('a cleat out of a strip of one width is ripped once; thinner than the board both ways, twice', () => {
        const strip = stock({ name: 'strip-1x2', width: inches('1 1/2'), feet: [8] });
        const cleat = (thickness: string, width: string, id = 'c'): Piece => piece(id, strip, inches(80), {
            part: 'cleat', width: inches(width), thickness: inches(thickness), ripped: true, work: [{ kind: 'rip', width: inches(width), thickness: inches(thickness) }],
        });
        const fences = (...cleats: Piece[]) => steps(orderOf(cleats), 'rip').map(s => [s.what, inch(s.width)]);
        expect(fences(cleat('3/4', '3/4'))).toEqual([['pieces', '3/4"']]);
        // two strips of 1/2" come out of 1 1/2": ripped whole, then once more on edge
        expect(fences(cleat('1/2', '1/2'), cleat('1/2', '1/2', 'd'))).toEqual([['boards', '1/2"'], ['on edge', '1/2"']]);
    });

    test('a board that is cut already has no step', () => {
        const plan = planBoards([piece('a', pine, inches(60)), piece('b', pine, inches(60))], job());
        const [first, ...rest] = plan.stocks[0]!.boards;
        const order = sawOrder({ ...plan, stocks: [{ ...plan.stocks[0]!, boards: [{ ...first!, from: 'already cut' }, ...rest] }] }, job());
        expect(order.boards).toHaveLength(2);
        expect(steps(order, 'crosscut').flatMap(s => s.takes).flatMap(t => t.pieces).map(p => p.piece.id)).toEqual(['b']);
        expect(order.setUps.pickUps).toBe(1);
    });
});

describe('miters', () => {
    const fir = stock({ name: 'fir-1x8', width: inches('7 1/4'), feet: [16] });
    const side = (id: string, on: 'north' | 'south', ends: [EndCut, EndCut], hand: Piece['hand'], back: string): Piece => piece(id, fir, inches(back), {
        part: 'side', on, ends, hand, face: inches(30), cutFace: inches(30), work: [{ kind: 'rabbet', width: inches('1/4'), height: inches('1/4'), edge: 'lower', face: 'back' }],
    });
    // A side facing south is looked at from the south: west, its first end, is on the left. Facing north it is the other way round.
    const both = side('both', 'south', [MITER, MITER], null, '31 1/2');
    const left = side('left', 'south', [MITER, SQUARE], 'left', '30 3/4');
    const right = side('right', 'north', [MITER, SQUARE], 'right', '30 3/4');

    test('first the ends that need no stop, then lefts before rights at every stop', () => {
        const [miter] = steps(orderOf([right, both, left]), 'miter') as [MiterStep];
        expect(miter.cuts.map(c => [inch(c.stop), c.hand, c.end, c.pieces.map(p => p.id)])).toEqual([
            ['-', 'both ends', 'left', ['both']],
            ['31 1/2"', 'both ends', 'right', ['both']],
            ['30 3/4"', 'left', 'left', ['left']],
            ['30 3/4"', 'right', 'right', ['right']],
        ]);
    });

    test('as they lie, a left has its miter on the left', () => {
        const laid = orderOf([right, left]).boards.flatMap(b => b.strips).flatMap(s => s.pieces);
        expect(laid.map(p => [p.piece.id, p.ends.map(e => e.cut)])).toEqual([['left', ['miter', 'square']], ['right', ['square', 'miter']]]);
    });

    test('a rabbet in the upper edge is looked at upside down: left and right change places', () => {
        const upside = { ...left, hand: 'right' as const, work: [{ ...left.work[0]!, edge: 'upper' as const }] as Piece['work'] };
        const [laid] = orderOf([upside]).boards.flatMap(b => b.strips).flatMap(s => s.pieces);
        expect(laid!.ends.map(e => e.cut)).toEqual(['square', 'miter']);
    });

    test('ends of two angles are cut each at its own, the steeper first', () => {
        const steep: EndCut = { cut: 'miter', degrees: 47.5 }, flat: EndCut = { cut: 'miter', degrees: 42.5 };
        const miters = steps(orderOf([side('s', 'south', [flat, steep], null, '31 1/2')]), 'miter');
        expect(miters.map(m => [m.degrees, m.cuts.map(c => [c.end, inch(c.stop)])])).toEqual([[47.5, [['right', '-']]], [42.5, [['left', '31 1/2"']]]]);
    });
});

describe('test pieces and gauge blocks', () => {
    const pine = stock({ feet: [8] });
    const cleat = piece('c', stock({ name: 'strip', width: inches('1 1/2') }), inches(40), { part: 'cleat', width: inches('3/4') });

    // 96 - 1 - 2 x 37 - 2 x 1/8 = 20 3/4" are left; two blocks of 8" and their kerfs take 16 1/4"
    test('cleats are gauged with the bottom\'s own stock, out of its shortest offcut that is long enough', () => {
        const order = orderOf([cleat, piece('b1', pine, inches(37)), piece('b2', pine, inches(37)), piece('b3', pine, inches(30))]);
        const [gauge] = steps(order, 'blocks')[0]!.blocks;
        expect(gauge).toMatchObject({ kind: 'cleat gauge', stock: { name: 'pine-1x6' }, count: 2, out: [{ name: 'pine-1x6 #1' }, { name: 'pine-1x6 #1' }] });
    });

    // 96 - 1 = 95" to cut from; a piece and its kerf of 1/8" leave 8 1/8", which a block of 8" and its kerf just use up; 1/32" less do not do
    test('a block takes its kerf too', () => {
        const outOf = (length: string): number => steps(orderOf([cleat, piece('b1', pine, inches(length))]), 'blocks')[0]!.blocks[0]!.out.length;
        expect(outOf('86 3/4')).toBe(1);
        expect(outOf('86 25/32')).toBe(0);
    });

    // at a square corner of 3/4" and 1/2" boards: tan a = 1/2 : 3/4, so a = 33.7 degrees for the one, 56.3 for the other
    test('boards of two thicknesses that meet in a corner are tried against each other, one of either', () => {
        const thick = stock({ name: 'thick', feet: [8] }), thin = stock({ name: 'thin', thickness: inches('1/2'), feet: [8] });
        const mitered = (degrees: number): Partial<Piece> => ({ part: 'side', ends: [{ cut: 'miter', degrees }, SQUARE] });
        const tests = (a: number, b: number): string[] => steps(orderOf([piece('a', thick, inches(40), mitered(a)), piece('b', thin, inches(40), mitered(b))]), 'blocks')
            .flatMap(step => step.blocks).filter(({ kind }) => kind === 'miter test').map(({ count, stock: of, for: use }) => `${count} of ${of.name}: ${use}`);
        expect(tests(33.7, 56.3)).toEqual(['1 of thick: 33.7°, against 56.3° on thin', '1 of thin: 56.3°, against 33.7° on thick']);
        expect(tests(45, 45)).toEqual(['2 of thick: 45° pair']);
    });

    test('where no offcut is long enough none is named', () => {
        const order = orderOf([cleat, piece('b1', pine, inches(47)), piece('b2', pine, inches(47))]);
        expect(steps(order, 'blocks')[0]!.blocks[0]!.out).toEqual([]);
    });
});

describe('machining', () => {
    // 1/4" deep, no pass over 1/8": two passes. A figure of the bit's wear: a sixty-fourth warns, a thirty-second rejects.
    test('passes, the run, and a gauge check every fifth piece', () => {
        const fir = stock({ name: 'fir-1x8', width: inches('7 1/4'), feet: [16] });
        const sides = [1, 2, 3, 4].map(i => piece(`s${i}`, fir, inches(40), { part: 'side', work: [{ kind: 'rabbet', width: inches('1/4'), height: inches('1/4'), edge: 'lower', face: 'back' }] }));
        const [rabbet] = steps(orderOf(sides), 'rabbet');
        expect(rabbet).toMatchObject({ passes: 2, run: inches(160), gauging: { every: 5, warn: inches('1/64'), reject: inches('1/32') }, whole: [{ name: 'fir-1x8 #1' }] });
    });

    // two ends with 2 biscuits each are 4 slots
    test('a piece that was spoiled is machined twice', () => {
        const spoiled = piece('s', stock(), inches(40), { ends: [MITER, MITER], work: [{ kind: 'ease', by: inches('1/8') }] });
        const order = orderOf([spoiled, spoiled]);
        expect(steps(order, 'ease')).toMatchObject([{ pieces: [{ id: 's' }, { id: 's' }], run: inches(160) }]);
        expect(steps(order, 'miter')[0]!.cuts.map(c => c.pieces.length)).toEqual([2, 2]);
    });

    test('slots are counted at every end', () => {
        const b = piece('b', stock(), inches(40), { work: [{ kind: 'slots', count: 2, size: '#10', places: 2, where: 'in the west and the east end' }] });
        expect(steps(orderOf([b]), 'slots')).toMatchObject([{ size: '#10', count: 4, fence: inches('3/8') }]);
    });
});

describe('whole rooms', () => {
    test('the example room, step by step', () => {
        const room = exampleRoom();
        const { ceiling } = layOut(room);
        const order = orderOf(takeOff(ceiling!).pieces, room.job);
        expect(order.steps.map(s => s.do).filter((kind, i, all) => kind !== all[i - 1])).toEqual(['rip', 'crosscut', 'rip', 'blocks', 'rabbet', 'ease', 'miter', 'slots', 'pocket holes']);
        expect(order.cautions.map(c => c.at)).toContain('rabbet');
        expect(order.cautions.some(c => /\bsafe\b/i.test(c.words))).toBe(false);
    });

    test('any room: every piece at one stop and on one board, marks that rise, sums that are the board, miters of the right hand', () => {
        fc.assert(fc.property(randomRooms, ({ room }) => {
            const { ceiling } = layOut(room);
            if (!ceiling) return;
            const { pieces } = takeOff(ceiling);
            const plan = planBoards(pieces, room.job);
            const order = sawOrder(plan, room.job);
            checkSawOrder(order, plan, room.job);
            expect(sawOrder(plan, room.job)).toEqual(order);
        }), { seed: 17, numRuns: runs(120) });
    });

    test('nothing to cut is no step and no caution', () => {
        expect(orderOf([])).toMatchObject({ boards: [], steps: [], cautions: [], setUps: { total: 0, pickUps: 0 } });
    });

    test('in millimeters the cutter is gauged in tenths', () => {
        const metric = job({ show: given('millimeters' as const) });
        const side = piece('s', stock({ name: 'fir', width: inches('7 1/4') }), inches(40), { work: [{ kind: 'rabbet', width: 6 * 640, height: 6 * 640, edge: 'lower', face: 'back' }] });
        expect(steps(orderOf([side], metric), 'rabbet')).toMatchObject([{ passes: 2, gauging: { warn: 256, reject: 512 } }]);
    });
});

test('pieces that are cut in two alike are halved at one stop, each by its name', () => {
    const halved = (id: string, length: string): Piece => piece(id, stock(), inches(length), { work: [{ kind: 'halve', relieved: inches('1/32') }] });
    const settings = job(), found = steps(sawOrder(planBoards([halved('b1', '30'), halved('b2', '30'), halved('b3', '36')], settings), settings), 'halve');
    expect(found.map(({ stop, pieces }) => [inch(stop), pieces.map(({ id }) => id)])).toEqual([['18"', ['b3']], ['15"', ['b1', 'b2']]]);
});

test('a strip whose pieces are not all ripped with a setting that has a name is ripped with the one that has', () => {
    const strip = (id: string, length: string, fence?: string): Piece => piece(id, stock({ feet: [8] }), inches(length), {
        part: 'cleat', width: inches('3/4'), work: [{ kind: 'rip', width: inches('3/4'), thickness: inches('3/4'), ...fence !== undefined && { fence } }],
    });
    expect(steps(orderOf([strip('long', '50'), strip('short', '40', 'fence B')]), 'rip').map(({ fence }) => fence)).toEqual(['fence B']);
});
