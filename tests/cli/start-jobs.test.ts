import { expect, test } from 'vitest';
import { printedBy } from '../../src/build/start-jobs.ts';
import type { BoardProver } from '../../src/cutting/board-prover.ts';
import { folderWith } from './folder.ts';
import { house, tooWide } from './house.ts';
import { proverHere } from './prover.ts';
import { cofferwright } from './world.ts';

const commands = [['check'], ['check', '--format', 'json'], ['cut-list'], ['boards'], ['saw'], ['order', '--format', 'csv'], ['estimate'], ['boards', '--format', 'json']];

test.each([['a house', house], ['one with an error', tooWide]])('the commands of a start print what each prints by itself, and boards are looked for once: %s', async (_, texts) => {
    const cwd = folderWith(texts);
    let searches = 0;
    const prover: BoardProver = { prove: (...asked) => { searches++; return proverHere.prove(...asked); } };
    const printed = await printedBy(commands, { cwd, boards: prover, first: 3 });
    const alone = [];
    for (const argv of commands) {
        const { out, err } = await cofferwright(cwd, argv);
        alone.push(out || err);
    }
    expect(printed).toEqual(alone);
    expect(searches).toBe(1);
});

test('a command that is called wrongly ends the start', async () => {
    await expect(printedBy([['check'], ['boards', '--room', 'attic']], { cwd: folderWith(house), boards: proverHere, first: 1 })).rejects.toThrow(/ended with exit code 2\n.*attic/);
});
