import { describe, expect, test } from 'vitest';
import { MOST_FILES, MOST_READ } from '../../src/language/workspace/most-files.ts';
import { some } from '../support/full.ts';
import { folderWith } from './folder.ts';
import { cofferwright } from './world.ts';

describe('more files than are read at once', () => {
    const folder = (count: number) => folderWith(Object.fromEntries(Array.from({ length: count }, (_, i) => [`shop/f${i}.coffer`, i === 0 ? 'edition 1\nlet = =\n' : ''])));

    test.each(some(['check', 'format', 'cut-list'], 3))('are refused: %s', async command => {
        expect(await cofferwright(folder(MOST_FILES + 1), [command])).toEqual({
            code: 2, out: '', err: 'cofferwright: There are more than 1000 files in what was asked for, and that is the limit: name the folders of some houses\n',
        });
    });

    test('reached by imports are told at the lines that name them', async () => {
        const uses = (from: number, to: number): string => Array.from({ length: to - from }, (_, i) => `from "./f${from + i}" use a\n`).join('');
        const files = Object.fromEntries(Array.from({ length: MOST_READ + 3 }, (_, i) => [`f${i}.coffer`, 'let a = 1']));
        // no file may take from so many
        const half = MOST_READ / 2, takers = { 'one.coffer': uses(0, half), 'two.coffer': uses(half, MOST_READ), 'three.coffer': uses(MOST_READ, MOST_READ + 5) };
        const { code, out } = await cofferwright(folderWith({ ...files, ...takers }), ['check', ...Object.keys(takers), '--format', 'concise']);
        expect(code).toBe(1);
        const told = out.split('\n').filter(line => line.includes('missing-import'));
        // beside these files and the library; the last two are not there at all
        expect(told).toHaveLength(9);
        expect(told.filter(line => line.includes('This file is not read: 2000 files is the limit. Work on fewer houses at a time.'))).toHaveLength(7);
        expect(told.filter(line => line.includes('There is no file'))).toHaveLength(2);
    });
});
