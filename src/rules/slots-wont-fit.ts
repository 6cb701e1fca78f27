import { BISCUIT_SIZES, biscuitOf, SLOT_MARGIN, slotLength } from '../data/biscuits.ts';
import { grouped } from '../plain/groups.ts';
import { listed } from '../plain/words.ts';
import { roundDown } from '../quantity/round.ts';
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';
import type { Bottom, JobSettings } from '../job/model.ts';
import { defineRule, type Found } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { widthSaidBy, wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

/** What is left is told in the finest steps a length is shown in. */
const STEP = { 'feet-inches': TICKS_PER_INCH / 128, 'millimeters': TICKS_PER_MM / 10 };

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  sides { stock poplar-1x8 }
  bottom {
    stock     poplar-1x6
    biscuits  2 x #20
  }
`);

export const slotsWontFit = defineRule({
    name: 'slots-wont-fit',
    severity: 'warning',
    title: 'The biscuit slots do not fit into the width of the bottom',
    explanation: `
A plate joiner plunges a round cutter, so the slot is longer than the biscuit: at a depth d the cutter of radius R = 50 mm
cuts 2 sqrt(2 R d - d²). With a depth of half the biscuit and 1/32" that is

| biscuit | slot depth | slot length |
|---|---|---|
| #0 | 8.29 mm | 55.2 mm (2 11/64") |
| #10 | 10.29 mm | 60.8 mm (2 25/64") |
| #20 | 12.29 mm | 65.7 mm (2 37/64") |

At each edge of the bottom, and between two slots, 3/16" of wood is needed. Two #20 in 5 1/2" leave 5 1/2" - 2 x 2 37/64" =
11/32", which is 7/64" in each of the three places; two #10 leave 15/64". Slots that are longer than the bottom is wide come
out at its edges: then it is an **error**. A half beam is looked at by the width
that is left of its own bottom. A size that no biscuit is sold in, as \`2 x #99\`, is most likely a slip of the pen.`,
    wrong,
    right: changed(wrong, '2 x #20', '2 x #10'),
    basis: 'Slot length: chord of a 100 mm cutter (the cutter, and spline sizes, read on woodworking reference pages). Margin of 3/16": common practice, no source.',
    check: {
        section({ section: { profile: { bottom }, bottomWidth }, job }, report) {
            const found = bottom && bottomWidth ? tooMuch(bottom, bottomWidth.ticks, job, 'a bottom') : undefined;
            if (found) report(found);
        },
        // the bottom of a half beam is not as wide as its profile's; slots in its edge are those of the lines that meet it there
        room({ layout: { ceiling }, job, pieces }, report) {
            const halves = Object.entries(ceiling?.around ?? {}).flatMap(([wall, own]) => {
                const bottom = own?.kind === 'half-beam' ? own.section.profile.bottom : undefined;
                const jointed = bottom?.biscuits && pieces().find(({ part, line, on, ends }) => part === 'bottom' && line === null && on === wall && ends.some(({ how }) => how === 'between' || how === 'splice'));
                return own?.kind === 'half-beam' && bottom && jointed && jointed.width < own.section.bottomWidth.ticks ? [{ wall, own, bottom, width: jointed.width }] : [];
            });
            // walls of one perimeter together
            for (const alike of grouped(halves, ({ own, width, bottom }) => JSON.stringify([own.perimeter.at, width, bottom.biscuits!.at])).values()) {
                const { own, bottom, width } = alike[0]!, walls = alike.map(({ wall }) => wall);
                const found = tooMuch(bottom, width, job, `the bottom of the half beam along the ${listed(walls)} ${walls.length > 1 ? 'walls' : 'wall'}, which is`);
                // the same words may be those of the lines, so none of them is changed here
                if (found) report({
                    at: own.perimeter.at, severity: 'warning', message: `${found.message} Give the half beam a detail of its own: \`beams\` in its perimeter, with \`biscuits 0 x #0\` where none fits.`,
                    related: [{ at: bottom.biscuits!.at, message: 'its biscuits' }],
                });
            }
        },
    },
});

/** What is to be told of the biscuits of a bottom that is so wide; nothing where their slots fit. */
function tooMuch(bottom: Bottom, width: Ticks, job: JobSettings, named: string): Found | undefined {
    const { biscuits } = bottom;
    if (!biscuits || !(biscuits.value.count > 0)) return undefined;
    const { count, size: number } = biscuits.value, biscuit = biscuitOf(number);
    if (!biscuit) return {
        ...wordsOf(biscuits), severity: 'warning',
        message: `Biscuits are not sold in a size ${number}, but in ${listed(BISCUIT_SIZES)}. So there is no telling whether its slots fit in a bottom of ${sizesOf(job)(width)}.`,
        fixes: whatFits(width, count).flatMap((text, i) => replacing(biscuits, text, `Use ${text}`).map(fix => ({ ...fix, preferred: i === 0 }))),
    };
    const margin = marginOf(count, slotLength(biscuit), width);
    if (margin >= SLOT_MARGIN.ticks) return undefined;
    const size = sizesOf(job), fitting = whatFits(width, count), widthSaid = widthSaidBy(bottom);
    const places = count === 1 ? 'at each edge' : count === 2 ? 'at the edges and between the slots' : 'at the edges and between slots';
    return {
        ...wordsOf(biscuits),
        severity: margin > 0 ? 'warning' : 'error',
        message: `${margin > 0 ? `${size(roundDown(margin, STEP[job.show.value]))} is left ${places}` : 'The slots come out at the edges'}: `
            + `${count} x ${number} takes ${count} x ${size.gap(slotLength(biscuit))} of slot in ${named === 'a bottom' ? 'a bottom of' : named} ${size(width)}${named === 'a bottom' ? '' : ' wide'}, with ${size(SLOT_MARGIN.ticks)} ${places}. `
            + (fitting.length ? `${fitting.join(' or ')} would fit.` : 'No biscuit fits this width: glue a block on the back of the joint.'),
        related: widthSaid ? [{ at: widthSaid.at, message: `the bottom is ${size(width)} wide` }] : [],
        fixes: fitting.flatMap((text, i) => replacing(biscuits, text, `Use ${text}`).map(fix => ({ ...fix, preferred: i === 0 }))),
    };
}

/** Wood left at each edge and between two slots, shared evenly, in ticks; it may be a fraction, or negative. */
function marginOf(count: number, slot: Ticks, width: Ticks): number {
    return (width - count * slot) / (count + 1);
}

/** For each count down from the one asked for, the largest biscuit that fits: `2 x #10`, `1 x #20`. */
function whatFits(width: Ticks, most: number): string[] {
    const counts = Array.from({ length: Math.min(most, 4) }, (_, i) => Math.min(most, 4) - i);
    return counts.flatMap(count => {
        const largest = BISCUIT_SIZES.findLast(text => marginOf(count, slotLength(biscuitOf(text)!), width) >= SLOT_MARGIN.ticks);
        return largest ? [`${count} x ${largest}`] : [];
    });
}
