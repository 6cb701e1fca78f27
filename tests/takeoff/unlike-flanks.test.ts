import { describe, expect, test } from 'vitest';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { takeOffOf } from '../../src/pipeline/inspect.ts';
import { sumOf } from '../../src/provenance/why.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { Piece } from '../../src/takeoff/model.ts';
import { rowsOff } from '../../src/takeoff/rows.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';

/**
 * Beams with another side on one flank, by hand. 5 1/2" inside, 3/4" and 1" of sides: 7 1/4" wide; 1/4" held down and 7 1/4" of side: 7 1/2" deep.
 * The other side is 7 1/8" high, so it is held down 3/8". In 16' x 12' without anything along the walls two lines and one leave coffers of
 * (192 - 14 1/2) / 3 = 59 1/6" by (144 - 7 1/4) / 2 = 68 3/8". Common practice, no source.
 */
const TEXT = `${PLAIN_BEAM}
stock thick { thickness 1"; width 7 1/8"; lengths 16' }
profile two-faced like plain { other-side { stock thick; nails 16 ga x 2" every 6" } }
profile butted like two-faced { sides.corners butted past north-south }
profile lapped like two-faced {
  sides.rabbet 3/8" x 3/4" on lower-back
  other-side.rabbet 1/2" x 3/4" on lower-back
  bottom { stock eight; rip 6 3/8"; place in-rabbets }
}
profile wrapped {
  wraps 5" x 1" clearance 1/4"
  spacers { stock six; height 4" }
  sides { stock eight; rabbet 3/8" x 3/4" on lower-back }
  other-side { stock thick; rabbet 1/2" x 3/4" on lower-back }
  bottom { stock eight; rip 6 3/8"; place in-rabbets }
}
${['two-faced', 'butted', 'lapped', 'wrapped'].map(name => `
room ${name}-lines {
  wall north 16'
  wall east 12'
  grid { coffers-north 3; coffers-east 2; beams ${name}; through north-south }
}`).join('')}
room by-centers {
  wall north 16'
  wall east 12'
  grid { lines-north 60", 130" from north-west; coffers-east 2; beams two-faced; through north-south }
  line 2 { other-side west }
}
room held {
  wall north 16'
  wall east 12'
  grid { coffers-north 3; coffers-east 2; beams two-faced; through north-south }
  line A { held-down 1/8" }
}
room falling {
  wall north 16'
  wall east 12'
  grid { coffers-north 2; coffers-east 2; beams two-faced; through falling; lay-north-south falling; lay-east-west rising }
}
room half {
  wall north 15'
  wall east 12'
  grid { coffers-north 2; coffers-east 1; beams two-faced; through north-south; perimeter { kind half-beam; width 2 1/2" } }
}
`;
const layouts = await layoutsOf(TEXT);

function built(name: string): { pieces: readonly Piece[]; find(id: string): Piece; nails: readonly string[] } {
    const { ceiling } = layouts.find(({ room }) => room.name === name)!, off = takeOffOf(ceiling!);
    expect(dryFit(ceiling!, off).faults).toEqual([]);
    expect(rowsOff(ceiling!, off.pieces)).toEqual([]);
    for (const piece of off.pieces) expect(Math.abs(sumOf(piece.why) - piece.back), piece.id).toBeLessThanOrEqual(ceiling!.square ? 0 : 1);
    const find = (id: string): Piece => off.pieces.find(piece => piece.id === `${name}.${id}`)!;
    return { pieces: off.pieces, find, nails: off.consumables.filter(({ kind }) => kind === 'nails').map(({ what, count }) => `${count} ${what}`) };
}
const COFFER = 355 / 6, DEEP = 68.375;
const isAbout = (ticks: number, length: number): void => expect(Math.abs(ticks / inches('1') - length), `${ticks / inches('1')} for ${length}`).toBeLessThan(2 / inches('1'));
const span = ({ box }: Piece): readonly number[] => [box.west, box.east];

describe('mitered, with the bottom between the sides', () => {
    const { find, nails } = built('two-faced-lines');
    test('a miter gives what the other side is thick, and its angle goes by both', () => {
        for (const [id, back, degrees] of [
            ['side-A-1-north', COFFER + 0.75, 45], ['side-A-1-south', COFFER + 0.75, 36.8699], ['side-1-1-east', DEEP + 0.75, 36.8699], ['side-1-2-east', DEEP + 1, 45],
            ['side-1-2-west', DEEP + 1, 53.1301],
        ] as const) {
            isAbout(find(id).back, back);
            expect(Math.max(...find(id).ends.map(({ degrees: own = 0 }) => own)), id).toBeCloseTo(degrees, 3);
        }
        isAbout(find('side-A-2-north').back, COFFER + 0.75 + 1);
    });
    test('the other side is held down so that it hangs as low, of its own stock and nails', () => {
        for (const [id, top, thick, stock] of [['side-1-1-west', 0.25, 0.75, 'eight'], ['side-1-1-east', 0.375, 1, 'thick'], ['side-A-2-south', 0.375, 1, 'thick']] as const) {
            const { box, thickness, stock: { name } } = find(id);
            isAbout(box.top, top);
            isAbout(box.foot, 7.5);
            isAbout(thickness, thick);
            expect(name).toBe(stock);
        }
        // by hand: one flank of 1 and 2 in pieces of 69 1/8" and 69 3/8", of A in pieces of 59 11/12", 60 11/12" and 60 1/6"; twice 13 and 13, then 11, 12
        // and 12 nails, 6" apart at most, are 87
        expect(nails).toEqual(['87 16 ga x 2" nails, sides']);
    });
});

test('butted: what runs past goes on by what the other side is thick there, what stops has the length of the coffer', () => {
    const { find } = built('butted-lines');
    isAbout(find('side-A-2-south').back, COFFER);
    isAbout(find('side-1-1-west').back, DEEP + 0.75);
    isAbout(find('side-1-2-west').back, DEEP + 1);
    isAbout(find('side-1-2-west').face, DEEP + 1);
});

test('let into rabbets of two widths, the bottom lies nearer to the deeper one', () => {
    const { find } = built('lapped-lines'), center = COFFER + 0.75 + 2.75;
    isAbout(span(find('bottom-1'))[0]!, center - 2.75 - 0.375);
    isAbout(span(find('bottom-1'))[1]!, center + 2.75 + 0.5);
    isAbout(find('bottom-A-1').back, COFFER + 0.75 - 0.375);
    isAbout(find('bottom-A-2').back, COFFER + 1 - 0.5 + 0.75 - 0.375);
    isAbout(find('bottom-A-3').back, COFFER + 1 - 0.5);
});

test('spacers hang in the middle of the inside, also where there is no blocking and the bottom lies out of it', () => {
    const { pieces } = built('wrapped-lines'), [spacer] = pieces.filter(({ part, line }) => part === 'spacer' && line === '1'), center = COFFER + 0.75 + 2.75;
    isAbout(span(spacer!)[0]!, center - 2.75);
    isAbout(span(spacer!)[1]!, center + 2.75);
});

test('a line that is set by its center has the middle of its inside there', () => {
    const { find } = built('by-centers');
    const all = ['blocking-1', 'side-1-1-west', 'side-1-1-east', 'side-2-1-west', 'side-2-1-east'].flatMap(id => span(find(id)));
    [57.25, 62.75, 56.5, 57.25, 62.75, 63.75, 126.25, 127.25, 132.75, 133.5].forEach((length, i) => isAbout(all[i]!, length));
});

test('a line that is held down less is so on both flanks', () => {
    const { find } = built('held');
    isAbout(find('side-A-1-north').box.top, 0.125);
    isAbout(find('side-A-1-south').box.top, 0.25);
    isAbout(find('side-A-1-south').box.foot, 7.375);
});

test('at 45 degrees the other side is to the north-east of what falls, and to the south-east of what rises', () => {
    const thick = built('falling').pieces.filter(({ part, stock }) => part === 'side' && stock.name === 'thick');
    expect([...new Set(thick.map(({ line, on }) => `${line} ${on}`))].sort()).toEqual(['1 north-east', 'A south-east']);
});

test('a half beam has the sides that are not the other', () => {
    const { pieces, find } = built('half');
    expect(new Set(pieces.filter(({ part, line }) => part === 'side' && line === null).map(({ stock }) => stock.name))).toEqual(new Set(['eight']));
    expect(find('side-north-1').ends.map(({ degrees }) => degrees)).toEqual([45, 45]);
    // beside the other side of line 1, 1" against 3/4"
    expect(find('side-north-2').ends.map(({ degrees = 0 }) => Math.round(degrees * 100) / 100)).toEqual([53.13, 45]);
});
