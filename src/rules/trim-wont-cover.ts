import { flanksOf } from '../ceiling/flanks.ts';
import type { Section } from '../ceiling/model.ts';
import { withTrimOfRoom } from '../ceiling/section.ts';
import type { JobSettings } from '../job/model.ts';
import { inches } from '../quantity/rational.ts';
import { counted } from '../plain/words.ts';
import { SCRIBED } from '../survey/choose-plane.ts';
import { surveyedOf } from '../survey/survey.ts';
import { sideNamed, surveyWords } from '../survey/words.ts';
import { defineRule, type Report } from './rule.ts';
import { changed } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { heldDownOf, widthSaidBy, wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** What the trim laps over the side at least, to cover and to be nailed. */
const LAP = inches('3/8');

const wrong = `edition 1

stock poplar-1x6 { size 1x6 }
stock poplar-1x8 { size 1x8 }
stock bead {
  thickness  3/8"
  width      1/2"
}

profile porch-box {
  blocking { stock poplar-1x6 }
  sides {
    stock      poplar-1x8
    held-down  1/4"
  }
  bottom { stock poplar-1x6 }
  trim { stock bead }
}
`;

export const trimWontCover = defineRule({
    name: 'trim-wont-cover',
    severity: 'error',
    title: 'The ceiling trim is too low to cover the held-down gap',
    explanation: `
The sides are held down from the ceiling, so that a wavy ceiling needs no scribing, and the trim hides that gap. It has to
reach 3/8" further down than the gap, to cover it and to find something to be nailed to.

A bead of 1/2" under sides that are held down 1/4" laps them by 1/4". 5/8" is the least: held-down 1/4" + lap 3/8". Where
a survey of the ceiling shows hollows, the trim has to be higher by the deepest of them.

Take a higher trim, or hold the sides down less.`,
    wrong,
    right: changed(wrong, 'width      1/2"', 'width      3/4"'),
    basis: 'Lap of 3/8": common practice, no source.',
    check: {
        section({ section, job }, report) { lookAt(section, job, report); },
        fit({ layout: { ceiling }, takeOff, job }, report) {
            const surveyed = surveyedOf(ceiling, takeOff);
            if (!surveyed) return;
            const short = surveyed.sides.flatMap(({ under, trimLap }) => (trimLap && LAP - trimLap.ticks > SCRIBED ? [{ under, lap: trimLap }] : []))
                .sort((a, b) => a.lap.ticks - b.lap.ticks);
            const [first, ...rest] = short;
            if (!first) return;
            const { deep, at } = surveyWords(job), { under: { piece, trim }, lap } = first;
            const laps = lap.ticks > 0 ? `laps ${sideNamed(piece)} only ${deep(lap.ticks)}` : deep(lap.ticks).startsWith('0') ? `only just reaches ${sideNamed(piece)}` : `stops ${deep(-lap.ticks)} short of ${sideNamed(piece)}`;
            report({
                at: surveyed.said.at,
                message: `The trim ${laps}, ${at(piece, lap)}: the trim is ${deep(trim!)} high and the gap over the side is ${deep(trim! - lap.ticks)} there. It needs ${deep(LAP)} of lap to cover and to nail: `
                    + `take trim of ${deep(trim! - lap.ticks + LAP)} or more, or hang the sides higher.${rest.length > 0 ? ` ${counted(rest.length, 'other side')} also.` : ''}`,
            });
        },
        // trim of one room goes round every line of it
        room({ layout: { room, ceiling }, job }, report) {
            const sections = new Set(ceiling?.lines.flatMap(line => flanksOf(line.section)));
            if (room.trim) for (const section of sections) lookAt(withTrimOfRoom(section, room), job, report);
        },
    },
});

function lookAt(section: Section, job: JobSettings, report: Report): void {
    const { profile, trimHeight } = section;
    const heldDown = heldDownOf(section);
    const trim = widthSaidBy(profile.trim);
    if (!trimHeight || !heldDown || !trim) return;
    const gap = heldDown.given.value.ticks;
    const lap = trimHeight.ticks - gap;
    if (lap >= LAP) return;
    const size = sizesOf(job);
    const { rip, stock } = profile.trim!, widest = stock?.value.width?.value.ticks ?? 0;
    const side = section.isOther ? 'the other side' : 'the side';
    const laps = lap > 0 ? `laps ${side} only ${size(lap)}` : lap < 0 ? `stops ${size(-lap)} short of ${side}` : `only just reaches ${side}`;
    const trimWords = `the trim is ${size(trimHeight.ticks)} high`;
    const gapWords = section.isOther ? `the other side, which hangs as low, begins ${size(gap)} down` : `the sides are held down ${size(gap)}`;
    const orElse = section.isOther ? `, or rip the other side ${size(LAP - lap)} wider` : trimHeight.ticks > LAP ? `, or hold the sides down ${size(trimHeight.ticks - LAP)} at most` : '';
    report({
        ...wordsOf(heldDown.ofLine ? heldDown.given : trim),
        message: `The trim ${laps}: ${trimWords} and ${gapWords}. It needs ${size(LAP)} of lap to cover and to nail: take trim of ${size(gap + LAP)} or more`
            + `${orElse}.`,
        fixes: rip && !heldDown.ofLine && gap + LAP <= widest ? replacing(rip, spelledLike(rip.value, gap + LAP, job), `Rip the trim to ${size(gap + LAP)}`) : [],
        related: heldDown.ofLine ? [{ at: trim.at, message: trimWords }] : heldDown.given.said ? [{ at: heldDown.given.at, message: gapWords }] : [],
    });
}
