import { perimetersOf } from '../job/perimeters.ts';
import { dressedSize } from '../data/dressed-sizes.ts';
import type { JobSettings, NominalSize, Profile, Stock } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import type { Measure } from '../quantity/measure.ts';
import { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule, type Report } from './rule.ts';
import { changed, porchBox } from './support/examples.ts';
import { replacing, spelledLike } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = porchBox(`
  blocking { stock poplar-1x6 }
  sides {
    stock  poplar-1x8
    rip    7 1/2"
  }
  bottom { stock poplar-1x6 }
`);

export const tooWideForStock = defineRule({
    name: 'too-wide-for-stock',
    severity: 'error',
    title: 'A part is ripped wider than its board',
    explanation: `
A nominal size is larger than the board: a 1x6 is dressed to 5 1/2", a 1x8 to 7 1/4". A part cannot be ripped wider than
the board it comes from.

There is no 7 1/2" in a 1x8. Rip it from a 1x10 (9 1/4"), or make do with 7 1/4".`,
    wrong,
    right: changed(wrong, '7 1/2"', '7"'),
    basis: 'Dressed sizes: American Softwood Lumber Standard PS 20, board sizes (read second-hand). Hardwood is sold to the same sizes by custom: ask the yard.',
    check: {
        section({ section: { profile }, job }, report) {
            for (const [word, part] of ripped(profile)) check(word, part, job, report);
        },
        room({ layout, job }, report) {
            for (const perimeter of perimetersOf(layout.room)) {
                check('band', perimeter, job, report);
                const profile = (perimeter.beams ?? layout.room.grid?.beams)?.value;
                // what lies in a half beam is ripped to its width
                for (const part of ['bottom', 'blocking'] as const) if (perimeter.width && profile?.[part]?.stock) check(part, { stock: profile[part].stock, rip: perimeter.width }, job, report);
            }
        },
    },
});

interface Ripped { readonly stock?: Given<Stock>; readonly rip?: Given<Measure> }

function ripped({ blocking, spacers, sides, bottom, trim, under, solid }: Profile): [string, Ripped][] {
    const parts: [string, Ripped | undefined][] = [['blocking', blocking], ['spacer', spacers], ['side', sides], ['bottom', bottom], ['trim', trim], ['molding', under], ['timber', solid]];
    return parts.filter((entry): entry is [string, Ripped] => entry[1] !== undefined);
}

function check(word: string, { stock, rip }: Ripped, job: JobSettings, report: Report): void {
    const width = stock?.value.width;
    if (!stock || !rip || !width || rip.value.ticks <= width.value.ticks) return;
    const size = sizesOf(job);
    const nominal = stock.value.size?.value;
    const board = nominal ? `A ${nominal.text} is ${size(width.value.ticks)} wide` : `${stock.value.name} is ${size(width.value.ticks)} wide`;
    const wider = nominal && narrowestBoardFor(rip.value.ticks, nominal);
    report({
        ...wordsOf(rip),
        message: `${board}, too narrow for ${size(rip.value.ticks)}. ${wider ? `Rip the ${word} from a ${wider}` : `Rip the ${word} from a wider board`}, or to ${size(width.value.ticks)} at most.`,
        related: [{ at: stock.at, message: `the ${word} comes from ${stock.value.name}` }, { at: width.at, message: `${stock.value.name} is ${size(width.value.ticks)} wide` }],
        fixes: replacing(rip, spelledLike(rip.value, width.value.ticks, job), `Rip the ${word} to ${size(width.value.ticks)}`),
    });
}

const NOMINAL_WIDTHS = [2, 3, 4, 5, 6, 8, 10, 12];

/** The narrowest board of the same nominal thickness that is wide enough, as `1x10`. */
function narrowestBoardFor(width: Ticks, { thickness }: NominalSize): string | undefined {
    const nominal = NOMINAL_WIDTHS.find(wide => (dressedSize(thickness, new Rational(wide))?.width ?? 0) >= width);
    return nominal === undefined ? undefined : `${thickness.toFraction()}x${nominal}`;
}
