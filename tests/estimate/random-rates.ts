import fc from 'fast-check';
import type { Rates, Sum } from '../../src/job/rates.ts';
import type { Given } from '../../src/provenance/source.ts';
import { Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { NO_RATES } from '../support/no-rates.ts';

const at = { uri: 'file:///job/rates.coffer', range: { start: { line: 1, character: 0 }, end: { line: 1, character: 5 } } };
export function given<T>(value: T): Given<T> {
    return { value, at, said: true };
}
export function dollars(amount: number | string | Rational, currency = 'USD'): Given<Sum> {
    return given({ amount: new Rational(amount), currency });
}

const hundredths = (most: number) => fc.integer({ min: 0, max: most * 100 }).map(n => new Rational(n, 100));
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined, freq: 4 });
const money = (most: number) => maybe(hundredths(most).map(amount => dollars(amount)));
const share = (most: number) => maybe(hundredths(most).map(percent => given(percent.div(100))));
const aFoot = maybe(hundredths(9).map(minutes => given(minutes.div(TICKS_PER_FOOT))));
const each = maybe(hundredths(30).map(given));
const ounce = money(2).map(price => price && dollars(price.value.amount.div(new Rational(TICKS_PER_INCH).pow(3)!.mul(231).div(128))));

/** Rates of a shop, every one of them said or not, to the cent and the hundredth of a minute. */
export const randomRates: fc.Arbitrary<Rates> = fc.record({
    labor: fc.record({
        at: fc.constant(at), crew: maybe(fc.integer({ min: 1, max: 6 }).map(given)), rate: money(120),
        day: fc.integer({ min: 300, max: 600 }).map(n => given(new Rational(n))),
        byLength: fc.record({ blocking: aFoot, side: aFoot, cleat: aFoot, bottom: aFoot, band: aFoot, trim: aFoot }),
        byCount: fc.record({ layout: each, panel: each, spacer: each, corner: each, butt: each, splice: each, coffer: each, 'set-up': each }),
        closing: fc.array(fc.record({ minutes: hundredths(40), of: fc.constantFrom(undefined, 'slots-opened' as const) }).map(given), { maxLength: 2 }),
        firstBay: share(150), unfamiliar: maybe(hundredths(40).map(percent => given({ share: percent.div(100), of: [] }))),
    }),
    bid: fc.record({
        at: fc.constant(at), overhead: share(30), contingency: share(12), delivery: money(200), minimum: money(9000),
        profit: maybe(fc.tuple(hundredths(60), fc.constantFrom('price' as const, 'cost' as const)).map(([percent, of]) => given({ share: percent.div(100), of }))),
        tax: maybe(fc.tuple(hundredths(15), fc.constantFrom('materials' as const, 'everything' as const)).map(([percent, on]) => given({ share: percent.div(100), on }))),
        allowances: fc.array(hundredths(500).map(amount => dollars(amount)), { maxLength: 3 }),
        supplies: fc.record({ screws: money(1), nails: money(1), biscuits: money(1), glue: ounce, filler: ounce, caulk: money(9) }),
    }).map(bid => ({ ...NO_RATES.bid, ...bid })),
});
