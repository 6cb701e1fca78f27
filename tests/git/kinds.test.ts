import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { readStored } from '../../src/extension/stored-files.ts';
import { askGit } from '../../src/git/ask.ts';
import { namedCommits } from '../../src/git/commits.ts';
import type { ChangesJson } from '../../src/report/changes/shape.ts';
import { house } from '../cli/house.ts';
import { git, repositoryOf, temporaryFolder, write, type Files } from '../cli/repository.ts';
import { cofferwright } from '../cli/world.ts';

const finer: Files = { ...house, 'den.coffer': house['den.coffer'].replace('coffers-north  3', 'coffers-north  4') };

async function compared(cwd: string, ...argv: readonly string[]): Promise<{ code: number; err: string; json: ChangesJson }> {
    const { code, out, err } = await cofferwright(cwd, ['compare', ...argv, '--quick', '--format', 'json']);
    return { code, err, json: JSON.parse(out || 'null') as ChangesJson };
}
const said = ({ json }: { json: ChangesJson }): string[] => json.said.map(({ what, before, after }) => `${what.join(' ')}: ${before?.value ?? 'none'} to ${after?.value ?? 'none'}`);
const GRID = ['room den grid coffers-north: 3 to 4'];

describe('where a repository keeps what it has', () => {
    test('a second work tree, packed refs, a detached head', async () => {
        const cwd = repositoryOf([house, finer]), tree = join(temporaryFolder(), 'tree');
        git(cwd, ['pack-refs', '--all']);
        expect(existsSync(join(cwd, '.git/refs/tags/one'))).toBe(false);
        expect(said(await compared(cwd, 'one', 'two'))).toEqual(GRID);
        git(cwd, ['worktree', 'add', '-q', '--detach', tree, 'two']);
        expect(said(await compared(tree, 'one'))).toEqual(GRID);
        write(tree, { 'den.coffer': finer['den.coffer']!.replace('coffers-east   2', 'coffers-east   3') });
        expect(said(await compared(tree))).toEqual(['room den grid coffers-east: 2 to 3']);
    });

    test('a repository within it, of details that houses share, is read at the commit that was used then', async () => {
        const { 'yard.coffer': yard, 'box.coffer': box, ...own } = house;
        const shop = repositoryOf([{ 'yard.coffer': yard, 'box.coffer': box }, { 'yard.coffer': yard, 'box.coffer': box.replace('height  5"', 'height  4 3/4"') }]);
        const cwd = repositoryOf([{ ...own, 'den.coffer': house['den.coffer'].replaceAll('from "', 'from "shop/') }]);
        git(cwd, ['-c', 'protocol.file.allow=always', 'submodule', 'add', '-q', shop, 'shop']);
        git(join(cwd, 'shop'), ['checkout', '-q', 'one']);
        git(cwd, ['add', '-A']);
        git(cwd, ['commit', '-q', '-m', 'The shop\'s details']);
        expect((await compared(cwd)).json.houses.map(({ pieces }) => [pieces.fresh.length, pieces.gone.length])).toEqual([[0, 0]]);
        git(join(cwd, 'shop'), ['checkout', '-q', 'two']);
        const { json, err } = await compared(cwd);
        expect([err, said({ json })]).toEqual(['', ['profile box spacers height: 5" to 4 3/4"']]);
        expect(json.houses.map(({ rooms }) => rooms.map(({ name }) => name))).toEqual([['den']]);
        // in the editor the same
        const read = async (...paths: string[]): Promise<unknown[]> => (await readStored('git', cwd, 'HEAD', paths.map(path => join(cwd, path)), 1e6))
            .map(stored => (stored instanceof Uint8Array ? Buffer.from(stored).toString('utf8') : stored));
        expect(await read('shop/box.coffer', 'shop/none.coffer', 'job.coffer')).toEqual([box, undefined, house['job.coffer']]);
        // and where it has not got that commit it says so
        const unknown = git(cwd, ['rev-parse', 'HEAD']).trim();
        git(cwd, ['update-index', '--cacheinfo', `160000,${unknown},shop`]);
        git(cwd, ['commit', '-q', '-m', 'A state that nobody pushed']);
        expect((await compared(cwd)).err).toContain(`in HEAD: shop is a repository of its own, and holds no commit ${unknown.slice(0, 12)}, which was used then: fetch it there`);
        rmSync(join(cwd, 'shop'), { recursive: true });
        expect(await read('shop/box.coffer')).toEqual([undefined]);
    });

    test('files that are not checked out do not count as gone', async () => {
        const cwd = repositoryOf([{ ...house, 'attic/attic.coffer': house['den.coffer'].replaceAll('from "', 'from "../').replace('room den', 'room attic') }]);
        git(cwd, ['sparse-checkout', 'set', '--no-cone', '/*', '!/attic/']);
        expect(existsSync(join(cwd, 'attic'))).toBe(false);
        const { out, code, err } = await cofferwright(cwd, ['compare', '--quick']);
        expect([code, out]).toEqual([2, '']);
        expect(err).toContain('Not all files are checked out here (git sparse-checkout), and attic/attic.coffer would count as gone');
        expect((await compared(cwd, 'HEAD', 'one')).code).toBe(0);
        expect((await compared(cwd, '--in', 'den.coffer')).code).toBe(0);
        // one that lies there all the same is what it says
        write(cwd, { 'attic/attic.coffer': house['den.coffer'].replaceAll('from "', 'from "../').replace('room den', 'room attic') });
        expect((await compared(cwd)).json.said).toEqual([]);
    });
});

describe('what would show another state than the one that is named', () => {
    test('another commit in the place of one (git replace)', async () => {
        const cwd = repositoryOf([house, finer]);
        git(cwd, ['replace', 'one', 'two']);
        expect(git(cwd, ['show', 'one:den.coffer'])).toBe(finer['den.coffer']);
        expect(said(await compared(cwd, 'one', 'two'))).toEqual(GRID);
    });

    test('other parents than a commit has (info/grafts)', async () => {
        const cwd = repositoryOf([house, finer, { ...finer, 'job.coffer': '' }]), [one, two] = ['one', 'two'].map(name => git(cwd, ['rev-parse', name]).trim());
        const is = async (name: string): Promise<string | undefined> => (await namedCommits(words => askGit(cwd, words), [name])).get(name)?.is;
        git(cwd, ['checkout', '-q', '--detach', two!]);
        writeFileSync(join(cwd, '.git/info/grafts'), `${two!}\n`);
        expect(git(cwd, ['rev-list', '--count', 'HEAD']).trim()).toBe('1');
        expect([await is(one!), await is('three')]).toEqual(['behind', 'aside']);
    });

    test('what the environment says of git', async () => {
        const cwd = repositoryOf([house, finer]), other = repositoryOf([{ ...house, 'den.coffer': '' }]), ran = join(cwd, 'ran'), script = join(temporaryFolder(), 'run.sh');
        writeFileSync(script, `#!/bin/sh\necho "$0" >> '${ran}'\n`, { mode: 0o755 });
        const settings = { GIT_CONFIG_COUNT: '2', GIT_CONFIG_KEY_0: 'diff.external', GIT_CONFIG_VALUE_0: script, GIT_CONFIG_KEY_1: 'core.fsmonitor', GIT_CONFIG_VALUE_1: script, GIT_CONFIG_PARAMETERS: `'core.fsmonitor'='${script}'` };
        const elsewhere = {
            GIT_DIR: join(other, '.git'), GIT_WORK_TREE: other, GIT_INDEX_FILE: join(other, '.git/index'), GIT_OBJECT_DIRECTORY: join(other, '.git/objects'), GIT_COMMON_DIR: join(other, '.git'), GIT_NAMESPACE: 'x',
            GIT_EXTERNAL_DIFF: script, GIT_PAGER: script, GIT_ASKPASS: script, GIT_SSH_COMMAND: script, GIT_EXEC_PATH: temporaryFolder(), GIT_TRACE: ran, GIT_TRACE2_EVENT: ran, GIT_ALLOW_PROTOCOL: 'ext',
            GIT_GLOB_PATHSPECS: '1', GIT_DEFAULT_HASH: 'sha256', GIT_REPLACE_REF_BASE: 'refs/tags/', GIT_SHALLOW_FILE: script, GIT_GRAFT_FILE: script, GIT_ATTR_SOURCE: 'one', ...settings,
        };
        try {
            for (const [name, value] of Object.entries(elsewhere)) vi.stubEnv(name, value);
            expect(said(await compared(cwd, 'one', 'two'))).toEqual(GRID);
            expect(said(await compared(cwd, 'one'))).toEqual(GRID);
        } finally {
            vi.unstubAllEnvs();
        }
        expect(existsSync(ran)).toBe(false);
    });

    test('a transport that only its own settings allow fetches nothing that a partial clone lacks', async () => {
        const cwd = repositoryOf([house, finer]), ran = join(cwd, 'ran'), script = join(cwd, 'run.sh');
        writeFileSync(script, `#!/bin/sh\necho ran >> '${ran}'\n`, { mode: 0o755 });
        for (const [name, value] of [['extensions.partialClone', 'origin'], ['remote.origin.promisor', 'true'], ['remote.origin.url', `ext::${script}`], ['protocol.ext.allow', 'always']]) git(cwd, ['config', name!, value!]);
        const blob = git(cwd, ['rev-parse', 'one:box.coffer']).trim(), missing = `0${blob.slice(1)}` === blob ? `1${blob.slice(1)}` : `0${blob.slice(1)}`;
        const { out } = await askGit(cwd, ['cat-file', '--batch'], { input: `${missing}\n` });
        expect(out?.toString('utf8')).toBe(`${missing} missing\n`);
        expect(existsSync(ran)).toBe(false);
        // and it would have been asked
        try {
            execFileSync('git', ['cat-file', '-e', missing], { cwd, stdio: 'ignore', env: { ...process.env, GIT_CONFIG_GLOBAL: '/dev/null' } });
        } catch { /* it is not there */ }
        expect(readFileSync(ran, 'utf8')).toContain('ran');
    });
});
