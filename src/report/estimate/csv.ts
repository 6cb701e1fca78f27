import type { Estimate } from '../../estimate/model.ts';
import { printAmount } from '../../quantity/money.ts';
import { printLength } from '../../quantity/print-length.ts';
import { alternateStanding } from '../../pipeline/price.ts';
import { standingTogether } from '../../pipeline/standing.ts';
import type { Cell } from '../csv.ts';
import { titleOf } from '../house.ts';
import { csvStanding, standingOfRooms } from '../standing.ts';
import type { HousePrice } from './house.ts';
import { basisText, shareText } from './words.ts';
import { stockNames } from '../../job/stock-names.ts';

const HEADER = ['job', 'alternate', 'kind', 'phase', 'room', 'what', 'count', 'unit', 'each', 'hours', 'amount', 'currency', 'why'];

/** A row a line of the estimate, of the job and of each alternate; the amounts of one of them add up to its total. */
export function csvEstimate(prices: readonly HousePrice[]): string {
    return csvStanding(HEADER, prices.flatMap(({ house, priced, alternates }) => [
        { rows: rows(priced.estimate, house.job.show.value).map(row => [titleOf(house.job), null, ...row]), standing: standingOfRooms(house.rooms) },
        ...alternates.map(({ alternate, priced: other, told }) => ({
            rows: rows(other.estimate, house.job.show.value).map(row => [titleOf(house.job), alternate.title ?? alternate.name, ...row]),
            standing: standingTogether([standingOfRooms(house.rooms), alternateStanding({ told })]),
        })),
    ]));
}

function rows(estimate: Estimate, show: 'feet-inches' | 'millimeters'): Cell[][] {
    const { currency } = estimate, nameOf = stockNames(estimate.materials.map(({ stock }) => stock));
    const money = (amount: Estimate['minutes'] | undefined): string | null => amount === undefined ? null : printAmount(amount, currency);
    return [
        ...estimate.materials.map(({ stock, length, count, each, onHand, amount }): Cell[] => ['board', null, null, `${nameOf(stock)} ${printLength(length, show)}`, count, onHand ? 'on hand' : 'board', money(each), null, money(amount), currency, null]),
        ...estimate.supplies.map(({ what, count, unit, each, amount }): Cell[] => ['supply', null, null, what, count, unit, money(each), null, money(amount), currency, null]),
        ...estimate.labor.map(({ phase, room, what, basis, minutes, amount }): Cell[] => ['labor', phase, room ?? null, what, null, null, null, Number(minutes.div(60).valueOf().toFixed(2)), money(amount), currency, basisText(basis, show)]),
        ...estimate.additions.map((addition): Cell[] => ['added', null, null, addition.what, null, null, null, null, money(addition.amount), currency, shareText(addition, estimate) || null]),
        ...estimate.missing.map(({ rate, of, room }): Cell[] => ['missing', null, room ?? null, `${rate}: ${of}`, null, null, null, null, null, null, null]),
    ];
}
