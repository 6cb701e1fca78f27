import { appendFileSync, chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { askGit } from '../../src/git/ask.ts';
import { house } from '../cli/house.ts';
import { git, repositoryOf, temporaryFolder } from '../cli/repository.ts';
import { cofferwright } from '../cli/world.ts';
import { hasPipes, makePipe } from '../support/pipe.ts';
import { plant } from './plant.ts';

const finer = { ...house, 'den.coffer': house['den.coffer'].replace('coffers-north  3', 'coffers-north  4') };
const compared = async (cwd: string, ...argv: readonly string[]): Promise<{ code: number; out: string; err: string }> => cofferwright(cwd, ['compare', ...argv, '--quick']);

describe('a repository that means harm, or is broken', () => {
    test.skipIf(!hasPipes)('a branch that is a pipe without an end keeps nobody', async () => {
        const cwd = repositoryOf([house]);
        makePipe(join(cwd, '.git/refs/heads/pipe'));
        await expect(askGit(cwd, ['rev-parse', '--verify', 'pipe^{commit}'], { most: 500 })).rejects.toMatchObject({ why: 'too-long' });
    });

    test('a branch that is a link out of the folder is none, and nothing of what is there is told', async () => {
        const cwd = repositoryOf([house]), secret = join(temporaryFolder(), 'secret');
        writeFileSync(secret, 'the alarm is 4711\n');
        symlinkSync(secret, join(cwd, '.git/refs/heads/evil'));
        const { code, out, err } = await compared(cwd, 'evil');
        expect([code, out]).toEqual([2, '']);
        expect(err).toContain('There is no commit, tag or branch evil here');
        expect(err).not.toContain('4711');
    });

    test('settings that are taken from elsewhere run nothing either', async () => {
        const cwd = repositoryOf([house, finer]), planted = plant(cwd), aside = join(temporaryFolder(), 'config');
        // what is planted in the repository's own settings, in a file that these take in under a condition
        renameSync(join(cwd, '.git/config'), aside);
        writeFileSync(join(cwd, '.git/config'), `[core]\n\trepositoryformatversion = 0\n\tbare = false\n[includeIf "gitdir:${cwd}/"]\n\tpath = ${aside}\n[include]\n\tpath = ${aside}\n`);
        expect(git(cwd, ['-c', 'core.fsmonitor=false', 'config', '--get', 'core.sshCommand'])).toContain('run.sh');
        planted.forget();
        expect((await compared(cwd, 'one', 'two')).code).toBe(0);
        expect(planted.hasRun()).toBe(false);
    });

    test('a pack that is damaged is told, with the words of git', async () => {
        const cwd = repositoryOf([house, finer]);
        git(cwd, ['gc', '-q']);
        const folder = join(cwd, '.git/objects/pack'), pack = join(folder, readdirSync(folder).find(name => name.endsWith('.pack'))!), bytes = readFileSync(pack);
        chmodSync(pack, 0o644);
        // all but its head and its sum
        writeFileSync(pack, bytes.map((byte, i) => (i < 12 || i >= bytes.length - 20 ? byte : byte ^ 0x5a)));
        const { code, out, err } = await compared(cwd, 'one', 'two');
        expect([code, out]).toEqual([2, '']);
        expect(err).toMatch(/^cofferwright: .{20}/);
    });

    test('a store that borrows from itself, in a circle, is read all the same', async () => {
        const [cwd, other] = [repositoryOf([house, finer]), repositoryOf([house])];
        for (const [own, borrows] of [[cwd, cwd], [cwd, other], [other, cwd]] as const) {
            mkdirSync(join(own, '.git/objects/info'), { recursive: true });
            appendFileSync(join(own, '.git/objects/info/alternates'), `${join(borrows, '.git/objects')}\n`);
        }
        const { code, out } = await compared(cwd, 'one', 'two');
        expect(code).toBe(0);
        expect(out).toContain('room den › grid › coffers-north: 3 → 4');
        expect(existsSync(join(other, '.git/objects/info/alternates'))).toBe(true);
    });
});
