import type { JobSettings, Stock } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';

/**
 * The longest piece to be had of a stock: the longest length the yard sells that may come into the house, less what is cut off
 * a board's ends, and no longer than what gets up the stair. Without end where nothing of that is known; less than nothing, without end, where every
 * length sold is too long to come in.
 */
export function longestPiece(stock: Stock | undefined, job: JobSettings): Ticks {
    const most = job.longestBoard?.value ?? Infinity;
    const sold = stock?.lengths.map(length => length.value) ?? [];
    const longest = sold.length === 0 ? most : Math.max(...sold.filter(length => length <= most));
    return Math.min(longest - Math.max(0, job.endTrim.value), job.longestPiece?.value ?? Infinity);
}
