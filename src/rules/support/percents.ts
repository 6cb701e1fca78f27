import type { Rational } from '../../quantity/rational.ts';

/** A moisture content as a meter shows it: to a tenth of a percent. */
export function percentOf(value: number): string {
    return `${Number(value.toFixed(1))}%`;
}

/** A share as the text says it: `12.5%`. */
export function shareText(share: Rational): string {
    return `${Number(share.mul(100).valueOf().toFixed(4))}%`;
}
