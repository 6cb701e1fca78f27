import { Rational } from '../quantity/rational.ts';
import type { BoardPlan, Known } from './model.ts';

export const firstPlan = (least: Known['least']): Known => ({ as: 'first plan', least });

/** What is known of a plan that costs so much when nothing can cost less than the lower bound. */
export function knownBy(cost: Rational, lowerBound: Rational, least: Known['least']): Known {
    if (lowerBound.gte(cost)) return { as: 'none cheaper', least, lowerBound: cost, percent: 0 };
    if (lowerBound.compare(0) <= 0) return firstPlan(least);
    return { as: 'within', least, lowerBound, percent: percentUp(cost.sub(lowerBound).div(lowerBound)) };
}

/** In plain words, for whoever pays. */
export function knownText({ as, least, percent }: Known): string {
    const [cheap, cheaper, above] = least === 'money' ? ['cheapest', 'cheaper', 'above'] : ['least', 'shorter', 'more board than'];
    switch (as) {
        case 'first plan': return `a first plan: a ${cheaper} one may exist`;
        case 'within': return `at most ${percent} % ${above} the ${cheap} possible`;
        case 'none cheaper': return `none ${cheaper} exists`;
    }
}

/** What is known of all stocks together: the weakest of what is known of each. */
export function weakest({ stocks }: BoardPlan): Known {
    const rank = { 'first plan': 2, 'within': 1, 'none cheaper': 0 } as const;
    return stocks.map(s => s.known).reduce<Known>(
        (worst, known) => (rank[known.as] - rank[worst.as] || (known.percent ?? 0) - (worst.percent ?? 0)) > 0 ? known : worst,
        { as: 'none cheaper', least: 'money', percent: 0 });
}

/** To two figures, upward: 0.3712 % is 0.38, 0.00012 % is 0.00012. */
function percentUp(part: Rational): number {
    const percent = part.mul(100).valueOf();
    const digits = Math.max(0, 1 - Math.floor(Math.log10(percent)));
    const step = 10 ** digits;
    return Number((Math.ceil(percent * step - 1e-9) / step).toFixed(Math.min(digits, 12)));
}
