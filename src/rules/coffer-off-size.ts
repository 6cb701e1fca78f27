import type { OffSize } from '../dryfit/model.ts';
import type { JobSettings } from '../job/model.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { FAULT_OF_THE_LIST, theFirst } from './support/fit-words.ts';
import { spacingSaidBy, wordsOf } from './support/places.ts';
import { alongWall, sizesOf } from './support/words.ts';
import { counted } from '../plain/words.ts';

const wrong = changed(changed(HALL, 'edition 1\n', `edition 1

job "Ferry Road 7" { cut-to 1/4" }
`), '    coffers-north  3', '    lines-north    50 5/8", 103 3/8"');

export const cofferOffSize = defineRule({
    name: 'coffer-off-size',
    severity: 'error',
    title: 'A coffer of the finished ceiling comes out at another size than it is laid out at',
    explanation: `
In the dry fit every coffer is measured from face to face, both ways, between the pieces that stand around it.

Where the sides do what the layout says, only the tape can make a difference: lines set at 50 5/8" and 103 3/8" make outer
coffers of 48 1/8", and with \`cut-to 1/4"\` these are cut at 48 1/4" or 48". From 1/16" on that is a **warning**. Use a finer
\`cut-to\`, or set the lines to its marks. Coffers that are meant to be equal are reported once for the whole run, by \`rounding-left-over\`.

Anything else is a mistake of this program, an **error**.`,
    wrong,
    right: changed(wrong, 'cut-to 1/4"', 'cut-to 1/8"'),
    basis: 'Geometry of the solids; a difference of 1/16" is seen: common practice, no source.',
    check: {
        fit({ layout: { ceiling }, fit, job }, report) {
            const size = sizesOf(job);
            theFirst(fit.faults.filter(fault => fault.kind === 'coffer').map(fault => {
                const run = fault.along === 'east-west' ? ceiling.across : ceiling.down;
                return {
                    ...wordsOf(spacingSaidBy(run.spacing)), severity: fault.planned ? 'warning' as const : 'error' as const, message: cofferWords(fault, job),
                    related: fault.planned ? [{ at: job.cutTo.at, message: `lengths are cut to ${size(job.cutTo.value)}` }] : [],
                };
            })).forEach(one => report(one));
        },
    },
});

export function cofferWords({ coffer, along, is, wanted, planned, alike }: OffSize, job: JobSettings): string {
    const size = sizesOf(job);
    const others = alike.length === 0 ? '' : ` The same goes for ${counted(alike.length, 'other')}.`;
    return `Coffer ${coffer} comes out ${size(is)} ${alongWall(along)}, but ${planned ? 'is laid out at' : 'should be'} ${size(wanted)}.${others} `
        + (planned ? `Lengths are cut to ${size(job.cutTo.value)}: use a finer \`cut-to\`, or set the lines to its marks.` : FAULT_OF_THE_LIST);
}
