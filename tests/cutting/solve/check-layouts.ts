import { expect } from 'vitest';
import type { CuttingProblem, Layout } from '../../../src/cutting/solve/problem.ts';

/** Goes over a solution with nothing of the solver in hand, and gives what it costs. */
export function checkLayouts({ items, boards, strips: widths }: CuttingProblem, layouts: readonly Layout[]): number {
    const left = items.map(item => item.count);
    const used = boards.map(() => 0);
    let cost = 0;
    for (const { board, strips, times } of layouts) {
        const kind = boards[board]!;
        expect(Number.isInteger(times) && times > 0).toBe(true);
        used[board]! += times;
        cost += kind.cost * times;
        let across = 0;
        for (const { lane, picks } of strips) {
            let length = 0;
            for (const [item, count] of picks) {
                expect(items[item]!.lanes).toContain(lane);
                expect(Number.isInteger(count) && count > 0).toBe(true);
                length += items[item]!.size * count;
                left[item]! -= count * times;
            }
            expect(length, 'a board overfilled').toBeLessThanOrEqual(kind.capacity);
            if (lane === 0) expect(strips.length === 1 && !kind.ripOnly).toBe(true);
            else across += widths[lane - 1]!;
        }
        expect(across, 'strips wider than the board').toBeLessThanOrEqual(kind.across);
    }
    expect(left, 'every piece once').toEqual(items.map(() => 0));
    boards.forEach(({ available }, k) => expect(used[k]).toBeLessThanOrEqual(available ?? Infinity));
    return cost;
}
