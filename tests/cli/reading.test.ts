import { chmodSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { findFiles } from '../../src/cli/find-files.ts';
import { decode, readText } from '../../src/cli/read-text.ts';
import { wantsColor } from '../../src/cli/terminal.ts';
import { folderWith } from './folder.ts';

describe('finding files', () => {
    test('a folder is its .coffer files, all the way down, hidden folders and packages left out', async () => {
        const cwd = folderWith({ 'b.coffer': '', 'a/c.coffer': '', 'a/readme.md': '', '.git/x.coffer': '', 'node_modules/p/y.coffer': '', 'a/d/.hidden/z.coffer': '' });
        expect(await findFiles(['.'], cwd)).toEqual({ files: [join(cwd, 'a/c.coffer'), join(cwd, 'b.coffer')], folders: [cwd], problems: [], notes: [] });
    });

    test('each file once, however it is asked for', async () => {
        const cwd = folderWith({ 'a/b.coffer': '' });
        expect((await findFiles(['a', 'a/b.coffer', './a/../a/b.coffer'], cwd)).files).toEqual([join(cwd, 'a/b.coffer')]);
    });

    test('what is not there, is empty, or is something else is said, and the rest found', async () => {
        const cwd = folderWith({ 'a.coffer': '', 'notes.txt': '', 'empty/keep': '' });
        const { files, problems } = await findFiles(['a.coffer', 'gone.coffer', 'notes.txt', 'empty', 'a.coffer/below'], cwd);
        expect(files).toEqual([join(cwd, 'a.coffer')]);
        expect(problems).toEqual(['gone.coffer is not there', 'notes.txt is not a .coffer file', 'empty: there is no .coffer file in this folder', 'a.coffer/below is not there']);
    });

    test('links that lead in a circle end', async () => {
        const cwd = folderWith({ 'a/b.coffer': '' });
        symlinkSync(join(cwd, 'a'), join(cwd, 'a/again'), 'junction');
        symlinkSync(join(cwd, 'a/b.coffer'), join(cwd, 'link.coffer'));
        symlinkSync(join(cwd, 'round.coffer'), join(cwd, 'round.coffer'));
        expect((await findFiles(['.'], cwd)).files).toEqual([join(cwd, 'a/b.coffer'), join(cwd, 'link.coffer')]);
        expect((await findFiles(['round.coffer'], cwd)).problems).toEqual(['round.coffer is a link that leads in a circle']);
    });
});

describe('reading a text', () => {
    const bytes = (...values: number[]): Uint8Array => Uint8Array.from(values);
    const ascii = (text: string): Uint8Array => new TextEncoder().encode(text);

    test('a byte order mark is no part of the text, and remembered', () => {
        expect(decode(ascii('\ufeffroom'))).toEqual({ text: 'room', hasMark: true });
        expect(decode(ascii('room ½″\r\n'))).toEqual({ text: 'room ½″\r\n', hasMark: false });
        expect(decode(bytes())).toEqual({ text: '', hasMark: false });
    });

    test.each<[string, Uint8Array, string]>([
        ['UTF-16', bytes(0xff, 0xfe, 0x72, 0), 'is UTF-16 text: save it as UTF-8'], ['binary', bytes(0x7f, 0x45, 0x4c, 0x46, 0, 1), 'is not a text file'],
        ['Latin-1', bytes(0x53, 0xe4, 0x67, 0x65), 'is not UTF-8 text: save it as UTF-8'],
    ])('%s is refused in plain words', (_name, content, message) => {
        expect(() => decode(content)).toThrow(message);
    });

    test('folders, missing and closed files are refused in plain words', async () => {
        const cwd = folderWith({ 'a/b.coffer': '', 'closed.coffer': 'x' });
        await expect(readText(join(cwd, 'a'))).rejects.toThrow('is a folder');
        await expect(readText(join(cwd, 'gone'))).rejects.toThrow('is not there');
        chmodSync(join(cwd, 'closed.coffer'), 0);
        // Whoever may read everything reads this too.
        if (process.getuid?.() !== 0) await expect(readText(join(cwd, 'closed.coffer'))).rejects.toThrow('may not be opened');
    });
});

describe('color', () => {
    test.each<[Parameters<typeof wantsColor>, boolean]>([
        [['auto', true, {}], true], [['auto', false, {}], false], [['auto', true, { TERM: 'dumb' }], false], [['auto', true, { NO_COLOR: '1' }], false],
        [['auto', true, { NO_COLOR: '' }], true], [['auto', false, { FORCE_COLOR: '1' }], true], [['auto', true, { FORCE_COLOR: '0' }], false],
        [['auto', true, { FORCE_COLOR: '1', NO_COLOR: '1' }], true], [['always', false, { NO_COLOR: '1' }], true], [['never', true, { FORCE_COLOR: '1' }], false],
    ])('%j: %s', (given, wanted) => {
        expect(wantsColor(...given)).toBe(wanted);
    });
});
