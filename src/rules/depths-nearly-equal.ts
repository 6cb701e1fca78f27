import type { Fix } from '../findings/finding.ts';
import type { JobSettings } from '../job/model.ts';
import { sameSource, type Given, type Source } from '../provenance/source.ts';
import type { Measure } from '../quantity/measure.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { STEP_THAT_READS } from './depths-differ.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { troublesOf } from './support/troubles.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL, '\n  grid {', '\n  line A { held-down 3/8" }\n\n  grid {');

export const depthsNearlyEqual = defineRule({
    name: 'depths-nearly-equal',
    severity: 'warning',
    title: 'Two lines are almost, but not quite, of one depth',
    explanation: `
Beams that cross are either flush from below, or one is clearly deeper. A step of 1/8" (7 1/2" against 7 3/8") looks like a
mistake, and the bottoms cannot be sanded flush over it. Make them flush, or make the step 1/2" or more.

Two depths in one room are not computed yet: as long as they differ nothing is cut for the room, and the finding is an
**error** for that reason.`,
    wrong,
    right: changed(wrong, '3/8"', '1/4"'),
    basis: 'Step of 1/2": common practice, no source.',
    check: {
        room({ layout, job }, report) {
            const size = sizesOf(job);
            for (const { lines, a, b, at, other } of troublesOf(layout, 'depths-differ')) {
                const step = Math.abs(a - b);
                if (step >= STEP_THAT_READS) continue;
                report({
                    at, severity: layout.ceiling ? 'warning' : 'error',
                    message: `Line ${lines[0]} is ${size(a)} deep and line ${lines[1]} ${size(b)}: a step of ${size(step)} looks like a mistake. Make them flush`
                        + `${layout.ceiling ? `, or the step ${size(STEP_THAT_READS)} or more` : '; two depths in one room are not computed yet, so nothing is cut for it'}.`,
                    fixes: heldDownSo(a - b, layout.room.lines.find(line => line.name === lines[1])?.heldDown, at, job),
                    related: [{ at: other, message: `line ${lines[0]} is ${size(a)} deep` }],
                });
            }
        },
    },
});

/** Where it is the line's own held-down that makes the step. */
function heldDownSo(lower: Ticks, heldDown: Given<Measure> | undefined, at: Source, job: JobSettings): Fix[] {
    if (!heldDown || !sameSource(heldDown.at, at) || heldDown.value.ticks + lower < 0) return [];
    const right = heldDown.value.ticks + lower;
    return replacing(heldDown, spelledLike(heldDown.value, right, job), `Hold its sides down ${sizesOf(job)(right)}`);
}
