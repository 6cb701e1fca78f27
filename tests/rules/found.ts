import type { Finding } from '../../src/findings/finding.ts';
import type { Commits } from '../../src/job/commits.ts';
import type { FileContent } from '../../src/job/file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { Rational } from '../../src/quantity/rational.ts';
import { runCommitRules } from '../../src/rules/run-commits.ts';

/** What a git would know, for examples and fixtures: of every other commit it knows nothing. */
const COMMITS: Commits = new Map([
    ['5b1f0c7', { is: 'behind', price: { amount: new Rational(31_384), currency: 'USD' } }], ['a40e9d2', { is: 'behind' }], ['5b1f0d7', { is: 'none' }], ['5b1', { is: 'several' }],
    ['77c2e04', { is: 'aside' }], ['0d5a9e3', { is: 'behind', price: { amount: new Rational(22_160), currency: 'USD' } }],
]);

/** Everything that is found in a file, with what takes longer and what has to be asked of git. */
export function allFindings(file: FileContent): Finding[] {
    return [...inspect(file).findings, ...inspectClosely(file), ...runCommitRules(file, COMMITS)];
}
