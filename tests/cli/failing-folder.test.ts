import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import { nodeFiles, type FileSystem } from '../../src/cli/file-system.ts';
import { makeFolder } from '../../src/cli/make-folder.ts';
import { OutputFolder, type OutputFile } from '../../src/cli/output-folder.ts';
import { UsageError } from '../../src/cli/exit-code.ts';
import { paint } from '../../src/report/look.ts';
import { fileName } from '../../src/text/file-name.ts';
import { printJson } from '../../src/text/json.ts';
import { failingDisk, type Fault, type Step } from './failing-disk.ts';
import { folderWith } from './folder.ts';
import { cofferwright } from './world.ts';

/** The one way that commands write files, with every step failing in every way: what was there before is there after, or what should be. */
const STEPS: readonly Step[] = ['open to write', 'write', 'sync', 'close', 'rename'];
const CODES = ['ENOSPC', 'EDQUOT', 'EROFS', 'EIO', 'EACCES', 'gone'];
const NAMES = ['a', 'b'].map(name => fileName('', name, 'json'));
const filesOf = (what: string): OutputFile[] => NAMES.map(name => ({ name, content: printJson({ what, name }) }));

async function write(cwd: string, what: string, fault: Fault, disk = failingDisk(fault)): Promise<{ said: string[]; code: number }> {
    const said: string[] = [];
    const terminal = { result: () => {}, say: (line: string) => { said.push(line); }, progress: () => {}, paint };
    const folder = new OutputFolder({ out: 'out' }, { cwd, terminal, disk });
    try {
        await folder.write(filesOf(what), pathToFileURL(join(cwd, 'job.coffer')).toString());
        return { said, code: folder.code };
    } catch (error) {
        if (!(error instanceof UsageError)) throw error;
        return { said: [...said, error.message], code: 2 };
    }
}

describe.each(STEPS)('where the disk fails at: %s', step => {
    test.each(CODES.flatMap(code => [0, 1, 2].map(first => [code, first] as const)))('%s, after %i times', async (code, first) => {
        const cwd = folderWith({ 'out/keep.txt': 'keep', 'job.coffer': '' });
        expect(await write(cwd, 'old', () => undefined)).toEqual({ said: [], code: 0 });
        let count = 0;
        const { said, code: ended } = await write(cwd, 'new', at => (at === step && count++ >= first ? code : undefined));
        expect(ended).toBe(2);
        expect(said.length).toBeGreaterThan(0);
        for (const line of said) expect(line).toMatch(/^out\/\S+ (does not fit on the disk|is more than may be written|lies on a disk that cannot|cannot be written|may not be written)/);
        if (code === 'gone') {
            expect(existsSync(join(cwd, 'out'))).toBe(false);
            expect(readdirSync(cwd)).toEqual(['job.coffer']);
            return;
        }
        expect(readdirSync(join(cwd, 'out')).sort()).toEqual(['.cofferwright.sha256', 'a.json', 'b.json', 'keep.txt']);
        for (const [i, name] of NAMES.entries()) expect([filesOf('old')[i]!.content, filesOf('new')[i]!.content]).toContain(readFileSync(join(cwd, 'out', name), 'utf8'));
        // what was left in the list still knows both, so that the next run ends the work
        expect(await write(cwd, 'new', () => undefined)).toEqual({ said: [], code: 0 });
        for (const [i, name] of NAMES.entries()) expect(readFileSync(join(cwd, 'out', name), 'utf8')).toBe(filesOf('new')[i]!.content);
        expect(readFileSync(join(cwd, 'out/keep.txt'), 'utf8')).toBe('keep');
    });
});

test('a slow disk and one that takes half of what it is given take longer, no more', async () => {
    for (const how of ['slow', 'short']) {
        const cwd = folderWith({ 'job.coffer': '' });
        expect(await write(cwd, 'new', () => how)).toEqual({ said: [], code: 0 });
        for (const [i, name] of NAMES.entries()) expect(readFileSync(join(cwd, 'out', name), 'utf8')).toBe(filesOf('new')[i]!.content);
    }
});

test('what another run notes in the list just then stays in it', async () => {
    const cwd = folderWith({ 'out/keep.txt': 'keep', 'job.coffer': '' }), list = join(cwd, 'out/.cofferwright.sha256'), theirs = `${'0'.repeat(64)}  theirs.json\n# theirs.json from ../their.coffer\n`;
    for (const there of ['', `${'1'.repeat(64)}  old.json\n`]) {
        if (there !== '') writeFileSync(list, there);
        let isFirst = true;
        const { said, code } = await write(cwd, `new${there}`, step => {
            if (step === 'sync' && isFirst) writeFileSync(list, there + theirs);
            if (step === 'sync') isFirst = false;
            return undefined;
        });
        expect({ said, code }).toEqual({ said: [], code: 0 });
        const noted = readFileSync(list, 'utf8');
        for (const name of ['theirs.json', 'a.json', 'b.json', ...there === '' ? [] : ['old.json']]) expect(noted).toMatch(new RegExp(`^[0-9a-f]{64}  ${name}$`, 'm'));
        expect(noted).toContain('# theirs.json from ../their.coffer\n');
        for (const name of [list, ...NAMES.map(name => join(cwd, 'out', name))]) rmSync(name);
    }
});

test('a folder that cannot be made is told, and nothing is written', async () => {
    const cwd = folderWith({ 'job.coffer': '' });
    expect(await write(cwd, 'new', at => (at === 'mkdir' ? 'EROFS' : undefined))).toEqual({ said: ['out lies on a disk that cannot be written to'], code: 2 });
    expect(readdirSync(cwd)).toEqual(['job.coffer']);
});

test('a folder is made with those above it, and one that the system never lets be made comes to an end', async () => {
    const cwd = folderWith({ 'job.coffer': '' }), way = join(cwd, 'a/b/c');
    await makeFolder(nodeFiles, way);
    await makeFolder(nodeFiles, way);
    expect(readdirSync(join(cwd, 'a/b'))).toEqual(['c']);
    await expect(makeFolder(nodeFiles, join(cwd, 'job.coffer'))).rejects.toThrow('EEXIST');
    await expect(makeFolder(nodeFiles, join(cwd, 'job.coffer/d/e'))).rejects.toThrow('ENOTDIR');
    const never = failingDisk(step => (step === 'mkdir' ? 'ENOENT' : undefined));
    await expect(makeFolder(never, join(cwd, 'new/d'))).rejects.toThrow('ENOENT');
    // as it is in /proc: whatever is asked for is not there, and the folder above it is
    const mkdir = ((path: string) => (path === cwd ? nodeFiles.mkdir(path) : Promise.reject(Object.assign(new Error('ENOENT'), { code: 'ENOENT' })))) as FileSystem['mkdir'];
    await expect(makeFolder({ stat: nodeFiles.stat, mkdir }, join(cwd, 'new/d'))).rejects.toThrow('ENOENT');
    expect(existsSync(join(cwd, 'new'))).toBe(false);
});

test.each(STEPS)('format, where the folder vanishes before: %s', async step => {
    const cwd = folderWith({});
    mkdirSync(join(cwd, 'job'));
    writeFileSync(join(cwd, 'job/a.coffer'), 'edition 1\nstock   oak-1x4   {\n size 1x4\n}\n');
    const { code, err } = await cofferwright(cwd, ['format', 'job'], { disk: failingDisk(at => (at === step ? 'gone' : undefined)) });
    expect({ code, err }).toEqual({ code: 2, err: 'job/a.coffer cannot be written: its folder is not there any more\n0 of 1 files changed\n' });
    expect(readdirSync(cwd)).toEqual([]);
});

test('a folder that becomes a link while it is written to, whenever that is, leads nothing out', async () => {
    let steps = 0, swaps = 0;
    for (let at = 0; at <= steps; at++) {
        const cwd = folderWith({ 'job.coffer': '', '../away/a.json': 'precious' }), out = join(cwd, 'out'), away = join(cwd, '../away');
        if (at % 2 === 0) await write(cwd, 'old', () => undefined);
        else mkdirSync(out);
        steps = 0;
        const swapping = new Proxy(nodeFiles, {
            get: (disk, name: keyof typeof nodeFiles) => (...args: unknown[]) => {
                if (steps++ === at && existsSync(out)) {
                    renameSync(out, join(cwd, 'moved'));
                    symlinkSync(away, out);
                    swaps++;
                }
                return (disk[name] as (...all: unknown[]) => unknown)(...args);
            },
        });
        await write(cwd, 'new', () => undefined, swapping);
        expect(readdirSync(away), `swapped before step ${at}`).toEqual(['a.json']);
        expect(readFileSync(join(away, 'a.json'), 'utf8')).toBe('precious');
    }
    expect(swaps).toBeGreaterThan(20);
});
