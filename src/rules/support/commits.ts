import { commitsNamedBy, type CommitThere } from '../../job/commits.ts';
import type { JobSettings } from '../../job/model.ts';
import type { Given } from '../../provenance/source.ts';
import type { CommitsSubject } from '../rule.ts';

/** The commits of a contract that something is known of. */
export function knownCommits({ job, commits }: CommitsSubject): { readonly name: Given<string>; readonly what: 'contract' | 'change'; readonly known: CommitThere }[] {
    return commitsNamedBy(job.contract).flatMap(name => {
        const known = commits.get(name.value);
        return known ? [{ name, what: isSigned(name, job) ? 'contract' as const : 'change' as const, known }] : [];
    });
}

function isSigned(name: Given<string>, { contract }: JobSettings): boolean {
    return name === contract?.signed?.commit;
}
