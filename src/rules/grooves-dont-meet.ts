import type { Profile } from '../job/model.ts';
import { capitalized } from '../plain/words.ts';
import { defineRule } from './rule.ts';
import { cornerMeetings } from './support/corners.ts';
import { changed, HALL } from './support/examples.ts';
import { grooveOf } from './support/grooves.ts';
import { sizesOf, type Sizes } from './support/words.ts';

const withGroove = changed(HALL, 'sides { stock poplar-1x6 }', `sides {
    stock   poplar-1x6
    rabbet  1/4" x 1/4" on lower-back
  }`);
const wrong = changed(changed(withGroove, '\nroom hall', `
profile fine-box like hall-box { sides.rabbet 3/16" x 1/4" on lower-back }

room hall`), '\n  grid {', '\n  line A { beams fine-box }\n\n  grid {');

export const groovesDontMeet = defineRule({
    name: 'grooves-dont-meet',
    severity: 'error',
    title: 'Lines with different grooves meet in a corner',
    explanation: `
In the corners of a coffer the grooves of two lines meet. They run into each other only where both are equally wide and
equally high.

A groove of 1/4" that meets one of 3/16" misses it by 1/16" in every corner. Give the lines that cross one groove.`,
    wrong,
    right: changed(wrong, '3/16" x 1/4"', '1/4" x 1/4"'),
    basis: 'Geometry of the corner.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const { mine, theirs, at, via, also } of cornerMeetings(layout)) {
                const difference = differenceOf(mine.section.profile, theirs.section.profile, size);
                if (!difference) continue;
                report({
                    at, via,
                    message: `${capitalized(mine.of)} meets ${theirs.of}: ${difference} `
                        + `Give all of them the same groove.${also}`,
                    related: [mine, theirs].flatMap(({ section, of }) => {
                        const groove = grooveOf(section.profile);
                        return groove ? [{ at: groove.widthAt, message: `groove of ${of}` }] : [];
                    }),
                });
            }
        },
    },
});

function differenceOf(mine: Profile, theirs: Profile, size: Sizes): string | undefined {
    if (!mine.sides || !theirs.sides || mine.sides.corners.value !== 'mitered' || theirs.sides.corners.value !== 'mitered') return undefined;
    const [a, b] = [grooveOf(mine), grooveOf(theirs)];
    if (!a && !b) return undefined;
    if (!a || !b) return 'the groove of one ends in a corner where the other has none.';
    const [wide, high] = [Math.abs(a.width.ticks - b.width.ticks), Math.abs(a.height.ticks - b.height.ticks)];
    if (wide === 0 && high === 0) return a.face === b.face ? undefined : 'one groove is in the back of the side and the other in its face.';
    const miss = wide > 0 ? `the grooves miss by ${size(wide)} in the corner` : `the grooves differ by ${size(high)} in height in the corner`;
    return `${miss}, ${size(a.width.ticks)} x ${size(a.height.ticks)} against ${size(b.width.ticks)} x ${size(b.height.ticks)}.`;
}
