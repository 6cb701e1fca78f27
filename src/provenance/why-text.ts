import { printLength, type Show } from '../quantity/print-length.ts';
import { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Source } from './source.ts';
import { sumOf, type Why, type WhyTerm } from './why.ts';

/** A stretch of the sum's words; `at`: the words in the text that a term comes from. */
export interface WhyPart { readonly text: string; readonly at?: Source }

/**
 * The sum in words: `coffer 4' 1 3/8" + 2 x side 3/4" = 4' 2 7/8"`. Where the piece is cut at a rounded figure, both
 * stand there: `... = ~4' 2 7/8", cut at 4' 2 7/8"`.
 */
export function whyText(why: Why, total: Ticks, show: Show = 'feet-inches'): string {
    return whyParts(why, total, show).map(part => part.text).join('');
}

/** The same in stretches: every term leads to the words it comes from. */
export function whyParts(why: Why, total: Ticks, show: Show = 'feet-inches'): readonly WhyPart[] {
    const sum = sumOf(why);
    const parts: WhyPart[] = why.terms.flatMap((term, i) => {
        const sign = signOf(term, i);
        return [...sign === '' ? [] : [{ text: sign }], { text: termText(term, show), ...term.at && { at: term.at } }];
    });
    const onlyOne = why.terms.length === 1 && why.terms[0]!.times === 1;
    if (!onlyOne) parts.push({ text: `${parts.length > 0 ? ' ' : ''}= ${printLength(sum, show)}` });
    if (total !== sum) parts.push({ text: `, cut at ${printLength(total, show)}` });
    return parts;
}

function signOf(term: WhyTerm, index: number): string {
    if (index === 0) return term.times < 0 ? '-' : '';
    return term.times < 0 ? ' - ' : ' + ';
}

function termText(term: WhyTerm, show: Show): string {
    const times = Math.abs(term.times);
    const count = times === 1 ? '' : `${new Rational(times).toFraction()} x `;
    return `${count}${term.what} ${printLength(term.ticks, show)}`;
}
