import type { Ceiling, Line } from '../ceiling/model.ts';
import type { Fix } from '../findings/finding.ts';
import type { JobSettings } from '../job/model.ts';
import type { Given, Source } from '../provenance/source.ts';
import type { Measure } from '../quantity/measure.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { sizesOf } from './support/words.ts';

/** A smaller step looks like a mistake. Common practice, no source. */
const STEP_THAT_READS = inches('1/2');

const wrong = changed(HALL, '\n  grid {', '\n  line A { held-down 3/8" }\n\n  grid {');

export const depthsNearlyEqual = defineRule({
    name: 'depths-nearly-equal',
    severity: 'warning',
    title: 'Two lines are almost, but not quite, of one depth',
    explanation: `
Beams that cross are either flush from below, or one is clearly deeper. A step of 1/8" (7 1/2" against 7 3/8") looks like a
mistake, and the bottoms cannot be sanded flush over it. Make them flush, or make the step 1/2" or more: the shallower line then
dies into the deeper one, whose sides and bottom run on unbroken.`,
    wrong,
    right: changed(wrong, '3/8"', '1/4"'),
    basis: 'Step of 1/2": common practice, no source.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            const size = sizesOf(job);
            if (!ceiling) return;
            for (const { lines, a, b, at, other } of steps(ceiling)) {
                const step = Math.abs(a - b);
                if (step >= STEP_THAT_READS) continue;
                report({
                    at,
                    message: `Line ${lines[0]} is ${size(a)} deep and line ${lines[1]} ${size(b)}: a step of ${size(step)} looks like a mistake. Make them flush`
                        + `, or the step ${size(STEP_THAT_READS)} or more.`,
                    fixes: heldDownSo(a - b, ceiling.room.lines.find(line => line.name === lines[1])?.heldDown, job),
                    related: [{ at: other, message: `line ${lines[0]} is ${size(a)} deep` }],
                });
            }
        },
    },
});

interface Step { readonly lines: readonly [string, string]; readonly a: Ticks; readonly b: Ticks; readonly at: Source; readonly other: Source }

/** Lines that are not as deep as the grid's beams, each at what makes it so. */
function steps({ beams, lines, room }: Ceiling): Step[] {
    const usual = beams?.depth?.ticks;
    const first = lines.find(line => line.section.depth.ticks === usual) ?? lines[0]!;
    const saidBy = (line: Line): Source => {
        const spec = room.lines.find(({ name }) => name === line.name);
        return (spec?.heldDown ?? spec?.beams ?? room.grid.beams)?.at ?? line.at;
    };
    return lines.filter(line => line.section.depth.ticks !== first.section.depth.ticks).map(line => ({
        lines: [first.name, line.name], a: first.section.depth.ticks, b: line.section.depth.ticks, at: saidBy(line), other: saidBy(first),
    }));
}

/** Where it is the line's own held-down that makes the step. */
function heldDownSo(lower: Ticks, heldDown: Given<Measure> | undefined, job: JobSettings): Fix[] {
    const right = (heldDown?.value.ticks ?? 0) + lower;
    return !heldDown || right < 0 ? [] : replacing(heldDown, spelledLike(heldDown.value, right, job), `Hold its sides down ${sizesOf(job)(right)}`);
}
