import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cutLines, onHandLines } from '../../src/cutting/cut-line.ts';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { besideStrips, leftoversOf } from '../../src/cutting/leftovers.ts';
import type { Board } from '../../src/cutting/model.ts';
import { leftAfter, restToCut, withCutBoards } from '../../src/cutting/rest.ts';
import type { CutBoard, Room, Stock } from '../../src/job/model.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT, type Ticks } from '../../src/quantity/ticks.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { jobBuilder } from '../support/job-builder.ts';
import { given, job, nowhere, piece, stock } from './samples.ts';
import { runs } from '../support/full.ts';

const settings = job();
const feet = (n: number): Ticks => n * TICKS_PER_FOOT;
const empty = jobBuilder().room('den', {});

/** A room called den with these boards cut and these pieces spoiled. */
function den(cut: readonly { length: Ticks; of: Stock; into?: readonly string[]; left?: readonly Ticks[] }[], spoiled: readonly string[] = [], name = 'den'): Room {
    return {
        ...empty, name, job: settings, spoiled: spoiled.map(given),
        cutBoards: cut.map(({ length, of, into = [], left }): CutBoard =>
            ({ at: nowhere, length: given(length), stock: given(of), into: into.map(given), ...left && { left: left.map(given) } })),
    };
}
const inDen = (id: string, of: Stock, length: Ticks): Piece => piece(`den.${id}`, of, length, { room: 'den' });
const names = (pieces: readonly Piece[]): string[] => pieces.map(p => p.id).sort();
const onHand = (of: Stock): [number, Ticks][] => of.onHand.map(({ value: { count, length } }) => [count, length]);

describe('what is still to be cut', () => {
    const pine = stock({ onHand: [[2, feet(8)], [1, inches(62)]] });
    const pieces = ['a', 'b', 'c'].map(name => inDen(name, pine, inches(40)));

    test('nothing is changed where nothing is cut', () => {
        const room = den([]);
        const rest = restToCut([{ room, pieces }]);
        expect(rest.pieces(room)).toBe(pieces);
        expect(rest.now(pine)).toBe(pine);
        expect(rest.pieces(den([]))).toEqual([]);
    });

    test('a piece that is cut is done, one that is spoiled is wanted again, one that is spoiled before any board is told is wanted twice', () => {
        const room = den([{ length: feet(8), of: pine, into: ['a', 'b'] }], ['b', 'c']);
        expect(names(restToCut([{ room, pieces }]).pieces(room))).toEqual(['den.b', 'den.c', 'den.c']);
    });

    test('the board comes from those on hand, what is left of it is there, and a board of no such length was brought', () => {
        const room = den([{ length: feet(8), of: pine, into: ['a'], left: [inches(50)] }, { length: feet(16), of: pine, into: ['b'], left: [inches(140)] }]);
        expect(onHand(restToCut([{ room, pieces }]).now(pine))).toEqual([[1, feet(8)], [1, inches(62)], [1, inches(140)], [1, inches(50)]]);
    });

    test('what is left is reckoned where nobody says it: half of the end trim and a kerf for each piece are gone', () => {
        const room = den([{ length: feet(8), of: pine, into: ['a'] }]);
        // 96 - 1/2 - 40 - 1/8
        expect(onHand(restToCut([{ room, pieces }]).now(pine)).at(-1)).toEqual([1, inches('55 3/8')]);
        expect(leftAfter([], feet(8), settings)).toBe(inches('95 1/2'));
    });

    test('an offcut that is not worth keeping is not there, unless somebody says so', () => {
        const both = (left?: Ticks[]) => den([{ length: feet(8), of: pine, into: ['a', 'b'], ...left && { left } }]);
        expect(onHand(restToCut([{ room: both(), pieces }]).now(pine))).toEqual([[1, feet(8)], [1, inches(62)]]);
        const said = both([inches(15)]);
        expect(onHand(restToCut([{ room: said, pieces }]).now(pine)).at(-1)).toEqual([1, inches(15)]);
    });

    test('what one room leaves another may cut, in whatever order they stand', () => {
        const study: Room = den([{ length: inches(50), of: pine, into: ['x'], left: [0] }], [], 'study');
        const parlor = den([{ length: feet(8), of: pine, into: ['a'], left: [inches(50)] }]);
        const x = piece('study.x', pine, inches(40), { room: 'study' });
        const rest = restToCut([{ room: study, pieces: [x] }, { room: parlor, pieces }]);
        expect(onHand(rest.now(pine))).toEqual([[1, feet(8)], [1, inches(62)]]);
        expect(rest.pieces(study)).toEqual([]);
    });

    test('what costs nothing is taken before what is worth something', () => {
        const dear: Stock = { ...pine, onHand: [given({ count: 1, length: feet(8), worth: { amount: new Rational(9), currency: 'USD' } }), given({ count: 1, length: feet(8) })] };
        const room = den([{ length: feet(8), of: dear, into: ['a', 'b'] }]);
        expect(restToCut([{ room, pieces }]).now(dear).onHand.map(({ value }) => value.worth?.amount.toFraction())).toEqual(['9']);
    });

    test('strips that were ripped lie side by side on the board that is told', () => {
        const wide = stock({ name: 'wide', feet: [8] });
        const strips = [1, 2, 3].map(i => piece(`den.cleat-${i}`, wide, inches(60), { room: 'den', part: 'cleat', width: inches('3/4'), ripped: true }));
        const room = den([{ length: feet(8), of: wide, into: strips.map(s => s.id.slice(4)) }]);
        const [board] = restToCut([{ room, pieces: strips }]).cut(room).get(wide.key)!;
        expect(board!.strips.map(strip => [strip.rippedTo, strip.pieces.length])).toEqual([[inches('3/4'), 1], [inches('3/4'), 1], [inches('3/4'), 1]]);
        expect(onHand(restToCut([{ room, pieces: strips }]).now(wide))).toEqual([]);
    });
});

describe('strips of a board that is told', () => {
    const wide = stock({ name: 'wide', feet: [8] });
    const cleats = (...lengths: number[]): Piece[] => lengths.map((length, i) =>
        piece(`den.cleat-${i + 1}`, wide, inches(length), { room: 'den', part: 'cleat', width: inches('3/4'), ripped: true }));
    const told = (pieces: readonly Piece[], length = feet(8)): unknown => {
        const room = den([{ length, of: wide, into: pieces.map(p => p.id.slice(4)) }]);
        const [board] = restToCut([{ room, pieces }]).cut(room).get(wide.key)!;
        return board!.strips.map(({ rippedTo, pieces: own, offcut }) => [rippedTo, own.map(p => p.id.slice(10)).join(), offcut]);
    };
    // 96" less 1" of trim; each cleat with a kerf of 1/8"
    test('a ripped piece goes behind another while there is room for it, else on the first strip that has some', () => {
        expect(told(cleats(40, 40, 60, 14, 30))).toEqual([
            [inches('3/4'), '1,2,4', inches('95') - 2 * inches('40 1/8') - inches('14 1/8')], [inches('3/4'), '3,5', inches('95') - inches('60 1/8') - inches('30 1/8')],
        ]);
    });
    test('a strip that is filled to the last of the board has no offcut', () => {
        // a board holds its length and one kerf: 60 + 1/8 + 36 + 1/8 is 96 1/4, one kerf more than that
        expect(told(cleats(60, 35))).toEqual([[inches('3/4'), '1,2', 0]]);
        expect(told(cleats(60, 36))).toEqual([[inches('3/4'), '1', inches(95) - inches('60 1/8')], [inches('3/4'), '2', inches(95) - inches('36 1/8')]]);
    });
    test('what keeps the whole width is in one strip, whatever the board is said to be long', () => {
        expect(told([60, 50].map((length, i) => inDen(`board-${i + 1}`, wide, inches(length))))).toEqual([[undefined, '1,2', 0]]);
    });
});

describe('a plan of the rest', () => {
    const pine = stock({ perFoot: '2', onHand: [[1, feet(8)]] });
    const oak = stock({ name: 'oak-1x8', perFoot: '5' });
    const pieces = [...['a', 'b', 'c'].map(name => inDen(name, pine, inches(40))), inDen('d', oak, inches(90))];

    test('begins with the boards that are cut, also of a stock that nothing more is cut from, and numbers go on', () => {
        const room = den([{ length: feet(8), of: pine, into: ['a', 'b'] }, { length: feet(8), of: oak, into: ['d'] }]);
        const rest = restToCut([{ room, pieces }]);
        const plan = withCutBoards(planBoards(rest.pieces(room), settings), rest, [room]);
        expect(plan.stocks.map(({ stock: { name }, boards, buy }) =>
            [name, boards.map(b => [b.number, b.from, b.length, b.strips.flatMap(s => s.pieces.map(p => p.id))]), buy.length])).toEqual([
            ['oak-1x8', [[1, 'already cut', feet(8), ['den.d']]], 0],
            ['pine-1x6', [[1, 'already cut', feet(8), ['den.a', 'den.b']], [2, 'bought', feet(8), ['den.c']]], 1],
        ]);
        expect(plan.costs.map(({ amount }) => amount.toFraction())).toEqual(['16']);
    });

    test('any boards cut, any pieces spoiled: demand is what was asked less what is cut and more what is spoiled, and no board is used twice', () => {
        const lengths = fc.array(fc.integer({ min: 20, max: 90 }), { minLength: 1, maxLength: 12 });
        const boards = fc.array(fc.record({
            length: fc.constantFrom(62, 96, 144, 192), into: fc.uniqueArray(fc.nat(11), { maxLength: 3 }),
            left: fc.option(fc.integer({ min: 0, max: 60 }), { nil: undefined }),
        }), { maxLength: 5 });
        const hand = fc.array(fc.tuple(fc.integer({ min: 0, max: 3 }), fc.constantFrom(30, 62, 96, 144)), { maxLength: 3 });
        fc.assert(fc.property(lengths, boards, hand, fc.array(fc.nat(11), { maxLength: 4 }), (sizes, cut, there, bad) => {
            const own = stock({ perFoot: '2', onHand: there.map(([count, length]) => [count, inches(length)] as const) });
            const all = sizes.map((size, i) => inDen(`p${i}`, own, inches(size)));
            const room = den(cut.map(({ length, into, left }) => ({ length: inches(length), of: own, into: into.map(i => `p${i}`), ...left !== undefined && { left: [inches(left)] } })), bad.map(i => `p${i}`));
            const rest = restToCut([{ room, pieces: all }]);
            const plan = withCutBoards(planBoards(rest.pieces(room), settings), rest, [room]);

            for (const each of all) {
                const name = each.id.slice(4);
                const wanted = Math.max(0, 1 - cut.flatMap(b => b.into).filter(i => `p${i}` === name).length + bad.filter(i => `p${i}` === name).length);
                const planned = plan.stocks.flatMap(s => s.boards).filter(b => b.from !== 'already cut').flatMap(b => b.strips).flatMap(s => s.pieces);
                expect([...planned, ...plan.unplaced.map(u => u.piece)].filter(p => p.id === each.id).length).toBe(wanted);
            }
            // of every length so many may be used: those on hand, less those that were cut, more what was left of those
            const used = plan.stocks.flatMap(s => s.boards).filter(b => b.from === 'on hand');
            for (const length of new Set(used.map(b => b.length))) {
                const had = there.filter(([, l]) => inches(l) === length).reduce((n, [count]) => n + count, 0);
                const gone = cut.filter(b => inches(b.length) === length).length;
                const left = cut.filter(b =>
                    (b.left === undefined ? leftAfter(b.into.flatMap(i => all[i] ?? []), inches(b.length), settings) : inches(b.left)) === length).length;
                expect(used.filter(b => b.length === length).length).toBeLessThanOrEqual(Math.max(0, had - gone) + left);
            }
        }), { seed: 31, numRuns: runs(200) });
    });

    test('cutting on as planned, board by board, never costs more than what was planned for the rest', () => {
        const own = stock({ perFoot: '2' });
        const all = Array.from({ length: 14 }, (_, i) => inDen(`p${i}`, own, inches(30 + 7 * (i % 5))));
        const first = planBoards(all, settings);
        const [{ boards }] = first.stocks as [typeof first.stocks[0]];
        for (let done = 1; done <= boards.length; done++) {
            const room = den(boards.slice(0, done).map(b => ({ length: b.length, of: own, into: b.strips.flatMap(s => s.pieces.map(p => p.id.slice(4))) })));
            const rest = restToCut([{ room, pieces: all }]);
            const plan = planBoards(rest.pieces(room), settings);
            const planned = boards.slice(done).reduce((sum, b) => sum + 2 * b.length / TICKS_PER_FOOT, 0);
            expect(plan.costs.reduce((sum, { amount }) => sum + amount.valueOf(), 0)).toBeLessThanOrEqual(planned);
        }
    });
});

describe('lines that are written into the job', () => {
    const pine = stock();
    const board = (pieces: readonly Piece[], length: Ticks): Board => ({ number: 1, length, from: 'bought', strips: [{ pieces, offcut: 0, kept: false }] });

    /** 12' with the first piece in its whole width, and a section of 40" with the others abreast. */
    const sectioned = ([first, ...others]: readonly Piece[]): Board => ({
        number: 1, length: feet(12), from: 'bought', sections: [inches(40)],
        strips: [
            { pieces: [first!], offcut: 0, kept: false },
            ...others.map(each => ({ rippedTo: each.width, section: 1, pieces: [each], offcut: 0, kept: false })),
        ],
    });

    test('a board with its pieces, and what is left of it', () => {
        expect(cutLines(board([inDen('bottom-2', pine, inches(90)), inDen('side-A-1-north', pine, inches(60))], feet(16)), () => 'poplar', settings)).toEqual([
            { room: 'den', line: `cut 16' of poplar\n    into bottom-2 at 7' 6"\n    into side-A-1-north at 5'\n    left 3' 5 1/4"` },
        ]);
    });
    test('what is not worth keeping is not told', () => {
        expect(cutLines(board([inDen('a', pine, inches(90))], feet(8)), () => 'poplar', settings)).toEqual([{ room: 'den', line: `cut 8' of poplar into a at 7' 6"` }]);
    });
    test('a board that two rooms share: each cuts what the one before it left', () => {
        const shared = board([inDen('a', pine, inches(90)), piece('study.b', pine, inches(80), { room: 'study' })], feet(16));
        expect(cutLines(shared, room => `${room}-pine`, settings)).toEqual([
            { room: 'den', line: `cut 16' of den-pine into a at 7' 6" left 8' 5 3/8"` }, { room: 'study', line: `cut 8' 5 3/8" of study-pine into b at 6' 8"` },
        ]);
    });
    test('what is left behind sections that are ripped is told in its whole width, and is there for the next plan', () => {
        const pieces = [inDen('bottom', pine, inches(60)), ...[1, 2].map(i => piece(`den.cleat-${i}`, pine, inches(40), { room: 'den', part: 'cleat', width: inches('3/4'), ripped: true }))];
        // 144 less half of the trim, 60, 40 and two kerfs
        expect(cutLines(sectioned(pieces), () => 'pine', settings)).toEqual([
            { room: 'den', line: `cut 12' of pine\n    into bottom at 5'\n    into cleat-1, cleat-2 at 3' 4"\n    left 3' 7 1/4"` },
        ]);
        const room = den([{ length: feet(12), of: pine, into: ['bottom', 'cleat-1', 'cleat-2'], left: [inches('43 1/4')] }]);
        const rest = restToCut([{ room, pieces }]);
        expect(onHand(rest.now(pine))).toEqual([[1, inches('43 1/4')]]);
        const [again] = rest.cut(room).get(pine.key)!;
        expect(again!.sections).toEqual([inches(40)]);
        expect(again!.strips.map(({ rippedTo, section, pieces: own, offcut }) => [rippedTo, section, own.map(p => p.id), offcut])).toEqual([
            [undefined, undefined, ['den.bottom'], inches('43 1/4')], [inches('3/4'), 1, ['den.cleat-1'], 0], [inches('3/4'), 1, ['den.cleat-2'], 0],
        ]);
    });
    test('a section of a board that is cut is said by the room that its strips go to', () => {
        const pieces = [inDen('bottom', pine, inches(60)), ...[1, 2].map(i => piece(`study.cleat-${i}`, pine, inches(40), { room: 'study', part: 'cleat', width: inches('3/4'), ripped: true }))];
        expect(cutLines(sectioned(pieces), room => `${room}-pine`, settings)).toEqual([
            { room: 'den', line: `cut 12' of den-pine into bottom at 5' left 6' 11 3/8"` },
            // half of the trim, 40 and a kerf are gone of it
            { room: 'study', line: `cut 6' 11 3/8" of study-pine into cleat-1, cleat-2 at 3' 4" left 3' 6 3/4"` },
        ]);
    });
    test('a section that two rooms have strips of is cut off by the first of them, which may leave less than is worth keeping', () => {
        const [bottom, first, second] = [inDen('bottom', pine, inches(60)), ...['den', 'study'].map(room => piece(`${room}.cleat`, pine, inches(40), { room, part: 'cleat', width: inches('3/4'), ripped: true }))];
        expect(cutLines(sectioned([bottom!, first!, second!]), room => `${room}-pine`, settings)).toEqual([
            { room: 'den', line: `cut 12' of den-pine\n    into bottom at 5'\n    into cleat at 3' 4"\n    left 3' 7 1/4"` },
            // what it takes lies in a section that is off already: all it can say is the board
            { room: 'study', line: `cut 12' of study-pine into cleat at 3' 4"` },
        ]);
    });
    test('what is on hand, those of one worth together', () => {
        expect(onHandLines([{ count: 2, length: feet(8) }, { count: 1, length: inches(62), worth: '4 USD' }, { count: 1, length: inches('31 1/2') }], 'feet-inches')).toEqual([
            `on-hand 2 x 8', 1 x 2' 7 1/2"`, `on-hand 1 x 5' 2" worth 4 USD`,
        ]);
    });
});

describe('what is left when all is cut', () => {
    test('a kept offcut is worth the share of its price that the job says, so that the next job reckons with it', () => {
        const quarter = job({ offcutWorth: given(new Rational(1, 4)) });
        const pine = stock({ feet: [16], perFoot: '2', each: { 16: '28.80' }, onHand: [[1, feet(4)]] });
        const [left] = leftoversOf([{ plan: planBoards([inDen('a', pine, inches(100))], quarter), job: quarter }]);
        // 192 - 1 - 100 - 1/8 = 90 7/8", a quarter of 1.80 a foot, the lowest price; what was there before keeps its own
        expect(left!.pieces.map(({ length, worth }) => [length, worth?.amount.toFraction()])).toEqual([
            [inches('90 7/8'), new Rational('90.875').div(12).mul('1.8').div(4).toFraction()], [feet(4), undefined],
        ]);
    });

    test('boards on hand that are said in two places are taken one after the other, and no more than there are', () => {
        const rack = (...there: [number, Ticks][]): Stock => stock({ perFoot: '2', onHand: there });
        const unused = (of: Stock, count: number): [number, number][] => leftoversOf([{ plan: planBoards(Array.from({ length: count }, (_, i) => inDen(`p${i}`, of, inches(90))), settings), job: settings }])
            .flatMap(({ pieces }) => pieces.map(({ count: left, length }): [number, number] => [left, length]));
        const twice = rack([1, feet(8)], [2, feet(8)]);
        expect([1, 2, 3].map(count => unused(twice, count))).toEqual([[[2, feet(8)]], [[1, feet(8)]], []]);
        expect(unused(rack([1, feet(8)], [1, feet(10)]), 1)).toEqual([[1, feet(10)]]);
    });

    test('boards that were not needed, offcuts worth keeping rounded down, strips by their width', () => {
        const pine = stock({ perFoot: '2', onHand: [[2, feet(16)], [1, inches(62)]] });
        const wide = stock({ name: 'wide-1x8', width: inches('7 1/4'), feet: [8], perFoot: '3' });
        const pieces = [inDen('a', pine, inches(60)), inDen('b', pine, inches(100)), ...[1, 2].map(i => piece(`den.cleat-${i}`, wide, inches(60), { room: 'den', part: 'cleat', width: inches('3/4'), ripped: true }))];
        const left = leftoversOf([{ plan: planBoards(pieces, settings), job: settings }]);
        // 62" holds the 60"; a 16' board the 100", and 92 - 1 - 1/8 is left; a rip of 7 1/4" leaves 7 1/4 - 2 x (3/4 + 1/8)
        expect(left.map(({ stock: { name }, pieces: full, strips }) =>
            [name, full.map(p => [p.count, p.length]), strips.map(s => [s.count, s.width, s.length])])).toEqual([
            ['pine-1x6', [[1, feet(16)], [1, inches('90 7/8')]], []],
            // its strips are 60" long: that is cut off 8' and ripped, so what is behind keeps its width
            ['wide-1x8', [[1, inches('34 7/8')]], [[1, inches('5 1/2'), inches(60)]]],
        ]);
    });
});

test('of leftovers of one length those that are worth nothing come first, however they were told', () => {
    const worth = { amount: new Rational(9), currency: 'USD' }, told = (...onHand: Stock['onHand'][number]['value'][]): unknown => {
        const pine: Stock = { ...stock({ feet: [16] }), onHand: onHand.map(given) }, plan = planBoards([inDen('a', pine, inches(150))], settings);
        return leftoversOf([{ plan, job: settings }]).map(({ pieces }) => pieces.map(left => [left.count, printInches(left.length), left.worth !== undefined]));
    };
    const wanted = [[[1, '96"', false], [2, '96"', true], [1, '62"', false], [1, '40 7/8"', false]]];
    const free = { count: 1, length: feet(8) }, dear = { count: 2, length: feet(8), worth }, short = { count: 1, length: inches(62) };
    expect([told(free, dear, short), told(dear, short, free)]).toEqual([wanted, wanted]);
});

test('a length that no tape tells exactly is in no line', () => {
    const pine = stock(), board = (length: Ticks, at: Ticks): Board =>
        ({ number: 1, length, from: 'bought', strips: [{ pieces: [inDen('a', pine, at)], offcut: 0, kept: false }] });
    expect([cutLines(board(feet(8) + 1, inches(90)), () => 'pine', settings), cutLines(board(feet(8), inches(90) + 1), () => 'pine', settings)]).toEqual([undefined, undefined]);
    expect(cutLines(board(feet(8), inches(90)), () => 'pine', settings)).toHaveLength(1);
});

test('boards that are cut are numbered as they were told, before those that are planned', () => {
    const pine = stock(), pieces = ['a', 'b', 'c'].map(name => inDen(name, pine, inches(90)));
    const room = den([{ length: feet(8), of: pine, into: ['a'], left: [] }, { length: feet(8), of: pine, into: ['b'], left: [] }]);
    const rest = restToCut([{ room, pieces }]);
    expect(rest.cut(room).get(pine.key)!.map(({ number }) => number)).toEqual([1, 2]);
    const plan = planBoards(rest.pieces(room), settings);
    expect(withCutBoards(plan, rest, [room]).stocks[0]!.boards.map(({ number, from }) => `${number} ${from}`)).toEqual(['1 already cut', '2 already cut', '3 bought']);
    const none = restToCut([{ room: den([]), pieces }]);
    expect(withCutBoards(plan, none, [den([])])).toBe(plan);
});

// 5 1/2" less two strips of 1 1/2" and their kerfs are 2 1/4"; less three of 1 1/2", 5/8"
test.each([[2, 8 * 12, ['2 1/4" x 96"']], [3, 8 * 12, []], [2, 24, ['2 1/4" x 24"']], [2, 23, []]])
('of a board with %i strips over %i" what is an inch wide and worth keeping by its length is kept', (count, length, wanted) => {
    const strips = Array.from({ length: count }, () => ({ rippedTo: inches('1 1/2'), pieces: [], offcut: 0, kept: false }));
    expect(besideStrips({ number: 1, length: inches(length), from: 'bought', strips }, stock(), settings).map(each => `${printInches(each.width)} x ${printInches(each.length)}`)).toEqual(wanted);
});

test('of a board that was ripped into several widths the widest strip comes first, in whatever order its pieces are named', () => {
    const pine = stock({ feet: [8] });
    const strip = (id: string, width: string): Piece => piece(`den.${id}`, pine, inches(80), {
        room: 'den', part: 'cleat', width: inches(width), ripped: true, work: [{ kind: 'rip', width: inches(width), thickness: inches('3/4') }],
    });
    const list = [strip('narrow', '3/4'), strip('wide', '2'), strip('middle', '1 1/2')], room = den([{ length: feet(8), of: pine, into: list.map(({ id }) => id.replace('den.', '')) }]);
    const rest = restToCut([{ room, pieces: list }]), plan = withCutBoards(planBoards(rest.pieces(room), settings), rest, [room]);
    expect(plan.stocks[0]!.boards[0]!.strips.map(({ rippedTo, pieces }) => [printInches(rippedTo!), names(pieces)])).toEqual([
        ['2"', ['den.wide']], ['1 1/2"', ['den.middle']], ['3/4"', ['den.narrow']],
    ]);
});
