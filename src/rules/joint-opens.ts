import type { Clash, Fault, Misfit } from '../dryfit/model.ts';
import { GAPS_ARE_FROM } from '../data/gaps.ts';
import { inches } from '../quantity/rational.ts';
import { rowsOff } from '../takeoff/rows.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { causeWords, clashWords, nameOf, relatedTo, theFirst } from './support/fit-words.ts';
import { rowFound } from './support/row-words.ts';
import { shortest } from '../quantity/print-length.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf, type Sizes } from './support/words.ts';
import { capitalized, counted } from '../plain/words.ts';

const wrong = changed(changed(changed(changed(HALL, `12' 10"`, `12' 9 3/4"`), `9' 5"`, `9' 4 7/8"`), 'edition 1\n', `edition 1

job "Ferry Road 5" { cut-to 1/8" }
`), 'stock poplar-1x6 { size 1x6 }', `stock poplar-1x6 {
  thickness  11/16"
  width      5 1/2"
}`);

/** What filler, caulk and paint close. */
export const FILLED = inches('1/32');

export const jointOpens = defineRule({
    name: 'joint-opens',
    severity: 'error',
    title: 'Two pieces of the cut list do not meet as they should',
    explanation: `
In the dry fit every face that has to touch another one is measured against it: how far apart they are, and over what area
they touch. A gap of nothing is not enough. A miter cut at 44 degrees touches along an edge and gapes by some 1/64" at the other
one; of the 7.6 square inches that should touch hardly any do. Planned gaps are measured in the same way: what a cleat is
short, the play beside a bottom, what a side is held down.

Where the list contradicts its own layout, the finding says where they differ; that is a mistake of this program.

Where the list is right and the tape too coarse, it is a **warning**: sides of 11/16" with \`cut-to 1/8"\` have long points
that no mark of the tape meets: 48 11/16" becomes 48 5/8", and where two such sides meet the miter stands open by 3/64".
Cut to 1/16". Up to 1/64" is accepted; up to 1/32", which filler and caulk close, it is a hint. In a room whose walls or lines
lie askew, each piece is rounded down by itself, and most joints stand open by so much.`,
    wrong,
    right: changed(wrong, 'cut-to 1/8"', 'cut-to 1/16"'),
    basis: `Geometry of the solids; ${GAPS_ARE_FROM}. That filler and paint close it: common practice, no source.`,
    check: {
        fit({ layout: { ceiling }, fit, takeOff, job }, report) {
            for (const row of rowsOff(ceiling, takeOff.pieces)) if (row.sum < row.room) report(rowFound(row, job));
            const size = sizesOf(job);
            theFirst(fit.faults.filter(opens).filter(misfit => !isRounded(misfit)).map(misfit => ({
                at: misfit.piece.source, related: relatedTo(misfit), message: jointWords(misfit, size),
            }))).forEach(one => report(one));

            const rounded = fit.faults.filter(opens).filter(isRounded);
            if (rounded.length === 0) return;
            const joints = rounded.flatMap(({ piece, clashes, alike }) => clashes.map(clash => ({ piece, ...clash, count: alike.length + 1 })));
            const worst = joints.reduce((a, b) => (Math.abs(b.ticks) > Math.abs(a.ticks) ? b : a));
            const count = joints.reduce((sum, one) => sum + one.count, 0);
            const { beams } = ceiling.room.grid, at = job.cutTo.said || !beams ? { at: job.cutTo.at } : wordsOf(beams);
            report({
                ...at, severity: severityOf(joints),
                message: `Cut to ${size(job.cutTo.value)}${job.cutTo.said ? '' : ', since the job says no `cut-to`'}, ${counted(count, 'joint')} of this room cannot close: ${nameOf(worst.piece)} and ${nameOf(worst.other)} `
                    + `${worst.ticks > 0 ? `stand open by ${size.gap(worst.ticks)}` : `are too tight by ${size.gap(-worst.ticks)}`}. Their lengths fall between the marks of such a tape: ${job.cutTo.said ? 'use' : 'say'} a finer \`cut-to\`.`,
                related: [{ at: worst.piece.source, message: `${nameOf(worst.piece)} comes from here` }],
            });
        },
    },
});

/** Of joints that the tape leaves open: more than what filler, caulk and paint close is worth a warning. */
export function severityOf(clashes: readonly Pick<Clash, 'ticks'>[]): 'warning' | 'hint' {
    return clashes.some(({ ticks }) => Math.abs(ticks) > FILLED) ? 'warning' : 'hint';
}

function opens(fault: Fault): fault is Misfit {
    return fault.kind === 'misfit' && fault.clashes.every(clash => clash.kind !== 'overlap');
}

/** The list is right, and the tape too coarse for it. */
export function isRounded({ clashes }: Misfit): boolean {
    return clashes.length > 0 && clashes.every(clash => clash.kind === 'rounded');
}

export function jointWords(misfit: Misfit, size: Sizes): string {
    if (misfit.clashes.length === 0) return `${capitalized(nameOf(misfit.piece))} can be cut in two ways, and fits in one. ${causeWords(misfit, size, '')}`;
    return `${capitalized(nameOf(misfit.piece))} does not meet ${clashWords(misfit.clashes, clash => meetingWords(clash, size))}. `
        + causeWords(misfit, size, isRounded(misfit) ? 'Their lengths fall between the marks of the tape: use a finer `cut-to`.'
            : 'The list joins them, but they do not touch where they stand.');
}

function meetingWords({ kind, ticks, touches, wanted }: Clash, size: Sizes): string {
    switch (kind) {
        case 'rounded': return `(${size.gap(Math.abs(ticks))} ${ticks > 0 ? 'open' : 'too tight'})`;
        case 'apart': return `(${size.gap(ticks)} open)`;
        case 'gap': return `(the gap is ${size.gap(ticks)} wider than planned)`;
        case 'area': case 'overlap': return touches === undefined || wanted === undefined ? '(nowhere)' : `(over ${shortest(touches, 2)} square inches instead of ${shortest(wanted, 2)})`;
    }
}
