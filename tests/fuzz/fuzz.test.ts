import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { runs } from '../support/full.ts';
import { formats } from './look.ts';
import { inputs, textOf } from './mutations.ts';
import { fuzz } from './run.ts';
import { corpusOf } from './texts.ts';

// A few of what `npm run fuzz` does by the thousand, always the same ones.
const root = fileURLToPath(new URL('../..', import.meta.url));
const corpus = corpusOf(root);

const COUNT = runs(40, 20);

test('mutilated texts through the house, and sessions with the server', async () => {
    const said: string[] = [];
    const outcome = await fuzz({ root, count: COUNT, seed: 5, wantedSessions: COUNT / 20, timed: false, say: words => { said.push(words); } });
    expect(said).toEqual([]);
    expect(outcome).toMatchObject({ inputs: COUNT, sessions: COUNT / 20, failures: 0 });
});

test('mutilated texts are formatted in one go, or left alone', () => {
    fc.assert(fc.property(inputs(corpus.seeds.length), input => formats(textOf(input, corpus.seeds))), { seed: 5, numRuns: runs(250, 80) });
});
