import Fraction from 'fraction.js';
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from './ticks.ts';

/** Exact fractions of any size: what expressions are computed in, and money, areas and products of lengths. */
export { Fraction as Rational };

/**
 * The nearest whole number of ticks, half a tick away from zero: the one place where a computed length is rounded on
 * its way into a job. Past 2^53 ticks (eight million miles) it is only as exact as a plain number.
 */
export function toTicks(f: Fraction): Ticks {
    const rounded = (2n * f.n + f.d) / (2n * f.d);
    return Number(f.s * rounded);
}

/** Inches as ticks, from a number or from text such as `5 1/2` or `0.7187`. Throws where the text is no number. */
export function inches(n: number | string): Ticks {
    return toTicks(new Fraction(n).mul(TICKS_PER_INCH));
}

/** Millimeters as ticks. Throws where the text is no number. */
export function millimeters(n: number | string): Ticks {
    return toTicks(new Fraction(n).mul(TICKS_PER_MM));
}
