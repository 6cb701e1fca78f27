import type { Unflush } from '../dryfit/model.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { likeIt, nameOf, theFirst } from './support/fit-words.ts';
import { sizesOf, type Sizes } from './support/words.ts';
import { capitalized } from '../plain/words.ts';

const wrong = changed(HALL, '  cleats { rip 3/4" x 3/4" from strip-1x2 }', `  cleats {
    rip    3/4" x 3/4" from strip-1x2
    gauge  11/16"  // allow cleat-off-gauge: a shadow line is wanted
  }`);

export const undersideNotFlush = defineRule({
    name: 'underside-not-flush',
    severity: 'error',
    title: 'A bottom or a side is not flush with the other undersides',
    explanation: `
Looked at from below, bottoms and sides end in one plane. A bottom goes up until it meets the cleats, and these stand where
the gauge block sets them. In the dry fit the lower face of every side and bottom is measured against the depth of the beam.

Cleats gauged with 11/16" for a bottom of 3/4" stand 1/16" too low: every bottom hangs 1/16" below its sides. Where a comment
allows the gauge, as here, the dry fit still shows what comes of it.`,
    wrong,
    right: changed(wrong, '11/16"  // allow cleat-off-gauge: a shadow line is wanted', '3/4"'),
    basis: 'Geometry of the solids.',
    check: {
        fit({ fit, job }, report) {
            theFirst(fit.faults.filter(fault => fault.kind === 'underside').map(unflush => ({
                at: unflush.piece.source, message: undersideWords(unflush, sizesOf(job)),
            }))).forEach(one => report(one));
        },
    },
});

export function undersideWords({ piece, ticks, alike }: Unflush, size: Sizes): string {
    return `${capitalized(nameOf(piece))} ends ${size(Math.abs(ticks))} ${ticks > 0 ? 'above' : 'below'} the undersides of the beams, where its neighbors end.${likeIt(piece, alike, alike.length === 1 ? 'So does' : 'So do')}`;
}
