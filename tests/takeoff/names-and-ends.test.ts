import { describe, expect, test } from 'vitest';
import { inches } from '../../src/quantity/rational.ts';
import { acrossOf, degreesOf, endWords, endWordsOf, isSlanted, leanOf, liesFlat } from '../../src/takeoff/ends.ts';
import { compareNames, comparePieces } from '../../src/takeoff/piece-order.ts';
import { cutAlike, fingerprintOf } from '../../src/takeoff/cut-alike.ts';
import { idOf, nameInRoom, placeInRoom, spliceLetter, spokenName, type Place } from '../../src/takeoff/ids.ts';
import { PARTS, type EndCut, type Piece } from '../../src/takeoff/model.ts';
import { longer } from '../../src/takeoff/runs.ts';
import { nipsOf, nipWork } from '../../src/takeoff/sides-and-cleats.ts';
import { piece, stock } from '../cutting/samples.ts';

describe('the order of pieces', () => {
    test('names with figures go by their size: ten comes after two', () => {
        const names = ['spacer-A-1-10', 'spacer-A-1-2', 'spacer-A-10-1', 'spacer-B-1-1', 'spacer-A-1', 'spacer-A-2-1'];
        expect(names.toSorted(compareNames)).toEqual(['spacer-A-1', 'spacer-A-1-2', 'spacer-A-1-10', 'spacer-A-2-1', 'spacer-A-10-1', 'spacer-B-1-1']);
        expect([compareNames('a-1', 'a-1'), Math.sign(compareNames('a-01', 'a-1')), Math.sign(compareNames('a', 'a-1'))]).toEqual([0, -1, -1]);
    });
    test('room by room, in each part by part, then by name', () => {
        const of = (room: string, part: (typeof PARTS)[number], id: string) => piece(id, stock(), 1, { room, part });
        const all = [of('den', PARTS[1]!, 'a'), of('den', PARTS[0]!, 'z'), of('attic', PARTS[1]!, 'y'), of('den', PARTS[0]!, 'b')];
        expect(all.toSorted(comparePieces).map(({ id }) => id).join('')).toBe('ybza');
    });
});

describe('ends', () => {
    const board = { width: inches('5 1/2'), thickness: inches('3/4') };
    // a bottom lies in the beam, and blocking against the ceiling: both are cut at an angle across their width, a side through its thickness
    test('what lies is cut across its width, what stands through its thickness', () => {
        expect(PARTS.filter(part => liesFlat({ part }))).toEqual(['panel', 'blocking', 'bottom']);
        expect([acrossOf({ part: 'bottom', ...board }), acrossOf({ part: 'side', ...board })]).toEqual([board.width, board.thickness]);
        // a crown stands off the wall by more than it is thick
        expect(acrossOf({ part: 'trim', ...board, stands: { out: inches(2), down: inches(3) } })).toBe(inches(2));
    });
    test('a miter of 45 degrees leans by as much as the piece is thick, to the other side where the face is the longer', () => {
        const side = { part: 'side' as const, ...board };
        expect(leanOf({ cut: 'miter', degrees: 45 }, side)).toBeCloseTo(board.thickness, 6);
        expect(leanOf({ cut: 'miter', degrees: -45 }, side)).toBeCloseTo(-board.thickness, 6);
        expect([degreesOf({ cut: 'square' }), isSlanted({ cut: 'square' }), isSlanted({ cut: 'miter', degrees: -45 })]).toEqual([0, false, true]);
    });
    test('in words', () => {
        expect([
            endWords({ cut: 'square' }), endWords({ cut: 'coped' }), endWords({ cut: 'miter', degrees: 22.504 }), endWords({ cut: 'angled', degrees: -0.1 }),
            endWords({ cut: 'coped', degrees: 45 }), endWords({ cut: 'miter', degrees: 45, flat: { miter: 31.619, bevel: 33.857 } }),
        ]).toEqual(['square', 'coped', 'miter 22.5', 'angled 0.1, longer at the face', 'miter 45, then coped', 'miter 45 (flat: miter 31.62, bevel 33.86)']);
    });
    // what lies has no face to tell by; a molding that lies has its profile, and a square end no longer edge
    test('of what lies flat by the edge that is the longer', () => {
        const angled = { cut: 'angled', degrees: 5, longer: 'south' } as const, of = (part: (typeof PARTS)[number], lies?: true): string => endWordsOf({ part, ...lies && { lies } }, angled);
        expect([of('bottom'), of('blocking'), of('cleat', true), of('molding', true), of('side')])
            .toEqual(['angled 5, longer at the south edge', 'angled 5, longer at the south edge', 'angled 5, longer at the south edge', 'angled 5', 'angled 5']);
        expect(endWordsOf({ part: 'bottom' }, { cut: 'square', longer: 'south' })).toBe('square');
    });
});

describe('names', () => {
    const named = (part: (typeof PARTS)[number], place: Place): string => idOf('den', part, place);
    test('come from the place alone', () => {
        expect([
            named('bottom', { line: '2' }), named('bottom', { line: 'A', nth: 'b' }), named('bottom', { line: 'C-2' }), named('bottom', { line: 'B', bay: 3 }),
            named('side', { line: 'B', bay: 3, on: 'north' }), named('side', { line: 'C-2', bay: 1, on: 'north' }), named('spacer', { line: 'B', bay: 3, nth: 2 }),
            named('band', { on: 'north', nth: 'a' }), named('trim', { coffer: 5, on: 'north' }), named('cleat', { wall: 'north', nth: 'wall' }), named('bottom', { line: 'x-a' }),
            named('bottom', { line: 'x-ab' }), named('bottom', { line: '2', bay: null }),
        ].map(id => id.slice('den.'.length))).toEqual([
            'bottom-2', 'bottom-A-b', 'bottom-C-2-through', 'bottom-B-3', 'side-B-3-north', 'side-C-2-1-north', 'spacer-B-3-2', 'band-north-a', 'trim-5-north',
            'cleat-north-wall', 'bottom-x-a-through', 'bottom-x-ab', 'bottom-2',
        ]);
    });
    test('in the room, where the part is said already, and spoken', () => {
        const side = piece('den.side-B-3-north', stock(), 1, { room: 'den', part: 'side' });
        expect([nameInRoom(side), placeInRoom(side), spokenName(side.id)]).toEqual(['side-B-3-north', 'B-3-north', 'side B-3-north']);
    });
    test('spliced pieces are lettered, after z with two letters', () => {
        expect([0, 1, 25, 26, 27, 51, 52].map(i => spliceLetter(i, 60))).toEqual(['a', 'b', 'z', 'aa', 'ab', 'az', 'ba']);
        expect(spliceLetter(0, 1)).toBeNull();
    });
});

describe('cut alike', () => {
    const MITER: EndCut = { cut: 'miter', degrees: 45 }, LESS: EndCut = { cut: 'miter', degrees: 30 }, SQUARE: EndCut = { cut: 'square' };
    const side = (over: Partial<Piece>): Piece => piece('a', stock(), 100, { part: 'side', on: 'south', ends: [MITER, SQUARE], ...over });
    test.each<[string, Partial<Piece>, Partial<Piece>, boolean]>([
        ['whatever they are called', { id: 'b', room: 'hall', where: 'line Z' }, {}, true], ['turned end for end', { ends: [SQUARE, MITER] }, {}, true],
        ['but not of another hand', { hand: 'left' }, { hand: 'right' }, false], ['nor another face', { cutFace: 99 }, {}, false], ['nor another back', { cutBack: 101 }, {}, false],
        ['nor wider', { width: 99 }, {}, false], ['nor thicker', { thickness: 9 }, {}, false], ['nor at another angle', { ends: [LESS, SQUARE] }, {}, false],
        ['nor with more done to it', { work: [{ kind: 'ease', by: 1 }] }, {}, false], ['nor ripped', { ripped: true }, {}, false],
        ['with both ends slanted one way round only', { ends: [MITER, LESS] }, { ends: [LESS, MITER] }, false],
        ['longer over all than either edge', { cutOverall: 120 }, {}, false], ['over all as long as its longer edge', { cutOverall: 100 }, { cutOverall: 90 }, true],
    ])('%s', (_, a, b, alike) => {
        expect(cutAlike(side(a)) === cutAlike(side(b))).toBe(alike);
        expect(fingerprintOf(side(a)) === fingerprintOf(side(b))).toBe(alike);
    });
    test('a mark to tick it off by begins with its two lengths', () => {
        expect(fingerprintOf(side({ cutBack: 101, cutFace: 99 }))).toMatch(/^101\.99\.[0-9a-z]+$/);
    });
});

// a cleat 1" wide behind an end that leans 10 degrees away: 1" x tan 10 = 0.17633" = 2866.4 ticks
test('a cleat is nipped as far as the end leans over it, unless it is as much short already', () => {
    const AWAY: EndCut = { cut: 'angled', degrees: -10 }, TOWARDS: EndCut = { cut: 'angled', degrees: 10 }, SQUARE: EndCut = { cut: 'square' }, DIES = ['dies', 'dies'] as const;
    const nips = [nipsOf([AWAY, SQUARE], DIES, inches(1), 0), nipsOf([TOWARDS, AWAY], DIES, inches(1), 2866), nipsOf([AWAY, AWAY], DIES, inches(1), 2867)];
    expect(nips).toEqual([[2867, 0], [0, 2867], [0, 0]]);
    expect(nipsOf([AWAY, AWAY], ['splice', 'dies'], inches(1), 0)).toEqual([0, 2867]);
    expect(nipWork([0, 5], 'north-south')).toEqual([{ kind: 'nip', by: [0, 5], ends: ['north', 'south'] }]);
    expect(nipWork([0, 0], 'east-west')).toEqual([]);
});

test('what is pressed is longer all over', () => {
    const lengths = { back: 10, face: 9, overall: 11, cutBack: 8, cutFace: 7, cutOverall: 6 };
    expect(longer(lengths, 3)).toEqual({ back: 13, face: 12, overall: 14, cutBack: 11, cutFace: 10, cutOverall: 9 });
});
