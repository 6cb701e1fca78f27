import { Rational } from './rational.ts';
import type { Ticks } from './ticks.ts';

/** A currency's minor unit is a hundredth: of every currency that a job can be written in (ISO 4217), and of none is it another. */
const DIGITS = 2;
const UNITS = 10n ** BigInt(DIGITS);

/** Price of a length, exact, in the currency's major unit. */
export function costOf(perTick: Rational, ticks: Ticks): Rational {
    return perTick.mul(ticks);
}

/** Rounded to the currency's minor unit, half away from zero. Only a printed line rounds; sums are kept exact. */
export function roundMoney(amount: Rational): Rational {
    return new Rational(amount.s * roundedUnits(amount), UNITS);
}

/** `$1,234.50` for US dollars, `1,234.50 EUR` for the rest: the same on every machine, whatever its own settings. */
export function printMoney(amount: Rational, currency: string): string {
    const text = printAmount(amount).replace(/\B(?=(\d{3})+\.)/g, ',');
    if (currency !== 'USD') return `${text} ${currency}`;
    return text.startsWith('-') ? `-$${text.slice(1)}` : `$${text}`;
}

/** The figure alone, for tables and spreadsheets: `1234.50`. */
export function printAmount(amount: Rational): string {
    const units = roundedUnits(amount).toString().padStart(DIGITS + 1, '0');
    const sign = amount.s < 0n && /[1-9]/.test(units) ? '-' : '';
    return `${sign}${units.slice(0, -DIGITS)}.${units.slice(-DIGITS)}`;
}

/** Size of the amount in minor units, sign apart. */
function roundedUnits(amount: Rational): bigint {
    return (2n * amount.n * UNITS + amount.d) / (2n * amount.d);
}
