import { chmodSync, cpSync, linkSync, lstatSync, mkdirSync, readdirSync, readFileSync, readlinkSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { nodeFiles } from '../../src/cli/file-system.ts';
import { failingDisk, type Step } from './failing-disk.ts';
import { FULL, some } from '../support/full.ts';
import { folderWith } from './folder.ts';
import { den, signedHouse as house, signedJob as job, VALLEY } from './house.ts';
import { git } from './repository.ts';
import { cofferwright } from './world.ts';

/** Every way that the program writes files. The folder is where they go. */
const COMMANDS: readonly (readonly [command: string, folder: string, ...argv: string[]])[] = [
    ['draw', 'drawings'], ['draw', 'drawings', '--format', 'dxf'], ['print', 'pages'], ['print', 'pages', '--page', 'cut-list', '--format', 'csv'], ['model', 'models'], ['model', 'models', '--format', 'ifc'],
    ['bid', 'bids', '--quick', '--format', 'html'], ['bid', 'bids', '--quick'], ['invoice', 'invoices', '--number', '3', '--format', 'html'], ['invoice', 'invoices', '--number', '3'], ['labels', 'labels', '--quick'], ['saw', 'sheets', '--quick', '--sheets', 'sheets'],
    ['walls', 'scribed', '--templates', 'scribed'], ['survey', 'templates', '--templates', 'templates'],
    ['change-order', 'change-orders', '--quick', '--number', '3', '--format', 'html'], ['change-order', 'change-orders', '--quick', '--number', '3'],
];
/** Its own option says where they go, and the last one said counts. */
const OUT: Readonly<Record<string, string>> = { saw: '--sheets', walls: '--templates', survey: '--templates' };
const HUMP = den.replace(/( {2}wall north .*)\n/, '$1 {\n    hump  1/4" at 5\'\n  }\n');
const SURVEYED = den.replace('  grid {', () => VALLEY);
/** What the commands are run in that write nothing of other rooms. */
const DENS: Readonly<Record<string, string>> = { walls: HUMP, survey: SURVEYED };
const denOf = (command: string): string => DENS[command] ?? den;

/** The house where a command runs; what a change order is about is changed since the last commit. */
function housed(command: string, more: Readonly<Record<string, string>> = {}): string {
    const cwd = folderWith({ ...house, 'den.coffer': denOf(command), ...more });
    if (command !== 'change-order') return cwd;
    const repository = dirname(cwd), now = readFileSync(join(cwd, 'den.coffer'), 'utf8');
    rmSync(join(repository, '.git'), { recursive: true });
    writeFileSync(join(cwd, 'den.coffer'), now.replace('coffers-north  3', 'coffers-north  2'));
    git(repository, ['init', '-q', '-b', 'main']);
    git(repository, ['add', ...Object.keys(house).map(name => join(cwd, name))]);
    git(repository, ['commit', '-q', '-m', 'As it was signed']);
    writeFileSync(join(cwd, 'den.coffer'), now);
    return cwd;
}
const run = (cwd: string, [command, , ...argv]: (typeof COMMANDS)[number], ...more: string[]) => cofferwright(cwd, [command, ...argv, ...more]);
const written = (out: string): string[] => out.trim().split('\n');
/** What fails and how; `failing-folder.test.ts` has every step in every way, without a job. */
const FAULTS: readonly (readonly [Step, string])[] = [['write', 'ENOSPC'], ['open to write', 'EROFS'], ['rename', 'EIO']];
const untidy = 'edition 1\nstock   oak-1x4   {\n size 1x4\n}\n';

/** Everything below a folder with what it holds. */
function contents(folder: string): Record<string, string> {
    return Object.fromEntries(readdirSync(folder, { withFileTypes: true, recursive: true }).map(entry => {
        const path = join(entry.parentPath, entry.name);
        return [path.slice(folder.length + 1), entry.isSymbolicLink() ? `-> ${readlinkSync(path)}` : entry.isFile() ? `${statSync(path).mode.toString(8)} ${readFileSync(path, 'latin1')}` : entry.isDirectory() ? 'folder' : 'other'];
    }));
}

describe.each(some(COMMANDS, 5).map((command, i) => [command.filter(word => word !== command[1]).join(' '), command, i] as const))('%s', (_name, command, row) => {
    const folder = command[1];

    test('replaces what it made, and nothing else', async () => {
        const cwd = housed(command[0]);
        const first = await run(cwd, command);
        const names = written(first.out);
        expect(names.length, first.err).toBeGreaterThan(0);
        // as text: bytes are compared one by one, and a page has half a million
        const held = () => names.map(name => readFileSync(join(cwd, name), 'latin1'));
        const made = held();
        expect(first.code).toBeLessThan(2);
        // again over its own
        expect(await run(cwd, command)).toEqual(first);
        expect(held()).toEqual(made);
        // a job that has changed
        writeFileSync(join(cwd, 'job.coffer'), job.replace('Plum Street 4', 'Plum Street 4!'));
        writeFileSync(join(cwd, 'den.coffer'), denOf(command[0]).replace('3 1/2"', '4 1/2"'));
        const second = await run(cwd, command);
        expect([second.code, second.out]).toEqual([first.code, first.out]);
        expect(held()).not.toEqual(made);
        // somebody has written notes into the first of them
        writeFileSync(join(cwd, names[0]!), 'my notes');
        const third = await run(cwd, command);
        expect(third.code).toBe(2);
        expect(third.err).toContain(`${names[0]} has been changed since this program made it: left as it is; --force replaces it\n`);
        expect(written(third.out)).toEqual(names.slice(1).length > 0 ? names.slice(1) : ['']);
        expect(readFileSync(join(cwd, names[0]!), 'utf8')).toBe('my notes');
        expect((await run(cwd, command, '--force')).out).toBe(first.out);
        expect(readFileSync(join(cwd, names[0]!), 'utf8')).not.toBe('my notes');
        expect(readdirSync(join(cwd, folder)).filter(name => name.endsWith('.tmp'))).toEqual([]);
    });

    test('leaves a stranger\'s file, a folder and a link that are in its way', async () => {
        const cwd = housed(command[0], { '../away/precious': 'precious', [`${folder}/keep.txt`]: '' });
        const names = written((await run(housed(command[0]), command)).out);
        const way = join(cwd, names[0]!);
        const outside = join(dirname(cwd), 'away/precious');
        for (const [put, reason] of [
            [() => writeFileSync(way, 'precious'), 'is there already, and this program has not made it'], [() => mkdirSync(way), 'is a folder'],
            [() => symlinkSync(outside, way), `is a link to ${outside}, outside of the folder`], [() => symlinkSync(join(cwd, 'nowhere'), way), 'is a link to something that is not there'],
        ] as const) {
            put();
            const before = lstatSync(way);
            const { code, err } = await run(cwd, command);
            expect({ code, told: err.includes(`${names[0]} ${reason}`) }, err).toEqual({ code: 2, told: true });
            expect({ ...lstatSync(way), atime: 0, atimeMs: 0 }).toEqual({ ...before, atime: 0, atimeMs: 0 });
            // by force a file, but never anything through a link or instead of a folder
            if (!before.isFile()) expect((await run(cwd, command, '--force')).code).toBe(2);
            expect(readFileSync(outside, 'utf8')).toBe('precious');
            rmSync(way, { recursive: true });
        }
        expect(readdirSync(cwd)).not.toContain('nowhere');
    });

    test('does not follow its folder out of the current one', async () => {
        const cwd = housed(command[0], { '../away/keep': '' });
        symlinkSync('../away', join(cwd, folder));
        const { code, out, err } = await run(cwd, command);
        expect({ code, out }).toEqual({ code: 2, out: '' });
        expect(err).toContain(`${folder} is a link to ${join(dirname(cwd), 'away')}, outside of the current folder: name that folder where you mean it\n`);
        expect(readdirSync(join(dirname(cwd), 'away'))).toEqual(['keep']);
    });

    test('names the link that leads nowhere', async () => {
        const cwd = housed(command[0]);
        symlinkSync('nowhere', join(cwd, 'attic'));
        for (const [to, words] of [['attic', 'attic is a link to something that is not there\n'], ['attic/papers', 'attic/papers lies in attic, a link to something that is not there\n']] as const) {
            // the last one said counts
            const { code, out, err } = await run(cwd, command, OUT[command[0]] ?? '--out', to);
            expect({ code, out }).toEqual({ code: 2, out: '' });
            expect(err).toContain(words);
        }
        expect(readdirSync(cwd)).not.toContain('nowhere');
    });

    test('whatever fails and wherever: all is as it was, or as it should be', async () => {
        const cwd = housed(command[0]);
        const names = written((await run(cwd, command)).out);
        const wider = denOf(command[0]).replace('3 1/2"', '4 1/2"');
        // a bill knows no walls: what is done by its contract is more
        const further = house['job.coffer'].replace('share 45% done 50%', 'share 45% done 80%');
        writeFileSync(join(cwd, 'den.coffer'), wider);
        writeFileSync(join(cwd, 'job.coffer'), further);
        const twin = housed(command[0]);
        writeFileSync(join(twin, 'den.coffer'), wider);
        writeFileSync(join(twin, 'job.coffer'), further);
        await run(twin, command);
        const old = contents(cwd), fresh = contents(twin);
        const argv = [command[0], ...command.slice(2)];
        const kept = join(dirname(cwd), 'kept');
        cpSync(join(cwd, folder), kept, { recursive: true });
        // at first the list of what was made, then the file itself
        for (const [fault, [step, code]] of FAULTS.entries()) for (const first of [0, 1]) {
            // everyday a quarter of them, of the next command another
            if (!FULL && (fault + first + row) % 4 !== 0) continue;
            rmSync(join(cwd, folder), { recursive: true });
            cpSync(kept, join(cwd, folder), { recursive: true });
            let count = 0;
            const { code: ended, err } = await cofferwright(cwd, argv, { disk: failingDisk(at => (at === step && count++ >= first ? code : undefined)) });
            const now = contents(cwd);
            expect(ended, `${step} ${code}`).toBe(2);
            expect(err).toMatch(code === 'ENOSPC' ? /does not fit on the disk any more\n/ : code === 'EROFS' ? /lies on a disk that cannot be written to\n/ : /cannot be written: the disk fails\n/);
            expect(Object.keys(now).sort(), `${step} ${code}`).toEqual(Object.keys(old).sort());
            // each is whole, the old one or the new one
            for (const name of names) expect(now[name] === old[name] || now[name] === fresh[name], `${name}: ${step} ${code}`).toBe(true);
        }
        // short writes are gone on with
        const short = await cofferwright(cwd, argv, { disk: failingDisk((at, path) => (at === 'write' && path.length % 2 === 0 ? 'short' : undefined)) });
        expect(written(short.out)).toEqual(names);
        const whole = contents(cwd);
        for (const name of names) expect(whole[name] === fresh[name], name).toBe(true);
        const restore = (): void => {
            rmSync(join(cwd, folder), { recursive: true, force: true });
            cpSync(kept, join(cwd, folder), { recursive: true });
        };
        // a slow disk takes longer, no more
        restore();
        expect(written((await cofferwright(cwd, argv, { disk: failingDisk(() => 'slow') })).out)).toEqual(names);
        const slow = contents(cwd);
        for (const name of names) expect(slow[name] === fresh[name], name).toBe(true);
        // one that vanishes takes along what it held, and nothing else is touched
        restore();
        let renamed = 0;
        const { code: gone, err } = await cofferwright(cwd, argv, { disk: failingDisk(at => (at === 'rename' && renamed++ > 0 ? 'gone' : undefined)) });
        expect(gone).toBe(2);
        expect(err).toContain('cannot be written: its folder is not there any more\n');
        expect(contents(cwd)).toEqual(Object.fromEntries(Object.entries(old).filter(([name]) => name !== folder && !name.startsWith(`${folder}/`))));
    });
});

test('two houses of one title do not replace each other\'s pages, in runs of their own either', async () => {
    const cwd = folderWith({ ...Object.fromEntries(Object.entries(house).flatMap(([name, text]) => [[`first/${name}`, text], [`second/${name}`, text.replace('3 1/2"', '4 1/2"')]])) });
    const COMMAND = ['bid', '--quick', '--format', 'html'];
    const first = await cofferwright(cwd, [...COMMAND, 'first']), page = readFileSync(join(cwd, 'bids/bid-plum-street-4.html'), 'utf8');
    expect(first.out).toBe('bids/bid-plum-street-4.html\n');
    expect(readFileSync(join(cwd, 'bids/.cofferwright.sha256'), 'utf8')).toMatch(/^[0-9a-f]{64} {2}bid-plum-street-4\.html\n# bid-plum-street-4\.html from \.\.\/first\/job\.coffer\n$/);
    const second = await cofferwright(cwd, [...COMMAND, 'second']);
    expect({ code: second.code, out: second.out }).toEqual({ code: 2, out: '' });
    expect(second.err).toContain('bids/bid-plum-street-4.html was made from first/job.coffer, which gives it the same name: left as it is; --force replaces it, another --out keeps both\n');
    expect(readFileSync(join(cwd, 'bids/bid-plum-street-4.html'), 'utf8')).toBe(page);
    // rooms of one name in two houses likewise; together they have names of their own
    expect((await cofferwright(cwd, ['draw', 'first'])).code).toBe(0);
    expect((await cofferwright(cwd, ['draw', 'second'])).err).toContain('drawings/plan-den.svg was made from first/job.coffer');
    expect((await cofferwright(cwd, [...COMMAND, 'first', 'second', '--out', 'both'])).out).toBe('both/bid-plum-street-4.html\nboth/bid-plum-street-4-2.html\n');
    // by force, and where the first house is not there any more
    expect((await cofferwright(cwd, [...COMMAND, 'second', '--force'])).out).toBe(first.out);
    expect(readFileSync(join(cwd, 'bids/bid-plum-street-4.html'), 'utf8')).not.toBe(page);
    expect((await cofferwright(cwd, [...COMMAND, 'first'])).code).toBe(2);
    rmSync(join(cwd, 'second'), { recursive: true });
    expect((await cofferwright(cwd, [...COMMAND, 'first'])).out).toBe(first.out);
    expect(readFileSync(join(cwd, 'bids/bid-plum-street-4.html'), 'utf8')).toBe(page);
});

test('every option of a command that names a folder to write to is tried here', async () => {
    const cwd = folderWith({}), help = async (...of: string[]): Promise<string> => (await cofferwright(cwd, [...of, '--help'])).out;
    const names = [...(await help()).split('Commands:')[1]!.matchAll(/^ {2}([a-z][a-z-]+) /gm)].map(([, name]) => name!);
    const told = await Promise.all(names.filter(name => name !== 'help').map(async name => (
        [...(await help(name)).matchAll(/^ {2}(--[a-z]+) [<[]folder[>\]]/gm)].map(([, option]) => [name, option!] as const))));
    const writing = told.flat(), tried = COMMANDS.map(([name]) => name);
    expect(names.length).toBeGreaterThan(20);
    expect(writing.map(([name]) => name).filter(name => !tried.includes(name))).toEqual([]);
    expect(tried.filter(name => !writing.some(([own]) => own === name))).toEqual([]);
    // an option of its own is what the command is run with
    expect(Object.fromEntries(writing.filter(([, option]) => option !== '--out'))).toEqual(OUT);
});

describe('format', () => {
    test.each(['open to write', 'write', 'sync', 'chmod', 'close', 'rename'] as Step[])('keeps the text where the disk fails at: %s', async step => {
        const cwd = folderWith({ 'a.coffer': untidy, 'b.coffer': untidy });
        const before = contents(cwd);
        const { code, err } = await cofferwright(cwd, ['format'], { disk: failingDisk((at, _path) => (at === step ? 'ENOSPC' : undefined)) });
        expect({ code, err }).toEqual({ code: 2, err: 'a.coffer does not fit on the disk any more\nb.coffer does not fit on the disk any more\n0 of 2 files changed\n' });
        expect(contents(cwd)).toEqual(before);
    });

    test('keeps permissions, line ends, the mark at the beginning, and links within the folder', async () => {
        const cwd = folderWith({ 'real/a.coffer': `\ufeff${untidy.replaceAll('\n', '\r\n')}` });
        chmodSync(join(cwd, 'real/a.coffer'), 0o640);
        symlinkSync('real/a.coffer', join(cwd, 'a.coffer'));
        expect(await cofferwright(cwd, ['format'])).toMatchObject({ code: 0 });
        expect(lstatSync(join(cwd, 'a.coffer')).isSymbolicLink()).toBe(true);
        const text = readFileSync(join(cwd, 'real/a.coffer'), 'utf8');
        expect(text).toMatch(/^\ufeffedition 1\r\n/);
        expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
        expect(statSync(join(cwd, 'real/a.coffer')).mode & 0o777).toBe(0o640);
    });

    test('writes through no link that leads out, and parts no hard link', async () => {
        const cwd = folderWith({ 'rooms/keep': '', 'hard.coffer': untidy, '../away/a.coffer': untidy });
        const away = join(dirname(cwd), 'away/a.coffer');
        symlinkSync(away, join(cwd, 'rooms/a.coffer'));
        linkSync(join(cwd, 'hard.coffer'), join(cwd, 'rooms/second.coffer'));
        for (const asked of [[], ['rooms'], ['rooms/a.coffer', 'hard.coffer']]) {
            const { code, err } = await cofferwright(cwd, ['format', ...asked]);
            expect(code).toBe(2);
            expect(err).toContain(`rooms/a.coffer is a link to ${away}, outside of the folder: left as it is\n`);
            expect(err).toContain('coffer has a second name on the disk (a hard link), from which it would be parted: left as it is\n');
        }
        expect([away, join(cwd, 'hard.coffer')].map(path => readFileSync(path, 'utf8'))).toEqual([untidy, untidy]);
    });

    test('leaves what is read-only, and what somebody else has written meanwhile', async () => {
        const cwd = folderWith({ 'a.coffer': untidy });
        chmodSync(join(cwd, 'a.coffer'), 0o444);
        expect(await cofferwright(cwd, ['format'])).toMatchObject({ code: 2, err: 'a.coffer is read-only: left as it is\n0 of 1 files changed\n' });
        chmodSync(join(cwd, 'a.coffer'), 0o644);
        const disk = failingDisk(step => { if (step === 'sync') writeFileSync(join(cwd, 'a.coffer'), 'their text'); return undefined; });
        expect(await cofferwright(cwd, ['format'], { disk })).toMatchObject({ code: 2, err: 'a.coffer has been changed by somebody else meanwhile: left as it is\n0 of 1 files changed\n' });
        expect(contents(cwd)).toEqual({ 'a.coffer': expect.stringMatching(/their text$/) as unknown });
        const gone = failingDisk(step => { if (step === 'sync') rmSync(join(cwd, 'a.coffer')); return undefined; });
        writeFileSync(join(cwd, 'a.coffer'), untidy);
        expect((await cofferwright(cwd, ['format'], { disk: gone })).code).toBe(2);
        expect(contents(cwd)).toEqual({});
    });
});

test('a new file takes no name that is a link or a file already', async () => {
    const cwd = folderWith({});
    await expect(failingDisk(() => undefined).open(join(cwd, 'x'), 'wx').then(handle => handle.close()).then(() => nodeFiles.open(join(cwd, 'x'), 'wx'))).rejects.toThrow('EEXIST');
});
