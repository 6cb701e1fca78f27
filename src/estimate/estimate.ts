import type { BoardPlan } from '../cutting/model.ts';
import type { JobSettings } from '../job/model.ts';
import type { Bid, Rates, Sum } from '../job/rates.ts';
import type { Given, Source } from '../provenance/source.ts';
import { roundMoney } from '../quantity/money.ts';
import { Rational } from '../quantity/rational.ts';
import { laborOf, type PricedRoom } from './labor.ts';
import { materialsOf, suppliesOf } from './materials.ts';
import type { Addition, Estimate, Missing } from './model.ts';

/** What is priced: rooms of one job, their boards, and how often the saw is set for them. */
export interface Work { readonly rooms: readonly PricedRoom[]; readonly plan: BoardPlan; readonly setUps: number }

/**
 * What a job costs and what it is sold for.
 *
 * Boards, supplies, labor, delivery, allowances and tax on materials (which is paid at the yard) are what it costs by
 * itself; contingency is a share of that, overhead a share of both; with them it is the cost. Profit is a share of the cost
 * (markup) or of the price (margin): of a cost C, a share m of the price is C m / (1 - m). A job below the minimum charge
 * is lifted to it. Tax on everything comes on top.
 */
export function estimateOf({ rooms, plan, setUps }: Work, { labor, bid }: Rates, job: JobSettings): Estimate {
    const currency = currencyOf({ labor, bid }, plan, job);
    const show = job.show.value;
    const inMoney = <T extends Sum>(given: Given<T> | undefined): Given<T> | undefined => given?.value.currency === currency ? given : undefined;
    const hours = laborOf(rooms, setUps, { ...labor, rate: inMoney(labor.rate) });
    const boards = materialsOf(plan, currency, show);
    const used = suppliesOf(rooms.flatMap(room => room.takeOff.consumables), bid.supplies, currency);

    const materials = total(boards.lines), supplies = total(used.lines), work = total(hours.lines);
    const additions: Addition[] = [];
    const add = (kind: Addition['kind'], what: string, at: Source, amount: Rational, share?: Addition['share']): Rational => {
        const rounded = roundMoney(amount, currency);
        additions.push({ kind, what, at, amount: rounded, ...share && { share } });
        return rounded;
    };
    const addShare = (kind: Addition['kind'], what: string, at: Source, share: Rational, of: Rational, ofWhat: string): Rational =>
        add(kind, what, at, share.mul(of), { share, of, ofWhat });

    const delivery = inMoney(bid.delivery) ? add('delivery', 'delivery', bid.delivery!.at, bid.delivery!.value.amount) : ZERO;
    const allowances = bid.allowances.filter(one => inMoney(one)).reduce((sum, { at, value }) => sum.add(add('allowance', value.for ?? 'allowance', at, value.amount)), ZERO);
    let cost = materials.add(supplies).add(work).add(delivery).add(allowances);
    if (bid.tax?.value.on === 'materials') cost = cost.add(addShare('tax on materials', 'tax on materials', bid.tax.at, bid.tax.value.share, materials.add(supplies), 'boards and supplies'));
    if (bid.contingency) cost = cost.add(addShare('contingency', 'contingency', bid.contingency.at, bid.contingency.value, cost, 'what it costs'));
    if (bid.overhead) cost = cost.add(addShare('overhead', 'overhead', bid.overhead.at, bid.overhead.value, cost, 'what it costs, contingency included'));
    const profit = bid.profit && profitOn(cost, bid.profit.value);
    const gain = bid.profit && profit ? add('profit', bid.profit.value.of === 'price' ? 'profit (margin)' : 'profit (markup)', bid.profit.at, profit.amount, profit.share) : ZERO;
    let price = cost.add(gain);
    const least = inMoney(bid.minimum);
    if (least && least.value.amount.compare(price) > 0) price = price.add(add('minimum', 'up to the minimum charge', least.at, least.value.amount.sub(price)));
    const tax = bid.tax?.value.on === 'everything' ? addShare('tax', 'tax', bid.tax.at, bid.tax.value.share, price, 'the price') : ZERO;

    const minutes = hours.lines.reduce((sum, line) => sum.add(line.minutes), ZERO);
    const crew = labor.crew?.value;
    return {
        currency, rooms: rooms.map(({ takeOff }) => takeOff.room), materials: boards.lines, supplies: used.lines, labor: hours.lines, additions,
        sums: { materials, supplies, labor: work, delivery, allowances, cost, profit: gain, price, total: price.add(tax) },
        minutes, ...crew !== undefined && { crew, ...labor.day.value.equals(0) ? {} : { days: minutes.div(labor.day.value.mul(crew)) } },
        missing: [...boards.missing, ...used.missing, ...hours.missing, ...notSaid({ labor, bid }, minutes, currency, Boolean(bid.profit && !profit))],
    };
}

/** The job's money where it says one; else that of the rates; else that of the boards. */
function currencyOf({ labor, bid }: Rates, plan: BoardPlan, { currency }: JobSettings): string {
    if (currency.said) return currency.value;
    const said = labor.rate ?? bid.delivery ?? bid.minimum ?? bid.allowances[0];
    return said?.value.currency ?? plan.costs[0]?.currency ?? currency.value;
}

/** Undefined where the profit is the whole price or more: then no price is enough. */
function profitOn(cost: Rational, { share, of }: NonNullable<Bid['profit']>['value']): { amount: Rational; share: NonNullable<Addition['share']> } | undefined {
    if (of === 'cost') return { amount: cost.mul(share), share: { share, of: cost, ofWhat: 'the cost' } };
    if (share.compare(1) >= 0) return undefined;
    const amount = cost.mul(share).div(new Rational(1).sub(share));
    return { amount, share: { share, of: cost.add(amount), ofWhat: 'the price' } };
}

/** What every estimate wants and nobody has said, and money that is in another currency. */
function notSaid({ labor, bid }: Rates, minutes: Rational, currency: string, profitTooLarge: boolean): Missing[] {
    const missing: Missing[] = [];
    const say = (rate: string, of: string, at = labor.at): void => { missing.push({ rate, of, ...at && { at } }); };
    if (!labor.rate && !minutes.equals(0)) say('labor.crew', `${Math.ceil(minutes.valueOf() / 6) / 10} hours of work: say crew ... rate`);
    if (!labor.at) say('labor', 'all work: there is no labor block in this folder or above it', undefined);
    if (!bid.profit) say('bid.profit', 'the profit', bid.at);
    if (profitTooLarge) say('bid.profit', 'the profit: a share of the price has to be less than 100 %', bid.profit!.at);
    for (const given of [labor.rate, bid.delivery, bid.minimum, ...bid.allowances]) {
        if (given && given.value.currency !== currency) say('currency', `what is said in ${given.value.currency}: the job is in ${currency}`, given.at);
    }
    return missing;
}

function total(lines: readonly { readonly amount?: Rational }[]): Rational {
    return lines.reduce((sum, { amount }) => amount ? sum.add(amount) : sum, ZERO);
}
const ZERO = new Rational(0);
