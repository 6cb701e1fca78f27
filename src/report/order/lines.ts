import { sumMoney } from '../../cutting/money.ts';
import type { Money } from '../../cutting/model.ts';
import { boardFeet } from '../../data/board-measure.ts';
import type { Stock } from '../../job/model.ts';
import { Rational } from '../../quantity/rational.ts';
import type { Show } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { compareNames } from '../../takeoff/piece-order.ts';
import type { HousePlan } from '../house.ts';

/** What is bought in one place, for all houses together. */
export interface Order {
    /** Undefined: nobody has said who sells it. */
    readonly supplier: string | undefined;
    readonly lines: readonly OrderLine[];
    /** One sum a currency; boards without a price are not in it. */
    readonly costs: readonly Money[];
    /** Of the boards whose nominal size is said. Undefined where none has one. */
    readonly boardFeet: Rational | undefined;
    /** The longest lead of its stocks, in working days. */
    readonly leadDays: number | undefined;
}
export interface OrderLine {
    readonly stock: Stock;
    readonly length: Ticks;
    readonly count: number;
    readonly each?: Money;
    readonly cost?: Money;
    /** How many of them are bought besides those that are cut. */
    readonly spare: number;
    /** Board measure on the nominal size, of all of them. Undefined for sheets, and where no nominal size is said. */
    readonly boardFeet?: Rational;
    /** For which houses, by their titles, in the order of the plans; lengths are told as the first of them shows them. */
    readonly houses: readonly string[];
    readonly show: Show;
}

/** The boards that all plans buy, one line for each length of each stock, by supplier; those that nobody is said to sell come last. */
export function ordersOf(plans: readonly HousePlan[], titleOf: (plan: HousePlan) => string): Order[] {
    const lines = new Map<string, OrderLine>();
    for (const house of plans) {
        for (const { stock, buy, spare } of house.plan.stocks) {
            for (const { length, count, each } of buy) {
                const key = `${stock.key} ${length}`;
                const before = lines.get(key);
                const spares = (before?.spare ?? 0) + (spare?.length === length ? spare.count : 0);
                const houses = [...new Set([...before?.houses ?? [], titleOf(house)])], show = before?.show ?? house.house.job.show.value;
                lines.set(key, lineOf(stock, length, { count: (before?.count ?? 0) + count, spare: spares }, each, houses, show));
            }
        }
    }
    const suppliers = [...new Set([...lines.values()].map(({ stock }) => stock.supplier?.value))];
    suppliers.sort((a, b) => (a === undefined ? 1 : b === undefined ? -1 : compareNames(a, b)));
    return suppliers.map(supplier => orderOf(supplier, [...lines.values()].filter(({ stock }) => stock.supplier?.value === supplier)));
}

function lineOf(
    stock: Stock, length: Ticks, { count, spare }: Pick<OrderLine, 'count' | 'spare'>, each: Money | undefined, houses: readonly string[], show: Show,
): OrderLine {
    const size = stock.sheet ? undefined : stock.size?.value;
    return {
        stock, length, count, spare, houses, show,
        ...each && { each, cost: { amount: each.amount.mul(count), currency: each.currency } },
        ...size && { boardFeet: boardFeet(size.thickness, size.width, length).mul(count) },
    };
}

function orderOf(supplier: string | undefined, lines: readonly OrderLine[]): Order {
    const feet = lines.flatMap(line => line.boardFeet ?? []);
    const leads = lines.flatMap(({ stock }) => stock.leadDays?.value ?? []);
    return {
        supplier,
        lines: [...lines].sort((a, b) => compareNames(a.stock.name, b.stock.name) || compareNames(a.stock.key, b.stock.key) || b.length - a.length),
        costs: sumMoney(lines.flatMap(line => line.cost ?? [])),
        boardFeet: feet.length > 0 ? feet.reduce((sum, each) => sum.add(each), new Rational(0)) : undefined,
        leadDays: leads.length > 0 ? Math.max(...leads) : undefined,
    };
}

/** Board feet as they are told: to a hundredth, without zeros at the end. */
export function feetText(feet: Rational): string {
    return String(Number(feet.mul(100).round().div(100).valueOf().toFixed(2)));
}
