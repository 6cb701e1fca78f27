import type { BoardPlan } from '../cutting/model.ts';
import type { Supplies } from '../job/rates.ts';
import { roundMoney } from '../quantity/money.ts';
import { printLength, type Show } from '../quantity/print-length.ts';
import { Rational } from '../quantity/rational.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../quantity/ticks.ts';
import type { Consumable } from '../takeoff/model.ts';
import type { MaterialLine, Missing, SupplyLine } from './model.ts';

/** Boards to buy, and boards on hand that are reckoned at a worth; what has no price is missing. */
export function materialsOf(plan: BoardPlan, currency: string, show: Show): { lines: MaterialLine[]; missing: Missing[] } {
    const lines: MaterialLine[] = [];
    const missing: Missing[] = [];
    for (const { stock, buy, boards } of plan.stocks) {
        for (const { length, count, each } of buy) {
            if (!each || each.currency !== currency) {
                missing.push({ rate: 'price', of: `${count} x ${printLength(length, show)} of ${stock.name}${each ? `, which is priced in ${each.currency}` : ''}`, at: stock.at });
                continue;
            }
            lines.push({ stock, length, count, each: each.amount, onHand: false, amount: roundMoney(each.amount.mul(count), currency) });
        }
        for (const { from, worth, length } of boards) {
            if (from !== 'on hand' || !worth || worth.currency !== currency || worth.amount.equals(0)) continue;
            const same = lines.findIndex(line => line.onHand && line.stock === stock && line.length === length && line.each.equals(worth.amount));
            const count = same < 0 ? 1 : lines[same]!.count + 1;
            lines.splice(same < 0 ? lines.length : same, 1, { stock, length, count, each: worth.amount, onHand: true, amount: roundMoney(worth.amount.mul(count), currency) });
        }
    }
    for (const { piece, reason } of plan.unplaced) missing.push({ rate: 'board', of: `${piece.id}: ${reason}`, room: piece.room, at: piece.source });
    return { lines, missing };
}

/** A US fluid ounce is 1/128 of a gallon of 231 cubic inches (NIST Handbook 44, appendix C). */
const VOLUMES: Readonly<Record<string, Rational>> = {
    'fl oz': new Rational(TICKS_PER_INCH).pow(3)!.mul(231).div(128), mL: new Rational(10 * TICKS_PER_MM).pow(3)!,
};

/** Screws, nails, glue and the rest, those of one name in all rooms together. */
export function suppliesOf(consumables: readonly Consumable[], supplies: Supplies, currency: string): { lines: SupplyLine[]; missing: Missing[] } {
    const lines: SupplyLine[] = [];
    const missing: Missing[] = [];
    for (const { kind, what, unit, count } of together(consumables)) {
        const price = supplies[kind];
        if (!price || price.value.currency !== currency) { missing.push({ rate: `bid.supplies.${kind}`, of: `${count} ${unit} of ${what}` }); continue; }
        const each = price.value.amount.mul(VOLUMES[unit] ?? 1);
        lines.push({ what, count, unit, each, amount: roundMoney(each.mul(count), currency), at: price.at });
    }
    return { lines, missing };
}

function together(consumables: readonly Consumable[]): Consumable[] {
    const sums = new Map<string, Consumable>();
    for (const one of consumables) {
        const key = `${one.what}|${one.unit}`;
        sums.set(key, { ...one, count: one.count + (sums.get(key)?.count ?? 0) });
    }
    return [...sums.values()];
}
