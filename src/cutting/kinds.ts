import type { JobSettings, Stock } from '../job/model.ts';
import { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { BoardFrom, BoardPlan, Money } from './model.ts';
import type { Offer } from './offers.ts';

/** Boards that are alike: of one length, from one place, at one price. */
interface Kind {
    readonly from: BoardFrom;
    readonly length: Ticks;
    /** Undefined: as many as it takes. */
    readonly available?: number;
    /** What counts against a plan that uses one. */
    readonly cost: Rational;
    readonly worth?: Money;
    /** A sheet that is ripped across its length: its strips are as long as the sheet is wide. */
    readonly crosswise?: true;
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
    return {
        all: [...onHandOf(stock, job, before), ...bought], least,
        comparable: needed.length === 0 && new Set(priced.map(o => o.price!.currency)).size <= 1,
    };
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
    const keyOf = (length: Ticks, worth: { readonly amount: Rational } | undefined): string => `${length} ${worth?.amount.toFraction() ?? ''}`;
    for (const { value: { count, length, worth } } of stock.onHand) {
        if (!(length > 0) || !(count > 0)) continue;
        const key = keyOf(length, worth);
        const before = kinds.get(key)?.available ?? 0;
        kinds.set(key, { from: 'on hand', length, worth, cost: worth?.amount ?? new Rational(0), available: Math.min(before + Math.floor(count), MOST_ON_HAND) });
    }
    for (const board of gone) {
        const key = keyOf(board.length, board.worth);
        const kind = kinds.get(key);
        if (kind) kinds.set(key, { ...kind, available: kind.available - 1 });
    }
    return [...kinds.values()].filter(kind => kind.available > 0 && kind.length > job.endTrim.value)
        .sort((a, b) => a.length - b.length || a.cost.compare(b.cost));
}
/** More boards than anybody has: a mistyped count must not stop the program. */
const MOST_ON_HAND = 10_000;
