import type { JobSettings, Room, Stock } from '../../job/model.ts';
import { perimetersOf } from '../../job/perimeters.ts';
import { sumsIn, type Rates } from '../../job/rates.ts';
import type { Source } from '../../provenance/source.ts';
import { quoted } from '../types/words.ts';
import type { Raise } from './raised.ts';

/** Prices in another money than the job's own would be added up as if they were the same. */
export function checkCurrencies(room: Room, raise: Raise): void {
    const { job, grid } = room;
    const said = new Set<Stock>();
    const check = (stock: Stock | undefined, at: Source): void => {
        if (!stock || said.has(stock)) return;
        said.add(stock);
        checkCurrency(stock, job, at, raise);
    };
    const lines = room.lines.flatMap(line => line.beams ?? []);
    const around = perimetersOf(room), halves = around.flatMap(perimeter => perimeter.beams ?? []);
    for (const { value: profile, at } of [...grid?.beams ? [grid.beams] : [], ...lines, ...halves]) {
        const { blocking, spacers, sides, cleats, bottom, trim } = profile;
        for (const part of [blocking, spacers, sides, cleats, bottom, trim]) check(part?.stock?.value, at);
    }
    for (const { stock } of around) if (stock) check(stock.value, stock.at);
}

/** `at` is where the stock comes into the job. A job that does not say its money is in that of its stocks. */
function checkCurrency(stock: Stock, job: JobSettings, at: Source, raise: Raise): void {
    const price = stock.prices.find(one => one.currency !== job.currency.value);
    if (!price || !job.currency.said) return;
    raise({
        rule: 'mixed-currency', at, message: `${quoted(stock.name)} is priced in ${price.currency}, and the job is in ${job.currency.value}; no exchange rate is known.`,
        related: [{ at: price.at, message: `Priced in ${price.currency} here.` }, { at: job.currency.at, message: `The job is in ${job.currency.value}.` }],
    });
}

/**
 * Rates in another money than the job's, where the job says its own. Said at the job, or at the room that stands under other rates than it:
 * rates may serve other houses as well.
 */
export function checkRates(rates: Rates, job: JobSettings, at: Source, raise: Raise): void {
    if (!job.currency.said) return;
    const other = [...sumsIn(rates), ...Object.values(rates.bid.supplies)].find(one => one !== undefined && one.value.currency !== job.currency.value);
    if (other) raise({
        rule: 'mixed-currency', at, message: `The job is in ${job.currency.value}, and its rates are in ${other.value.currency}; no exchange rate is known.`,
        related: [{ at: other.at, message: `In ${other.value.currency} here.` }],
    });
}
