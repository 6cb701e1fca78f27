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
    // a message comes as this answer does: Node has to look for it
    const heard = new Promise<number>(resolve => { stat('.', () => { resolve(turns.length); }); });
    await Promise.all(['a', 'b', 'c'].map(worker));
    expect(await heard).toBeLessThan(90);
    expect(turns.join('')).toBe('abc'.repeat(60));
});
