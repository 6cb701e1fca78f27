import type { Ticks } from '../quantity/ticks.ts';
import type { Source } from './source.ts';

/**
 * Why a length is what it is: a sum in words, such as
 * "coffer 4' 1 3/8" + 2 x side 3/4" = 4' 2 7/8"". `why-text.ts` writes it out, as the tape reads it.
 * Invariant, held by tests: the terms add up to the length they explain, exactly.
 */
export interface Why { readonly terms: readonly WhyTerm[] }

export interface WhyTerm {
    /** The thing in the trade's words: "coffer", "side", "room", "line 2 rabbet". */
    readonly what: string;
    /** How often it counts; negative where it is taken off. */
    readonly times: number;
    readonly ticks: Ticks;
    /** What the tape reads for it, where it is worked out and not said: a coffer, at the size it is cut to. */
    readonly mark?: Ticks;
    /** The words in the text that this term comes from, where there are any. */
    readonly at?: Source;
}

/** One term of the sum; `times` is negative where it is taken off. */
export function term(what: string, times: number, ticks: Ticks, at?: Source, mark?: Ticks): WhyTerm {
    if (mark === undefined) return at ? { what, times, ticks, at } : { what, times, ticks };
    return at ? { what, times, ticks, mark, at } : { what, times, ticks, mark };
}

/** What the terms come to, in ticks: the length they explain. */
export function sumOf(why: Why): Ticks {
    return why.terms.reduce((sum, t) => sum + t.times * t.ticks, 0);
}
