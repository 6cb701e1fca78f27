import { describe, expect, test } from 'vitest';
import { inches } from '../../src/quantity/rational.ts';
import { acrossOf, degreesOf, endWords, isSlanted, leanOf, liesFlat } from '../../src/takeoff/ends.ts';
import { compareNames, comparePieces } from '../../src/takeoff/piece-order.ts';
import { PARTS } from '../../src/takeoff/model.ts';
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
        expect(PARTS.filter(part => liesFlat({ part }))).toEqual(['blocking', 'bottom']);
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
});
