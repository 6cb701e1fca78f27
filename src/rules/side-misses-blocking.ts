import { counted } from '../plain/words.ts';
import { inches } from '../quantity/rational.ts';
import { SCRIBED } from '../survey/choose-plane.ts';
import { surveyedOf } from '../survey/survey.ts';
import { sideNamed, surveyWords } from '../survey/words.ts';
import { defineRule } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { heldDownOf, wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** What the side laps the blocking at least, so that a nail finds it. */
const LAP = inches('3/8');

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  sides {
    stock      poplar-1x8
    held-down  1/2"
  }
  bottom { stock poplar-1x6 }
`);

export const sideMissesBlocking = defineRule({
    name: 'side-misses-blocking',
    severity: 'error',
    title: 'The side is held down so far that its nails miss the blocking',
    explanation: `
The blocking lies against the ceiling and the side starts lower, by the held-down gap. What the side laps the blocking is
the blocking's thickness less that gap, and a nail needs 3/8" of it.

Blocking of 3/4" and sides held down 1/2" leave a lap of 1/4". Hold the sides down 3/8" or less, or fur the blocking down
by 1/8".

Blocking follows the ceiling and sides follow the plane they hang by. So over a hollow that a survey of the ceiling shows, the
lap is less by its depth: there the blocking is furred down.`,
    wrong,
    right: changed(wrong, '1/2"', '3/8"'),
    basis: 'Overlap of 3/8": common practice, no source.',
    check: {
        fit({ layout: { ceiling }, takeOff, job }, report) {
            const surveyed = surveyedOf(ceiling, takeOff);
            if (!surveyed) return;
            const short = surveyed.sides
                .flatMap(({ under, blockingLap }) => (blockingLap && LAP - blockingLap.ticks > SCRIBED ? [{ under, lap: blockingLap }] : []))
                .sort((a, b) => a.lap.ticks - b.lap.ticks);
            const [first, ...rest] = short;
            if (!first) return;
            const { deep, at } = surveyWords(job), { under: { piece, blocking, heldDown }, lap } = first;
            report({
                at: surveyed.said.at,
                message: `Nothing to nail to: ${at(piece, lap)}, ${sideNamed(piece)} ${lap.ticks > 0 ? `laps the blocking only ${deep(lap.ticks)}` : 'does not lap the blocking at all'}: the ceiling is `
                    + `${deep(blocking! - heldDown - lap.ticks)} above the plane that the sides hang by. It needs ${deep(LAP)}: fur the blocking down ${deep(LAP - lap.ticks)} there, or hang the sides higher.`
                    + (rest.length > 0 ? ` ${counted(rest.length, 'other side')} also.` : ''),
            });
        },
        section({ section, job }, report) {
            const blocking = section.profile.blocking?.stock;
            const thickness = blocking?.value.thickness?.value.ticks;
            const heldDown = heldDownOf(section);
            if (!blocking || thickness === undefined || !heldDown) return;
            const gap = heldDown.given.value.ticks;
            const lap = thickness - gap;
            if (lap >= LAP) return;
            const size = sizesOf(job);
            const most = thickness - LAP;
            const wider = LAP - lap, { rip } = section.profile.sides ?? {};
            const laps = lap > 0 ? `laps the blocking only ${size(lap)}` : 'does not lap the blocking at all';
            if (section.isOther) return report({
                ...wordsOf(rip ?? section.profile.sides?.stock ?? blocking),
                message: `Nothing to nail to: the other side ${laps}. It hangs as low as the side, so it begins ${size(gap)} below the ceiling, and the blocking is ${size(thickness)} thick. `
                    + `It needs ${size(LAP)}: rip it ${size(wider)} wider, or fur the blocking down ${size(wider)}.`,
                related: [{ at: blocking.at, message: `the blocking is ${size(thickness)} thick` }],
                fixes: rip ? replacing(rip, spelledLike(rip.value, rip.value.ticks + wider, job), `Rip the other side to ${size(rip.value.ticks + wider)}`) : [],
            });
            report({
                ...wordsOf(heldDown.given.said ? heldDown.given : blocking),
                message: `Nothing to nail to: the side ${laps}, as it is held down ${size(gap)} and the blocking is ${size(thickness)} thick. It needs ${size(LAP)}: `
                    + `${most >= 0 ? `hold the sides down ${size(most)} or less, or ` : ''}fur the blocking down ${size(LAP - lap)}.`,
                related: heldDown.given.said ? [{ at: blocking.at, message: `the blocking is ${size(thickness)} thick` }] : [],
                fixes: most >= 0 ? replacing(heldDown.given, spelledLike(heldDown.given.value, most, job), `Hold the sides down ${size(most)}`) : [],
            });
        },
    },
});
