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

test('what waits for several rounds of the loop, as a question and its answer do, is through before the next piece of work', async () => {
    const turns: string[] = [];
    const working = (async () => {
        for (let i = 0; i < 12; i++) {
            turns.push('work');
            await breath();
        }
    })();
    // read, handled, its turn to be written, written
    const round = (): Promise<void> => new Promise(resolve => { setImmediate(resolve); });
    for (let question = 0; question < 3; question++) {
        for (let i = 0; i < 4; i++) await round();
        turns.push('answer');
    }
    await working;
    expect(turns.slice(0, turns.lastIndexOf('answer')).join(' ')).not.toMatch(/work work work/);
    expect(turns.filter(turn => turn === 'work')).toHaveLength(12);
});
