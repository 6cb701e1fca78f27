import type { AfterCutting } from '../../cutting/after-cutting.ts';
import type { Money } from '../../cutting/model.ts';
import type { Estimate } from '../../estimate/model.ts';
import { counted } from '../../plain/words.ts';
import { printAmount } from '../../quantity/money.ts';
import type { Show } from '../../quantity/print-length.ts';
import { alternateStanding } from '../../pipeline/price.ts';
import { standingTogether } from '../../pipeline/standing.ts';
import { rowOf, type Cell } from '../../text/csv.ts';
import { titleOf } from '../house.ts';
import { csvStanding, standingOfRooms } from '../standing.ts';
import type { HousePrice } from './house.ts';
import { basisText, shareText, sizeText } from './words.ts';
import { stockNames } from '../../job/stock-names.ts';
import type { CsvText } from '../../text/fit.ts';

const HEADER = ['job', 'alternate', 'kind', 'phase', 'room', 'what', 'count', 'unit', 'each', 'hours', 'amount', 'currency', 'why'] as const;
type Row = Readonly<Partial<Record<(typeof HEADER)[number], Cell>>>;

/** A row a line of the estimate, of the job and of each alternate; the amounts of one of them add up to its total. */
export function csvEstimate(prices: readonly HousePrice[]): CsvText {
    return csvStanding(HEADER, prices.flatMap(({ house, priced, after, alternates }) => [
        {
            rows: [...rows(priced.estimate, house.job.show.value), ...after ? afterRows(after) : []]
                .map(row => rowOf(HEADER, { job: titleOf(house.job), ...row })),
            standing: standingOfRooms(house.rooms),
        },
        ...alternates.map(({ alternate, priced: other, told }) => ({
            rows: rows(other.estimate, house.job.show.value)
                .map(row => rowOf(HEADER, { job: titleOf(house.job), alternate: alternate.title ?? alternate.name, ...row })),
            standing: standingTogether([standingOfRooms(house.rooms), alternateStanding({ told })]),
        })),
    ]));
}

/** Of a job of which something is cut: beside the price, which is that of the whole job as if nothing were. No amounts, so that the others still add up. */
function afterRows({ bought, toBuy, together, planned, unpriced }: AfterCutting): Row[] {
    const rowsOf = (what: string, sums: readonly Money[], why: string | null = null): Row[] =>
        sums.map(({ amount, currency }): Row => ({ kind: 'after cutting', what, each: printAmount(amount), currency, why }));
    return [
        ...rowsOf('boards bought for what is cut', bought, unpriced > 0 ? `without ${counted(unpriced, 'board')} of which nobody says the price` : null),
        ...rowsOf('boards still to buy', toBuy), ...rowsOf('boards in all', together), ...rowsOf('boards in this price', planned),
    ];
}

function rows(estimate: Estimate, show: Show): Row[] {
    const { currency } = estimate, nameOf = stockNames(estimate.materials.map(({ stock }) => stock));
    const money = (amount: Estimate['minutes'] | undefined): string | null => amount === undefined ? null : printAmount(amount);
    return [
        ...estimate.materials.map(({ stock, length, width, count, each, onHand, amount }): Row => ({
            kind: 'board', what: `${nameOf(stock)} ${sizeText({ length, width }, show)}`, count, unit: onHand ? 'on hand' : 'board',
            each: money(each), amount: money(amount), currency,
        })),
        // a milliliter costs less than any money has, and what is written is what count times it makes the amount
        ...estimate.supplies.map(({ what, count, unit, each, amount }): Row => ({
            kind: 'supply', what, count, unit, each: unit === 'mL' ? String(Number(each.valueOf().toFixed(6))) : money(each), amount: money(amount), currency,
        })),
        ...estimate.labor.map(({ phase, room, what, basis, minutes, amount }): Row => ({
            kind: 'labor', phase, room: room ?? null, what, hours: Number(minutes.div(60).valueOf().toFixed(2)),
            amount: money(amount), currency, why: basisText(basis, show),
        })),
        ...estimate.additions.map((addition): Row => (
            { kind: 'added', what: addition.what, amount: money(addition.amount), currency, why: shareText(addition, estimate) || null })),
        ...estimate.missing.map(({ rate, of, room }): Row => ({ kind: 'missing', room: room ?? null, what: `${rate}: ${of}` })),
    ];
}
