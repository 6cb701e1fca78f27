import type { Stock } from '../job/model.ts';
import { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';

/** Boards that are bought besides those that are cut, since some are expected to be unusable: all of one length. */
export interface Spare { readonly length: Ticks; readonly count: number }

/**
 * What a stock says of its defects, for so many boards bought: of n boards and a share d of bad ones, n / (1 - d) are bought, rounded
 * up; where the stock says a number of boards, at least so many more. They are as long as the longest of those that are cut, so
 * that one of them does for any other.
 * @param bought lengths of the boards that are cut and have to be bought
 */
export function spareOf({ defects, spare }: Stock, bought: readonly Ticks[]): Spare | undefined {
    if (bought.length === 0) return undefined;
    const share = defects?.value ?? new Rational(0);
    const count = Math.max(spare?.value ?? 0, share.mul(bought.length).div(new Rational(1).sub(share)).ceil().valueOf());
    return count > 0 ? { length: Math.max(...bought), count } : undefined;
}
