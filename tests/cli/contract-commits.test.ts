import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { house } from './house.ts';
import { git, repositoryOf, temporaryFolder, write, type Files } from './repository.ts';
import { cofferwright } from './world.ts';

const rates = readFileSync('examples/rates.coffer', 'utf8');
const states: Files = { ...house, 'rates.coffer': rates };
const signed = (sum: string, commit: string, more = ''): string => house['job.coffer'].replace('}\n', `\n  contract {\n    signed  ${sum} USD on 2026-02-09 at "${commit}"\n${more}  }\n}\n`);

async function found(cwd: string): Promise<(readonly [string, string, number])[]> {
    const { out } = await cofferwright(cwd, ['check', '--format', 'json']);
    const { findings } = JSON.parse(out) as { findings: { rule: string; message: string; range: { start: { line: number } } }[] };
    return findings.filter(({ rule }) => /commit|signed/.test(rule)).map(({ rule, message, range }) => [rule, message, range.start.line]);
}
async function totalOf(cwd: string): Promise<number> {
    const { out } = await cofferwright(cwd, ['estimate', '--quick', '--format', 'json']);
    return Number((JSON.parse(out) as { houses: { estimate: { sums: { total: { exact: string } }; missing: unknown[] } }[] }).houses[0]!.estimate.sums.total.exact.replace(/^(\d+)\/(\d+)$/, (_, a: string, b: string) => String(Number(a) / Number(b))));
}

describe('the commits that a contract names', () => {
    test('are asked of git: one that is not there, one that was left behind; and nothing is said outside of a repository', async () => {
        const cwd = repositoryOf([states]);
        git(cwd, ['checkout', '-q', '-b', 'aside']);
        git(cwd, ['commit', '-q', '--allow-empty', '-m', 'Another grid']);
        const aside = git(cwd, ['rev-parse', '--short', 'HEAD']).trim();
        git(cwd, ['checkout', '-q', 'main']);
        const job = signed('8,000', '0123456', `    change  1 adds 10 USD on 2026-02-10 at "${aside}"\n`);
        write(cwd, { 'job.coffer': job });
        expect((await found(cwd)).map(([rule]) => rule)).toEqual(['no-such-commit', 'commit-aside']);
        const elsewhere = temporaryFolder();
        write(elsewhere, { ...states, 'job.coffer': job });
        expect(await found(elsewhere)).toEqual([]);
        // and a comment that allows it there allows something here, and is not called unused there
        write(elsewhere, { 'job.coffer': job.replace('"0123456"', '"0123456" // allow no-such-commit: the shop\'s old repository') });
        const { out } = await cofferwright(elsewhere, ['check', '--format', 'concise']);
        expect(out).not.toContain('allow-unused');
    });

    test('what the house came to then is what its own estimate says, and far from another sum', async () => {
        const cwd = repositoryOf([states]), total = await totalOf(cwd);
        const commit = git(cwd, ['rev-parse', '--short', 'HEAD']).trim(), said = async (sum: number): Promise<(readonly [string, string, number])[]> => {
            // what was changed since then has nothing to do with it
            write(cwd, { 'job.coffer': signed(sum.toFixed(2), commit), 'den.coffer': house['den.coffer'].replace('coffers-north  3', 'coffers-north  5') });
            return found(cwd);
        };
        expect(total).toBeGreaterThan(500);
        expect(await said(Math.round(total / 100) * 100)).toEqual([]);
        const [[rule, message] = []] = await said(Math.round(total * 2));
        expect(rule).toBe('signed-for-another-sum');
        expect(message).toContain(`$${total.toLocaleString('en-US', { minimumFractionDigits: 2, maximumFractionDigits: 2 })}`);
    });
});
