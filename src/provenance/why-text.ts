import { isOnRule, printIn, type Tape } from '../quantity/print-length.ts';
import { Rational } from '../quantity/rational.ts';
import { roundTo } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Source } from './source.ts';
import { sumOf, type Why, type WhyTerm } from './why.ts';

/** A stretch of the sum's words; `at`: the words in the text that a term comes from. */
interface WhyPart { readonly text: string; readonly at?: Source }

/**
 * The sum in words, `coffer 4' 1 3/8" + 2 x side 3/4" = 4' 2 7/8"`, with figures that the job's tape has, or that were said so. They add
 * up as they stand there: what rounding takes or leaves is a term of its own, `... - rounding 1/32" = 4' 2 27/32"`.
 * @param total what the sum is told for, such as the length a piece is cut to
 */
export function whyText(why: Why, total: Ticks, tape: Tape): string {
    return whyParts(why, total, tape).map(part => part.text).join('');
}

/** The same in stretches: every term leads to the words it comes from. */
export function whyParts(why: Why, total: Ticks, tape: Tape): readonly WhyPart[] {
    const read = why.terms.map(term => ({ ...term, ticks: onTape(term.mark ?? term.ticks, tape) }));
    const terms = rounded(read.filter(term => term.ticks !== 0), onTape(total, tape));
    const parts: WhyPart[] = terms.flatMap((term, i) => {
        const sign = signOf(term, i);
        return [...sign === '' ? [] : [{ text: sign }], { text: termText(term, tape), ...term.at && { at: term.at } }];
    });
    const onlyOne = terms.length === 1 && terms[0]!.times === 1;
    if (!onlyOne) parts.push({ text: `${parts.length > 0 ? ' ' : ''}= ${printIn(onTape(total, tape), tape.show)}` });
    return parts;
}

/** As it was said, where a rule has it; else at the nearest mark. */
function onTape(ticks: Ticks, { show, step }: Tape): Ticks {
    return isOnRule(ticks, show) || ticks % step === 0 ? ticks : roundTo(ticks, step);
}

function rounded(terms: readonly WhyTerm[], total: Ticks): readonly WhyTerm[] {
    const rest = total - sumOf({ terms });
    return rest === 0 ? terms : [...terms, { what: 'rounding', times: Math.sign(rest), ticks: Math.abs(rest) }];
}

function signOf(term: WhyTerm, index: number): string {
    if (index === 0) return term.times < 0 ? '-' : '';
    return term.times < 0 ? ' - ' : ' + ';
}

function termText(term: WhyTerm, { show }: Tape): string {
    const times = Math.abs(term.times);
    const count = times === 1 ? '' : `${new Rational(times).toFraction()} x `;
    return `${count}${term.what} ${printIn(term.ticks, show)}`;
}
