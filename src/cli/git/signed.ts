import type { JobSettings } from '../../job/model.ts';
import { UsageError } from '../exit-code.ts';
import type { Git } from './git.ts';
import { commitOf, revisionOf, type Revision } from './revision.ts';

/** Asked for as if it were the name of a commit: the one that the contract of the house names. Where none does, it is a name like any other. */
export const SIGNED = 'signed';

/**
 * The commit that houses were signed at, by their contracts. Throws a UsageError where none says it, where they say several, or where a tag or branch
 * of this name is another commit.
 */
export async function signedRevision(git: Git, jobs: readonly JobSettings[]): Promise<Revision> {
    const names = [...new Set(jobs.flatMap(({ contract }) => contract?.signed?.commit?.value ?? []))], [name] = names;
    const words = names.map(one => `"${one}"`).join(' and '), { commit: tagged } = await commitOf(git, SIGNED);
    if (name === undefined && tagged) return revisionOf(git, SIGNED);
    if (name === undefined) throw new UsageError(`No contract says here at which commit it was signed: write \`signed 29,400 USD on 2026-02-16 at "b7e41d0"\` into it, or name the commit`);
    if (names.length > 1) throw new UsageError(`The contracts here were signed at ${words}: choose a house with --in, or name the commit`);
    const revision = await revisionOf(git, name, ' (the contract names it as signed)');
    if (tagged !== undefined && tagged !== revision.commit) throw new UsageError(`The contract was signed at ${words}, and a tag or branch here that is called ${SIGNED} is another commit: name the one you mean`);
    return { ...revision, asked: SIGNED };
}
