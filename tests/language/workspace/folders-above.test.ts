import { URI } from 'langium';
import { NodeFileSystemProvider } from 'langium/node';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { foldersAbove, houseWideFiles, repositoryOf } from '../../../src/language/workspace/folders-above.ts';
import { folderWith } from '../../cli/folder.ts';

test('the folders above end at the repository, or at the root', async () => {
    const disk = new NodeFileSystemProvider(), cwd = folderWith({ 'house/rooms/den.coffer': '', 'house/.git/HEAD': '' });
    const at = (path: string): URI => URI.file(join(cwd, path)), told = (folders: readonly URI[]): string[] => folders.map(String);
    expect(String(await repositoryOf(at('house/rooms'), disk))).toBe(String(at('house')));
    expect(told(foldersAbove(at('house/rooms'), at('house')))).toEqual(told([at('house/rooms'), at('house')]));
    expect(told(foldersAbove(URI.file('/a/b')))).toEqual(['file:///a/b', 'file:///a', 'file:///']);
    expect(told(foldersAbove(URI.parse('test-files://here/a/b')))).toEqual(['test-files://here/a/b', 'test-files://here/a', 'test-files://here/']);
});

test('of a folder only what says a job, labor or a bid is wanted, and a folder that is not there has nothing', async () => {
    const disk = new NodeFileSystemProvider(), cwd = folderWith({ 'job.coffer': 'edition 1\n\njob "Elm Row 4" { }\n', 'rates.coffer': 'edition 1\nbid { overhead 9% }\n', 'yard.coffer': 'edition 1\nstock pine { size 1x6 }\n', 'job.txt': 'job "x"' });
    const found = await houseWideFiles([URI.file(cwd), URI.file(join(cwd, 'nowhere'))], disk);
    expect(new Set(found.map(uri => uri.path.split('/').at(-1)))).toEqual(new Set(['job.coffer', 'rates.coffer']));
});
