import type { JobSettings, Stock } from '../job/model.ts';
import { onHandKey } from '../job/on-hand.ts';
import { Rational } from '../quantity/rational.ts';
import { TICKS_PER_FOOT, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';
import type { BoardFrom, BoardPlan, Money } from './model.ts';
import type { Offer } from './offers.ts';

/** Boards that are alike: of one length, from one place, at one price. */
export interface Kind {
    readonly from: BoardFrom;
    readonly length: Ticks;
    /** Undefined: as many as it takes. */
    readonly available?: number;
    /** What counts against a plan that uses one. */
    readonly cost: Rational;
    readonly worth?: Money;
    /** A board that was measured; and the width of one, or of a strip, where that is less than its stock's: then it is only ripped. */
    readonly measured?: string; readonly width?: Ticks;
    /** A sheet that is ripped across its length: its strips are as long as the sheet is wide. */
    readonly crosswise?: true;
    /** So much of its length at the least is left in the end, for a later job that it is worth something to: the cost is less by that. */
    readonly keeps?: Ticks;
}
export interface Kinds {
    readonly all: readonly Kind[];
    /** What the cost is reckoned in: money, or where there is no price the length bought. */
    readonly least: 'money' | 'length';
    /** False where the costs are not what is paid: a length without a price is among them, or two currencies. */
    readonly comparable: boolean;
}

/**
 * Boards on hand that no earlier plan uses, and boards the yard sells. A length without a price is offered only where no priced
 * one is long enough for a piece, and then at far more than any other, so that it is taken for nothing else.
 * @param longest the longest piece of the stock, with its end trim
 */
export function kindsOf(stock: Stock, job: JobSettings, offers: readonly Offer[], longest: Ticks, before: readonly BoardPlan[]): Kinds {
    const priced = offers.filter(o => o.price);
    const least = priced.length > 0 || offers.length === 0 ? 'money' : 'length';
    const needed = least === 'money' && (priced.at(-1)?.length ?? 0) < longest ? offers.filter(o => !o.price && o.length >= longest).slice(0, 1) : [];
    const rate = priced.reduce((most, o) => { const per = o.price!.amount.div(o.length); return per.gt(most) ? per : most; }, new Rational(1, 1_000_000));
    const bought = [...(least === 'money' ? priced : offers), ...needed].flatMap(({ length, price }): Kind[] => {
        const cost = price?.amount ?? (least === 'length' ? new Rational(length) : rate.mul(length).mul(1000));
        return bothWays(stock, { from: 'bought', length, cost });
    });
    const keeping = needed.length === 0 && least === 'money' ? bought.flatMap(kind => keepingOf(kind, stock, job)) : [];
    return {
        all: [...onHandOf(stock, job, before), ...bought, ...worthLooking(keeping, bought)], least,
        comparable: needed.length === 0 && new Set(priced.map(o => o.price!.currency)).size <= 1,
    };
}

/**
 * A board of which an offcut worth keeping is left, by the foot from the shortest on: it costs less by the offcut's worth. Offcuts of sheets and of
 * boards on hand are not reckoned.
 */
function keepingOf(kind: Kind, stock: Stock, job: JobSettings): Kind[] {
    if (stock.sheet || !job.offcutWorth) return [];
    const step = job.show.value === 'millimeters' ? 300 * TICKS_PER_MM : TICKS_PER_FOOT;
    const kept: Kind[] = [];
    for (let keeps = Math.max(1, job.shortestOffcut.value); keeps < kind.length - job.endTrim.value; keeps += step) {
        const worth = worthOfOffcut(keeps, stock, job.offcutWorth.value);
        if (worth) kept.push({ ...kind, keeps, cost: kind.cost.sub(worth.amount) });
    }
    return kept;
}

/** Without those that hold no more than another and cost no less. */
function worthLooking(keeping: readonly Kind[], bought: readonly Kind[]): Kind[] {
    const holds = ({ length, keeps = 0 }: Kind): Ticks => length - keeps;
    const kept: Kind[] = [];
    for (const kind of keeping.toSorted((a, b) => holds(b) - holds(a) || a.cost.compare(b.cost)))
        if (![...bought, ...kept].some(other => holds(other) >= holds(kind) && other.cost.lte(kind.cost))) kept.push(kind);
    return kept;
}

/** The share of what so much of the stock costs at its lowest price; undefined where nobody says the one or the other. */
export function worthOfOffcut(length: Ticks, { prices }: Stock, share: Rational | undefined): Money | undefined {
    const cheapest = prices.reduce<Stock['prices'][number] | undefined>((best, price) => (best && best.perTick.lte(price.perTick) ? best : price), undefined);
    return cheapest && share && share.compare(0) > 0 ? { amount: cheapest.perTick.mul(length).mul(share), currency: cheapest.currency } : undefined;
}

/** A sheet without grain may be ripped either way. */
function bothWays({ sheet }: Stock, kind: Kind): Kind[] {
    const turned = sheet?.value.grain === 'none' && sheet.value.length === kind.length && sheet.value.width < kind.length;
    return turned ? [kind, { ...kind, crosswise: true }] : [kind];
}

/** Boards and offcuts that are there, the shortest first, so that offcuts go before boards. */
function onHandOf(stock: Stock, job: JobSettings, before: readonly BoardPlan[]): Kind[] {
    const gone = before.flatMap(plan => plan.stocks).filter(plan => plan.stock.key === stock.key)
        .flatMap(plan => plan.boards).filter(board => board.from === 'on hand');
    const kinds = new Map<string, Kind & { available: number }>();
    for (const { value } of stock.onHand) {
        const { count, length, worth, measured, width } = value, key = onHandKey(value);
        const before = kinds.get(key)?.available ?? 0, more = { ...measured !== undefined && { measured }, ...width !== undefined && { width } };
        kinds.set(key, { from: 'on hand', length, worth, ...more, cost: worth?.amount ?? new Rational(0), available: Math.min(before + Math.floor(count), MOST_ON_HAND) });
    }
    for (const board of gone) {
        const key = onHandKey(board);
        const kind = kinds.get(key);
        if (kind) kinds.set(key, { ...kind, available: kind.available - 1 });
    }
    return [...kinds.values()].filter(kind => kind.available > 0 && kind.length > job.endTrim.value)
        .sort((a, b) => a.length - b.length || a.cost.compare(b.cost) || (a.width ?? Infinity) - (b.width ?? Infinity));
}
/** More boards than anybody has: a mistyped count must not stop the program. */
const MOST_ON_HAND = 10_000;
