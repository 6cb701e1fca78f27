import type { OffSize } from '../dryfit/model.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { FAULT_OF_THE_LIST, theFirst } from './support/fit-words.ts';
import { spacingSaidBy, wordsOf } from './support/places.ts';
import { alongWall, counted, sizesOf } from './support/words.ts';

const wrong = changed(changed(HALL, 'edition 1\n', `edition 1

job "Ferry Road 7" { cut-to 1/4" }
`), '    coffers-north  3', '    lines-north    50 5/8", 103 3/8"');

export const cofferOffSize = defineRule({
    name: 'coffer-off-size',
    severity: 'error',
    title: 'A coffer of the finished ceiling opens to another size than it is laid out at',
    explanation: `
In the dry fit every coffer is measured from face to face, both ways, between the pieces that stand round it.

Where the sides do what the layout says, only the tape can make a difference: lines set at 50 5/8" and 103 3/8" make outer
coffers of 48 1/8", and with \`cut-to 1/4"\` these are cut at 48 1/4" or 48". That is a **warning** from 1/16" on. Say a finer
\`cut-to\`, or set the lines to it. Coffers that are meant equal are told of once for the whole run, by \`rounding-left-over\`.

Anything else is a mistake of this program, an **error**.`,
    wrong,
    right: changed(wrong, 'cut-to 1/4"', 'cut-to 1/8"'),
    basis: 'Geometry of the solids; a difference of 1/16" is seen: common practice, no source.',
    check: {
        fit({ layout: { ceiling }, fit, job }, report) {
            const size = sizesOf(job);
            theFirst(fit.faults.filter((fault): fault is OffSize => fault.kind === 'coffer').flatMap(({ coffer, along, is, wanted, planned, alike }) => {
                const run = along === 'east-west' ? ceiling?.across : ceiling?.down;
                const said = run && spacingSaidBy(run.spacing);
                if (!said) return [];
                return [{
                    ...wordsOf(said), severity: planned ? 'warning' as const : 'error' as const,
                    message: `Coffer ${coffer} opens to ${size(is)} ${alongWall(along)}, and is ${planned ? 'laid out at' : 'to be'} ${size(wanted)}.${alike.length > 0 ? ` So are ${counted(alike.length, 'other')}.`.replace('So are 1', 'So is 1') : ''} `
                        + (planned ? `Lengths are cut to ${size(job.cutTo.value)}: say a finer \`cut-to\`, or set the lines to it.` : FAULT_OF_THE_LIST),
                    related: planned ? [{ at: job.cutTo.at, message: `lengths are cut to ${size(job.cutTo.value)}` }] : [],
                }];
            })).forEach(one => report(one));
        },
    },
});
