import { defineRule } from './rule.ts';
import { knownCommits } from './support/commits.ts';
import { LARCH_STREET } from './support/contract.ts';
import { changed } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

export const noSuchCommit = defineRule({
    name: 'no-such-commit',
    severity: 'warning',
    title: 'A commit that the contract names is not in this repository',
    explanation: `
The commit says what was agreed: comparisons with it and every change order are reckoned from it. One that is not there, by a digit that
is wrong or in a history that was written anew, leaves nobody able to show what 31,200 USD were signed for. Seven digits of its number
are usual; where a beginning fits two commits, write more of it: \`git log --oneline\` lists them.

It is found where git can be asked: on the command line, and in an editor with its git extension. Nothing is said where the clone holds
only the last of the history, since the commit may be in the rest.`,
    wrong: changed(LARCH_STREET, 'at "5b1f0c7"', 'at "5b1f0d7"'),
    right: LARCH_STREET,
    basis: 'Common practice, no source.',
    check: {
        commits(subject, report) {
            for (const { name, known } of knownCommits(subject)) {
                if (known.is === 'none') report({ ...wordsOf(name), message: `There is no commit ${name.value} in this repository: nobody can show what was agreed then. Look its number up in git log.` });
                if (known.is === 'several') report({ ...wordsOf(name), message: `${name.value} is the beginning of several commits: nobody can tell which of them was agreed. Write more of its number.` });
            }
        },
    },
});
