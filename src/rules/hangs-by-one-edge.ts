import type { LaidJoists } from '../ceiling/joists.ts';
import { capitalized } from '../plain/words.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { OFF_EDGE, type Held } from '../takeoff/holding.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { heldBeams, WAY, WAYS } from './support/joist-words.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(changed(HALL, `  wall east   9' 5"\n`, `  wall east   9' 5"
  ceiling {
    height  8' 6"
    joists  2x8 every 16" running north-south first-center 14 1/2" from west
  }
`), 'coffers-north  3', 'coffers-north  2');

export const hangsByOneEdge = defineRule({
    name: 'hangs-by-one-edge',
    severity: 'warning',
    title: 'A beam hangs by one edge of its blocking',
    explanation: `
Blocking that runs along a joist is screwed to it in one row. A screw finds the joist as long as it stays 3/8" off the edges of both,
and so it may come to lie near one edge of the blocking: all of the beam then hangs beside its screws, and pulls the other edge down
and away from the ceiling. Within the middle third of its width both edges stay up against it.

Joists 16" apart, the first 14 1/2" from the west wall, stand at 78 1/2": line 1 at 77" is 3 1/2" wide, its middle third reaches 19/32" to
either side, and the nearest that a screw can come is 1 1/8" off its middle; up to 1/4" beyond the middle third nothing is told.
Move the line over the joist, or have wood put in for the other edge.`,
    wrong,
    right: changed(wrong, '14 1/2" from west', '13" from west'),
    basis: 'The middle third: statics of a pad that is held at one place. 3/8" off the edges of joist and board, 1/4" that joists stand off: common practice, no source. Geometry of the plan.',
    check: {
        room({ layout: { ceiling }, job, pieces }, report) {
            const size = sizesOf(job);
            for (const { held, name, line, joists, words, moved } of heldBeams(ceiling, pieces)) {
                const off = held.flatMap(one => offMiddle(one, joists) ?? []), [worst] = [...off].sort((a, b) => Math.abs(b.by) - Math.abs(a.by));
                if (!worst || off.length < held.length) continue;
                const isBack = worst.by < 0, ways = WAY[joists.runs], [way, other] = isBack ? ways : [ways[1], ways[0]];
                // so far that a screw comes to the middle third
                const step = job.cutTo.value, by = Math.ceil((Math.abs(worst.by) - worst.third) / step) * step;
                report({
                    ...words,
                    message: `${capitalized(name)} hangs by the ${way} edge of its blocking: the joist there is ${size(Math.round(Math.abs(worst.joist)))} ${way} of its middle, so no screw comes nearer to that than `
                        + `${size(Math.round(Math.abs(worst.by)))}, and the beam pulls the ${other} edge down. ${line ? `Move the line ${size(by)} ${way}, or ${WAYS}` : capitalized(WAYS)}.`,
                    fixes: moved(isBack ? -by : by, `Move ${name} ${size(by)} ${way}`),
                });
            }
        },
    },
});

/** How far off the middle of a board its screws are at least, how far the joist is, both towards where places grow; and how far its middle third reaches. */
interface OffMiddle { readonly by: Ticks; readonly joist: Ticks; readonly third: Ticks }

/** Of blocking that is held along joists on one side of its middle third alone. */
function offMiddle({ piece, finds }: Held, { runs }: LaidJoists): OffMiddle | undefined {
    const axis = runs === 'north-south' ? 'x' : 'y', places = piece.corners.map(corner => corner[axis]);
    const low = Math.min(...places), high = Math.max(...places), middle = (low + high) / 2, third = piece.width / 6;
    if (finds.length === 0 || high - low > piece.width + TELLS || finds.some(({ along }) => !along)) return undefined;
    const all = finds.map(({ joist }): OffMiddle => {
        const off = joist.center - middle, reach = Math.max(0, joist.half - OFF_EDGE);
        return { by: Math.sign(off) * Math.max(0, Math.abs(off) - reach), joist: off, third };
    });
    const most = third + STANDS, isOneSide = all.every(({ by }) => by > most) || all.every(({ by }) => by < -most);
    return isOneSide ? all.reduce((best, one) => (Math.abs(one.by) < Math.abs(best.by) ? one : best)) : undefined;
}
/** So near joists stand to where they are said. Common practice, no source. */
const STANDS: Ticks = inches('1/4');
/** Less than this is rounding. */
const TELLS = 20;
