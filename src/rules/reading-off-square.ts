import { suspectWords } from '../measure/known-words.ts';
import { readingsOffSquare, wallsExchanged } from '../measure/off-square.ts';
import { tapeOf } from '../job/tape.ts';
import { printMark } from '../quantity/print-length.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL, '  wall east   9\' 5"\n', `  wall east   9' 5"
  wall south  12' 10"
  wall west   9' 5"
  diagonal    north-west to south-east measures 16' 11"
`);

export const readingOffSquare = defineRule({
    name: 'reading-off-square',
    severity: 'warning',
    title: 'But for one reading of the tape the room would be square',
    explanation: `
Four walls and one diagonal always make a room, however wrong one of them is: nothing is left over to tell. But two lengths are
enough for a rectangle, and where all figures but one are those of a rectangle, and that one is off by 3" and more, or is a
diagonal that is off by what a tape is usually misread by (an inch miscounted, the tape held at its 1" mark, digits swapped), it
is likelier that it is wrong than that the room is so far out of square.

Walls of 12' 10" and 9' 5" twice have a diagonal of 15' 11". A tape that says 16' 11" would lean the room by some 8 degrees; a
foot too many is likelier. Measure that one again, and the other diagonal too: where that bears the first one out, the room is as
it is, and nothing is said here.

In the same way two walls beside each other that are written for each other are told: 12' north, 14' east, 14' south, 12' west.`,
    wrong,
    right: changed(wrong, '16\' 11"', '15\' 11"'),
    basis: 'Pythagoras; how tapes are misread is common practice, no source.',
    check: {
        room({ layout: { room }, job }, report) {
            const suspects = readingsOffSquare(room), print = (ticks: number): string => printMark(ticks, tapeOf(job)), size = sizesOf(job);
            for (const one of suspects.slice(0, 1)) {
                const words = suspectWords(suspects, print).replace(/^ One wrong reading would explain it: /, '');
                report({ at: one.at, message: `But for one reading this room would be square: ${words} Measure that again, and the other diagonal too.` });
            }
            const [exchanged, ...others] = wallsExchanged(room);
            if (!exchanged) return;
            const pair = ([a, b]: typeof exchanged): string => `${a.name} (${size(a.length!.value.ticks)}) and ${b.name} (${size(b.length!.value.ticks)})`;
            report({
                at: exchanged[0].length!.at, severity: 'hint',
                message: `Walls ${[exchanged, ...others].map(pair).join(', or ')}${others.length > 0 ? ',' : ''} may be written for each other: exchanged, walls across from each other are alike.`,
            });
        },
    },
});
