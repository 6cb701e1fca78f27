import { DocumentState } from 'langium';
import type { CofferSharedServices } from '../../language/coffer-services.ts';
import { readFile } from '../../language/read-file.ts';
import { isBuiltin } from '../../language/workspace/builtin.ts';
import type { Finding } from '../../findings/finding.ts';
import { commitNamesIn, type CommitThere } from '../../job/commits.ts';
import type { FileContent } from '../../job/file.ts';
import { wholePrice } from '../../pipeline/price.ts';
import { runCommitRules } from '../../rules/run-commits.ts';
import type { Comparisons } from './comparisons.ts';
import type { History } from './history.ts';

/**
 * What is wrong with the commits that the contract of a file names, as far as the editor's git tells. What the house came to then is known once
 * somebody has had it compared with what was signed. Undefined while git is asked.
 */
export function commitFindings(file: FileContent, history: Pick<History, 'commitsNamed'>, comparisons: Pick<Comparisons, 'ofSigned'>): Finding[] | undefined {
    const { uri, job: { contract } } = file, names = commitNamesIn(file);
    if (names.length === 0) return [];
    const commits = history.commitsNamed(uri, names), signed = contract?.signed?.commit?.value;
    const known = signed === undefined ? undefined : commits?.get(signed), price = priceThen(comparisons, uri);
    return commits && runCommitRules(file, known && price ? new Map([...commits, [signed!, { ...known, price }]]) : commits);
}

function priceThen(comparisons: Pick<Comparisons, 'ofSigned'>, uri: string): CommitThere['price'] {
    const before = comparisons.ofSigned(uri)?.house.before;
    return before && wholePrice(before.priced);
}

/** Addresses of the files whose job names a commit. */
export function filesWithContract({ workspace }: CofferSharedServices): string[] {
    const built = workspace.LangiumDocuments.all.toArray().filter(({ uri, state }) => !isBuiltin(uri) && state === DocumentState.Validated);
    return built.filter(document => commitNamesIn(readFile(document)).length > 0).map(({ uri }) => uri.toString());
}
