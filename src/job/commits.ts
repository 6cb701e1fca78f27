import type { Given } from '../provenance/source.ts';
import type { Rational } from '../quantity/rational.ts';
import type { Contract, Signed } from './contract.ts';
import type { FileContent } from './file.ts';

/**
 * What is known of a commit that a contract names: it is in the history that led to what lies here, or aside of it, or nowhere here; or its name is
 * the beginning of several. Whoever can ask git hands it in; a commit that nothing is known of is not in the list.
 */
export interface CommitThere {
    readonly is: 'behind' | 'aside' | 'none' | 'several';
    /** What the house comes to as it was then, by its own rates, in its own currency: exact. Undefined where nobody reckoned it, or it cannot be. */
    readonly price?: Price;
}
export interface Price { readonly amount: Rational; readonly currency: string }
/** By the name that the text has. */
export type Commits = ReadonlyMap<string, CommitThere>;

/** The names of the commits in the contract that stands in this file; none of a file whose contract stands in another. */
export function commitNamesIn({ uri, job: { at, contract } }: Pick<FileContent, 'uri' | 'job'>): string[] {
    return at?.uri === uri ? commitsNamedBy(contract).map(({ value }) => value) : [];
}

/** Sums are rounded and haggled over, and boards that were looked for longer are cheaper, by less than this share of what was signed. */
export const NEAR_SIGNED = 0.1;

/** Whether a price is within a share of the sum that was signed; undefined where they are in two currencies. */
export function isNearSigned({ sum, currency }: Signed, price: Price, share = NEAR_SIGNED): boolean | undefined {
    return price.currency === currency ? price.amount.sub(sum.value).abs().lte(sum.value.mul(share)) : undefined;
}

/** The commits that a contract names. */
export function commitsNamedBy(contract: Contract | undefined): Given<string>[] {
    return [contract?.signed, ...contract?.changes ?? []].flatMap(line => line?.commit ?? []);
}
