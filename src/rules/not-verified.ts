import { leastStatus, openOf, type Dimension } from '../measure/dimensions.ts';
import { dimensionFigure, dimensionName } from '../measure/known-words.ts';
import type { JobSettings, Room } from '../job/model.ts';
import { knownWords, type Status } from '../job/status.ts';
import { grouped } from '../plain/groups.ts';
import { capitalized, listed } from '../plain/words.ts';
import { defineRule, type Found } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

const VERIFIED = changed(changed(HALL, '    through        north-south\n  }\n', `    through        north-south
  }

  measured {
    board b1 poplar-1x4 as verified { width 3 1/2"; thickness 3/4" }
    board b2 poplar-1x6 as verified { width 5 1/2"; thickness 3/4" }
    board b3 strip-1x2  as verified { width 1 1/2"; thickness 3/4" }
  }
`), '  wall north  12\' 10"\n  wall east   9\' 5"\n', `  wall north  12' 10" as verified on 2026-03-09 by "Ines"
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
says it of one, it is asked of all that pieces are cut from: walls, diagonals, how straight and how plumb a wall is, what stands at a
wall, the fixture that the grid is centered on, what a beam wraps, a survey, the longest board and piece that get there, the boards
themselves, what a crown projects and drops, and boards on hand, by their line or each as it was measured. What was found on
site, in \`measured\`, and what has a day counts as measured.
A wall that nobody names is taken to be as long as the one across, a room without a diagonal to be square, and a board to be as the
published table has it: that is nobody's measure either. A side that is dressed to 11/16" instead of 3/4" makes every side that is
mitered 1/16" too long.

Of a stock it is said where its \`width\` and \`thickness\` are, or by boards that were measured at the bench (\`board b1 board-6 {
width 5 1/2"; thickness 3/4" }\`) and are as they should be within 1/64": one counts as measured, two as verified. All boards of a room
are one warning. Of a survey it is said behind its \`method\`, or behind a single \`point\`; where nothing is said it was measured once.

The list of what is still to measure, in the order in which one walks round the room, is \`cofferwright measure\`. A job that says
\`cut-from measured\` is content with one reading. Where a room says nothing of this, nothing is asked: an estimate from a sketch is no
mistake. Measure after the drywall is up.`,
    wrong: changed(VERIFIED, 'wall west   9\' 5" as verified on 2026-03-09 by "Ines"', 'wall west   9\' 5" as drawn'),
    right: VERIFIED,
    basis: 'Nothing is cut from a dimension that was not measured twice: common practice, no source.',
    check: {
        room({ layout: { room }, job }, report) {
            const least = leastStatus(room), open = openOf(room), boards = open.filter(({ kind }) => kind === 'stock');
            if (boards.length > 0) report(foundOf(boards, room, job, least));
            for (const dimension of open) {
                if (dimension.kind === 'stock') continue;
                const { at } = dimension, figure = dimensionFigure(dimension, job), name = capitalized(dimensionName(dimension));
                report({ at, message: `${sentence(dimension, figure === '' ? name : `${name}, ${figure},`)} ${todo(dimension, least)} before anything is cut from ${(dimension.count ?? 1) > 1 ? 'them' : 'it'}.` });
            }
        },
    },
});

function sentence(dimension: Dimension, subject: string): string {
    const { known, kind, name, like, fixture } = dimension;
    if (known === 'assumed') return kind === 'diagonal' ? 'Nobody measured a diagonal: the corners are taken to be as they are drawn.' : `Nobody measured wall ${name}${like ? `: it is taken to be as long as wall ${like}` : ''}.`;
    const of = fixture ? `The place of ${name}` : subject;
    const many = (dimension.count ?? 1) > 1;
    return known === 'unsaid' ? `${of} ${many ? 'do not say how that' : 'does not say how it'} is known.` : `${of} ${many ? 'are' : 'is'} ${knownWords(dimension)}.`;
}

/** All boards of a room together: they are measured in one go, where they lie. */
function foundOf(boards: readonly Dimension[], { grid, at }: Room, job: JobSettings, least: Status): Found {
    const sentences = [...grouped(boards, knownWords)].map(([words, own]) => {
        const names = listed(own.map(({ name }) => name)), sized = listed(own.map(one => `${one.name}, ${dimensionFigure(one, job)},`)), [{ known }] = own as [Dimension];
        if (known === 'assumed') return `Nobody measured a board of ${names}: ${own.length > 1 ? 'their sizes are those' : 'its size is that'} of the published table.`;
        return known === 'unsaid' ? `Boards of ${sized} do not say how that is known.` : `Boards of ${sized} are ${words}.`;
    });
    const again = least === 'verified' && boards.every(({ known }) => known === 'measured');
    return {
        ...grid?.beams ? wordsOf(grid.beams) : { at },
        message: `${sentences.join(' ')} Measure ${again ? 'another one' : boards.length > 1 ? 'one of each' : 'one'} before anything is cut from ${boards.length > 1 ? 'them' : 'it'}.`,
    };
}

function todo({ known, count = 1 }: Dimension, least: Status): string {
    const it = count > 1 ? 'them' : 'it';
    return known === 'measured' && least === 'verified' ? `Measure ${it} a second time` : `Measure ${it}`;
}
