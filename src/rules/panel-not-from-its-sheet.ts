import { longestPiece } from '../ceiling/longest.ts';
import type { Fix } from '../findings/finding.ts';
import type { Back, JobSettings, Stock } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { roughWidth } from '../takeoff/rough-width.ts';
import { defineRule, type Found, type Report } from './rule.ts';
import { changed, HALL } from './support/examples.ts';
import { adding, replacing, spelledLike } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(changed(HALL, '\nprofile', '\nstock lining { sheet 48" x 96"; thickness 1/4" }\n\nprofile'), '  trim {', '  back { thickness 1/4"; stock lining }\n  trim {');

export const panelNotFromItsSheet = defineRule({
    name: 'panel-not-from-its-sheet',
    severity: 'error',
    title: 'A panel over a coffer does not come out of its sheet',
    explanation: `
A panel reaches from the middle of one beam to the middle of the next, and comes out of one sheet: across it there is the width of the
sheet, along it its length less the end trim.

Over the coffer of 48" x 54" between two beams of 5" and at a wall lies a panel of 4' 4 7/8" x 4' 8 5/16": there is no such width in a
sheet of 4' x 8'. Take larger sheets, divide the room into smaller coffers, or write \`seams across-coffers\`: then it is made of two,
with a seam in the coffer. A panel as thick as is said and not as its sheet does not come out of it either.`,
    wrong,
    right: changed(wrong, 'sheet 48" x 96"', 'sheet 60" x 120"'),
    basis: 'Sizes of sheets as the stock says them; a seam behind the blocking is not seen: common practice, no source.',
    check: {
        room({ layout, job, pieces }, report) {
            const back = layout.ceiling?.beams?.profile.back, stock = back?.stock?.value;
            if (!back || !stock) return;
            const { thickness } = stock;
            if (back.thickness && thickness && back.thickness.value.ticks !== thickness.value.ticks) {
                const size = sizesOf(job), [said, has] = [back.thickness.value.ticks, thickness.value.ticks];
                report({
                    ...wordsOf(back.thickness), message: `The panels are ${size(said)} thick, and ${stock.name} is ${size(has)}. Write \`thickness ${size(has)}\`, or take another stock.`,
                    related: [{ at: thickness.at, message: `${stock.name} is ${size(has)} thick` }],
                    fixes: replacing(back.thickness, spelledLike(back.thickness.value, has, job), `Make the panels ${size(has)} thick`),
                });
            }
            checkSizes(back, stock, pieces().filter(({ part }) => part === 'panel'), job, report);
        },
    },
});

/** One is told, the one that lacks most, and how many others there are. */
function checkSizes(back: Back, stock: Stock, panels: readonly Piece[], job: JobSettings, report: Report): void {
    const width = stock.sheet?.value.width ?? stock.width?.value.ticks ?? Infinity, length = longestPiece(stock, job);
    const lacks = (piece: Piece): Ticks => Math.max(roughWidth(piece) - width, piece.cutOverall - length);
    const large = panels.filter(piece => lacks(piece) > 0);
    if (large.length === 0) return;
    const largest = large.reduce((most, piece) => (lacks(piece) > lacks(most) ? piece : most));
    report(foundOf(largest, large.length - 1, back, [width, length], job));
}

function foundOf(piece: Piece, others: number, back: Back, [width, length]: readonly [Ticks, Ticks], job: JobSettings): Found {
    const size = sizesOf(job), named = others === 0 ? '' : others === 1 ? ' One more is too large.' : ` ${others} more are too large.`;
    const { name } = piece.stock, there = length === -Infinity ? 'none of its sheets may come into the house'
        : length === Infinity ? `${name} is ${size(width)} wide` : `${name} has ${size(width)} x ${size(length)} after the end trim`;
    const inOne = back.seams.value === 'across-coffers' ? 'Take larger sheets or smaller coffers.' : 'Take larger sheets or smaller coffers, or let it be made of several: `seams across-coffers`.';
    return {
        ...wordsOf(back.stock!), message: `The panel ${piece.where} is ${size(roughWidth(piece))} x ${size(piece.cutOverall)}, and ${there}.${named} ${inOne}`,
        related: piece.stock.sheet ? [{ at: piece.stock.sheet.at, message: `the sheets of ${piece.stock.name}` }] : [],
        fixes: length === -Infinity ? [] : seamsIn(back),
    };
}

function seamsIn(back: Back): Fix[] {
    const title = 'Let panels have seams in the coffers';
    if (!back.seams.said) return adding(back, 'seams  across-coffers', title);
    return back.seams.value === 'behind-beams' ? replacing(back.seams, 'across-coffers', title) : [];
}
