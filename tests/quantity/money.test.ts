import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { costOf, printAmount, printMoney, roundMoney } from '../../src/quantity/money.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import { TICKS_PER_FOOT } from '../../src/quantity/ticks.ts';
import { runs } from '../support/full.ts';

describe('money', () => {
    test.each<[string, string, string]>([
        ['0', 'USD', '$0.00'], ['1234.5', 'USD', '$1,234.50'], ['-0.125', 'USD', '-$0.13'], ['0.125', 'EUR', '0.13 EUR'], ['1234567.005', 'SEK', '1,234,567.01 SEK'],
        ['-0.001', 'USD', '$0.00'], ['999.995', 'CHF', '1,000.00 CHF'], ['1/3', 'GBP', '0.33 GBP'], ['100', 'USD', '$100.00'],
    ])('%s %s', (amount, currency, printed) => {
        expect(printMoney(new Rational(amount), currency)).toBe(printed);
    });

    test('2.85 a foot over 218 1/2" is exact until it is printed', () => {
        const cost = costOf(new Rational('2.85').div(TICKS_PER_FOOT), inches('218 1/2'));
        expect(cost.toFraction()).toBe('8303/160');
        expect(printMoney(cost, 'USD')).toBe('$51.89');
    });

    test('the printed figure is the nearest cent, half away from zero', () => {
        const amount = fc.tuple(fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n }), fc.bigInt({ min: 1n, max: 10n ** 6n })).map(([n, d]) => new Rational(n, d));
        fc.assert(fc.property(amount, a => {
            const rounded = roundMoney(a);
            expect(new Rational(printAmount(a)).equals(rounded)).toBe(true);
            const off = rounded.sub(a).abs();
            expect(off.lte(new Rational(1, 200))).toBe(true);
            if (off.equals(new Rational(1, 200))) expect(rounded.abs().gt(a.abs())).toBe(true);
        }), { seed: 7, numRuns: runs(1000) });
    });
});
