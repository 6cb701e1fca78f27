import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { runs } from '../support/full.ts';
import { fuzz } from './run.ts';

// A few of what `npm run fuzz` does by the hundred thousand, always the same ones.
const root = fileURLToPath(new URL('../..', import.meta.url));

test('mutilated texts through the house, and sessions with the server', async () => {
    const said: string[] = [], COUNT = runs(40, 10), sessions = runs(2, 1);
    const outcome = await fuzz({ root, count: COUNT, seed: 5, sessions, ceilings: 0, oneLongIn: 1, timed: false, say: words => { said.push(words); } });
    expect(said).toEqual([]);
    expect(outcome).toMatchObject({ long: COUNT, short: 0, sessions, failures: 0 });
});

test('very many short ones', async () => {
    const said: string[] = [], COUNT = runs(9000);
    const outcome = await fuzz({ root, count: COUNT, seed: 5, sessions: 0, ceilings: 0, oneLongIn: COUNT, timed: false, say: words => { said.push(words); } });
    expect(said).toEqual([]);
    expect(outcome).toMatchObject({ long: runs(9, 1), short: COUNT - runs(9, 1), failures: 0 });
});
