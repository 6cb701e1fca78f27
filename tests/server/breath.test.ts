import { stat } from 'node:fs';
import { expect, test } from 'vitest';
import { breath } from '../../src/server/breath.ts';

/** So much work that a timer of nothing is due when it is done. */
function work(): void {
    const end = performance.now() + 4;
    while (performance.now() < end) { /* on */ }
}

test('what comes while several have work to do, part by part, is heard between two parts; and each gets its turn', async () => {
    const turns: string[] = [];
    const worker = async (name: string): Promise<void> => {
        for (let i = 0; i < 60; i++) {
            work();
            turns.push(name);
            await breath();
        }
    };
    // a message comes as these answers do: Node has to look for them
    let longest = 0, over = false;
    const ask = (): void => {
        const from = turns.length;
        stat('.', () => {
            longest = Math.max(longest, turns.length - from);
            if (!over) ask();
        });
    };
    ask();
    await Promise.all(['a', 'b', 'c'].map(worker));
    over = true;
    // with timers of their own it is all 180
    expect(longest).toBeLessThan(60);
    expect(turns.join('')).toBe('abc'.repeat(60));
});
