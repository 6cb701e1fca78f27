import { TICKS_PER_INCH } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { widthSaidBy, wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  spacers {
    stock   poplar-1x6
    height  5 1/2"
  }
  sides { stock poplar-1x8 }
  cleats { rip 3/4" x 3/4" from strip-1x2 }
  bottom { stock poplar-1x6 }
`);

/** Boards are sold so much wider and more, one than the next: nobody cuts a spacer wrong by it. Common practice, no source. */
const BOARD_TOO_NARROW = TICKS_PER_INCH;
/** Higher ones may well be the slip themselves. Common practice, no source. */
const USUAL_CLEAT = 1.5 * TICKS_PER_INCH;

export const spacerHitsCleat = defineRule({
    name: 'spacer-hits-cleat',
    severity: 'error',
    title: 'The spacers reach down into the cleats, or there is no room for them at all',
    explanation: `
Spacers hang under the blocking; the cleats run past below them. The room is what the depth leaves:

    depth        = held-down + side
    cleat top    = depth - bottom thickness - cleat height
    spacer room  = cleat top - blocking thickness

With sides of 7 1/4" held down 1/4" the beam is 7 1/2" deep. A 3/4" bottom and a 3/4" cleat leave a cleat top of 6", and
3/4" of blocking leaves 5 1/4" for the spacer. One of 5 1/2" runs 1/4" into the cleats: cut spacers to 5 1/4" or less.
Where it is an inch and more, the sides are likelier to be of too narrow a board than the spacers to be cut too high.`,
    wrong,
    right: changed(wrong, '5 1/2"', '5"'),
    basis: 'Geometry of the section.',
    check: {
        section({ section: { profile, spacerRoom, depth, sideHeight }, job }, report) {
            // that what a beam wraps hangs too low is told by wrapped-hits-bottom
            if (!spacerRoom || !profile.blocking && spacerRoom.ticks < 0) return;
            const size = sizesOf(job);
            const room = spacerRoom.ticks;
            const height = profile.spacers?.height;
            const side = widthSaidBy(profile.sides);
            const below = profile.cleats ? 'cleats' : 'bottom';
            const belowSaid = profile.cleats ? profile.cleats.height : profile.bottom?.stock;
            if (room < 0 && side) {
                report({
                    ...wordsOf(side),
                    message: `The ${below} ${profile.cleats ? 'run' : 'runs'} ${size(-room)} into the blocking${depth ? `: the beam is only ${size(depth.ticks)} deep` : ''}. `
                        + `Take sides at least ${size(-room)} wider${height ? `, ${size(height.value.ticks - room)} wider with spacers of ${size(height.value.ticks)}` : ''}.`,
                });
            } else if (height && height.value.ticks > room) {
                const over = height.value.ticks - room, wide = sideHeight?.ticks ?? 0, isUsualCleat = (profile.cleats?.height?.value.ticks ?? 0) <= USUAL_CLEAT;
                const isSide = side !== undefined && wide > 0 && over >= BOARD_TOO_NARROW && isUsualCleat;
                const cause = isSide ? `Likely the sides are too narrow: they are ${size(wide)} wide, and spacers this high ask for ${size(wide + over)}. Take wider sides, or cut spacers` : 'Cut spacers';
                report({
                    ...wordsOf(height),
                    message: `The spacer runs ${size(over)} into the ${below}: it is ${size(height.value.ticks)} high and there is ${size(room)} `
                        + `between the blocking and the ${below}. ${cause} to ${size(room)} or less.`,
                    related: [...isSide ? [{ at: side.at, message: `the sides are ${size(wide)} wide` }] : [], ...belowSaid ? [{ at: belowSaid.at, message: `the ${below} ${profile.cleats ? 'start' : 'starts'} ${size(room)} below the blocking` }] : []],
                    fixes: room > 0 ? replacing(height, spelledLike(height.value, room, job), `Cut spacers to ${size(room)}`) : [],
                });
            }
        },
    },
});
