import { suspectsOf } from '../measure/misread.ts';
import { suspectWords } from '../measure/known-words.ts';
import { tapeOf } from '../job/tape.ts';
import { printMark } from '../quantity/print-length.ts';
import { isMistake } from '../ceiling/room-shape.ts';
import { listed } from '../plain/words.ts';
import { TICKS_PER_INCH } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { troublesOf } from './support/troubles.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL, '  wall east   9\' 5"\n', `  wall east   9' 5"
  wall south  12' 10"
  wall west   9' 5"
  diagonal    north-west to south-east measures 15' 11"
  diagonal    north-east to south-west measures 15' 11 5/8"
`);

/** From here on it is a warning. */
const WARNED = TICKS_PER_INCH / 8;

export const tapeDoesntClose = defineRule({
    name: 'tape-doesnt-close',
    severity: 'error',
    title: 'What was measured around the room does not come out where it began',
    explanation: `
Whoever measures all walls of a room one after the other, with the turns between them, comes back to where he began; what is missing
there, the misclosure, is a wrong reading. Four walls and a diagonal tell the shape of a room, and with it the other diagonal.

With walls of 12' 10" and 9' 5" and a diagonal of 15' 11" the other one is 15' 11" as well. A tape that says 15' 11 5/8" is 5/8" off, and
one of six figures is wrong: measure again. Which one it may be is told with what it would have to be: first those that are off by a usual
slip (an inch or a foot miscounted, a tape held at its 1" mark, digits swapped, a 6 for a 9, a fraction read from the wrong side), then
those that have to be off least. \`cofferwright measure\` ranks all of them.

Over 1/16", which a tape cannot show, it is a **hint**, over 1/8" a **warning**, over 1/4" an **error**. Up to there the longest wall that
runs that way is taken so much longer or shorter that the walls meet, and the first diagonal holds; a room whose walls miss each other
by more is not laid out.`,
    wrong,
    right: changed(wrong, '15\' 11 5/8"', '15\' 11"'),
    basis: 'Geometry; how much a tape may be off is common practice, no source.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job), { room } = layout;
            const explained = (): string => suspectWords(suspectsOf(room), ticks => printMark(ticks, tapeOf(job)));
            const severity = (off: number) => (isMistake(off) ? {} : { severity: off > WARNED ? 'warning' as const : 'hint' as const });
            for (const { gap, stretched, at } of troublesOf(layout, 'tape-doesnt-close')) {
                const open = Math.round(Math.hypot(gap.x, gap.y));
                const ways = [[gap.x, 'east', 'west'], [gap.y, 'south', 'north']] as const;
                const where = ways.filter(([by]) => Math.round(by) !== 0).map(([by, ahead, behind]) => `${size(Math.round(Math.abs(by)))} ${by > 0 ? ahead : behind}`);
                const taken = stretched.map(({ wall, to }) => `wall ${wall} is taken as ${size(to)}`);
                report({
                    at, ...severity(open),
                    message: `Around the room the tape comes out ${listed(where)} of where it began${where.length > 1 ? `, ${size(open)} off` : ''}. `
                        + (isMistake(open) ? 'A length or a heading is wrong: measure again. A wall that cannot be measured is written without a length, and is worked out from the others.'
                            : `${taken.length > 0 ? `So that it closes, ${listed(taken)}. ` : ''}Measure again if that is too much.`) + explained(),
                });
            }
            for (const { from, to, measured, is, at } of troublesOf(layout, 'diagonal-differs')) {
                const off = Math.abs(measured - is);
                report({
                    at, ...severity(off),
                    message: `With these walls${room.diagonals.length > 1 ? ' and the first diagonal' : ''} the one from ${from} to ${to} must be ${size(is)}; the tape says ${size(measured)}: ${size.off(off)} off. Measure again.${explained()}`,
                });
            }
        },
    },
});

