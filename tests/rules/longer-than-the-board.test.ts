import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Layout } from '../../src/ceiling/model.ts';
import type { Profile, Stock } from '../../src/job/model.ts';
import { longerThanTheBoard, tooLongForBoards } from '../../src/rules/longer-than-the-board.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { Found } from '../../src/rules/rule.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { job, piece, stock, type StockSample } from '../cutting/samples.ts';
import { exampleRoom } from '../support/example-room.ts';
import { jobBuilder, ticksOf, type RoomWords } from '../support/job-builder.ts';

const laid = (words: RoomWords): Layout => layOut(exampleRoom({ through: 'east-west', ...words }));
const piecesOf = ({ ceiling }: Layout) => takeOff(ceiling!).pieces;
const tooLong = (layout: Layout) => tooLongForBoards(piecesOf(layout), layout.room.job)
    .map(({ piece: { part, line, overall }, longest }) => ({ part, line, length: overall, longest }));

/** What the rule says of a room: at which words, and in which. */
function found(layout: Layout): Found[] {
    const all: Found[] = [];
    longerThanTheBoard.check.room!({ layout, job: layout.room.job, pieces: () => piecesOf(layout) }, one => all.push(one));
    return all;
}
const beamWith = (strips: Stock): Profile => {
    const { value } = exampleRoom().grid!.beams!;
    return { ...value, trim: undefined, cleats: { ...value.cleats!, stock: { ...value.cleats!.stock!, value: strips } } };
};
const subjects = (layout: Layout): string[] => found(layout).map(({ message }) => /^The (\w+) \((.+?)\)/.exec(message)!.slice(1).join(' '));

describe('pieces that are longer than their boards', () => {
    test('where the grid wants splices said and nobody does', () => {
        const layout = laid({ splices: 'where-said' });
        expect(tooLong(layout)).toEqual([{ part: 'bottom', line: 'A', length: ticksOf('218 1/2"'), longest: ticksOf('191"') }]);
        expect(subjects(layout)).toEqual(['bottom line A']);
    });
    test('a said splice that leaves a piece too long is the cause of it', () => {
        const layout = laid({ lines: { B: { splices: ['20"'] } } });
        expect(tooLong(layout)).toMatchObject([{ line: 'B', length: ticksOf('199 1/4"') }]);
        expect(found(layout)).toMatchObject([{ at: layout.room.lines[0]!.splices[0]!.at }]);
    });
    test('bays have no crossing to break on; sides and trim are spliced anywhere', () => {
        const room = exampleRoom({ north: { coffers: 1 }, through: 'north-south' });
        expect(subjects(layOut(room)).sort()).toEqual(['band the north wall', 'bottom line A, bay 1']);
    });
    test('a cleat on the wall of a half beam comes in pieces as long as its boards, but not in scraps; smaller coffers do not help', () => {
        const { stock } = jobBuilder(), strips = stock('strip', { thickness: '3/4"', width: '3/4"', lengths: ['11"'] });
        const half = { kind: 'half-beam', width: '2"' } as const, layout = laid({ around: { north: half, east: half, south: half, west: half }, beams: beamWith(strips) });
        const [{ message } = { message: '' }] = found(layout).filter(one => one.message.startsWith('The cleat (the half beam'));
        expect(message).toMatch(/Rip the cleats from a stock that is sold longer\.$/);
    });
    test('a cleat is looked for among the boards at its own length, short of its side at both ends', () => {
        // the longest sides are 57" (coffer 55 1/2" + 2 x 3/4"); cleats 1/4" short at each end are 56 1/2"; no end trim
        const { stock, settings, said } = jobBuilder();
        const of = (length: string): Layout => {
            const strips = stock('strip', { thickness: '3/4"', width: '3/4"', lengths: [length] });
            const job = { ...settings(), endTrim: said(0) };
            return layOut(exampleRoom({ job, splices: 'on-crossings' }, { cleats: { stock: strips, thickness: '3/4"', height: '3/4"' } }));
        };
        const cleats = (length: string): number => takeOff(of(length).ceiling!).pieces.filter(({ part }) => part === 'cleat').length;
        for (const length of ['56 1/2"', '56 15/32"', '12"']) expect(tooLong(of(length))).toEqual([]);
        // what is too long comes in equal pieces, but not in scraps
        expect(cleats('56 15/32"')).toBeGreaterThan(cleats('56 1/2"'));
        expect(tooLong(of('11 31/32"'))).toMatchObject([{ part: 'cleat', length: ticksOf('56 1/2"'), longest: ticksOf('11 31/32"') }]);
        expect(cleats('11 31/32"')).toBe(cleats('56 1/2"'));
    });
});

/**
 * Boards of 8' are sold, of which an inch is trimmed off: pieces of more than 95" have to come out of what is on hand, each board for one of them.
 * Pieces are 100" long unless said otherwise, 2" wide and 3/4" thick.
 */
describe('what is on hand', () => {
    const of = (onHand: StockSample['onHand'], pieces: readonly (readonly [id: string, length?: string, width?: string])[]) => {
        const boards = stock({ feet: [8], onHand: onHand! });
        return tooLongForBoards(pieces.map(([id, length = '100', width = '2']) => piece(id, boards, inches(length), { width: inches(width) })), job())
            .map(({ piece: { id }, longest }) => `${id} ${printInches(longest)}`);
    };
    const ten = inches(120), wide = (width: string) => [1, ten, inches(width)] as const;
    test.each<[string, string[], string[]]>([
        ['nothing', of([], [['a']]), ['a 95"']],
        ['a long board', of([[1, ten]], [['a']]), []],
        ['one for two', of([[1, ten]], [['a'], ['b']]), ['b 95"']],
        ['two for two', of([[2, ten]], [['a'], ['b']]), []],
        ['none of a kind', of([[0, ten]], [['a']]), ['a 95"']],
        // an inch is trimmed off it too
        ['as long as the piece with its trim', of([[1, inches(101)]], [['a']]), []],
        ['a tick shorter', of([[1, inches(101) - 1]], [['a']]), [`a ${printInches(inches(100) - 1)}`]],
        ['the longest for the longest', of([[1, inches(101)], [1, inches(120)]], [['a'], ['b', '119']]), []],
        ['a strip as wide as the piece is thick', of([wide('3/4')], [['a']]), []],
        ['a narrower one', of([[1, ten, inches('3/4') - 1]], [['a']]), ['a 95"']],
        ['a strip as wide as a narrow piece', of([wide('1/2')], [['a', '100', '1/2']]), []],
        ['a strip that is too short is no longest board', of([[1, inches(100), inches(1)]], [['a']]), ['a 95"']],
        ['a strip first, so that the board is left', of([wide('1'), [1, ten]], [['a'], ['b']]), []],
        ['one strip for one piece', of([wide('1')], [['a'], ['b']]), ['b 95"']],
    ])('%s', (_, found, wanted) => expect(found).toEqual(wanted));
});
