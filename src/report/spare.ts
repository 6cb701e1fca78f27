import type { BoardPlan } from '../cutting/model.ts';
import { stockNames } from '../job/stock-names.ts';
import { printLength, type Show } from '../quantity/print-length.ts';
import { percentText } from './estimate/words.ts';

/** What is bought besides what is cut, for boards that are expected to be unusable, and for which stocks nothing is: one sentence or two. */
export function spareText(plans: readonly BoardPlan[], show: Show): string {
    const stocks = plans.flatMap(plan => plan.stocks).filter(({ buy }) => buy.length > 0), nameOf = stockNames(stocks.map(({ stock }) => stock));
    const reckoned = stocks.filter(({ stock: { defects, spare } }) => defects ?? spare);
    const none = [...new Set(stocks.filter(one => !reckoned.includes(one)).map(({ stock }) => nameOf(stock)))];
    if (reckoned.length === 0) return 'Nothing is added for defects or breakage: a stock can have `defects` or `spare`.';
    const spares = reckoned.flatMap(({ stock, spare }) => spare ? `${spare.count} x ${printLength(spare.length, show)} of ${nameOf(stock)}${stock.defects ? ` (${percentText(stock.defects.value)} are expected to be unusable)` : ''}` : []);
    return [
        ...spares.length > 0 ? [`Extra boards for defects and breakage: ${spares.join(', ')}.`] : [],
        ...none.length > 0 ? [`Nothing is added for defects of ${none.join(', ')}.`] : [],
    ].join(' ');
}
