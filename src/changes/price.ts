import type { JobSettings, Room } from '../job/model.ts';
import { price } from '../pipeline/price.ts';
import { roundMoney } from '../quantity/money.ts';
import { Rational } from '../quantity/rational.ts';
import { sameData } from '../plain/same-data.ts';
import { counted } from '../plain/words.ts';
import type { ChangePrice, CutWood, HouseThere, RoomChange, WorkInVain } from './model.ts';

/**
 * What a change costs: the new total less the old, plus the wood and the work that were spent in vain, less what of the wood is saved. Both totals are
 * as if nothing were cut yet, so that wood that is kept is in the new one and has been paid already: it is taken off, and all that was cut put on. A
 * piece that is trimmed is cut twice, and the new total has that once. Each line is in whole cents, as an estimate's are, and so is their sum.
 */
export function changePrice(before: HouseThere, after: HouseThere, rooms: readonly RoomChange[], wood: readonly CutWood[]): ChangePrice | undefined {
    const { estimate: old } = before.priced, { estimate: now } = after.priced;
    if (old.currency !== now.currency) return undefined;
    const lost = wood.filter(({ fate }) => fate !== 'keep' && fate !== 'elsewhere');
    const sum = (of: (one: CutWood) => CutWood['worth']): Rational => lost.reduce((all, one) => {
        const money = of(one);
        return money?.currency === now.currency ? all.add(money.amount) : all;
    }, new Rational(0));
    const inVain = sum(({ worth }) => worth), saved = sum(one => one.saved);
    const difference = now.sums.total.sub(old.sums.total), oldRates = atOldRates(after, rooms, before.job), work = workInVain(lost, rooms, now.currency);
    const besides = inVain.sub(saved).add(work?.amount ?? 0);
    return {
        currency: now.currency, difference, inVain, saved, ...work && { workInVain: work }, total: difference.add(besides),
        ...oldRates && { atOldRates: oldRates.sub(old.sums.total).add(besides) },
        lacks: lacksOf(before, after, lost, lost.length - (work?.pieces ?? 0)),
    };
}

/** The new total by the labor and bid of the state before. Boards cost what they cost now. Undefined where that is the same, or a rate is missing. */
function atOldRates({ rooms: all, job: now, priced: { plan, estimate } }: HouseThere, rooms: readonly RoomChange[], job: JobSettings): Rational | undefined {
    const oldOf = new Map(rooms.flatMap(({ before, after }) => (before && after ? [[after.room, before.room] as const] : [])));
    const usual = rooms.find(({ before }) => before)?.before?.room.rates;
    if (!usual) return undefined;
    const own = all.map(({ room }) => room), then = own.map((room): Room => {
        const rates = oldOf.get(room)?.rates ?? usual;
        return sameData(rates, room.rates) ? room : { ...room, rates };
    });
    // nothing is reckoned again where nobody changed a rate
    const { sums, missing } = then.every((room, i) => room === own[i]) && sameData(job, now) ? estimate : price(then, job, plan).estimate;
    return missing.length === 0 ? sums.total : undefined;
}

/** By the labor of the rooms that they were cut for, at what an hour costs; undefined where none of them says it. */
function workInVain(lost: readonly CutWood[], rooms: readonly RoomChange[], currency: string): WorkInVain | undefined {
    const laborOf = new Map(rooms.map(({ before, after }) => { const { room } = (after ?? before)!; return [room.name, room.rates.labor] as const; }));
    let pieces = 0, minutes = new Rational(0), amount = new Rational(0);
    for (const { room } of lost) {
        const { cutting, rate } = laborOf.get(room) ?? {};
        if (!cutting || rate?.value.currency !== currency) continue;
        pieces++;
        minutes = minutes.add(cutting.value);
        amount = amount.add(cutting.value.div(60).mul(rate.value.amount));
    }
    return pieces === 0 ? undefined : { pieces, minutes, amount: roundMoney(amount) };
}

/** @param unreckoned pieces that were cut in vain and whose hours nobody says */
function lacksOf(before: HouseThere, after: HouseThere, lost: readonly CutWood[], unreckoned: number): string[] {
    const missing = [...before.priced.estimate.missing, ...after.priced.estimate.missing].length, { currency } = after.priced.estimate;
    const unpriced = lost.filter(({ worth }) => worth?.currency !== currency).length;
    const left = [...new Set([...before.priced.left, ...after.priced.left])];
    return [
        ...left.length > 0 ? [`${left.map(name => `room ${name}`).join(', ')} cannot be laid out in one of the two states, and is not in its price`] : [],
        ...missing > 0 ? ['work or material has no rate in one of the two states, and is not in its price: `cofferwright estimate` names it'] : [],
        ...unpriced > 0 ? [`${counted(unpriced, 'cut piece')} of wood without a price`] : [],
        ...unreckoned > 0 ? [`the hours at the saw for ${counted(unreckoned, 'piece')} cut in vain: \`labor\` says no \`cutting\``] : [],
    ];
}
