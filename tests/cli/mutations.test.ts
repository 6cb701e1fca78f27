import fc from 'fast-check';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { strictSchema } from '../report/samples.ts';
import { house } from './house.ts';
import { cofferwright } from './world.ts';
import { runs } from '../support/full.ts';

/**
 * Real files, spoiled the way files get spoiled: a line lost or doubled, a word gone, a figure absurd, the rest cut off,
 * rubbish pasted in. Whatever is left, every command ends in good order, and its lists are whole.
 */
const cwd = mkdtempSync(join(tmpdir(), 'cofferwright-mutations-'));
afterAll(() => rmSync(cwd, { recursive: true, force: true }));

type Spoil = (text: string) => string;
const lines = (change: (all: string[], at: number) => void): fc.Arbitrary<Spoil> => fc.nat(200).map(n => text => {
    const all = text.split('\n');
    change(all, n % all.length);
    return all.join('\n');
});
const word = (replacement: fc.Arbitrary<string>): fc.Arbitrary<Spoil> => fc.tuple(fc.nat(200), replacement).map(([n, by]) => text => {
    const words = [...text.matchAll(/\S+/g)];
    const { 0: old, index } = words[n % words.length]!;
    return text.slice(0, index) + by + text.slice(index + old.length);
});
const spoil: fc.Arbitrary<Spoil> = fc.oneof(
    lines((all, at) => all.splice(at, 1)), lines((all, at) => all.splice(at, 0, all[at]!)), lines((all, at) => all.splice(at)),
    word(fc.constantFrom('', '0"', '-3"', '1e99', '99999999999999999999\'', '1/0"', '1000000', '0', '½″', '{', '}', '"', '//', '/*', 'per', 'x', '1 mm', 'den', 'box', '\u0000', '￿')),
    fc.tuple(fc.nat(2000), fc.string({ unit: 'binary', maxLength: 8 })).map(([at, rubbish]) => (text: string) => text.slice(0, at % text.length) + rubbish + text.slice(at % text.length)),
);

describe('spoiled files', () => {
    test('every command ends in good order, and no piece is lost on the way to a board', async () => {
        const validCutList = strictSchema('cut-list');
        const validBoards = strictSchema('boards');
        const validFindings = strictSchema('findings');
        const file = fc.constantFrom(...Object.keys(house) as (keyof typeof house)[]);
        await fc.assert(fc.asyncProperty(fc.array(fc.tuple(file, spoil), { minLength: 1, maxLength: 3 }), async changes => {
            const files: Record<string, string> = { ...house };
            for (const [name, change] of changes) files[name] = change(files[name]!);
            for (const [name, text] of Object.entries(files)) writeFileSync(join(cwd, name), text);

            const checked = await cofferwright(cwd, ['check', '--format', 'json']);
            expect([0, 1, 2]).toContain(checked.code);
            expect(validFindings(JSON.parse(checked.out)), JSON.stringify(validFindings.errors)).toBe(true);
            expect(checked.out).not.toContain('"internal-error"');
            await cofferwright(cwd, ['check', '--color', 'always']);

            const list = await cofferwright(cwd, ['cut-list', '--format', 'json']);
            const boards = await cofferwright(cwd, ['boards', '--format', 'json']);
            const { pieces } = JSON.parse(list.out) as { pieces: { id: string }[] };
            const { houses } = JSON.parse(boards.out) as { houses: {
                stocks: { boards: { strips: { pieces: { piece: string }[] }[] }[] }[];
                unplaced: { piece: string }[];
            }[] };
            expect(validCutList(JSON.parse(list.out)), JSON.stringify(validCutList.errors)).toBe(true);
            expect(validBoards(JSON.parse(boards.out)), JSON.stringify(validBoards.errors)).toBe(true);
            const planned = houses.flatMap(h =>
                [...h.stocks.flatMap(s => s.boards).flatMap(b => b.strips).flatMap(s => s.pieces.map(p => p.piece)), ...h.unplaced.map(u => u.piece)]);
            expect(planned.sort()).toEqual(pieces.map(p => p.id).sort());
        }), { seed: 1717, numRuns: runs(20) });
    });
});
