import { dimensionsOf, isAsked, isKnown, leastStatus, type Dimension } from '../measure/dimensions.ts';
import { dimensionFigure, dimensionName, knownWords } from '../measure/known-words.ts';
import { capitalized } from '../plain/words.ts';
import type { Status } from '../job/status.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';

const VERIFIED = changed(HALL, '  wall north  12\' 10"\n  wall east   9\' 5"\n', `  wall north  12' 10" as verified on 2026-03-09 by "Ines"
  wall east   9' 5" as verified on 2026-03-09 by "Ines"
  wall south  12' 10" as verified on 2026-03-09 by "Ines"
  wall west   9' 5" as verified on 2026-03-09 by "Ines"
  diagonal    north-west to south-east measures 15' 11" as verified on 2026-03-09 by "Ines"
`);

export const notVerified = defineRule({
    name: 'not-verified',
    severity: 'warning',
    title: 'Pieces are cut from a dimension that nobody has verified',
    explanation: `
A drawing is not the room, and a tape is misread. Every dimension of a room can say how it is known: \`as drawn\`, \`as told by "the
owner"\`, \`as measured on 2026-03-02 by "Ana"\`, \`as verified\`, which is measured a second time and found the same. As soon as a room
says it of one, it is asked of all that pieces are cut from: walls, diagonals, what stands at a wall, and the fixture that the grid is
centered on. What was found on site, in \`measured\`, and what has a day counts as measured. A wall that nobody names is taken to be as
long as the one across, and a room without a diagonal to be square: that is nobody's measure either.

The list of what is still to measure, in the order in which one walks round the room, is \`cofferwright measure\`. A job that says
\`cut-from measured\` is content with one reading. Where a room says nothing of this, nothing is asked: an estimate from a sketch is no
mistake. Measure after the drywall is up.`,
    wrong: changed(VERIFIED, 'wall west   9\' 5" as verified on 2026-03-09 by "Ines"', 'wall west   9\' 5" as drawn'),
    right: VERIFIED,
    basis: 'Nothing is cut from a dimension that was not measured twice: common practice, no source.',
    check: {
        room({ layout: { room }, job }, report) {
            if (!isAsked(room)) return;
            const least = leastStatus(room);
            for (const dimension of dimensionsOf(room)) {
                if (!dimension.cuts || isKnown(dimension, least)) continue;
                const { at } = dimension, figure = dimensionFigure(dimension, job), name = capitalized(dimensionName(dimension));
                report({ at, message: `${sentence(dimension, figure === '' ? name : `${name}, ${figure},`)} ${todo(dimension, least)} before anything is cut from it.` });
            }
        },
    },
});

function sentence(dimension: Dimension, subject: string): string {
    const { known, kind, name, like, fixture } = dimension;
    if (known === 'assumed') return kind === 'diagonal' ? 'Nobody measured a diagonal: the corners are taken to be as they are drawn.' : `Nobody measured wall ${name}${like ? `: it is taken to be as long as wall ${like}` : ''}.`;
    const of = fixture ? `The place of ${name}` : subject;
    return known === 'unsaid' ? `${of} does not say how it is known.` : `${of} is ${knownWords(dimension)}.`;
}

function todo({ known }: Dimension, least: Status): string {
    return known === 'measured' && least === 'verified' ? 'Measure it a second time' : 'Measure it';
}
