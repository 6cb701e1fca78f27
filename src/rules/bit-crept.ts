import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { flanksOf } from '../ceiling/flanks.ts';
import type { Layout, Section } from '../ceiling/model.ts';
import type { MeasuredBoard, Rabbet } from '../job/model.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { grooveOf } from './support/grooves.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** What a router setting may drift before the board is looked at, and before it is scrap. */
const LOOK = inches('1/64');
const SCRAP = inches('1/32');

const wrong = changed(changed(HALL, 'sides { stock poplar-1x6 }', `sides {
    stock   poplar-1x6
    rabbet  1/4" x 1/4" on lower-back
  }`), '    through        north-south\n  }\n', `    through        north-south
  }

  measured {
    board b3 poplar-1x6 { rabbet 5/16" }
  }
`);

export const bitCrept = defineRule({
    name: 'bit-crept',
    severity: 'error',
    title: 'A board was measured with a deeper or shallower rabbet than drawn',
    explanation: `
A router bit creeps in its collet, and then every board after it is cut too deep. Gauge every fifth board. Where the groove
of such a board turns a corner it steps.

Board b3 with a rabbet of 5/16" where 1/4" is drawn is 1/16" too deep. Over 1/64" it is a **warning**, over 1/32" the board is
scrap and it is an **error**: recut it from a fresh board. (A shallow one can be run over the bit again.)`,
    wrong,
    right: changed(wrong, '5/16"', '1/4"'),
    basis: '1/64" to look at, 1/32" to reject, a gauge every fifth board: common practice, no source.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const board of layout.room.measuredBoards) {
                const drawn = drawnFor(board, layout);
                if (!board.rabbet || !drawn) continue;
                const crept = board.rabbet.value - drawn.width.ticks;
                if (Math.abs(crept) <= LOOK) continue;
                const remedy = crept < 0 ? 'Run it over the bit again.' : diesIntoBand(layout)
                    ? 'Recut it, or put it where both its ends die into the band.' : 'Recut it.';
                report({
                    ...wordsOf(board.rabbet),
                    severity: Math.abs(crept) > SCRAP ? 'error' : 'warning',
                    message: `Board ${board.name} is cut ${size(Math.abs(crept))} too ${crept > 0 ? 'deep' : 'shallow'}, ${size(board.rabbet.value)} instead of ${size(drawn.width.ticks)}: `
                        + `the groove steps at its corners. ${remedy}`,
                    related: [{ at: drawn.widthAt, message: `the rabbet is drawn ${size(drawn.width.ticks)} wide` }],
                });
            }
        },
    },
});

/** The rabbet drawn for sides of the board's stock; of several, the one it comes nearest to. */
function drawnFor(board: MeasuredBoard, { sections }: Layout): Rabbet | undefined {
    const found = board.rabbet?.value;
    if (found === undefined) return undefined;
    const off = (groove: Rabbet): Ticks => Math.abs(groove.width.ticks - found);
    return [...sections.values()].flatMap(flanksOf)
        .filter(section => isOf(board, section))
        .flatMap(({ profile }) => grooveOf(profile) ?? [])
        .sort((a, b) => off(a) - off(b))[0];
}

function isOf(board: MeasuredBoard, { profile }: Section): boolean {
    return board.stock === undefined || profile.sides?.stock?.value.key === board.stock.value.key;
}

/** Sides have both ends at the band where no line crosses theirs. */
function diesIntoBand({ ceiling }: Layout): boolean {
    return Boolean(ceiling?.band) && (ceiling?.across.lines.length === 0 || ceiling?.down.lines.length === 0);
}
