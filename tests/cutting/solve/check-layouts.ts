import { expect } from 'vitest';
import type { CuttingProblem, Layout } from '../../../src/cutting/solve/problem.ts';

/** Goes over a solution with nothing of the solver in hand, and gives what it costs. */
export function checkLayouts({ items, boards, strips: widths, shortestSection }: CuttingProblem, layouts: readonly Layout[]): number {
    const left = items.map(item => item.count);
    const used = boards.map(() => 0);
    let cost = 0;
    for (const { board, strips, sections = [], times } of layouts) {
        const kind = boards[board]!;
        expect(Number.isInteger(times) && times > 0).toBe(true);
        used[board]! += times;
        cost += kind.cost * times;
        const across = new Map<number | undefined, number>();
        let whole = 0;
        for (const { lane, picks, section } of strips) {
            let length = 0;
            expect(picks.length, 'no strip without pieces').toBeGreaterThan(0);
            for (const [item, count] of picks) {
                expect(items[item]!.lanes).toContain(lane);
                expect(Number.isInteger(count) && count > 0).toBe(true);
                length += items[item]!.size * count;
                left[item]! -= count * times;
            }
            if (lane === 0) {
                expect(section === undefined && !kind.ripOnly && whole === 0, 'cut once in the whole width').toBe(true);
                whole = length;
                continue;
            }
            expect(length, 'a strip overfilled').toBeLessThanOrEqual(section === undefined ? kind.capacity : sections[section]!);
            across.set(section, (across.get(section) ?? 0) + widths[lane - 1]!);
        }
        for (const width of across.values()) expect(width, 'strips wider than the board').toBeLessThanOrEqual(kind.across);
        if (across.has(undefined)) expect(whole + sections.length, 'ripped over the whole length').toBe(0);
        sections.forEach((size, s) => {
            expect(across.has(s), 'no section without strips').toBe(true);
            expect(size).toBeGreaterThanOrEqual(shortestSection!);
        });
        expect(whole + sections.reduce((a, b) => a + b, 0), 'a board overfilled').toBeLessThanOrEqual(kind.capacity);
    }
    expect(left, 'every piece once').toEqual(items.map(() => 0));
    boards.forEach(({ available }, k) => expect(used[k]).toBeLessThanOrEqual(available ?? Infinity));
    return cost;
}
