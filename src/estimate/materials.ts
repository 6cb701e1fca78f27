import type { BoardPlan } from '../cutting/model.ts';
import type { Sum, Supplies } from '../job/rates.ts';
import type { Given } from '../provenance/source.ts';
import { roundMoney } from '../quantity/money.ts';
import { printLength, type Show } from '../quantity/print-length.ts';
import { Rational } from '../quantity/rational.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../quantity/ticks.ts';
import type { Consumable } from '../takeoff/model.ts';
import type { MaterialLine, Missing, SupplyLine } from './model.ts';
import { sameStatement } from './statements.ts';
import { unitOf } from '../plain/words.ts';

/** Boards to buy, and boards on hand that are used, at their worth or at no cost; what has no price is missing. */
export function materialsOf(plan: BoardPlan, currency: string, show: Show): { lines: MaterialLine[]; missing: Missing[] } {
    const lines: MaterialLine[] = [];
    const missing: Missing[] = [];
    for (const { stock, buy, boards, spare } of plan.stocks) {
        for (const { length, count, each } of buy) {
            if (!each || each.currency !== currency) {
                missing.push({ rate: 'price', of: `${count} x ${printLength(length, show)} of ${stock.name}${each ? `, which is priced in ${each.currency}` : ''}`, at: stock.at });
                continue;
            }
            lines.push({
                stock, length, count, spare: spare?.length === length ? spare.count : 0, each: each.amount, onHand: false,
                amount: roundMoney(each.amount.mul(count)),
            });
        }
        for (const { from, worth, length, width } of boards) {
            if (from !== 'on hand') continue;
            if (worth && worth.currency !== currency && !worth.amount.equals(0)) {
                missing.push({ rate: 'price', of: `1 x ${printLength(length, show)} of ${stock.name} on hand, whose worth is in ${worth.currency}`, at: stock.at });
                continue;
            }
            const each = worth?.amount ?? new Rational(0);
            const same = lines.findIndex(line =>
                line.onHand && line.stock === stock && line.length === length && line.width === width && line.each.equals(each));
            const count = same < 0 ? 1 : lines[same]!.count + 1;
            lines.splice(
                same < 0 ? lines.length : same, 1,
                { stock, length, ...width !== undefined && { width }, count, spare: 0, each, onHand: true, amount: roundMoney(each.mul(count)) },
            );
        }
    }
    for (const { piece, reason } of plan.unplaced) missing.push({ rate: 'board', of: `${piece.id}: ${reason}`, room: piece.room, at: piece.source });
    return { lines, missing };
}

/** A US fluid ounce is 1/128 of a gallon of 231 cubic inches (NIST Handbook 44, appendix C). */
const VOLUMES: Readonly<Record<string, Rational>> = {
    'fl oz': new Rational(TICKS_PER_INCH).pow(3)!.mul(231).div(128), mL: new Rational(10 * TICKS_PER_MM).pow(3)!,
};

/** What the rooms under one set of rates use up. */
export interface Used { readonly consumables: readonly Consumable[]; readonly supplies: Supplies }
/** `counts`: of each part, how many of the line's count it uses. */
interface SharedSupply extends SupplyLine { readonly counts: readonly number[] }

/** Screws, nails, glue and the rest, those of one name at one price in all rooms together. */
export function suppliesOf(parts: readonly Used[], currency: string): { lines: SharedSupply[]; missing: Missing[] } {
    const lines: SharedSupply[] = [];
    const missing: Missing[] = [];
    for (const { one: { kind, what, unit }, price, counts } of together(parts)) {
        const count = counts.reduce((sum, own) => sum + own, 0);
        if (!price || price.value.currency !== currency) { missing.push({ rate: `bid.supplies.${kind}`, of: `${count} ${unitOf(count, unit)} of ${what}` }); continue; }
        const each = price.value.amount.mul(VOLUMES[unit] ?? 1);
        lines.push({ what, count, unit, each, amount: roundMoney(each.mul(count)), at: price.at, counts });
    }
    return { lines, missing };
}

interface Together { readonly one: Consumable; readonly price: Given<Sum> | undefined; readonly counts: number[] }
function together(parts: readonly Used[]): Together[] {
    const all: Together[] = [];
    for (const [part, { consumables, supplies }] of parts.entries()) {
        for (const one of consumables) {
            const price = supplies[one.kind];
            let line = all.find(other => other.one.what === one.what && other.one.unit === one.unit && sameStatement(other.price, price));
            if (!line) all.push(line = { one, price, counts: parts.map(() => 0) });
            line.counts[part]! += one.count;
        }
    }
    return all;
}
