import { Rational } from '../quantity/rational.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';

/**
 * Board measure: thickness in inches x width in inches x length in feet / 12, all nominal; what is thinner than an inch
 * counts as an inch. Source: Griffith, Carpentry (1916), the chapter on board measure.
 */

/** One board foot, 1" x 12" x 12", in cubic ticks. */
export const BOARD_FOOT: Rational = new Rational(TICKS_PER_INCH).mul(TICKS_PER_FOOT).mul(TICKS_PER_FOOT);

/** The section that a board is sold by, in square ticks: the nominal thickness, at least an inch, x the nominal width, both in inches. */
export function nominalSection(thickness: Rational, width: Rational): Rational {
    const counted = thickness.compare(1) < 0 ? new Rational(1) : thickness;
    return counted.mul(width).mul(TICKS_PER_INCH).mul(TICKS_PER_INCH);
}

/** Board feet in a board of that nominal thickness and width, in inches. */
export function boardFeet(thickness: Rational, width: Rational, length: Ticks): Rational {
    return nominalSection(thickness, width).mul(length).div(BOARD_FOOT);
}
