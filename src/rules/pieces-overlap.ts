import type { Fault, Misfit } from '../dryfit/model.ts';
import { rowsOff } from '../takeoff/rows.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { causeWords, clashWords, nameOf, relatedTo, theFirst } from './support/fit-words.ts';
import { rowFound } from './support/row-words.ts';
import { sizesOf, type Sizes } from './support/words.ts';
import { capitalized } from '../plain/words.ts';

const wrong = changed(HALL, '  cleats {', `  spacers {
    stock   poplar-1x4
    height  3 3/4"  // allow spacer-hits-cleat: notched on the job
  }
  cleats {`);

export const piecesOverlap = defineRule({
    name: 'pieces-overlap',
    severity: 'error',
    title: 'Two pieces of the cut list are in the same place',
    explanation: `
In the dry fit every piece of the cut list is put together as a solid, in the form that its own line of the list gives it:
cut lengths, miters, hand, rabbet, width and thickness. Where it stands comes from the layout. No two may be in each other,
except for what is planned: a press, or rounding to the tape.

A side cut at 50 15/16" in a place of 50 7/8" is 1/16" too long: it bites 1/32" along its length at each end, which is a little over 1/64"
measured square to a 45 degree miter. The depth that is reported is the least that one of the two would have to give way.

Besides, the cut lengths of every row from wall to wall are added up with what stands between them: no row may be longer than its
room, except for a press.

Where the list contradicts its own layout, the finding says where they differ; that is a mistake of this program. Where the text itself
puts two parts into one place and a comment allows it, as here, the dry fit still shows where, and how deep.`,
    wrong,
    right: changed(wrong, '3 3/4"  // allow spacer-hits-cleat: notched on the job', '3 1/2"'),
    basis: 'Geometry of the solids.',
    silentAfter: ['bottoms-in-unlike-places'],
    check: {
        fit({ layout: { ceiling }, fit, takeOff, job }, report) {
            for (const row of rowsOff(ceiling, takeOff.pieces)) if (row.sum > row.room) report(rowFound(row, job));
            theFirst(fit.faults.filter(overlaps).map(misfit => ({
                at: misfit.piece.source, related: relatedTo(misfit), message: overlapWords(misfit, sizesOf(job)),
            }))).forEach(one => report(one));
        },
    },
});

export function overlaps(fault: Fault): fault is Misfit {
    return fault.kind === 'misfit' && fault.clashes.some(clash => clash.kind === 'overlap');
}

export function overlapWords(misfit: Misfit, size: Sizes): string {
    const deep = misfit.clashes.filter(clash => clash.kind === 'overlap');
    return `${capitalized(nameOf(misfit.piece))} runs into ${clashWords(deep, clash => `by ${size(clash.ticks)}`)}. `
        + causeWords(misfit, size, 'The list follows what is written: change one of the two parts.');
}
