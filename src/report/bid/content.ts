import { drawPlan, drawSection, contextIn, FIRST_SHEET, sectionsOf, sheetAfter, withNotice, type Sheet, type SheetOptions } from '../../drawing/index.ts';
import type { Ceiling } from '../../ceiling/model.ts';
import type { Addition, Estimate } from '../../estimate/model.ts';
import type { Given } from '../../provenance/source.ts';
import { printMoney } from '../../quantity/money.ts';
import { Rational } from '../../quantity/rational.ts';
import { alternateStanding, type PricedAlternate } from '../../pipeline/price.ts';
import { isSound } from '../../pipeline/standing.ts';
import { titleOfHouse } from '../house.ts';
import { standingOfRooms } from '../standing.ts';
import type { HousePrice } from '../estimate/house.ts';
import { differenceText, percentText } from '../estimate/words.ts';
import { takeOffOf } from '../../pipeline/inspect.ts';
import { cautionsForClient } from './cautions.ts';
import { DRAFT } from './draft.ts';
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
interface PriceLine { readonly what: string; readonly amount: string; readonly strong: boolean }

export function bidContent({ house, priced, alternates }: HousePrice, date?: string): BidContent {
    const { job } = house, { estimate, ceilings, left } = priced, standing = standingOfRooms(house.rooms);
    const said = bidsOf(estimate);
    const money = (amount: Rational): string => printMoney(amount, estimate.currency);
    const taxes = estimate.additions.filter(({ kind }) => kind === 'tax'), [taxed] = taxes;
    const draft = [
        ...left.map(name => `Room ${name} cannot be laid out and is not included.`),
        ...standing.errors.length > 0 ? ['The ceiling cannot be built as it is drawn here.'] : [],
        ...house.rooms.some(({ takeOff }) => takeOff && takeOff.leftOut.length > 0) ? ['Part of the work is still to be worked out, and is neither drawn nor in the price.'] : [],
        ...standing.notComputed.length > 0 ? ['Not everything that has to be considered is worked out yet.'] : [],
        ...estimate.missing.length > 0 ? ['Some of the work has no rate and is not in the price.'] : [],
    ];
    return {
        title: house.rooms.length > 0 ? titleOfHouse(house) : 'Coffered ceiling',
        ...said.contractor !== undefined && { contractor: said.contractor }, ...job.client && { client: job.client.value }, ...date !== undefined && { date },
        draft,
        scope: [...ceilings.map(roomText), ...said.scope],
        price: [
            ...taxed ? [{ what: 'Price', amount: money(estimate.sums.price), strong: false }, { what: taxes.length === 1 ? `Tax, ${percentText(taxed.share!.share)}` : 'Tax', amount: money(total(taxes)), strong: false }] : [],
            { what: taxed ? 'Total' : 'For all of the above', amount: money(estimate.sums.total), strong: true },
            ...said.deposit ? [{ what: `Due on signing${said.deposit.share ? `, ${percentText(said.deposit.share)}` : ''}`, amount: money(said.deposit.amount), strong: false }] : [],
        ],
        allowances: estimate.additions.filter(({ kind }) => kind === 'allowance').map(({ what, amount }) => `${money(amount)} for ${what}`),
        options: alternates.filter(one => isSound(alternateStanding(one)) && one.priced.left.length === 0).map(optionText),
        exclusions: said.exclusions,
        cautions: cautionsForClient(ceilings),
        terms: [...said.terms, ...said.validDays !== undefined ? [`The price holds for ${said.validDays} days from the date above.`] : []],
        drawings: drawingsOf(ceilings).map(sheet => withNotice(sheet, draft.length > 0 ? [DRAFT] : [])),
    };
}

/** What the bids that hold for the rooms say to the client: each thing once, the shortest time the price holds, and what all deposits come to. */
export function bidsOf({ parts }: Estimate) {
    const bids = parts.map(({ rates }) => rates.bid);
    const texts = (of: (bid: typeof bids[number]) => readonly Given<string>[]): string[] =>
        [...new Set(bids.flatMap(bid => of(bid).map(({ value }) => value)))];
    const days = bids.flatMap(bid => bid.validDays?.value ?? []), shares = parts.map(({ rates }) => rates.bid.deposit?.value ?? new Rational(0));
    const deposit = parts.reduce((sum, part, i) => sum.add(part.total.mul(shares[i]!)), new Rational(0));
    return {
        contractor: bids.find(bid => bid.contractor)?.contractor?.value,
        scope: texts(bid => bid.scope), exclusions: texts(bid => bid.exclusions), terms: texts(bid => bid.terms),
        validDays: days.length > 0 ? Math.min(...days) : undefined,
        deposit: deposit.equals(0) ? undefined : { amount: deposit, share: shares.every(share => share.equals(shares[0]!)) ? shares[0] : undefined },
    };
}

function total(additions: readonly Addition[]): Rational {
    return additions.reduce((sum, { amount }) => sum.add(amount), new Rational(0));
}

function optionText({ alternate, priced, comparison: { total } }: PricedAlternate): { title: string; price: string } {
    return { title: alternate.title ?? alternate.name, price: differenceText(total.after.sub(total.before), priced.estimate.currency) };
}

/** Of each room the plan, and each section that is in it, numbered on from one room to the next; how many pieces it takes is ours to know. */
function drawingsOf(ceilings: readonly Ceiling[]): Sheet[] {
    const rooms = ceilings.map(ceiling => ({ ceiling, sections: sectionsOf(ceiling) })), of = `of ${rooms.reduce((sum, { sections }) => sum + 1 + sections.length, 0)}`;
    const sheets: Sheet[] = [];
    for (const { ceiling, sections } of rooms) {
        const sheetAt = (i: number): SheetOptions => ({ sheet: sheetAfter(FIRST_SHEET, first + i), of }), first = sheets.length;
        sheets.push(
            drawPlan(ceiling, takeOffOf(ceiling), { ...sheetAt(0), forClient: true }),
            ...sections.map((each, i) => drawSection(each.section, contextIn(ceiling, each, sheetAt(1 + i)))),
        );
    }
    return sheets;
}
