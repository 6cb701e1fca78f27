import { describe, expect, test } from 'vitest';
import type { ChangesJson } from '../../src/report/changes/shape.ts';
import { house } from './house.ts';
import { git, repositoryOf, write, type Files } from './repository.ts';
import { cofferwright } from './world.ts';

const contract = (commit: string, job = house['job.coffer']): string => job.replace('}\n', `\n  contract {\n    signed  8,000 USD on 2026-02-09 at "${commit}"\n  }\n}\n`);
const finer: Files = { ...house, 'den.coffer': house['den.coffer'].replace('coffers-north  3', 'coffers-north  4') };

async function since(cwd: string, ...argv: readonly string[]): Promise<{ code: number; err: string; before: ChangesJson['before'] | undefined; json: ChangesJson | undefined }> {
    const { code, out, err } = await cofferwright(cwd, ['compare', 'signed', ...argv, '--quick', '--format', 'json']), json = out === '' ? undefined : JSON.parse(out) as ChangesJson;
    return { code, err: err.trim().replace('cofferwright: ', ''), before: json?.before, json };
}

describe('compare signed', () => {
    test('compares with the commit that the contract names, in the files as they lie or in another commit', async () => {
        const cwd = repositoryOf([house, finer, finer]), signed = git(cwd, ['rev-parse', 'one']).trim();
        write(cwd, { 'job.coffer': contract(signed.slice(0, 8)) });
        const { before, json, code } = await since(cwd);
        expect([code, before]).toMatchObject([0, { revision: 'signed', commit: signed, subject: 'State one' }]);
        expect(json!.said.map(({ what }) => what.join(' '))).toContain('room den grid coffers-north');
        git(cwd, ['commit', '-q', '-a', '-m', 'The contract']);
        expect((await since(cwd, 'HEAD')).before!.commit).toBe(signed);
        expect((await cofferwright(cwd, ['compare', 'signed', '--quick'])).out).toContain(`From signed (${signed.slice(0, 8)}, 2026-03-02: "State one") to the files as they lie.`);
    });

    test('stands in the second place too: what would have to be undone; the contract is that of the first, or of the files as they lie', async () => {
        const cwd = repositoryOf([house, finer, finer]), signed = git(cwd, ['rev-parse', 'one']).trim();
        const until = async (...argv: readonly string[]): Promise<[string, string | null, string[]]> => {
            const json = JSON.parse((await cofferwright(cwd, ['compare', ...argv, '--quick', '--format', 'json'])).out) as ChangesJson;
            return [json.before.revision!, json.after.commit, json.said.filter(({ file }) => file === 'den.coffer').map(({ before, after }) => `${before!.value} to ${after!.value}`)];
        };
        write(cwd, { 'job.coffer': contract(signed.slice(0, 8)) });
        // the contract is not in that commit yet
        expect(await until('two', 'signed')).toEqual(['two', signed, ['4 to 3']]);
        git(cwd, ['commit', '-q', '-a', '-m', 'The contract']);
        write(cwd, { 'job.coffer': house['job.coffer'] });
        expect(await until('HEAD', 'signed')).toEqual(['HEAD', signed, ['4 to 3']]);
        write(cwd, { 'job.coffer': contract('two') });
        const [from, to, said] = await until('signed', 'signed');
        expect([from, to, said]).toEqual(['signed', git(cwd, ['rev-parse', 'two']).trim(), []]);
        write(cwd, { 'job.coffer': house['job.coffer'] });
        const { code, err } = await cofferwright(cwd, ['compare', 'one', 'signed', '--quick']);
        expect([code, err]).toEqual([2, expect.stringContaining('No contract says here at which commit it was signed')]);
    });

    test('where no contract names one, it is a name like any other', async () => {
        const cwd = repositoryOf([house, finer]), { code, err } = await since(cwd);
        expect([code, err]).toEqual([2, 'No contract says here at which commit it was signed: write `signed 29,400 USD on 2026-02-16 at "b7e41d0"` into it, or name the commit']);
        git(cwd, ['tag', 'signed', 'one']);
        expect((await since(cwd)).before).toMatchObject({ revision: 'signed', subject: 'State one' });
    });

    test('a commit that is not there, a tag of this name that is another one, two houses signed at two commits', async () => {
        const cwd = repositoryOf([house, finer]), one = git(cwd, ['rev-parse', 'one']).trim();
        write(cwd, { 'job.coffer': contract('0123456') });
        expect((await since(cwd)).err).toBe('There is no commit, tag or branch 0123456 here (the contract names it as signed)');
        write(cwd, { 'job.coffer': contract(one.slice(0, 9)) });
        git(cwd, ['tag', 'signed', 'two']);
        expect((await since(cwd)).err).toContain('a tag or branch here that is called signed is another commit: name the one you mean');
        git(cwd, ['tag', '-d', 'signed']);
        write(cwd, { 'barn/job.coffer': contract('two', house['job.coffer'].replace('Plum Street 4', 'The barn')), 'barn/den.coffer': house['den.coffer'].replaceAll('from "', 'from "../') });
        expect((await since(cwd)).err).toBe(`The contracts here were signed at "two" and "${one.slice(0, 9)}": choose a house with --in, or name the commit`);
        expect((await since(cwd, '--in', 'barn')).before!.subject).toBe('State two');
    });
});
