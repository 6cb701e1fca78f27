import { drawPlan, drawSection, contextIn, sectionsOf, type Sheet } from '../../drawing/index.ts';
import type { Ceiling } from '../../ceiling/model.ts';
import { printMoney } from '../../quantity/money.ts';
import type { Rational } from '../../quantity/rational.ts';
import type { PricedAlternate } from '../../pipeline/price.ts';
import type { HousePrice } from '../estimate/house.ts';
import { differenceText, percentText } from '../estimate/words.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import { cautionsForClient } from './cautions.ts';
import { roomText } from './scope.ts';

/** What the client reads: what is done for which price, and on which terms. No cost, no rate and no hour of ours is in it. */
export interface BidContent {
    readonly title: string;
    readonly contractor?: string;
    readonly client?: string;
    /** As it was given; the program looks at no clock. */
    readonly date?: string;
    /** Why it is not fit to be sent yet. */
    readonly draft: readonly string[];
    readonly scope: readonly string[];
    readonly price: readonly PriceLine[];
    /** Sums set aside that are in the price. */
    readonly allowances: readonly string[];
    readonly options: readonly { readonly title: string; readonly price: string }[];
    readonly exclusions: readonly string[];
    readonly cautions: readonly string[];
    readonly terms: readonly string[];
    readonly drawings: readonly Sheet[];
}
export interface PriceLine { readonly what: string; readonly amount: string; readonly strong: boolean }

export function bidContent({ house, priced, alternates }: HousePrice, date?: string): BidContent {
    const { job, rates: { bid } } = house, { estimate, ceilings, left } = priced;
    const money = (amount: Rational): string => printMoney(amount, estimate.currency);
    const taxed = estimate.additions.find(({ kind }) => kind === 'tax');
    const deposit = bid.deposit && estimate.sums.total.mul(bid.deposit.value);
    return {
        title: job.title?.value ?? ceilings[0]?.room.title ?? ceilings[0]?.room.name ?? 'Coffered ceiling',
        ...bid.contractor && { contractor: bid.contractor.value }, ...job.client && { client: job.client.value }, ...date !== undefined && { date },
        draft: [
            ...left.map(name => `Room ${name} cannot be laid out and is not in it.`),
            ...house.rooms.some(({ errors }) => errors > 0) ? ['There are errors in what it is made from.'] : [],
            ...estimate.missing.length > 0 ? ['Some of the work has no rate and is not in the price.'] : [],
        ],
        scope: [...ceilings.map(roomText), ...bid.scope.map(({ value }) => value)],
        price: [
            ...taxed ? [{ what: 'Price', amount: money(estimate.sums.price), strong: false }, { what: `Tax, ${percentText(taxed.share!.share)}`, amount: money(taxed.amount), strong: false }] : [],
            { what: taxed ? 'Total' : 'For all of the above', amount: money(estimate.sums.total), strong: true },
            ...deposit ? [{ what: `To be paid on signing, ${percentText(bid.deposit!.value)}`, amount: money(deposit), strong: false }] : [],
        ],
        allowances: estimate.additions.filter(({ kind }) => kind === 'allowance').map(({ what, amount }) => `${money(amount)} for ${what}`),
        options: alternates.filter(({ errors, priced: other }) => errors === 0 && other.left.length === 0).map(optionText),
        exclusions: bid.exclusions.map(({ value }) => value),
        cautions: cautionsForClient(ceilings),
        terms: [...bid.terms.map(({ value }) => value), ...bid.validDays ? [`The price holds for ${bid.validDays.value} days from the date above.`] : []],
        drawings: ceilings.flatMap(drawingsOf).map((sheet, i) => ({ ...sheet, id: `${sheet.id}.${i + 1}` })),
    };
}

function optionText({ alternate, priced, comparison: { total } }: PricedAlternate): { title: string; price: string } {
    return { title: alternate.title ?? alternate.name, price: differenceText(total.after.sub(total.before), priced.estimate.currency) };
}

/** The plan, and each section that is in the room. */
function drawingsOf(ceiling: Ceiling): Sheet[] {
    return [drawPlan(ceiling, takeOffOf(ceiling)), ...sectionsOf(ceiling).map(each => drawSection(each.section, contextIn(ceiling, each, {})))];
}
