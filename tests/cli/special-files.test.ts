import { mkdirSync, symlinkSync } from 'node:fs';
import { createServer, type Server } from 'node:net';
import { join } from 'node:path';
import { describe, expect, onTestFinished, test } from 'vitest';
import { hasPipes, makePipe } from '../support/pipe.ts';
import { folderWith } from './folder.ts';
import { house } from './house.ts';
import { cofferwright } from './world.ts';

// what is no file, by the name that it has in the folder, with the words that tell of it
const odd = {
    'pipe.coffer': 'is not a file, but a pipe', 'socket.coffer': 'is not a file, but a socket', 'device.coffer': 'is not a file, but a device', 'round.coffer': 'is a link that leads in a circle',
} as const;

const there = Object.entries(odd).filter(([name]) => hasPipes || name !== 'pipe.coffer');

async function oddFolder(): Promise<string> {
    const cwd = folderWith({ ...house, '../away/attic.coffer': 'edition 1\n' });
    if (hasPipes) makePipe(join(cwd, 'pipe.coffer'));
    const server = await new Promise<Server>(done => { const one = createServer().listen(join(cwd, 'socket.coffer'), () => done(one)); });
    onTestFinished(() => { server.close(); });
    symlinkSync('/dev/zero', join(cwd, 'device.coffer'));
    symlinkSync('round.coffer', join(cwd, 'round.coffer'));
    return cwd;
}

describe.skipIf(process.platform === 'win32')('what is no file', () => {
    test.each([['check'], ['format', '--check'], ['cut-list'], ['draw']])('is told below a folder, and the rest is done: %s', async (...argv) => {
        const cwd = await oddFolder();
        mkdirSync(join(cwd, 'empty.coffer'));
        symlinkSync('../away', join(cwd, 'link.coffer'));
        symlinkSync('nowhere', join(cwd, 'broken.coffer'));
        const { code, err } = await cofferwright(cwd, argv);
        expect(code).toBe(2);
        for (const [name, words] of Object.entries({
            ...Object.fromEntries(there), 'empty.coffer': 'is a folder, and no .coffer file is in it', 'link.coffer': 'is a link to a folder', 'broken.coffer': 'is a link to something that is not there',
        })) expect(err.split('\n')).toContain(`${name} ${words}`);
    });

    for (const [name, words] of Object.entries(odd)) test.skipIf(!there.some(([other]) => other === name))(`is refused where it is named: ${name}`, async () => {
        const cwd = await oddFolder();
        for (const command of ['check', 'format', 'boards', 'bid']) expect(await cofferwright(cwd, [command, name])).toMatchObject({ code: 2, out: '', err: expect.stringContaining(`${name} ${words}\n`) as unknown });
    });

    test('a device without the ending is none of ours', async () => {
        expect(await cofferwright(folderWith({}), ['check', '/dev/zero'])).toMatchObject({ code: 2, err: expect.stringContaining('/dev/zero is not a .coffer file\n') as unknown });
    });

    test('a link that leads out and is reached by an import alone is told, once, be it the link of a file or of its folder', async () => {
        const away = folderWith({ 'trim/strip.coffer': 'edition 1\n', 'attic.coffer': 'edition 1\n' });
        const cwd = folderWith({ ...house, 'in/a.coffer': 'edition 1\nfrom "../l/attic" use a\nfrom "../l/strip" use b\n' });
        mkdirSync(join(cwd, 'l'));
        symlinkSync(join(away, 'attic.coffer'), join(cwd, 'l/attic.coffer'));
        symlinkSync(join(away, 'trim'), join(cwd, 'm'));
        symlinkSync('../m/strip.coffer', join(cwd, 'l/strip.coffer'));
        const { err } = await cofferwright(cwd, ['check', 'in']);
        const told = (name: string, target: string): string => `l/${name}.coffer is behind a link to ${join(away, target)}, outside of the folder: what is read is there`;
        expect(err.split('\n').filter(line => line.includes('behind a link'))).toEqual([told('attic', 'attic.coffer'), told('strip', 'trim/strip.coffer')]);
    });

    test('a link to a file outside of the folder is followed, and told; one within is not worth a word', async () => {
        const cwd = folderWith({ ...house, '../away/attic.coffer': 'edition 1\n' });
        symlinkSync('../away/attic.coffer', join(cwd, 'attic.coffer'));
        symlinkSync('den.coffer', join(cwd, 'same.coffer'));
        const told = `attic.coffer is a link to ${join(cwd, '../away/attic.coffer')}, outside of the folder: what is read is there\n`;
        const all = await cofferwright(cwd, ['check']);
        expect(all.err.startsWith(told)).toBe(true);
        expect(all.err).not.toContain('same.coffer is a link');
        expect(await cofferwright(cwd, ['check', 'attic.coffer'])).toEqual({ code: 0, out: '', err: `${told}Nothing found in 2 files\n` });
    });

    test('a table that is a link in a circle, or to nothing, is told as that', async () => {
        const room = (name: string): string => `edition 1\nroom ${name} {\n  wall north 10'\n  wall east 8'\n  survey { readings "./${name}.csv" in millimeters }\n}\n`;
        const cwd = folderWith({ 'ring.coffer': room('ring'), 'none.coffer': room('none') });
        symlinkSync('ring.csv', join(cwd, 'ring.csv'));
        symlinkSync('nothing.csv', join(cwd, 'none.csv'));
        const { out } = await cofferwright(cwd, ['check', '--format', 'concise']);
        expect(out.match(/`\.\/\w+\.csv`[^.]*/g)).toEqual(['`./none.csv` is a link to something that is not there', '`./ring.csv` is a link to something that is not there']);
    });

    test('a link in a folder that is asked about from elsewhere stays within it', async () => {
        const cwd = folderWith({ 'here/keep': '', '../away/attic.coffer': 'edition 1\n' });
        symlinkSync('attic.coffer', join(cwd, '../away/second.coffer'));
        expect((await cofferwright(cwd, ['check', '../away'])).err).not.toContain('is a link');
    });
});

describe('a file that was not read', () => {
    const files = { 'good.coffer': 'edition 1\n', 'bad.coffer': Buffer.from('edition 1\n', 'utf16le') };

    test('is not among those that were checked, in no format', async () => {
        const cwd = folderWith(files);
        const json = await cofferwright(cwd, ['check', '--format', 'json']), sarif = await cofferwright(cwd, ['check', '--format', 'sarif']);
        expect([json.code, sarif.code]).toEqual([2, 2]);
        expect((JSON.parse(json.out) as { files: string[] }).files).toEqual(['good.coffer']);
        expect(JSON.parse(sarif.out)).toMatchObject({ runs: [{ invocations: [{ executionSuccessful: false }] }] });
        expect((await cofferwright(cwd, ['check'])).err).not.toContain('Nothing found in 2');
        expect((await cofferwright(cwd, ['check', 'bad.coffer'])).err).not.toContain('Nothing found');
    });

    test('standing in for standard input is a usage error', async () => {
        const { code, err } = await cofferwright(folderWith({}), ['check', '-'], { readStdin: () => Promise.reject(Object.assign(new Error('EISDIR'), { code: 'EISDIR' })) });
        expect({ code, err }).toEqual({ code: 2, err: 'cofferwright: Standard input is a folder\n' });
    });
});
