import { defineRule } from './rule.ts';
import { knownCommits } from './support/commits.ts';
import { LARCH_STREET } from './support/contract.ts';
import { changed } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

export const commitAside = defineRule({
    name: 'commit-aside',
    severity: 'warning',
    title: 'A commit that the contract names is not in the history of what lies here',
    explanation: `
What lies here should have grown out of what was signed. A commit on another branch, or one that was amended after the signature, has
been left behind: what was changed in it is in none of the 3 or 30 commits since, and a comparison with it tells of the branch as
well as of the owner's wishes. Merge that branch, or name the commit that took its place.

It is found where git can be asked: on the command line, and in an editor with its git extension.`,
    wrong: changed(LARCH_STREET, 'at "5b1f0c7"', 'at "77c2e04"'),
    right: LARCH_STREET,
    basis: 'Common practice, no source.',
    check: {
        commits(subject, report) {
            for (const { name, what, known } of knownCommits(subject)) if (known.is === 'aside') report({
                ...wordsOf(name),
                message: `Commit ${name.value}, which the ${what} names, is not among those that led to what lies here: it is on another branch, or was replaced. Merge it, or name the commit that was agreed in this history.`,
            });
        },
    },
});
