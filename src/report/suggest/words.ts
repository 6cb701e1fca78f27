import type { JobSettings } from '../../job/model.ts';
import { tapeOf } from '../../job/tape.ts';
import { counted } from '../../plain/words.ts';
import { printMoney } from '../../quantity/money.ts';
import { printMark } from '../../quantity/print-length.ts';
import { roundTo } from '../../quantity/round.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { Divided, Figures, Offer, Reason, Spread, Suggestions } from '../../suggest/model.ts';
import { hoursText } from '../estimate/words.ts';

/** What is said of other grids, in the terminal, on paper and in the pane. */

export function roundedToTape(ticks: Ticks, { cutTo }: Pick<JobSettings, 'cutTo'>): Ticks {
    return roundTo(ticks, cutTo.value);
}

/** `3' 6"`, `2' 9" to 3' 6"`. */
export function spreadText({ least, most }: Spread, job: JobSettings): string {
    const [from, to] = [least, most].map(ticks => printMark(ticks, tapeOf(job)));
    return from === to ? from! : `${from} to ${to}`;
}

export function shareText(share: number): string {
    return `${Math.round(share * 100)}%`;
}

export function costText({ costs, unpriced }: Pick<Figures, 'costs' | 'unpriced'>): string {
    const sums = costs.map(({ amount, currency }) => printMoney(amount, currency)).join(' + ');
    return unpriced ? sums === '' ? 'no price' : `${sums} and more` : sums === '' ? 'nothing' : sums;
}

export function hoursOf({ minutes, untimed }: Pick<Figures, 'minutes' | 'untimed'>): string {
    return minutes === undefined ? 'no times' : `${hoursText(minutes)}${untimed ? ' and more' : ''}`;
}

export function throughText({ across, down, through }: Pick<Figures, 'across' | 'down' | 'through'>): string {
    return across > 1 && down > 1 ? through : 'no crossings';
}

/** How the lines of an offer stand that are not there where equal coffers would have them. */
export function movedText({ across, down }: Pick<Offer, 'across' | 'down'>, job: JobSettings): string[] {
    const of = ({ how, by, coffers }: Divided, lines: string): string[] => {
        const size = printMark(by, tapeOf(job));
        switch (how) {
            case 'equal': return [];
            case 'shifted': return [coffers === 2 ? `line ${lines.split(',')[0]} is moved ${size}`
                : `lines ${lines} are moved ${size}, all alike: the end coffers differ`];
            case 'outer': return [`lines ${lines} are moved by up to ${size}: the outer coffers are alike, and so are those between`];
            case 'single': return [`single lines of ${lines} are moved, by up to ${size}`];
        }
    };
    return [...of(across, '1, 2, 3 …'), ...of(down, 'A, B, C …')];
}

/** What was tried, and what came of it. */
export function triedText({ tried: { grids, clear, byGeometry, lookedAt, isCutShort, least, most }, offers }: Suggestions, job: JobSettings): string {
    const [from, to] = [least, most].map(ticks => printMark(ticks, tapeOf(job)));
    if (grids === 0) return `No other grid has coffers from ${from} to ${to}, three times as wide as a beam or wider.`;
    const come = clear === grids ? 'all come' : clear === 1 ? '1 comes' : `${clear} come`;
    const left = !byGeometry ? '' : clear === 0 ? '; each of these comes upon something by plain geometry' : `; of these ${come} upon nothing by plain geometry`;
    const tried = `${counted(grids, 'grid')} tried, with coffers from ${from} to ${to}${left}.`;
    if (lookedAt === 0) return tried;
    const came = offers.length === 0 ? 'None of them is without a mistake.' : `${counted(offers.length, 'grid is', 'grids are')} offered.`;
    const looked = `${counted(lookedAt, 'grid was', 'grids were')} laid out, put together dry and checked as the room itself is, the best first.`;
    return [tried, looked, came, ...isCutShort ? ['The search was ended there: so many coffers are laid out for it, and no more.'] : []].join(' ');
}

const MOST_REASONS = 4;
export function reasonsText({ inTheWay, found }: Suggestions['tried']): string[] {
    const one = ({ what, grids }: Reason): string => `${what} (${counted(grids, 'grid')})`;
    const all = (reasons: readonly Reason[]): string => reasons.slice(0, MOST_REASONS).map(one).join('; ');
    return [...inTheWay.length > 0 ? [`In the way of lines: ${all(inTheWay)}.`] : [], ...found.length > 0 ? [`Found by the whole check: ${all(found)}.`] : []];
}

export const HOW_RANKED = 'The best first: how equal and how square the coffers are, in steps of 5%, then conflicts, joists found by each line, closing pieces, what the boards cost, how many they are, and hours. '
    + 'Coffers are measured by the boxes round them; the boards are those of a rough plan for that room alone, since they are only held against each other. Conflicts are warnings that nobody has allowed.';
export const CLEAR_OF_WHAT_IS_SAID = 'A grid clears what the text says of the room, and nothing that it does not: know what the ceiling hides before a screw goes in. How near a beam a sprinkler, an alarm or a light may be is for the codes in force and licensed people to say.';
