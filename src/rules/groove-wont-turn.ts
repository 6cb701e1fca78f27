import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { grooveOf } from './support/grooves.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  sides {
    stock    poplar-1x8
    rabbet   1/4" x 1/4" on lower-back
    corners  butted past north-south
  }
  bottom { stock poplar-1x6 }
`);

export const grooveWontTurn = defineRule({
    name: 'groove-wont-turn',
    severity: 'error',
    title: 'A groove along the lower edge cannot turn a butted corner',
    explanation: `
A rabbet along the lower edge of the sides shows as a groove beside the bottom. In a mitered corner it turns with the two
boards. In a butted corner the side that runs past closes the groove of the one that stops against it, and the groove of
the one that runs past shows as a notch in its end.

So a rabbet of 1/4" x 1/4" needs \`corners mitered\`; or leave the rabbet off where the corners are butted.`,
    wrong,
    right: changed(wrong, 'butted past north-south', 'mitered'),
    basis: 'Geometry of the corner.',
    check: {
        section({ section: { profile }, job }, report) {
            const { sides } = profile;
            const groove = grooveOf(profile);
            if (!sides || !groove || sides.corners.value !== 'butted') return;
            const size = sizesOf(job);
            // `butted past north-south` is one thing said: what runs past goes with it
            const end = sides.past?.said && sides.past.at.uri === sides.corners.at.uri ? sides.past.at.range.end : sides.corners.at.range.end;
            const whole = { ...sides.corners, at: { ...sides.corners.at, range: { ...sides.corners.at.range, end } } };
            report({
                ...wordsOf(sides.corners),
                message: `The groove of ${size(groove.width.ticks)} x ${size(groove.height.ticks)} stops at the butt and does not turn the corner. `
                    + 'Miter the corners, or leave the rabbet off.',
                related: [{ at: groove.widthAt, message: 'the rabbet along the lower edge' }],
                fixes: replacing(whole, 'mitered', 'Miter the corners'),
            });
        },
    },
});
