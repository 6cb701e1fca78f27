import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { exampleRoom } from '../support/example-room.ts';
import { jobBuilder, type ProfileWords } from '../support/job-builder.ts';
import { soundRoom } from './sound-room.ts';

/**
 * The room of tests/support/example-room.ts (coffers 49 3/8" x 55 1/2"; north-south lines through, a band round the walls) with moldings, by hand: width w,
 * overhang o. Under the beam its outer edge stands o beyond the face, its inner edge w - o behind it, so round a square corner
 *
 *     outer edge = coffer - 2 o    inner edge = coffer + 2 (w - o)    at the band both end on its face: coffer - o, coffer + w - o
 *
 * Against the sides: as a trim, thickness t: coffer at its back, coffer - 2 t at its face. Common practice, no source.
 */
const { stock } = jobBuilder();
const lengths = ["8'", "12'", "16'"], strip = stock('strip-1x2', { thickness: '3/4"', width: '1 1/2"', lengths });

function built(beam: ProfileWords) {
    return soundRoom(beam).off.pieces.filter(({ part }) => part === 'molding');
}

describe('a molding', () => {
    test('under the beam is mitered flat round each coffer, and ends at the face of the band', () => {
        const moldings = built({ under: { stock: strip, overhang: '1/2"' } }), onA = moldings.filter(({ line, on }) => line === 'A' && on === 'north');
        expect(onA.map(({ face, back, width, thickness, ends }) => [printInches(face), printInches(back), printInches(width), printInches(thickness), ends.map(({ cut }) => cut).join(' ')])).toEqual([
            ['48 7/8"', '50 3/8"', '1 1/2"', '3/4"', 'square miter'], ['48 3/8"', '51 3/8"', '1 1/2"', '3/4"', 'miter miter'],
            ['48 3/8"', '51 3/8"', '1 1/2"', '3/4"', 'miter miter'], ['48 7/8"', '50 3/8"', '1 1/2"', '3/4"', 'miter square'],
        ]);
        expect(onA.map(({ where }) => where)).toEqual([1, 2, 3, 4].map(bay => `line A, bay ${bay}, north side`));
        expect(onA[1]!.box.top).toBe(onA[1]!.box.foot - onA[1]!.thickness);
        expect(moldings.length).toBe(34);
    });
    test('against the sides is as the trim, its lower edge level with theirs', () => {
        const [, second] = built({ under: { stock: strip, place: 'against-sides' } }).filter(({ line, on }) => line === 'A' && on === 'north');
        expect([second!.face, second!.back].map(printInches)).toEqual(['47 7/8"', '49 3/8"']);
        expect(printInches(second!.box.foot)).toBe('7 1/2"');
        expect(printInches(second!.box.foot - second!.box.top)).toBe('1 1/2"');
    });
    test.each([
        ['wider than half of the beam', { under: { stock: stock('board-1x6', { thickness: '3/4"', width: '5 1/2"', lengths }) } }],
        ['that stands out beyond the side by all of its width', { under: { stock: strip, overhang: '1 1/2"' } }],
    ] as [string, ProfileWords][])('%s is refused', (what, beam) => {
        expect(layOut(exampleRoom({}, beam)).troubles.map(trouble => trouble.kind === 'not-supported' && trouble.what)).toEqual([expect.stringContaining(what)]);
    });
});
