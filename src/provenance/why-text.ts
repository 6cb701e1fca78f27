import { printLength, type Show } from '../quantity/print-length.ts';
import { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { sumOf, type Why, type WhyTerm } from './why.ts';

/**
 * The sum in words: `coffer 4' 1 3/8" + 2 x side 3/4" = 4' 2 7/8"`. Where the piece is cut at a rounded figure, both
 * stand there: `... = ~4' 2 7/8", cut at 4' 2 7/8"`.
 */
export function whyText(why: Why, total: Ticks, show: Show = 'feet-inches'): string {
    const sum = sumOf(why);
    const words = why.terms.map((term, i) => signOf(term, i) + termText(term, show)).join('');
    const onlyOne = why.terms.length === 1 && why.terms[0]!.times === 1;
    const equals = onlyOne ? words : `${words}${words ? ' ' : ''}= ${printLength(sum, show)}`;
    return total === sum ? equals : `${equals}, cut at ${printLength(total, show)}`;
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
