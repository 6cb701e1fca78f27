import type { JobSettings, Room } from '../job/model.ts';
import { price } from '../pipeline/price.ts';
import { Rational } from '../quantity/rational.ts';
import { counted } from '../plain/words.ts';
import type { ChangePrice, CutWood, HouseThere, RoomChange } from './model.ts';

/**
 * What a change costs: the new total less the old, plus the wood that was cut in vain, less what of it is saved. Both totals are as if nothing were
 * cut yet, so that wood that is kept is in the new one and has been paid already: it is taken off, and all that was cut put on.
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
    const difference = now.sums.total.sub(old.sums.total), oldRates = atOldRates(after, rooms, before.job);
    return {
        currency: now.currency, difference, inVain, saved, total: difference.add(inVain).sub(saved),
        ...oldRates && { atOldRates: oldRates.sub(old.sums.total).add(inVain).sub(saved) },
        lacks: lacksOf(before, after, lost),
    };
}

/** The new total by the labor and bid of the state before. Boards cost what they cost now. Undefined where that is the same, or a rate is missing. */
function atOldRates({ rooms: all, priced: { plan } }: HouseThere, rooms: readonly RoomChange[], job: JobSettings): Rational | undefined {
    const oldOf = new Map(rooms.flatMap(({ before, after }) => (before && after ? [[after.room, before.room] as const] : [])));
    const usual = rooms.find(({ before }) => before)?.before?.room.rates;
    if (!usual) return undefined;
    const then = all.map(({ room }): Room => ({ ...room, rates: oldOf.get(room)?.rates ?? usual }));
    const { estimate } = price(then, job, plan);
    return estimate.missing.length === 0 ? estimate.sums.total : undefined;
}

function lacksOf(before: HouseThere, after: HouseThere, lost: readonly CutWood[]): string[] {
    const missing = [...before.priced.estimate.missing, ...after.priced.estimate.missing].length, { currency } = after.priced.estimate;
    const unpriced = lost.filter(({ worth }) => worth?.currency !== currency).length;
    const left = [...new Set([...before.priced.left, ...after.priced.left])];
    return [
        ...left.length > 0 ? [`${left.map(name => `room ${name}`).join(', ')} cannot be laid out in one of the two states, and is not in its price`] : [],
        ...missing > 0 ? ['work or material has no rate in one of the two states, and is not in its price: `cofferwright estimate` names it'] : [],
        ...unpriced > 0 ? [`${counted(unpriced, 'cut piece')} of wood without a price`] : [],
        ...lost.length > 0 ? ['the hours at the saw for what was cut in vain, which no rate tells apart'] : [],
    ];
}
