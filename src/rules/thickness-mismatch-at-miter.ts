import { GAPS_ARE_FROM } from '../data/gaps.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { cornerMeetings } from './support/corners.ts';
import { shortest } from '../quantity/print-length.ts';
import { sizesOf } from './support/words.ts';

/** An open joint up to this passes at the handover. */
const OPEN_JOINT = inches('1/64');

const wrong = changed(changed(HALL, '\nroom hall', `
stock thin-1x6 {
  thickness  11/16"
  width      5 1/2"
}
profile thin-box like hall-box { sides.stock thin-1x6 }

room hall`), '\n  grid {', '\n  line A { beams thin-box }\n\n  grid {');

export const thicknessMismatchAtMiter = defineRule({
    name: 'thickness-mismatch-at-miter',
    severity: 'hint',
    title: 'Sides of two thicknesses meet in a miter',
    explanation: `
Two boards cut at 45 degrees close only where they are equally thick. With thicknesses t1 and t2 the miter runs from corner
to corner of a rectangle, so the saw stands at atan(t2 / t1) for the first board and at atan(t1 / t2) for the second.

3/4" meets 11/16": atan(11/16 / 3/4) = 42.5 degrees on the 3/4" board and 47.5 on the other. The cut list and the order at the
saw have these angles. Where the thinner boards are not meant, plane both to one thickness.
Up to 1/64" of difference is accepted: no open joint is wider than that.`,
    wrong,
    right: changed(wrong, '11/16"', '3/4"'),
    basis: `Geometry of the corner; ${GAPS_ARE_FROM}.`,
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const { mine, theirs, at, via, also } of cornerMeetings(layout)) {
                const sides = [mine, theirs] as const, [a, b] = sides.map(({ section }) => section.sideThickness.ticks) as [Ticks, Ticks];
                if (sides.some(({ section }) => section.profile.sides?.corners.value !== 'mitered') || Math.abs(a - b) <= OPEN_JOINT) continue;
                report({
                    at, via,
                    message: `Not 45s: ${mine.are} ${size(a)} thick and ${theirs.those} ${size(b)}. `
                        + `They are cut at ${degrees(b / a)} degrees on ${size(a)} and ${degrees(a / b)} on ${size(b)}, from square; or plane them to one thickness.${also}`,
                    related: sides.flatMap(({ section, are }) => {
                        const stock = section.profile.sides?.stock;
                        return stock ? [{ at: stock.at, message: `${are} ${size(section.sideThickness.ticks)} thick` }] : [];
                    }),
                });
            }
        },
    },
});

function degrees(ratio: number): string {
    return shortest(Math.atan(ratio) * 180 / Math.PI, 1);
}
