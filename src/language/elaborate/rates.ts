import type { ClosingWord } from '../../job/closing-word.ts';
import type { Profile } from '../../job/model.ts';
import { BY_COUNT, BY_LENGTH, type Bid, type Labor, type Rates, type Sum, type Supplies } from '../../job/rates.ts';
import type { Given } from '../../provenance/source.ts';
import type { Rational } from '../../quantity/rational.ts';
import type * as ast from '../generated/ast.ts';
import { sourceOfKeyword } from '../types/place.ts';
import type { Reading } from './reading.ts';

/**
 * What the nearest folder says, and for the rest what those above it say. Made anew only where one of its parts is: rooms under the same rates
 * are told by that, and so are estimates that are kept.
 */
const kept = new WeakMap<object, { readonly parts: readonly object[]; readonly rates: Rates }[]>();
/** More folders than one set of rates is ever varied in. */
const MOST_KEPT = 24;
/** @param none what holds where nobody says any */
export function ratesTogether(labor: readonly Labor[], bids: readonly Bid[], none: Rates): Rates {
    const all = [...labor, ...bids];
    const key = labor[0] ?? bids[0] ?? none;
    const before = kept.get(key) ?? [];
    const known = before.find(({ parts }) => parts.length === all.length && parts.every((part, i) => part === all[i]));
    if (known) return known.rates;
    const rates: Rates = { labor: labor.reduce(laborBelow, undefined) ?? none.labor, bid: bids.reduce(bidBelow, undefined) ?? none.bid };
    kept.set(key, [...before.slice(1 - MOST_KEPT), { parts: all, rates }]);
    return rates;
}

/** `near` says what differs, `far` everything else. */
function laborBelow(near: Labor | undefined, far: Labor): Labor {
    if (!near) return far;
    return {
        ...far, ...said(near), day: near.day.said ? near.day : far.day,
        byLength: { ...far.byLength, ...said(near.byLength) }, byCount: { ...far.byCount, ...said(near.byCount) },
        // the first that fits counts
        ...(near.closing ?? far.closing) && { closing: [...near.closing ?? [], ...far.closing ?? []] },
    };
}
function bidBelow(near: Bid | undefined, far: Bid): Bid {
    if (!near) return far;
    const nearest = <T>(of: (bid: Bid) => readonly T[]): readonly T[] => of(near).length > 0 ? of(near) : of(far);
    return {
        ...far, ...said(near), supplies: { ...far.supplies, ...said(near.supplies) },
        allowances: nearest(bid => bid.allowances), scope: nearest(bid => bid.scope), exclusions: nearest(bid => bid.exclusions),
        terms: nearest(bid => bid.terms),
    };
}
function said<T extends object>(of: T): Partial<T> {
    return Object.fromEntries(Object.entries(of).filter(([, value]) => value !== undefined)) as Partial<T>;
}

/** @param dayAbove the working day that a folder above says, where this one says none */
export function readLabor(reading: Reading, declaration: ast.Labor | undefined, dayAbove?: Given<Rational>): Labor {
    const day = exact(reading, 'day') ?? exact(reading.empty(), 'day')!;
    reading.evaluator.minutesOfDay = (day.said ? day : dayAbove ?? day).value;
    const share = exact(reading, 'unfamiliar');
    return {
        ...declaration && { at: sourceOfKeyword(declaration, 'labor') },
        crew: crewOf(reading), rate: perHour(sum(reading, 'crew', 'rate')),
        day,
        byLength: times(reading, BY_LENGTH), byCount: times(reading, BY_COUNT),
        ...closingOf(reading), cutting: exact(reading, 'cutting'),
        firstBay: exact(reading, 'first-bay'),
        unfamiliar: share && { ...share, value: { share: share.value, of: profilesOf(reading) } },
    };
}

export function readBid(reading: Reading, declaration: ast.Bid | undefined): Bid {
    const tax = exact(reading, 'tax'), on = reading.word<'materials' | 'everything'>('tax', 'on');
    return {
        ...declaration && { at: sourceOfKeyword(declaration, 'bid') },
        overhead: exact(reading, 'overhead'), contingency: exact(reading, 'contingency'), deposit: exact(reading, 'deposit'),
        profit: profitOf(reading),
        tax: tax && on && { ...tax, value: { share: tax.value, on: on.value } },
        delivery: sum(reading, 'delivery'), minimum: sum(reading, 'minimum'), allowances: allowancesOf(reading),
        supplies: suppliesOf(reading.inner('supplies')),
        contractor: reading.text('contractor'), validDays: reading.wholeNumber('valid-days'),
        scope: texts(reading, 'scope'), exclusions: texts(reading, 'exclusion'), terms: texts(reading, 'terms'),
    };
}

/** Kept as it is said where no price has room for it: rates of a folder above take its place otherwise, and the estimate says that it lacks it. */
function profitOf(reading: Reading): Bid['profit'] {
    const profit = exact(reading, 'profit'), of = reading.word<'price' | 'cost'>('profit', 'of');
    if (!profit || !of) return undefined;
    if (of.value === 'price' && profit.value.compare(1) >= 0) {
        const { at, via, value } = profit, percent = `${Number(value.mul(100).valueOf().toFixed(4))}%`;
        reading.evaluator.raise({
            rule: 'out-of-range', at, via,
            message: `A profit of ${percent} of the price leaves nothing to cover the cost, so no price is high enough. Write less than 100% of the price, or ${percent} of cost.`,
        });
    }
    return { ...profit, value: { share: profit.value, of: of.value } };
}

function exact(reading: Reading, name: string): Given<Rational> | undefined {
    const given = reading.amount(name);
    return given && { ...given, value: given.value.exact };
}
function sum(reading: Reading, name: string, mod?: string): Given<Sum> | undefined {
    const given = reading.amount(name, mod);
    return given && { ...given, value: { amount: given.value.exact, currency: given.value.currency } };
}
/** Rates of time are exact a minute. */
function perHour(rate: Given<Sum> | undefined): Given<Sum> | undefined {
    return rate && { ...rate, value: { ...rate.value, amount: rate.value.amount.mul(60) } };
}

/** People come whole, and at least one. */
function crewOf(reading: Reading): Given<number> | undefined {
    const crew = reading.wholeNumber('crew');
    if (crew?.value !== 0) return crew;
    reading.evaluator.raise({ rule: 'out-of-range', at: crew.at, via: crew.via, message: 'Nobody puts it up: a crew is one person or more.' });
    return undefined;
}

function times<Key extends string>(reading: Reading, names: Readonly<Record<Key, string>>): Partial<Record<Key, Given<Rational>>> {
    const times: Partial<Record<Key, Given<Rational>>> = {};
    for (const [key, name] of Object.entries(names) as [Key, string][]) {
        const time = exact(reading, name);
        if (time) times[key] = time;
    }
    return times;
}

/** The last line of each way counts. */
function closingOf(reading: Reading): Pick<Labor, 'closing'> {
    const closing = reading.each('closing', (found, line) => {
        const minutes = reading.amountOf(found), word = reading.modOn(line, 'closing', 'of')?.known.value;
        return minutes && { minutes: minutes.exact, ...word?.is === 'word' && { of: word.word as ClosingWord } };
    });
    return closing.length > 0 ? { closing: closing.reverse() } : {};
}

function profilesOf(reading: Reading): Profile[] {
    return reading.modValues('unfamiliar', 'of').flatMap(({ known: { value } }) => value.is === 'profile' ? [value.profile] : []);
}

function allowancesOf(reading: Reading): Bid['allowances'] {
    return reading.each('allowance', (found, line) => {
        const value = reading.amountOf(found);
        const words = reading.modOn(line, 'allowance', 'for')?.known.value;
        return value && { amount: value.exact, currency: value.currency, ...words?.is === 'text' && { for: words.text } };
    });
}

function texts(reading: Reading, name: string): readonly Given<string>[] {
    return reading.each(name, ({ known: { value } }) => value.is === 'text' ? value.text : undefined);
}

function suppliesOf(reading: Reading | undefined): Supplies {
    if (!reading) return {};
    return said({
        screws: sum(reading, 'screws'), nails: sum(reading, 'nails'), biscuits: sum(reading, 'biscuits'),
        glue: sum(reading, 'glue'), filler: sum(reading, 'filler'), caulk: sum(reading, 'caulk'),
    });
}
