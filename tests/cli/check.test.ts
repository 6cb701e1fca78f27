import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import { chmodSync, mkdirSync, readFileSync, rmdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Log } from 'sarif';
import { describe, expect, test } from 'vitest';
import { piecesOverlap } from '../../src/rules/pieces-overlap.ts';
import { strictSchema } from '../report/samples.ts';
import { folderWith } from './folder.ts';
import { den, house, tooWide } from './house.ts';
import { cofferwright } from './world.ts';

const broken = { 'yard.coffer': 'edition 1\nstock oak-1x6 {\n  size oops\n}\n' };

describe('check', () => {
    test('a sound house: nothing on standard output, 0', async () => {
        const ran = await cofferwright(folderWith(house), ['check']);
        expect(ran).toEqual({ code: 0, out: '', err: 'Nothing found in 4 files\n' });
    });

    test('an error: place, words, line and marks, 1', async () => {
        const { code, out, err } = await cofferwright(folderWith(tooWide), ['check', '.']);
        expect(code).toBe(1);
        expect(out).toMatch(/^box\.coffer:\d+:\d+ {2}error {2}bottom-wont-fit\n/);
        expect(out).toMatch(/\n +\d+ \| .*\n +\| +\^+\n/);
        expect(err).toMatch(/^1 error.* in 4 files/);
    });

    test('one file is checked with everything it is made from, and with the job it stands under', async () => {
        const cwd = folderWith({ ...Object.fromEntries(Object.entries(tooWide).map(([name, text]) => [`rooms/${name}`, text])), 'other/plain.coffer': 'edition 1\n' });
        const { code, out } = await cofferwright(cwd, ['check', 'rooms/den.coffer', '--format', 'json']);
        expect(code).toBe(1);
        expect((JSON.parse(out) as { files: string[] }).files).toEqual(['rooms/box.coffer', 'rooms/den.coffer', 'rooms/job.coffer', 'rooms/yard.coffer']);
    });

    test('a house is opened from anywhere: what it imports lies in its own repository, and a job above that is none of it', async () => {
        const cwd = folderWith({
            'other/notes.coffer': 'edition 1\n', 'job.coffer': 'edition 1\njob "Not ours" { longest-board 1\' }\n',
            'maple/.git/HEAD': '', 'maple/rooms/den.coffer': house['den.coffer'].replaceAll('from "', 'from "../'), 'maple/box.coffer': house['box.coffer'], 'maple/yard.coffer': house['yard.coffer'],
        });
        for (const [from, asked] of [['other', '../maple'], ['.', 'maple'], ['maple/rooms', '.'], ['other', '../maple/rooms/den.coffer'], ['maple', '.']] as const)
            expect((await cofferwright(join(cwd, from), ['check', asked])).code).toBe(0);
    });

    test('outside of a repository the folder that is asked for belongs together', async () => {
        const cwd = folderWith({ 'maple/rooms/den.coffer': house['den.coffer'].replaceAll('from "', 'from "../'), 'maple/box.coffer': house['box.coffer'], 'maple/yard.coffer': house['yard.coffer'], 'other/notes.coffer': '' });
        rmSync(join(cwd, '../.git'), { recursive: true });
        expect(await cofferwright(join(cwd, 'other'), ['check', '../maple'])).toMatchObject({ code: 0 });
        expect(await cofferwright(join(cwd, 'maple'), ['check', 'rooms/den.coffer'])).toMatchObject({ code: 0 });
        expect((await cofferwright(join(cwd, 'other'), ['check', '../maple/rooms', '--format', 'concise'])).out).toContain('import-outside-workspace');
    });

    test('what takes longer to find is among it', async () => {
        const { code, out } = await cofferwright(folderWith({ 'hall.coffer': piecesOverlap.wrong }), ['check', '--format', 'concise']);
        expect(code).toBe(1);
        expect(out).toMatch(/^hall\.coffer:\d+:\d+: error: .* \[pieces-overlap\]$/m);
        expect((await cofferwright(folderWith({ 'hall.coffer': piecesOverlap.right }), ['check', '--format', 'concise'])).out).not.toContain('[pieces-overlap]');
    });

    test('hints alone are clean; what fails can be chosen', async () => {
        const hints = { ...house, 'den.coffer': den.replace('grid {', 'grid {  // allow rounding-left-over: behind the bookcase') };
        const cwd = folderWith(hints);
        const ran = await cofferwright(cwd, ['check', '--format', 'concise']);
        expect(ran.out).toMatch(/^den\.coffer:\d+:\d+: hint: .* \[allow-unused\]\n$/);
        expect(ran.code).toBe(0);
        expect((await cofferwright(cwd, ['check', '--fail-on', 'hint'])).code).toBe(1);
        expect((await cofferwright(folderWith(tooWide), ['check', '--exit-zero'])).code).toBe(0);
    });

    test('JSON as its schema says', async () => {
        const { out } = await cofferwright(folderWith(tooWide), ['check', '--format', 'json']);
        const valid = strictSchema('findings');
        expect(valid(JSON.parse(out)), JSON.stringify(valid.errors)).toBe(true);
        expect(JSON.parse(out)).toMatchObject({ version: 1, summary: { errors: 1 }, findings: [{ rule: 'bottom-wont-fit', file: 'box.coffer' }] });
    });

    test('SARIF as its official schema says, with the page of the rule', async () => {
        const { out } = await cofferwright(folderWith(tooWide), ['check', '--format', 'sarif']);
        const { $schema: _, id: __, ...schema } = JSON.parse(readFileSync(new URL('../data/sarif/sarif-schema-2.1.0.json', import.meta.url), 'utf8')) as Record<string, unknown>;
        const ajv = new Ajv({ strict: false });
        addFormats.default(ajv);
        const log = JSON.parse(out) as Log;
        expect(ajv.validate(schema, log), JSON.stringify(ajv.errors)).toBe(true);
        expect(log.runs[0]!.results![0]!.ruleId).toBe('bottom-wont-fit');
        expect(log.runs[0]!.tool.driver.rules![0]!.help!.text).toContain('channel');
    });

    test('workflow commands', async () => {
        const { out } = await cofferwright(folderWith(tooWide), ['check', '--format', 'github']);
        expect(out).toMatch(/^::error file=box\.coffer,line=\d+,endLine=\d+,col=\d+,endColumn=\d+,title=bottom-wont-fit::/);
        const hostile = await cofferwright(folderWith({ 'a.coffer': 'edition 1\nfrom "\u001b[31m\u202ex\u0007%" use y\n' }), ['check', '--format', 'github']);
        expect(hostile.out).toContain('missing-import');
        const percent = await cofferwright(folderWith({ 'a.coffer': 'edition 1\nfrom "x%" use y\n' }), ['check', '--format', 'github']);
        expect(percent.out).toContain('`x%25`');
        expect(hostile.out).not.toMatch(/[\u001b\u0007\u202e]/);
    });

    test('color on a terminal only, and never where it is not wanted', async () => {
        const cwd = folderWith(tooWide);
        const painted = async (argv: string[], env: NodeJS.ProcessEnv, isTerminal: boolean): Promise<boolean> =>
            (await cofferwright(cwd, ['check', ...argv], { env, isTerminal })).out.includes('\u001b[');
        expect(await painted([], {}, false)).toBe(false);
        expect(await painted([], {}, true)).toBe(true);
        expect(await painted([], { NO_COLOR: '1' }, true)).toBe(false);
        expect(await painted([], { FORCE_COLOR: '1' }, false)).toBe(true);
        expect(await painted(['--color', 'never'], { FORCE_COLOR: '1' }, true)).toBe(false);
    });

    test('on a terminal it shows how far it is, and wipes that out again', async () => {
        const { err } = await cofferwright(folderWith(house), ['check'], { isTerminal: true });
        expect(err).toMatch(/^Reading 4 files \.\.\.\r\u001b\[2KChecking 1 of 4 files \.\.\.\r\u001b\[2K/);
        expect(err.endsWith('\r\u001b[2KNothing found in 4 files\n')).toBe(true);
        expect((await cofferwright(folderWith(house), ['check'])).err).toBe('Nothing found in 4 files\n');
    });

    test('the order of the files that were asked for changes nothing', async () => {
        const cwd = folderWith({ ...tooWide, ...broken, 'a/b.coffer': 'stock\n' });
        const one = await cofferwright(cwd, ['check', 'a', 'box.coffer', 'den.coffer', 'yard.coffer']);
        const other = await cofferwright(cwd, ['check', 'yard.coffer', 'den.coffer', 'a/b.coffer', 'box.coffer', 'box.coffer']);
        expect(one.out).toBe(other.out);
        expect(one.code).toBe(1);
    });
});

describe('standard input', () => {
    test('stands for the file it belongs to', async () => {
        const cwd = folderWith(house);
        const ran = await cofferwright(cwd, ['check', '--stdin-file-path', 'box.coffer', '--format', 'concise'], { stdin: tooWide['box.coffer'] });
        expect(ran.out).toContain('box.coffer:');
        expect(ran.code).toBe(1);
        expect(readFileSync(join(cwd, 'box.coffer'), 'utf8')).toBe(house['box.coffer']);
    });

    test('a file that imports it sees the text, not the disk', async () => {
        const cwd = folderWith({ ...house, 'yard.coffer': 'nonsense' });
        expect((await cofferwright(cwd, ['check', '--stdin-file-path', 'yard.coffer'], { stdin: house['yard.coffer'] })).code).toBe(0);
    });

    test('- alone', async () => {
        const ran = await cofferwright(folderWith({}), ['check', '-', '--format', 'concise'], { stdin: broken['yard.coffer'] });
        expect(ran.out).toMatch(/^<stdin>:3:\d+: error: /);
        expect(ran.code).toBe(1);
    });

    test('must be text', async () => {
        const ran = await cofferwright(folderWith({}), ['check', '-'], { stdin: Uint8Array.from([0, 1, 2]) });
        expect(ran).toEqual({ code: 2, out: '', err: 'cofferwright: Standard input is not a text file\n' });
    });
});

describe('files that are not what they should be', () => {
    test.each<[string[], string]>([
        [[''], 'One of the names is empty'], [['gone.coffer'], 'gone.coffer is not there'], [['notes.txt'], 'notes.txt is not a .coffer file'], [['empty'], 'empty: there is no .coffer file in this folder'],
        [['--stdin-file-path', 'a.txt'], 'a.txt is not a .coffer file'],
        [['--stdin-file-path', 'a.coffer', 'b.coffer'], '--stdin-file-path says where standard input belongs; name no other files with it'],
    ])('%j: 2', async (argv, message) => {
        const ran = await cofferwright(folderWith({ 'notes.txt': '', 'empty/x': '' }), ['check', ...argv]);
        expect(ran.err).toContain(message);
        expect(ran.code).toBe(2);
    });

    test('an empty folder', async () => {
        expect((await cofferwright(folderWith({ 'keep': '' }), ['check'])).code).toBe(2);
    });

    test('a binary file among others is said, and the others are checked', async () => {
        const ran = await cofferwright(folderWith({ ...tooWide, 'photo.coffer': Uint8Array.from([0x89, 0x50, 0, 1]), 'old.coffer': Uint8Array.from([0xff, 0xfe, 0x72, 0]) }), ['check', '--format', 'concise']);
        expect(ran.err).toContain('photo.coffer is not a text file');
        expect(ran.err).toContain('old.coffer is UTF-16 text: save it as UTF-8');
        expect(ran.out).toContain('bottom-wont-fit');
        expect(ran.code).toBe(2);
    });

    test('nothing is said to be right in a file that was not read', async () => {
        const alone = await cofferwright(folderWith({ 'photo.coffer': Uint8Array.from([0x89, 0x50, 0, 1]) }), ['check']);
        expect(alone).toEqual({ code: 2, out: '', err: 'photo.coffer is not a text file\n1 file could not be read, and was not checked\n' });
        const beside = await cofferwright(folderWith({ ...house, 'photo.coffer': Uint8Array.from([0x89, 0x50, 0, 1]) }), ['check']);
        expect(beside).toEqual({ code: 2, out: '', err: 'photo.coffer is not a text file\nNothing found in 4 files\n1 file could not be read, and was not checked\n' });
    });

    test.each(['check', 'format'])('%s: standard input is too large from the same size on as a file', async command => {
        const ran = await cofferwright(folderWith({}), [command, '-'], { stdin: new Uint8Array(8_000_001).fill(0x20) });
        expect(ran).toEqual({ code: 2, out: '', err: 'cofferwright: Standard input is too large for a job file: more than 8 MB\n' });
    });

    test('a file that may not be opened', async () => {
        const cwd = folderWith(house);
        chmodSync(join(cwd, 'den.coffer'), 0);
        const ran = await cofferwright(cwd, ['check']);
        chmodSync(join(cwd, 'den.coffer'), 0o600);
        if (process.getuid?.() === 0) expect(ran.code).toBe(0);   // whoever may read everything reads this too
        else expect(ran).toMatchObject({ code: 2, err: expect.stringContaining('den.coffer may not be opened') as unknown });
    });

    test('byte order mark, CRLF and pasted marks change neither findings nor places', async () => {
        const plain = await cofferwright(folderWith(tooWide), ['check', '--format', 'concise']);
        const odd = Object.fromEntries(Object.entries(tooWide).map(([name, text]) => [name, `\ufeff${text.replaceAll('\n', '\r\n')}`]));
        expect((await cofferwright(folderWith(odd), ['check', '--format', 'concise'])).out).toBe(plain.out);
    });

    test('a file with an odd name is a file', async () => {
        const bad = 'edition 1\nroom den {\n  walll north 5\n}\n';
        const names = ['.coffer', '#1.coffer', 'a b.coffer', '100%.coffer', '%20.coffer', 'a?.coffer', "o'neil.coffer", 'Küche 🏠.coffer', '[x].coffer', '-x.coffer', '__proto__.coffer'];
        const { out, code } = await cofferwright(folderWith(Object.fromEntries(names.map(name => [name, bad]))), ['check', '--format', 'json']);
        const { findings } = JSON.parse(out) as { findings: { file: string }[] };
        expect([...new Set(findings.map(each => each.file))].sort()).toEqual(names.sort());
        expect(code).toBe(1);
    });

    test('an empty file is clean', async () => {
        expect((await cofferwright(folderWith({ 'a.coffer': '' }), ['check'])).code).toBe(0);
    });
});

describe('asked wrongly: 2, with what would be right', () => {
    test.each<[string[], RegExp]>([
        [['chek'], /unknown command 'chek'[\s\S]*check/], [['check', '--format', 'xml'], /Allowed choices are human, concise, json, sarif, github/],
        [['check', '--nope'], /unknown option '--nope'/], [['explain', 'bottom-wont-fot'], /Did you mean bottom-wont-fit\?/], [['explain', 'quite-something-else'], /`cofferwright explain` lists them/],
        [[], /Usage: cofferwright/], [['draw', '--out', ''], /It is empty/], [['check', '--color', 'pink'], /Allowed choices/],
    ])('%j', async (argv, message) => {
        const ran = await cofferwright(folderWith({}), argv);
        expect(ran.err).toMatch(message);
        expect(ran.code).toBe(2);
    });

    test('help and version are no mistakes', async () => {
        const { version } = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8')) as { version: string };
        expect(await cofferwright(folderWith({}), ['--version'])).toEqual({ code: 0, out: `${version}\n`, err: '' });
        expect((await cofferwright(folderWith({}), ['check', '--help'])).out).toContain('--stdin-file-path');
        expect((await cofferwright(folderWith({}), ['--help'])).out).toContain('Exit codes');
    });
});

describe('a table that a file names', () => {
    const survey = (path: string): string => `edition 1\nroom loft {\n  wall north 10'\n  wall east 8'\n  survey { readings "${path}" in millimeters }\n}\n`;

    test.each<[string, string | Uint8Array, string]>([
        ['bytes of another encoding', Buffer.from('x,y,H\xf6he\n', 'latin1'), '`./loft.csv` is not UTF-8 text: save it as UTF-8.'],
        ['UTF-16', Buffer.from('\ufeffx,y,z\n', 'utf16le'), '`./loft.csv` is UTF-16 text: save it as UTF-8.'],
        ['no text', new Uint8Array([1, 0, 2]), '`./loft.csv` is not a text file.'],
        ['far too large', 'x'.repeat(8_000_001), '`./loft.csv` is too large'],
    ])('%s: told where it is named, and nowhere else', async (_, content, words) => {
        const { out, err, code } = await cofferwright(folderWith({ 'loft.coffer': survey('./loft.csv'), 'loft.csv': content }), ['check', '--format', 'concise']);
        expect(out.split('\n').filter(line => line.includes('readings-unread'))).toEqual([expect.stringContaining(words)]);
        expect(err).not.toContain('csv');
        expect(code).toBe(1);
    });

    test('is not read outside of the repository', async () => {
        const cwd = folderWith({ 'in/loft.coffer': survey('../../beside.csv') });
        writeFileSync(join(cwd, '../beside.csv'), 'x,y,z\n0,0,350\n3000,0,350\n0,2400,350\n');
        expect(await cofferwright(join(cwd, 'in'), ['check'])).toMatchObject({ code: 0 });
        rmSync(join(cwd, '../.git'), { recursive: true });
        expect((await cofferwright(join(cwd, 'in'), ['check', '--format', 'concise'])).out).toContain('`../../beside.csv` is outside the repository');
    });
});

describe('watching', () => {
    test('checks again after a change in the same workspace, sees files come and go, and ends when told to', async () => {
        const cwd = folderWith(house);
        const stop = new AbortController();
        const steps = [
            () => writeFileSync(join(cwd, 'box.coffer'), tooWide['box.coffer']),
            () => writeFileSync(join(cwd, 'box.coffer'), house['box.coffer']),
            () => writeFileSync(join(cwd, 'new.coffer'), 'edition 1\nstock x { size oops }\n'),
            () => rmSync(join(cwd, 'new.coffer')),
            () => stop.abort(),
        ];
        let seen = 0;
        const ran = await cofferwright(cwd, ['check', '--watch'], {
            stop: stop.signal,
            onErr: err => {
                const times = err.split('Watching for changes').length - 1;
                while (seen < times) setTimeout(steps[seen++]!, 300);
            },
        });
        expect(ran.err.split('\n').filter(line => / in \d files?/.test(line)).map(line => line.replace(/^(\d+ errors?|Nothing found).*( in)/, '$1$2'))).toEqual([
            'Nothing found in 4 files', '1 error in 4 files', 'Nothing found in 4 files', '1 error in 5 files', 'Nothing found in 4 files',
        ]);
        expect(ran.code).toBe(130);
    });

    test('sees a table change that a file names, and none that no file names', async () => {
        const survey = 'edition 1\nroom loft {\n  wall north 10\'\n  wall east 8\'\n  survey { readings "./loft.csv" in millimeters }\n}\n', table = 'x,y,reading\n0,0,350\n3000,0,351\n0,2400,352\n';
        const cwd = folderWith({ 'loft.coffer': survey, 'loft.csv': table, 'other.csv': '' });
        const stop = new AbortController();
        const steps = [
            () => writeFileSync(join(cwd, 'loft.csv'), `${table}0,0,x\n`),
            () => rmSync(join(cwd, 'loft.csv')),
            () => mkdirSync(join(cwd, 'loft.csv')),
            () => rmdirSync(join(cwd, 'loft.csv')),
            () => writeFileSync(join(cwd, 'loft.csv'), 'x'.repeat(9_000_000)),
            () => { writeFileSync(join(cwd, 'other.csv'), '1'); setTimeout(() => writeFileSync(join(cwd, 'loft.csv'), table), 400); },
            () => stop.abort(),
        ];
        let seen = 0;
        const ran = await cofferwright(cwd, ['check', '--watch', '--format', 'concise'], {
            stop: stop.signal,
            onErr: err => {
                const times = err.split('Watching for changes').length - 1;
                while (seen < times) setTimeout(steps[seen++]!, 300);
            },
        });
        expect(ran.out.split('\n').filter(line => line.includes('readings-unread')).map(line => /error: (.*) \[/.exec(line)?.[1])).toEqual([
            'Row 5 of `loft.csv`: `x` in column `reading` is no length.', 'There is no file `./loft.csv`, seen from this one. Similar names: `other.csv`.',
            '`./loft.csv` is no file.', 'There is no file `./loft.csv`, seen from this one. Similar names: `other.csv`.', '`./loft.csv` is too large for a job file: more than 8 MB.',
        ]);
        expect(seen).toBe(7);
        expect(ran.code).toBe(130);
    });

    test('says what cannot be read any more, and sees a missing file come', async () => {
        const cwd = folderWith({ 'a.coffer': 'edition 1\nfrom "lib/yard.coffer" use pine\nlet wide = pine.width\n' });
        const stop = new AbortController();
        const steps = [
            () => { mkdirSync(join(cwd, 'lib')); writeFileSync(join(cwd, 'lib/yard.coffer'), 'edition 1\nstock pine { size 1x6 }\n'); },
            () => writeFileSync(join(cwd, 'a.coffer'), Buffer.from('\ufeffedition 1\n', 'utf16le')),
            () => rmSync(join(cwd, 'a.coffer')),
            () => stop.abort(),
        ];
        let seen = 0;
        const ran = await cofferwright(cwd, ['check', '--watch', 'a.coffer'], {
            stop: stop.signal,
            onErr: err => {
                const times = err.split('Watching for changes').length - 1;
                while (seen < times) setTimeout(steps[seen++]!, 300);
            },
        });
        expect(ran.err.split('\n').filter(line => line !== '' && !line.startsWith('Watching'))).toEqual([
            '1 error in 1 file', 'Nothing found in 2 files', 'a.coffer is UTF-16 text: save it as UTF-8', '1 file could not be read, and was not checked',
            'a.coffer is not there',
        ]);
        expect(ran.code).toBe(130);
    });
});
