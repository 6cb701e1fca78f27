import { perimetersOf } from '../job/perimeters.ts';
import type { JobSettings, Stock } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import type { Measure } from '../quantity/measure.ts';
import { printLength } from '../quantity/print-length.ts';
import { inches } from '../quantity/rational.ts';
import { defineRule, type Report } from './rule.ts';
import { BEAM, changed } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

const SHEET = '\nstock panel { sheet 48" x 96"; thickness 3/4" }\n';
const wrong = changed(changed(BEAM, '\nprofile', `${SHEET}\nprofile`), '  sides { stock poplar-1x6 }', '  sides { stock panel }');

export const sheetNotRipped = defineRule({
    name: 'sheet-not-ripped',
    severity: 'warning',
    title: 'A part of a beam takes the whole width of a sheet or a panel',
    explanation: `
A part without a \`rip\` is as wide as its stock. With a board that is meant; with a sheet it makes a beam as wide as the sheet.

Sides from a sheet of 48" x 96" that are not ripped make a beam 4' deep. Write how wide they are: \`rip 5 1/2"\`. The same goes for a
glued-up panel wider than 2', since no board is.`,
    wrong,
    right: changed(wrong, '{ stock panel }', '{\n    stock  panel\n    rip    5 1/2"\n  }'),
    basis: 'Strips are ripped from sheets and glued panels, and boards are narrower than 2\': common practice, no source.',
    check: {
        section({ section: { profile: { blocking, spacers, sides, bottom, trim, under, solid } }, job }, report) {
            for (const [word, part] of [['blocking', blocking], ['spacers', spacers], ['sides', sides], ['bottom', bottom], ['trim', trim], ['molding', under], ['timber', solid]] as const) if (part) check(word, part, job, report);
        },
        room({ layout: { room }, job }, report) {
            for (const perimeter of perimetersOf(room)) check('band', perimeter, job, report);
        },
    },
});

/** No board is as wide. */
const PANEL = inches(24);

function check(word: string, { stock, rip }: { readonly stock?: Given<Stock>; readonly rip?: Given<Measure> }, { show }: JobSettings, report: Report): void {
    if (!stock || rip) return;
    const { sheet, width, name } = stock.value;
    const wide = sheet ? { ticks: sheet.value.width, at: sheet.at, what: 'sheet' } : width && width.value.ticks > PANEL ? { ticks: width.value.ticks, at: width.at, what: 'panel' } : undefined;
    if (!wide) return;
    report({
        ...wordsOf(stock), message: `The ${word} ${word === 'sides' || word === 'spacers' ? 'take' : 'takes'} the whole width of the ${wide.what}, ${printLength(wide.ticks, show.value)}. Write how wide it is ripped: \`rip\`.`,
        related: [{ at: wide.at, message: `${name} is a ${wide.what}` }],
    });
}
