import { symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { readStored, type Stored } from '../../src/extension/stored-files.ts';
import { git, repositoryOf, temporaryFolder } from '../cli/repository.ts';
import { plant } from '../git/plant.ts';

const text = (stored: Stored): string => (stored instanceof Uint8Array ? Buffer.from(stored).toString('utf8') : String(stored));

test('files are read as the commit has them, each in its place, and those that have no text say why', async () => {
    const top = repositoryOf([{ 'job.coffer': 'one', 'rooms/den [1].coffer': 'den\n', 'rooms/hall.coffer': 'a longer text' }, { 'job.coffer': 'two' }]);
    symlinkSync('job.coffer', join(top, 'link.coffer'));
    git(top, ['add', '-A']);
    git(top, ['-c', 'user.name=Nora', '-c', 'user.email=nora@example.org', 'commit', '-q', '-m', 'A link']);
    const read = async (commit: string, ...paths: readonly string[]): Promise<string[]> =>
        (await readStored('git', top, commit, paths.map(path => join(top, path)), 10)).map(text);
    expect(await read('one', 'rooms/den [1].coffer', 'job.coffer', 'none.coffer', 'rooms/hall.coffer', 'job.coffer')).toEqual(['den\n', 'one', 'undefined', 'too-large', 'one']);
    expect(await read('HEAD', 'link.coffer', 'job.coffer', '../elsewhere.coffer')).toEqual(['link', 'two', 'undefined']);
});

test('through a link to the folder, and with the git that the editor names', async () => {
    const top = repositoryOf([{ 'job.coffer': 'one' }]), link = join(temporaryFolder(), 'house');
    symlinkSync(top, link);
    expect((await readStored('git', link, 'one', [join(link, 'job.coffer'), join(top, 'job.coffer')], 10)).map(text)).toEqual(['one', 'one']);
    await expect(readStored(join(top, 'no-such-git'), top, 'one', [join(top, 'job.coffer')], 10)).rejects.toThrow('no-git');
});

test('nothing that somebody configured runs, not even a text conversion of all repositories', async () => {
    const top = repositoryOf([{ 'job.coffer': 'one' }]), planted = plant(top);
    planted.forget();
    expect((await readStored('git', top, 'one', [join(top, 'job.coffer')], 10)).map(text)).toEqual(['one']);
    expect(planted.hasRun()).toBe(false);
    // and it would have been seen, as the editor's own git has it
    git(top, ['show', '--textconv', 'one:job.coffer']);
    expect(planted.hasRun()).toBe(true);
});
