import { Rational } from '../quantity/rational.ts';
import type { BoardPlan, CuttingModel, CuttingTerm, Known } from './model.ts';

export const firstPlan = (least: Known['least']): Known => ({ as: 'first plan', least });

/** What is known of a plan that costs so much when nothing can cost less than the lower bound. */
export function knownBy(cost: Rational, lowerBound: Rational, least: Known['least'], model?: CuttingModel, under: readonly CuttingTerm[] = []): Known {
    const looked = model && { model, ...under.length > 0 && { under } };
    if (lowerBound.gte(cost)) return { as: 'none cheaper', least, lowerBound: cost, percent: 0, ...looked };
    if (lowerBound.compare(0) <= 0) return firstPlan(least);
    return { as: 'within', least, lowerBound, percent: percentUp(cost.sub(lowerBound).div(lowerBound)), ...looked };
}

/** In plain words, for whoever pays: how good, and among which ways to cut. */
export function knownText(known: Known): string {
    const looked = known.as === 'first plan' || !known.model ? '' : ` (ways of cutting compared: ${[MODELS[known.model], ...(known.under ?? []).map(term => TERMS[term])].join('; ')})`;
    return `${goodText(known)}${looked}`;
}

const MODELS: Readonly<Record<CuttingModel, string>> = {
    across: 'cut across; no piece turned',
    ripped: 'cut across, ripped, cut across again; no board ripped part way, no piece turned',
    'ripped whole': 'cut across, or ripped over the whole length and then cut across; no board ripped part way, no piece turned',
    'sheets along': 'three stages, across, along, across again; every piece along the grain',
    'sheets either way': 'three stages, across, along, across again, the sheet laid either way; all pieces of a sheet one way',
    'sheets along in two': 'two stages, along the whole sheet, then across; every piece along the grain',
    'sheets either way in two': 'two stages, along the whole sheet, then across, the sheet laid either way; all pieces of a sheet one way',
};
const TERMS: Readonly<Record<CuttingTerm, string>> = {
    'rooms apart': 'no board for two rooms, boards on hand given out beforehand',
    'offcuts worth': 'less what kept offcuts of boards bought are worth, in steps of a foot or 300 mm',
};

function goodText({ as, least, percent }: Known): string {
    const [cheap, cheaper, above] = least === 'money' ? ['cheapest', 'cheaper', 'above'] : ['least', 'shorter', 'more board than'];
    switch (as) {
        case 'first plan': return `a first plan; a ${cheaper} one may exist`;
        case 'within': return `at most ${percent} % ${above} the ${cheap} possible`;
        case 'none cheaper': return `none ${cheaper} exists`;
    }
}

/** What is known of all stocks together: the weakest of what is known of each. */
export function weakest({ stocks }: BoardPlan): Known {
    const rank = { 'first plan': 2, 'within': 1, 'none cheaper': 0 } as const;
    const worst = stocks.map(s => s.known).reduce<Known>(
        (worst, known) => (rank[known.as] - rank[worst.as] || (known.percent ?? 0) - (worst.percent ?? 0)) > 0 ? known : worst,
        { as: 'none cheaper', least: 'money', percent: 0 });
    const model = WIDEST.find(each => stocks.some(({ known }) => known.model === each));
    const under = (['rooms apart', 'offcuts worth'] as const).filter(term => stocks.some(({ known }) => known.under?.includes(term)));
    return worst.as === 'first plan' || !model ? worst : { ...worst, model, ...under.length > 0 && { under } };
}

const WIDEST: readonly CuttingModel[] = ['sheets either way', 'sheets along', 'sheets either way in two', 'sheets along in two', 'ripped', 'ripped whole', 'across'];

/** A gap is never told as smaller, in percent: none that is there is told as none, and a millionth of a percent is no money. */
const LEAST = new Rational(1, 1_000_000);

/** To two figures, upward: 0.3712 % is 0.38, 0.00012 % is 0.00012. Worked out in whole numbers, so that it is never below what was proved. */
function percentUp(part: Rational): number {
    const percent = part.mul(100);
    if (percent.lte(LEAST)) return LEAST.valueOf();
    let unit = new Rational(1);
    while (percent.gte(unit.mul(100))) unit = unit.mul(10);
    while (percent.lt(unit.mul(10))) unit = unit.div(10);
    return percent.div(unit).ceil().mul(unit).valueOf();
}
