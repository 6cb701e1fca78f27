import type { Line } from '../ceiling/model.ts';
import { roundDown } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { stretchesOf } from '../takeoff/runs.ts';
import { settingOf, type Setting } from '../takeoff/setting.ts';
import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { replacing, spelled } from './support/fixes.ts';
import { linesNamed, sizesOf } from './support/words.ts';
import { grouped } from '../plain/groups.ts';

const wrong = changed(changed(HALL, 'coffers-north  3', 'coffers-north  2'), 'bottom { stock poplar-1x4 }', `bottom {
    stock  poplar-1x4
    press  1/64"
  }`);

export const pressLost = defineRule({
    name: 'press-lost',
    severity: 'warning',
    title: 'Bottoms are to be cut long by less than a mark of the tape',
    explanation: `
Cut lengths are rounded down to the tape (\`cut-to\`, 1/32" where nothing else is said). A \`press\` of 1/64" on bottoms of
49 1/2" makes 49 33/64", and the last mark that goes into it is 49 1/2": they are cut as if there were no press.

Use a press of one mark of the tape or more, a finer \`cut-to\`, or none.`,
    wrong,
    right: changed(wrong, '1/64"', '1/32"'),
    basis: 'Arithmetic of rounding.',
    check: {
        room({ layout: { ceiling }, job }, report) {
            if (!ceiling) return;
            const pressed = ceiling.lines.filter(({ section: { profile: { bottom } } }) => (bottom?.press?.value ?? 0) > 0);
            let setting: Setting | undefined;
            const without = pressed.filter(line => isLost(line.section.profile.bottom!.press!.value, line, setting ??= settingOf(ceiling)));
            const lost = grouped(without, ({ section }) => section.profile.key);
            const size = sizesOf(job), step = job.cutTo.value;
            for (const lines of lost.values()) {
                const press = lines[0]!.section.profile.bottom!.press!;
                report({
                    at: press.at, via: press.via,
                    message: `\`press\` has no effect on the bottoms of ${linesNamed(lines.map(line => line.name))}: ${size.fine(press.value)} more is less than the tape's ${size.fine(step)}, and lengths are rounded down to that. `
                        + `Write ${size.fine(step)} or more, use a finer \`cut-to\`, or leave the press out.`,
                    fixes: replacing(press, spelled(step, job), `Press ${size.fine(step)}`),
                });
            }
        },
    },
});

/** Whether every bottom of the line is cut as long as without it. */
function isLost(press: Ticks, line: Line, setting: Setting): boolean {
    return stretchesOf(setting, line, 'bottom').every(({ lengths: { cutOverall: cut } }) => roundDown(cut + press, setting.step) === roundDown(cut, setting.step));
}
