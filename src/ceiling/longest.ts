import type { JobSettings, Stock } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';

/**
 * The longest piece to be had of a stock: the longest length the yard sells, or the longest that may come into the
 * house, less what is cut off a board's ends. Without end where neither is known.
 */
export function longestPiece(stock: Stock | undefined, job: JobSettings): Ticks {
    const sold = stock && stock.lengths.length > 0 ? Math.max(...stock.lengths.map(length => length.value)) : Infinity;
    return Math.min(sold, job.longestBoard?.value ?? Infinity) - Math.max(0, job.endTrim.value);
}
