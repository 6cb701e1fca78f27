import { Rational } from './rational.ts';
import type { Ticks } from './ticks.ts';

/** Digits after the point of each currency a job can be written in (ISO 4217); none of them is without. */
const MINOR_DIGITS: Readonly<Record<string, number>> =
    { USD: 2, CAD: 2, EUR: 2, GBP: 2, AUD: 2, NZD: 2, CHF: 2, SEK: 2, NOK: 2, DKK: 2 };

/** Price of a length, exact, in the currency's major unit. */
export function costOf(perTick: Rational, ticks: Ticks): Rational {
    return perTick.mul(ticks);
}

/** Rounded to the currency's minor unit, half away from zero. Only a printed line rounds; sums are kept exact. */
export function roundMoney(amount: Rational, currency: string): Rational {
    const units = 10n ** BigInt(digitsOf(currency));
    return new Rational(amount.s * roundedUnits(amount, units), units);
}

/** `$1,234.50` for US dollars, `1,234.50 EUR` for the rest: the same on every machine, whatever its own settings. */
export function printMoney(amount: Rational, currency: string): string {
    const text = printAmount(amount, currency).replace(/\B(?=(\d{3})+(?!\d)(?=\.))/g, ',');
    if (currency !== 'USD') return `${text} ${currency}`;
    return text.startsWith('-') ? `-$${text.slice(1)}` : `$${text}`;
}

/** The figure alone, for tables and spreadsheets: `1234.50`. */
export function printAmount(amount: Rational, currency: string): string {
    const digits = digitsOf(currency);
    const units = roundedUnits(amount, 10n ** BigInt(digits)).toString().padStart(digits + 1, '0');
    const sign = amount.s < 0n && /[1-9]/.test(units) ? '-' : '';
    return `${sign}${units.slice(0, -digits)}.${units.slice(-digits)}`;
}

function digitsOf(currency: string): number {
    return MINOR_DIGITS[currency] ?? 2;
}

/** Size of the amount in minor units, sign apart. */
function roundedUnits(amount: Rational, units: bigint): bigint {
    return (2n * amount.n * units + amount.d) / (2n * amount.d);
}
