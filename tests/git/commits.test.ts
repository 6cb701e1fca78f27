import { execFileSync } from 'node:child_process';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { askGit } from '../../src/git/ask.ts';
import { namedCommits } from '../../src/git/commits.ts';
import { house } from '../cli/house.ts';
import { git, repositoryOf, temporaryFolder } from '../cli/repository.ts';

const known = async (folder: string, ...names: readonly string[]): Promise<(string | undefined)[]> => {
    const found = await namedCommits(words => askGit(folder, words), names);
    return names.map(name => found.get(name)?.is);
};
const commit = (folder: string, message: string): string => {
    git(folder, ['commit', '-q', '--allow-empty', '-m', message]);
    return git(folder, ['rev-parse', 'HEAD']).trim();
};

describe('commits that are named', () => {
    test.each(['sha1', 'sha256'] as const)('in the history, on another branch, nowhere, and what is no commit at all (%s)', async format => {
        const folder = repositoryOf([house, { ...house, 'den.coffer': '' }], { format }), first = git(folder, ['rev-parse', 'one']).trim();
        git(folder, ['checkout', '-q', '-b', 'aside', 'one']);
        const aside = commit(folder, 'Another grid, never agreed');
        git(folder, ['checkout', '-q', 'main']);
        const tree = git(folder, ['rev-parse', 'HEAD^{tree}']).trim();
        expect(await known(folder, first, first.slice(0, 7), 'one', 'HEAD', aside, aside.slice(0, 9), '0123456', 'f'.repeat(first.length), tree, '--all', 'one..main', 'main:den.coffer', ''))
            .toEqual(['behind', 'behind', 'behind', 'behind', 'aside', 'aside', 'none', 'none', 'none', 'none', 'none', 'none', 'none']);
        git(folder, ['merge', '-q', '-m', 'Agreed after all', 'aside']);
        expect(await known(folder, aside)).toEqual(['behind']);
    });

    test('a beginning that fits several commits', async () => {
        const folder = repositoryOf([house]);
        // of so many commits two begin alike with four digits, which is the fewest that git takes
        const script = Array.from({ length: 700 }, (_, i) => `commit refs/heads/main\ncommitter Nora <nora@example.org> ${1_772_500_000 + i} +0100\ndata 1\nx${i === 0 ? '\nfrom refs/heads/main^0' : ''}\n`).join('\n');
        git(folder, ['fast-import', '--quiet'], script);
        const all = git(folder, ['rev-list', 'main']).trim().split('\n').map(hash => hash.slice(0, 4));
        const twice = all.find((hash, i) => all.indexOf(hash) !== i);
        expect(twice).toBeDefined();
        expect(await known(folder, twice!)).toEqual(['several']);
    });

    test('nothing is said of what may be in the rest of a history that is cut off, nor where there is no repository', async () => {
        const folder = repositoryOf([house, { ...house, 'den.coffer': '' }]), clone = join(temporaryFolder(), 'clone');
        execFileSync('git', ['clone', '-q', '--depth', '1', `file://${folder}`, clone], { stdio: 'ignore' });
        expect(await known(clone, git(folder, ['rev-parse', 'one']).trim(), git(folder, ['rev-parse', 'two']).trim(), '0123456')).toEqual([undefined, 'behind', undefined]);
        expect(await known(temporaryFolder(), 'one')).toEqual([undefined]);
    });
});
