import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { whyText } from '../../src/provenance/why-text.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { jobBuilder, type ProfileWords } from '../support/job-builder.ts';
import { exampleRoom } from '../support/example-room.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { soundRoom } from './sound-room.ts';

const INCHES = { show: 'feet-inches', step: TICKS_PER_INCH / 32 } as const;

/**
 * The room of tests/support/example-room.ts (coffers 49 3/8" x 55 1/2") with bottoms in other places, by hand: with coffer c, side ts,
 * play g, overhang o, let in r, and blocking that is narrower by n and has the usual relief f (1/16" a piece, half at each end),
 *
 *     bottom between two lines    c + 2 ts + g     under the sides c - 2 o     let in c + 2 (ts - r) + g     blocking c + 2 ts + n - f
 *     at the band, of one line    c + ts + g/2                     c - o              c + ts - r + g/2                c + ts + n/2 - f
 *
 * Common practice, no source.
 */
const { stock } = jobBuilder();
const lengths = ["8'", "12'", "16'"];
const ten = stock('poplar-1x10', { thickness: '3/4"', width: '9 1/4"', lengths }), six = stock('poplar-1x6', { thickness: '3/4"', width: '5 1/2"', lengths });
const eight = stock('poplar-1x8', { thickness: '3/4"', width: '7 1/4"', lengths });

function built(beam: ProfileWords) {
    const { ceiling, off } = soundRoom(beam);
    const lines = (part: Piece['part']): Record<string, string[]> => Object.fromEntries(['A', '1'].map(line => [line, off.pieces.filter(piece => piece.part === part && piece.line === line).map(({ back, width }) => `${printInches(back)} x ${printInches(width)}`)]));
    return { section: ceiling.lines[0]!.section, off, lines, why: (id: string) => { const piece = off.pieces.find(one => one.id === `parlor.${id}`)!; return whyText(piece.why, piece.back, INCHES); } };
}
const SIDES_OF_A = ['49 3/8 face 50 1/8 back', '49 3/8 face 50 7/8 back', '49 3/8 face 50 7/8 back', '49 3/8 face 50 1/8 back'];
function sidesOfA(pieces: readonly Piece[]): string[] {
    const plain = (ticks: number): string => printInches(ticks).replace('"', '');
    return pieces.filter(({ part, line, on }) => part === 'side' && line === 'A' && on === 'north').map(({ face, back }) => `${plain(face)} face ${plain(back)} back`);
}

describe('a bottom under the sides', () => {
    const { section, off, lines, why } = built({ sides: { stock: eight }, bottom: { stock: ten, place: 'under-sides', overhang: '1/2"' } });
    test('makes the beam deeper, and is as wide as the beam and two overhangs', () => {
        expect([section.outerWidth, section.bottomWidth, section.depth, section.bottomTop].map(length => printInches(length.ticks))).toEqual(['7"', '8"', '8 1/4"', '7 1/2"']);
        expect([section.fit, section.channelWidth]).toEqual([undefined, undefined]);
        expect(whyText(section.bottomWidth.why, section.bottomWidth.ticks, INCHES)).toBe('blocking 5 1/2" + 2 x side 3/4" + 2 x overhang 1/2" = 8"');
    });
    test('is cut between others to the coffer less their overhangs; blocking and sides are what they always are', () => {
        expect(lines('bottom')).toEqual({ A: ['48 7/8" x 8"', '48 3/8" x 8"', '48 3/8" x 8"', '48 7/8" x 8"'], 1: ['180 1/2" x 8"'] });
        expect(lines('blocking')).toEqual({ A: ['50 1/16" x 5 1/2"', '50 13/16" x 5 1/2"', '50 13/16" x 5 1/2"', '50 1/16" x 5 1/2"'], 1: ['180 1/2" x 5 1/2"'] });
        expect(sidesOfA(off.pieces)).toEqual(SIDES_OF_A);
        expect(off.pieces.find(({ part }) => part === 'bottom')!.machining[0]).toBe('rip to 8"');
        expect(why('bottom-A-2')).toBe('coffer 4\' 1 3/8" - overhang of the line 1 bottom 1/2" - overhang of the line 2 bottom 1/2" = 4\' 0 3/8"');
    });
    test('without an overhang that is said has the one that its board leaves', () => {
        const { lines: free, section: wide } = built({ sides: { stock: eight }, bottom: { stock: ten, rip: '9"', place: 'under-sides' } });
        expect(printInches(wide.depth.ticks)).toBe('8 1/4"');
        expect(free('bottom')['A']).toEqual(['48 3/8" x 9"', '47 3/8" x 9"', '47 3/8" x 9"', '48 3/8" x 9"']);
    });
});

describe('a bottom let into the sides', () => {
    const { section, off, lines, why } = built({ sides: { stock: eight, rabbet: ['3/8"', '3/4"'] }, bottom: { stock: eight, rip: '6 7/32"', place: 'in-rabbets' } });
    test('is as wide as the blocking and both rabbets, less its play', () => {
        expect([section.channelWidth, section.bottomWidth, section.fit, section.depth].map(length => printInches(length!.ticks))).toEqual(['6 1/4"', '6 7/32"', '1/32"', '7 1/2"']);
    });
    test('is cut between others to the coffer and what is left of their sides', () => {
        expect(lines('bottom')).toEqual({ A: ['49 49/64" x 6 7/32"', '50 5/32" x 6 7/32"', '50 5/32" x 6 7/32"', '49 49/64" x 6 7/32"'], 1: ['180 1/2" x 6 7/32"'] });
        expect(off.pieces.find(({ id }) => id === 'parlor.bottom-A-1')!.cutBack).toBe(49.75 * 16256);
        expect(lines('blocking')['A']).toEqual(['50 1/16" x 5 1/2"', '50 13/16" x 5 1/2"', '50 13/16" x 5 1/2"', '50 1/16" x 5 1/2"']);
        expect(sidesOfA(off.pieces)).toEqual(SIDES_OF_A);
        expect(why('bottom-A-1')).toBe('coffer 4\' 1 3/8" + side 3/4" - line 1 rabbet 3/8" + gap beside the line 1 bottom 1/64" = 4\' 1 49/64"');
    });
    test('makes sides with one miter lefts and rights', () => {
        expect(off.pieces.filter(({ part, hand }) => part === 'side' && hand !== null).length).toBe(20);
    });
});

describe('a box that is made at the bench', () => {
    const { section, off, lines, why } = built({ blocking: { stock: six, rip: '5 3/8"', fit: 'bench-box' } });
    test('is as wide inside as its spacers, and without any as its bottom', () => {
        expect([section.innerWidth, section.outerWidth, section.blockingWidth, section.fit].map(length => printInches(length!.ticks))).toEqual(['5 1/2"', '7"', '5 3/8"', '0"']);
        const { section: bare } = built({ blocking: { stock: six, rip: '5 3/8"', fit: 'bench-box' }, spacers: null });
        expect(whyText(bare.innerWidth.why, bare.innerWidth.ticks, INCHES)).toBe('bottom 5 1/2"');
    });
    test('leaves blocking that is longer between its lines by what it is narrower', () => {
        expect(lines('blocking')).toEqual({ A: ['50 1/8" x 5 3/8"', '50 15/16" x 5 3/8"', '50 15/16" x 5 3/8"', '50 1/8" x 5 3/8"'], 1: ['180 1/2" x 5 3/8"'] });
        expect(lines('bottom')['A']).toEqual(['50 1/8" x 5 1/2"', '50 7/8" x 5 1/2"', '50 7/8" x 5 1/2"', '50 1/8" x 5 1/2"']);
        expect(sidesOfA(off.pieces)).toEqual(SIDES_OF_A);
        expect(why('blocking-A-1')).toBe('coffer 4\' 1 3/8" + side 3/4" + gap beside the line 1 blocking 1/16" - relief 1/16" = 4\' 2 1/8"');
    });
});

test('where lines of both kinds cross, each is cut to what the other is', () => {
    const { profile } = jobBuilder();
    const box: ProfileWords = { blocking: { stock: six, rip: '5 3/8"', fit: 'bench-box' }, sides: { stock: eight }, bottom: { stock: six } };
    const { ceiling } = layOut(exampleRoom({ lines: { 2: { beams: profile('box', box) } } }, { sides: { stock: eight }, spacers: null, bottom: { stock: six } }));
    const blocking = takeOff(ceiling!).pieces.filter(({ part, line }) => part === 'blocking' && line === 'A').map(({ back }) => printInches(back));
    // bays 2 and 3 meet the box of line 2 at one end
    expect(blocking).toEqual(['50 1/16"', '50 7/8"', '50 7/8"', '50 1/16"']);
});
