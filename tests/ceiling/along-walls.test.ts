import { expect, test } from 'vitest';
import type { Around } from '../../src/ceiling/model.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { PLAIN_BEAM } from '../support/plain-beam.ts';

/** By hand: what runs along walls, of beams of 5 1/2" inside with sides of 3/4", so 7" outside, and 7 1/2" deep, or 9 1/2" with wider sides. */
const layouts = await layoutsOf(`${PLAIN_BEAM}
profile wide-cap like plain { bottom { stock ten; rip 8"; place under-sides } }
profile let-in like plain { sides.rabbet 1/4" x 3/4" on lower-back; bottom { stock eight; rip 6"; place in-rabbets } }
profile deep like plain { sides.stock ten }
${['plain', 'capped', 'wide-cap', 'let-in'].map(beams => `
room of-${beams} {
  wall north 10'
  wall east 9'
  grid { coffers-north 2; coffers-east 1; beams ${beams}; through north-south; perimeter { kind half-beam; width 3" } }
}`).join('')}
room band-under-deep {
  wall north 10'
  wall east 9' { perimeter { kind half-beam; width 3"; beams deep } }
  wall south 10'
  wall west 9'
  grid { coffers-north 2; coffers-east 1; beams plain; through north-south; perimeter { kind band; stock eight } }
}
`);
function around(name: string): Around {
    return layouts.find(({ room }) => room.name === name)!.ceiling!.around;
}

test.each([
    // up to its side; past its face, 3 3/4", by 1/2"; by half of what 8" are more than 7", where nothing is said; 1/4" into its side
    ['plain', '3"'], ['capped', '4 1/4"'], ['wide-cap', '4 1/4"'], ['let-in', '3 1/4"'],
])('the bottom of a half beam of 3", %s, is %s wide', (beams, width) => {
    const north = around(`of-${beams}`).north!;
    expect(north.kind === 'half-beam' && printInches(north.bottomWidth.ticks)).toBe(width);
});

test('a band hangs as low as the deepest of the lines and half beams', () => {
    const { north, east } = around('band-under-deep');
    expect([north?.kind === 'band' && printInches(north.lowerEdge.ticks), east?.kind === 'half-beam' && printInches(east.section.depth.ticks)]).toEqual(['9 1/2"', '9 1/2"']);
});
