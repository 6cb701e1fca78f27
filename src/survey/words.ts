import type { JobSettings } from '../job/model.ts';
import { listed } from '../plain/words.ts';
import { printIn, printLength, printMark, type Show, type Tape } from '../quantity/print-length.ts';
import { roundTo } from '../quantity/round.ts';
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';
import { compassOfEnd } from '../takeoff/ends.ts';
import { spokenName } from '../takeoff/ids.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Shortened } from './spacers.ts';
import type { Spot, Stretch } from './survey.ts';

/** Depths and gaps as a steel rule reads them, and places as one finds them with a tape overhead. */
const FINE: Readonly<Record<Show, Ticks>> = { 'feet-inches': TICKS_PER_INCH / 64, millimeters: TICKS_PER_MM / 2 };
const COARSE: Readonly<Record<Show, Ticks>> = { 'feet-inches': TICKS_PER_INCH / 2, millimeters: 10 * TICKS_PER_MM };

export interface SurveyWords {
    /** A depth, a gap, a lap: to the nearest 1/64", or half a millimeter. */
    deep(ticks: number): string;
    /** A place along a side: to the nearest 1/2", or 10 mm. */
    place(ticks: number): string;
    /** `3' 2" from its west end`. */
    at(piece: Piece, spot: Spot): string;
    /** `from 1' 8" to 4' 9"`, or all of it. */
    over(stretch: Stretch, length: number): string;
}

export function surveyWords({ show: { value: show } }: Pick<JobSettings, 'show'>): SurveyWords {
    const deep = (ticks: number): string => printIn(roundTo(Math.round(ticks), FINE[show]), show);
    const place = (ticks: number): string => printLength(roundTo(Math.round(ticks), COARSE[show]), show);
    return {
        deep, place,
        at: (piece, { along }) => (along < COARSE[show] ? `at its ${compassOfEnd(piece, 'first')} end` : `${place(along)} from its ${compassOfEnd(piece, 'first')} end`),
        over: ({ from, to }, length) => (from < COARSE[show] && to > length - COARSE[show] ? 'over its whole length' : `from ${place(from)} to ${place(to)}`),
    };
}

const MOST_NAMED = 6;

/** `A-1-2 and A-1-3 to 3 5/16"`, the lowest first; of many alike how many more. */
export function shortenedWords(to: readonly Shortened[], tape: Tape): string[] {
    return to.map(({ most, spacers }) => {
        const names = spacers.map(({ piece }) => spokenName(piece.id).replace('spacer ', '')), more = names.length - MOST_NAMED;
        return `${listed(more > 0 ? [...names.slice(0, MOST_NAMED), `${more} more`] : names)} to ${printMark(most, tape)}`;
    });
}

/** "side A-1-north". */
export function sideNamed({ id }: Piece): string {
    return spokenName(id);
}
