import type { BoardPlan } from '../cutting/model.ts';
import type { JobSettings } from '../job/model.ts';
import { sumsIn, type Bid, type Labor, type Rates, type Sum } from '../job/rates.ts';
import type { Given, Source } from '../provenance/source.ts';
import { roundMoney } from '../quantity/money.ts';
import { Rational } from '../quantity/rational.ts';
import { laborOf, type PricedRoom } from './labor.ts';
import { materialsOf, suppliesOf } from './materials.ts';
import type { Addition, Estimate, LaborLine, Missing } from './model.ts';
import { divided, materialsByPart } from './shares.ts';
import { statementsOf, type Statement } from './statements.ts';

/** Rooms under the same rates. */
export interface Part { readonly rates: Rates; readonly rooms: readonly PricedRoom[] }
/** What is priced: rooms of one job, their boards, and how often the saw is set for them. */
interface Work { readonly parts: readonly Part[]; readonly plan: BoardPlan; readonly setUps: number }

/**
 * What a job costs and what it is sold for.
 *
 * Boards, supplies, labor, delivery, allowances and tax on materials (which is paid at the yard) are what it costs by
 * itself; contingency is a share of that, overhead a share of both; with them it is the cost. Profit is a share of the cost
 * (markup) or of the price (margin): of a cost C, a share m of the price is C m / (1 - m). A job below the minimum charge
 * is lifted to it. Tax on everything comes on top.
 *
 * Where rooms stand under different rates, each is reckoned by its own. Boards are bought for all together and shared by the wood
 * that goes into each; what is said once for several (delivery, an allowance, the minimum) counts once, and they share it as they
 * share the cost.
 */
export function estimateOf({ parts, plan, setUps }: Work, job: JobSettings): Estimate {
    const currency = currencyOf(parts, plan, job);
    const show = job.show.value;
    const inMoney = <T extends Sum>(given: Given<T> | undefined): Given<T> | undefined => given?.value.currency === currency ? given : undefined;
    const seen = new Set<string>();
    const hours = parts.map(({ rooms, rates: { labor } }) => laborOf(rooms, 0, { ...labor, rate: inMoney(labor.rate) }, seen));
    const sawyer = sawyerOf(parts), sawing = parts[sawyer]?.rates.labor;
    const saw = sawing ? laborOf([], setUps, { ...sawing, rate: inMoney(sawing.rate) }) : { lines: [], missing: [] };
    const boards = materialsOf(plan, currency, show);
    const used = suppliesOf(
        parts.map(({ rooms, rates: { bid } }) => ({ consumables: rooms.flatMap(room => room.takeOff.consumables), supplies: bid.supplies })), currency,
    );

    const materials = total(boards.lines), supplies = total(used.lines);
    const ofWood = materialsByPart(boards.lines, plan, parts);
    const ofSupplies = parts.map((_, i) =>
        used.lines.reduce((sum, { amount, count, counts }) => count === 0 ? sum : sum.add(amount.mul(counts[i]!).div(count)), ZERO));
    /** What each part costs so far, exact; together the sum of the lines. */
    const costs = parts.map((_, i) => ofWood[i]!.add(ofSupplies[i]!).add(total(hours[i]!.lines)));
    const bear = (amount: Rational, among: readonly number[], by: readonly Rational[]): void => {
        const own = divided(amount, among.map(part => by[part]!));
        among.forEach((part, i) => { costs[part] = costs[part]!.add(own[i]!); });
    };
    const everybody = parts.map((_, i) => i);
    bear(total(saw.lines), everybody, [...costs]);
    const lines = [...hours.flatMap(one => one.lines), ...saw.lines], work = total(lines);

    const additions: Addition[] = [];
    const add = (kind: Addition['kind'], what: string, at: Source, amount: Rational, among: readonly number[], share?: Addition['share']): Rational => {
        const rounded = roundMoney(amount);
        additions.push({ kind, what: among.length === parts.length ? what : `${what}, ${roomsOf(among.map(i => parts[i]!))}`, at, amount: rounded, ...share && { share } });
        return rounded;
    };
    const sumOver = (amounts: readonly Rational[], among: readonly number[]): Rational => among.reduce((sum, part) => sum.add(amounts[part]!), ZERO);
    /** A share of what its parts have in `base`. */
    const addShare = (kind: Addition['kind'], what: string, at: Source, share: Rational, among: readonly number[], base: readonly Rational[], ofWhat: string): void => {
        const of = sumOver(base, among);
        bear(add(kind, what, at, share.mul(of), among, { share, of: roundMoney(of), ofWhat }), among, base);
    };
    const statements = <T>(of: (bid: Bid) => Given<T> | undefined): Statement<T>[] =>
        statementsOf(parts.map(({ rates: { bid } }) => { const one = of(bid); return one ? [one] : []; }));

    const direct = [...costs];
    const fixed = (kind: 'delivery' | 'allowance', what: string, given: Given<Sum>, among: readonly number[]): Rational => {
        const amount = add(kind, what, given.at, given.value.amount, among);
        bear(amount, among, direct);
        return amount;
    };
    const delivery = statements(bid => inMoney(bid.delivery)).reduce((sum, { given, parts: among }) => sum.add(fixed('delivery', 'delivery', given, among)), ZERO);
    const allowances = statementsOf(parts.map(({ rates: { bid } }) => bid.allowances.filter(one => inMoney(one))))
        .reduce((sum, { given, parts: among }) => sum.add(fixed('allowance', given.value.for ?? 'allowance', given, among)), ZERO);
    const ofMaterials = parts.map((_, i) => ofWood[i]!.add(ofSupplies[i]!));
    const taxes = statements(bid => bid.tax);
    for (const { given: { value, at }, parts: among } of taxes) if (value.on === 'materials') addShare('tax on materials', 'tax on materials', at, value.share, among, ofMaterials, 'boards and supplies');
    const contingencies = statements(bid => bid.contingency);
    for (const { given: { value, at }, parts: among } of contingencies) addShare('contingency', 'contingency', at, value, among, [...costs], 'what it costs');
    for (const { given: { value, at }, parts: among } of statements(bid => bid.overhead)) addShare('overhead', 'overhead', at, value, among, [...costs], `what it costs${contingencies.length > 0 ? ', contingency included' : ''}`);
    const cost = sumOver(costs, everybody);

    const beforeProfit = [...costs];
    let gain = ZERO;
    const tooLarge: Given<unknown>[] = [];
    for (const { given, parts: among } of statements(bid => bid.profit)) {
        const profit = profitOn(sumOver(beforeProfit, among), given.value);
        if (!profit) { tooLarge.push(given); continue; }
        const amount = add('profit', given.value.of === 'price' ? 'profit (margin)' : 'profit (markup)', given.at, profit.amount, among, { ...profit.share, of: roundMoney(profit.share.of) });
        bear(amount, among, beforeProfit);
        gain = gain.add(amount);
    }
    for (const { given, parts: among } of statements(bid => inMoney(bid.minimum))) {
        const asked = sumOver(costs, among);
        if (given.value.amount.compare(asked) > 0) bear(add('minimum', 'up to the minimum charge', given.at, given.value.amount.sub(asked), among), among, [...costs]);
    }
    const prices = [...costs], price = sumOver(prices, everybody);
    for (const { given: { value, at }, parts: among } of taxes) if (value.on === 'everything') addShare('tax', 'tax', at, value.share, among, prices, 'the price');

    return {
        currency, rooms: parts.flatMap(({ rooms }) => rooms.map(({ takeOff }) => takeOff.room)), materials: boards.lines,
        supplies: used.lines.map(({ counts: _, ...line }) => line), labor: lines, additions,
        sums: { materials, supplies, labor: work, delivery, allowances, cost, profit: gain, price, total: sumOver(costs, everybody) },
        ...timeOf(parts, hours.map((one, i) => minutesOf(i === sawyer ? [...one.lines, ...saw.lines] : one.lines))),
        parts: parts.map(({ rates }, i) => ({ rates, total: costs[i]! })),
        missing: [
            ...boards.missing, ...used.missing, ...hours.flatMap(one => one.missing), ...saw.missing,
            ...notSaid(parts, hours.map(one => minutesOf(one.lines)), currency, tooLarge),
        ],
    };
}

/** The job's money where it says one; else that of the rates; else that of the boards. */
function currencyOf(parts: readonly Part[], plan: BoardPlan, { currency }: JobSettings): string {
    if (currency.said) return currency.value;
    const said = parts.flatMap(({ rates }) => sumsIn(rates)[0] ?? []);
    return said[0]?.value.currency ?? plan.costs[0]?.currency ?? currency.value;
}

/** The part by whose rates the saw is set for all rooms: the one that says how long it takes in the folder nearest the root. */
function sawyerOf(parts: readonly Part[]): number {
    const depth = ({ byCount }: Labor): number => byCount['set-up'] ? byCount['set-up'].at.uri.split('/').length : Infinity;
    const depths = parts.map(({ rates: { labor } }) => depth(labor));
    return Math.max(0, depths.indexOf(Math.min(...depths)));
}

/** Minutes of one person in each part, as days of the crews that do them. */
function timeOf(parts: readonly Part[], minutes: readonly Rational[]): Pick<Estimate, 'minutes' | 'crew' | 'days'> {
    const all = minutes.reduce((sum, own) => sum.add(own), ZERO);
    const crews = parts.map(({ rates: { labor } }) => labor.crew?.value), [crew] = crews;
    const days = parts.map(({ rates: { labor: { day, crew: people } } }, i) =>
        people && !day.value.equals(0) ? minutes[i]!.div(day.value.mul(people.value)) : undefined);
    const together = days.reduce<Rational | undefined>((sum, own) => sum && own && sum.add(own), ZERO);
    return { minutes: all, ...crew !== undefined && crews.every(one => one === crew) && { crew }, ...parts.length > 0 && together && { days: together } };
}

/** Undefined where the profit is the whole price or more: then no price is enough. */
function profitOn(cost: Rational, { share, of }: NonNullable<Bid['profit']>['value']): { amount: Rational; share: NonNullable<Addition['share']> } | undefined {
    if (of === 'cost') return { amount: cost.mul(share), share: { share, of: cost, ofWhat: 'the cost' } };
    if (share.compare(1) >= 0) return undefined;
    const amount = cost.mul(share).div(new Rational(1).sub(share));
    return { amount, share: { share, of: cost.add(amount), ofWhat: 'the price' } };
}

/** What every estimate wants and nobody has said, and money that is in another currency. */
function notSaid(parts: readonly Part[], minutes: readonly Rational[], currency: string, tooLarge: readonly Given<unknown>[]): Missing[] {
    const missing: Missing[] = [];
    const say = (rate: string, of: string, at: Source | undefined): void => {
        if (!missing.some(one => one.rate === rate && one.of === of)) missing.push({ rate, of, ...at && { at } });
    };
    for (const [i, part] of parts.entries()) {
        const { rates: { labor, bid } } = part, where = parts.length === 1 ? '' : `, ${roomsOf([part])}`;
        if (!labor.rate && !minutes[i]!.equals(0)) say('labor.crew', `${Math.ceil(minutes[i]!.valueOf() / 6) / 10} hours of work: give crew ... rate`, labor.at);
        if (!labor.at) say('labor', `all work${where}: there is no labor block in this folder or above it`, undefined);
        if (!bid.profit) say('bid.profit', `the profit${where}`, bid.at);
        for (const given of sumsIn(part.rates)) {
            if (given.value.currency !== currency) say('currency', `what is priced in ${given.value.currency}: the job is in ${currency}`, given.at);
        }
    }
    for (const { at } of tooLarge) say('bid.profit', 'the profit: a share of the price has to be less than 100 %', at);
    return missing;
}

function roomsOf(parts: readonly Part[]): string {
    return parts.flatMap(({ rooms }) => rooms.map(({ takeOff }) => takeOff.room)).join(', ');
}

function total(lines: readonly { readonly amount?: Rational }[]): Rational {
    return lines.reduce((sum, { amount }) => amount ? sum.add(amount) : sum, ZERO);
}
function minutesOf(lines: readonly LaborLine[]): Rational {
    return lines.reduce((sum, line) => sum.add(line.minutes), ZERO);
}
const ZERO = new Rational(0);
