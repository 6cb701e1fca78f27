import { perimetersOf } from '../job/perimeters.ts';
import type { JobSettings, Profile, Stock } from '../job/model.ts';
import { sameSource, type Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { defineRule, type Found } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { profileTroublesOf, troublesOf } from './support/troubles.ts';
import { sizesOf } from './support/words.ts';
import { capitalized } from '../plain/words.ts';

export const notPositive = defineRule({
    name: 'not-positive',
    severity: 'error',
    title: 'A length that has to be more than nothing is not',
    explanation: `
A wall, a board, the height of a spacer: none of them can be 0" or less. \`wall east 0"\` leaves no room to lay out. What the
sides are held down, or a bottom is pressed, may be 0", but not less.

What follows from such a length is not reported: fix it, and the rest is checked again.`,
    wrong: changed(HALL, 'wall east   9\' 5"', 'wall east   0"'),
    right: HALL,
    basis: 'Arithmetic.',
    check: {
        stock({ stock, job }, report) {
            const found = finder(job);
            const { width, thickness, name } = stock;
            if (width && !(width.value.ticks > 0)) report(found(`the width of ${name}`, width.value.ticks, width.at));
            if (thickness && !(thickness.value.ticks > 0)) report(found(`the thickness of ${name}`, thickness.value.ticks, thickness.at));
        },
        section({ section, job }, report) {
            const found = finder(job);
            for (const { what, ticks, at } of profileTroublesOf(section, 'not-positive')) {
                if (!stocksOf(section.profile).some(stock => isSaidOf(stock, at))) report(found(what, ticks, at));
            }
        },
        room({ layout, job }, report) {
            const found = finder(job);
            const bands = perimetersOf(layout.room).flatMap(perimeter => perimeter.stock?.value ?? []);
            // what is wrong with a profile is said of the profile
            const said = [...layout.sections.values()].flatMap(section => profileTroublesOf(section, 'not-positive').map(({ at }) => at));
            for (const { what, ticks, at } of troublesOf(layout, 'not-positive')) {
                if (bands.some(band => isSaidOf(band, at)) || said.some(other => sameSource(other, at))) continue;
                report(found(what, ticks, at));
                said.push(at);          // a wall that nobody gave is as long as the one across, and as wrong
            }
        },
    },
});

function finder(job: JobSettings): (what: string, ticks: Ticks, at: Source) => Found {
    const size = sizesOf(job);
    return (what, ticks, at) => ({ at, message: `${capitalized(what)} cannot be ${size(ticks)}${ticks < 0 ? ', which is less than nothing' : ''}.` });
}

/** A stock's own size is wrong once, where the stock is, and not at everything that is cut from it. */
function isSaidOf(stock: Stock, at: Source): boolean {
    return [stock.width, stock.thickness].some(given => given && sameSource(given.at, at));
}

function stocksOf({ blocking, spacers, sides, cleats, bottom, trim }: Profile): Stock[] {
    return [blocking, spacers, sides, cleats, bottom, trim].flatMap(part => part?.stock?.value ?? []);
}
