import type { Ceiling } from '../ceiling/model.ts';
import type { Fix, TextChange } from '../findings/finding.ts';
import { capitalized, counted } from '../plain/words.ts';
import { bestThrough, type BestThrough } from '../putup/closing/best-through.ts';
import { otherwise } from '../putup/closing/otherwise.ts';
import { closingPieces } from '../putup/closing/pieces.ts';
import type { Closing } from '../takeoff/closing/pieces.ts';
import { roundTo } from '../quantity/round.ts';
import { bandSaid, bottomSaid } from '../takeoff/closing/said.ts';
import { defineRule } from './rule.ts';
import { bottomsNamed, fixOf, remaining, titleOfOtherWay, titleOfTurn, turnedWords, turning } from './support/closing-words.ts';
import { changed, HALL_WITH_BAND } from './support/examples.ts';
import { adding, replacing } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { sizesOf } from './support/words.ts';

const wrong = changed(HALL_WITH_BAND, 'bottom { stock poplar-1x4 }', 'bottom { stock poplar-1x4; biscuits 1 x #10 }');

export const closingPiece = defineRule({
    name: 'closing-piece',
    severity: 'hint',
    title: 'Bottoms that biscuits keep from going straight up, and nobody says how they get in',
    explanation: `
A bottom moves only up into its channel, and along it. A biscuit that sticks out of the edge of one that is up already blocks
it, unless it can be pushed back by as much. What a biscuit sticks out is its width less the depth of its slot (half of it and
1/32"): 17/64" of a #0, 11/32" of a #10, 27/64" of a #20. With biscuits at both ends, and no room behind either, it is a
**closing piece**: a bottom of 48" between two that run through, with a #10 at each end, would have to be 11/16" shorter for a
while.

The band goes up last, so a bottom that ends at a wall has its thickness of room: 3/4" is more than any of these. So a bottom
that is cut at n crossings has n - 1 closing pieces, and which line runs through at a crossing decides how many there are. The
fewest are worked out here, crossing by crossing; a choice in which nothing could go up first does not count.

How those get in that remain is said in the detail, or in the room: \`beams.bottom.closing slots-opened\`. Slots that are
opened to the back of the closing piece let it go straight up over the biscuits, and nobody sees them.`,
    wrong,
    right: changed(wrong, 'through        north-south', 'through        east-west'),
    basis: 'Widths of biscuits and the depth of their slots as published; that the band goes up last: common practice, no source.',
    check: {
        fit({ layout: { ceiling }, job }, report) {
            const { through } = ceiling.room.grid;
            const order = bandSaid(ceiling.room);
            const found = closingPieces(ceiling, order).filter(({ onlySplice, ...closing }) => !onlySplice && !isSaid(closing, ceiling));
            const best = found.length > 0 ? bestThrough(ceiling, order) : undefined;
            if (!best || best.now === null) return;
            const { wanted, piece } = found[0]!, size = sizesOf(job), many = found.length > 1;
            const named = found.length <= MOST_NAMED ? `${capitalized(bottomsNamed(found.map(one => one.piece)))} ${many ? 'are closing pieces' : 'is a closing piece'}`
                : `${counted(found.length, 'bottom')} are closing pieces, first ${bottomsNamed([piece])}`;
            report({
                ...wordsOf(through),
                message: `${named}: the biscuits at ${many ? 'their' : 'its'} ends stick out ${size.fine(roundTo(wanted, job.cutTo.value))} in all, and there is no room to push ${many ? 'them' : 'it'} back. ${fewer(best, found.length, ceiling)}`
                    + `Say how ${many ? 'they get' : 'it gets'} in: \`beams.bottom.closing slots-opened\` opens ${many ? 'their' : 'its'} slots to the back, so that ${many ? 'they go' : 'it goes'} straight up over the biscuits.`,
                related: biscuitsOf(found[0]!, ceiling),
                fixes: fixesOf(best, found, ceiling),
            });
        },
    },
});
const MOST_NAMED = 6;

function isSaid(closing: Pick<Closing, 'piece'>, ceiling: Ceiling): boolean {
    return bottomSaid(closing.piece, ceiling).closing !== undefined;
}
function biscuitsOf(closing: Closing, ceiling: Ceiling) {
    const said = bottomSaid(closing.piece, ceiling).biscuits;
    return said ? [{ at: said.at, message: `${said.value.count} x ${said.value.size} in every butt joint` }] : [];
}

function fewer({ least, turned, as, proved, otherWay }: BestThrough, now: number, ceiling: Ceiling): string {
    if (as && least < now) {
        const left = least === 0 ? 'there are none' : `${least} remain${least === 1 ? 's' : ''}${proved ? ', the fewest there can be' : ''}`;
        return `With ${turnedWords(turned)} ${left}${changeWords(ceiling, as)}. `;
    }
    if (otherWay && otherWay.closing < now) return `With bottoms through ${otherWay.through} ${otherWay.closing} remain${changeWords(ceiling, otherWay.as)}. `;
    return proved ? 'No other choice of what runs through leaves fewer. ' : '';
}

/** What that does to the pieces, where it does anything: `; the longest piece is then 14' 7", not 15' 1"`. */
function changeWords(now: Ceiling, then: Ceiling): string {
    const { longest, splices } = otherwise(now, then), size = sizesOf(now.room.job);
    const long = longest.now === longest.then ? '' : `the longest piece is then ${size(longest.then)}, not ${size(longest.now)}`;
    const spliced = splices.now === splices.then ? '' : `there ${splices.then === 1 ? 'is' : 'are'} ${counted(splices.then, 'splice')}, not ${splices.now}`;
    const words = [long, spliced].filter(Boolean).join(', and ');
    return words === '' ? '' : `; ${words}`;
}

/** What remains is said to have its slots opened: so that the text says of every piece how it gets in. */
function fixesOf(best: BestThrough, found: readonly Closing[], ceiling: Ceiling): Fix[] {
    const { room } = ceiling, { grid } = room;
    const ofGrid = found.every(closing => bottomSaid(closing.piece, ceiling) === grid.beams?.value.bottom) && grid.beams!.value.bottom !== undefined;
    const [opening] = ofGrid ? adding(grid, 'beams.bottom.closing slots-opened', 'Open the slots of the closing pieces to their backs') : [];
    const rest = (count: number): readonly TextChange[] | undefined => (count === 0 ? [] : opening?.edits);
    const withRest = (words: string, count: number): string => `${words}, and open the slots of what remains: ${remaining(count)}`;
    const titled = (words: string, count: number): string => (count === 0 ? words : withRest(words, count));
    const isFewer = best.as !== undefined && best.least < found.length;
    const turn = isFewer ? fixOf(titled(titleOfTurn(best.turned), best.least), [turning(best.turned, room), rest(best.least)], true) : [];
    const other = best.otherWay, [turned] = other ? replacing(grid.through, other.through, '') : [];
    const otherWay = other && turned
        ? fixOf(titled(titleOfOtherWay(other.through), other.closing), [turned.edits, rest(other.closing)], turn.length === 0) : [];
    return [...turn, ...otherWay, ...opening ? [{ ...opening, preferred: turn.length + otherWay.length === 0 }] : []];
}
