import { describe, expect, test } from 'vitest';
import type { Layout } from '../../src/ceiling/model.ts';
import { blankOf } from '../../src/cutting/blank.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { takeOffOf } from '../../src/pipeline/inspect.ts';
import { sumOf } from '../../src/provenance/why.ts';
import { inches } from '../../src/quantity/rational.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { rowsOff } from '../../src/takeoff/rows.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';

/**
 * Beams of other kinds from the text to the dry fit, by hand. The room of 16' x 12' has two lines each way of 7" (5 1/2" inside, 3/4" sides): with half
 * beams of 2 1/2" and 3/4" all round, coffers are (192 - 6 1/2 - 14) / 3 = 57 1/6" by (144 - 6 1/2 - 14) / 3 = 41 1/6".
 * Common practice, no source.
 */
const TEXT = `${PLAIN_BEAM}
profile lapped like plain { bottom { stock eight; rip 6 1/4"; place in-rabbets let-in 3/8" } }
profile wrapped {
  wraps 5" x 6" clearance 1/4"
  sides { stock eight }
  bottom { stock six }
}
profile beaded like plain { back { thickness 1/4" } }

${['capped', 'lapped', 'plain'].map(name => `
room ${name}-halves {
  wall north 16'
  wall east 12'
  grid {
    coffers-north 3
    coffers-east 3
    beams ${name}
    through north-south
    perimeter { kind half-beam; width 2 1/2"${name === 'plain' ? '; scribe 1/4"' : ''} }
  }
}`).join('')}

room crossed-lines {
  wall north 16'
  wall east 12'
  grid { coffers-north 3; coffers-east 2; beams plain; through north-south }
  line A { beams wrapped }
}
${['wrapped', 'beaded'].map(name => `
room ${name}-lines {
  wall north 16'
  wall east 12'
  ceiling { height 9' }
  grid { coffers-north 3; coffers-east 3; beams ${name}; through north-south }
}`).join('')}
`;
const layouts = await layoutsOf(TEXT);

function built(name: string): { layout: Layout; pieces: readonly Piece[]; find(id: string): Piece } {
    const layout = layouts.find(({ room }) => room.name === name)!, takeOff = takeOffOf(layout.ceiling!), fit = dryFit(layout.ceiling!, takeOff);
    expect(fit.faults).toEqual([]);
    expect(rowsOff(layout.ceiling!, takeOff.pieces)).toEqual([]);
    expect(fit.looked.pieces).toBe(takeOff.pieces.length);
    for (const piece of takeOff.pieces) expect(`${piece.id} ${sumOf(piece.why)}`).toBe(`${piece.id} ${piece.back}`);
    return { layout, pieces: takeOff.pieces, find: id => takeOff.pieces.find(piece => piece.id === `${name}.${id}`)! };
}
const inch = (ticks: number): string => printInches(ticks);

describe('half beams whose bottom lies under the side', () => {
    const { find } = built('capped-halves');
    test('is as wide as the half beam and its overhang, and hangs below the side', () => {
        expect([find('bottom-west').width, find('blocking-west').width].map(inch)).toEqual(['3 3/4"', '2 1/2"']);
        expect([find('bottom-west').box.top, find('side-west-1').box.foot].map(inch)).toEqual(['7 1/2"', '7 1/2"']);
    });
    test('lines end at its edge: the coffer less an overhang at both ends', () => {
        expect(Math.abs(find('bottom-A-1').back - inches('337/6'))).toBeLessThanOrEqual(1);        // 57 1/6" - 1"
        expect(inch(find('bottom-1').back)).toBe('136 1/2"');            // 144" - 2 x 3 3/4"
    });
});

test('half beams whose bottom is let into the side', () => {
    const { find } = built('lapped-halves');
    expect(inch(find('bottom-west').width)).toBe('2 7/8"');
    expect(inch(find('bottom-1').back)).toBe('138 1/4"');                // 144" - 2 x 2 7/8"
});

test('a bottom that is scribed to the wall is ripped wider, out of a board that has it', () => {
    const { layout, find } = built('plain-halves'), bottom = find('bottom-west');
    expect([bottom.width, bottom.scribe!].map(inch)).toEqual(['2 1/2"', '1/4"']);
    expect(bottom.machining).toEqual(['rip to 2 3/4"', '1/4" of it to be scribed to the wall']);
    expect(inch((blankOf(bottom, layout.room.job) as { width: number }).width)).toBe('2 3/4"');
});

test('a beam that wraps something is as wide inside as that and its clearance, and has no blocking', () => {
    const { layout, pieces } = built('wrapped-lines'), { section } = layout.ceiling!.lines[0]!;
    expect([section.innerWidth, section.outerWidth, section.depth].map(length => inch(length.ticks))).toEqual(['5 1/2"', '7"', '7 1/2"']);
    expect(pieces.some(({ part }) => part === 'blocking')).toBe(false);
    expect(Math.abs(pieces.find(({ id }) => id.endsWith('bottom-A-2'))!.back - inches('365/6'))).toBeLessThanOrEqual(1);      // (192 - 14) / 3 + 1 1/2"
});

test('blocking that runs through is cut at a beam that wraps something, its bottom is not', () => {
    const { pieces } = built('crossed-lines'), of = (part: Piece['part']): string[] => pieces.filter(piece => piece.part === part && piece.line === '1').map(({ back }) => inch(back));
    // coffers of (144" - 7") / 2 = 68 1/2"; blocking goes on past the side of 3/4" to what is wrapped
    expect(of('bottom')).toEqual(['144"']);
    expect(of('blocking')).toEqual(['69 1/4"', '69 1/4"']);
});

test('a panel over the coffers changes no piece', () => {
    const { pieces } = built('beaded-lines');
    expect(pieces.filter(({ part }) => part === 'blocking').map(({ box }) => box.top)).toEqual(pieces.filter(({ part }) => part === 'blocking').map(() => 0));
});
