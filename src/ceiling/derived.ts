import type { Given, Source } from '../provenance/source.ts';
import { term, type WhyTerm } from '../provenance/why.ts';
import type { Measure } from '../quantity/measure.ts';
import { plus, times } from '../quantity/tolerance.ts';
import type { Derived } from './model.ts';

/** A length that is said, under the trade's name for it. */
export function fromWords(what: string, measure: Measure, at?: Source): Derived {
    return { ...measure, why: { terms: [term(what, 1, measure.ticks, at)] } };
}

export function fromGiven(what: string, given: Given<Measure> | undefined): Derived | undefined {
    return given && fromWords(what, given.value, given.at);
}

/** The sum of lengths, each counted so often (negative: taken off). Undefined where one of them is. */
export function summed(...parts: readonly (readonly [Derived | undefined, number])[]): Derived | undefined {
    let sum: Measure = { ticks: 0, tolerance: [] };
    const terms: WhyTerm[] = [];
    for (const [part, count] of parts) {
        if (!part) return undefined;
        sum = plus(sum, times(part, count));
        for (const t of part.why.terms) terms.push(term(t.what, t.times * count, t.ticks, t.at, t.mark));
    }
    return { ...sum, why: { terms: gathered(terms) } };
}

/** Terms of one name and one length are counted together: `2 x side 3/4"`. What cancels out is left away. */
export function gathered(terms: readonly WhyTerm[]): WhyTerm[] {
    const kept: WhyTerm[] = [];
    for (const t of terms) {
        const same = kept.findIndex(k => k.what === t.what && k.ticks === t.ticks);
        if (same < 0) kept.push(t);
        else kept[same] = term(t.what, kept[same]!.times + t.times, t.ticks, kept[same]!.at, kept[same]!.mark);
    }
    return kept.filter(t => t.times !== 0 && t.ticks !== 0);
}
