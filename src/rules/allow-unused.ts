import { defineRule } from './rule.ts';
import { changed, HALL } from './support/examples.ts';

const wrong = changed(HALL, '  wall north  12\' 10"', '  wall north  12\' 10"  // allow rounding-left-over: hidden by the bookcase');

export const allowUnused = defineRule({
    name: 'allow-unused',
    severity: 'hint',
    title: 'A comment allows a finding that is not there',
    explanation: `
\`// allow RULE: reason\` silences one rule on its own line, or on the next where the comment stands alone. The finding stays
in reports, as allowed, with the reason:

    held-down  1/2"   // allow side-misses-blocking: the blocking is furred down here

Where nothing of that rule is found there, the mistake has been fixed, the line has moved, or the name is misspelled: take
the comment away, or it will hide the next mistake. As long as something in the file cannot be read, or one of its rooms is
not laid out, the rule was not asked, and nothing is said of the comment.`,
    wrong,
    right: changed(wrong, '  // allow rounding-left-over: hidden by the bookcase', ''),
    basis: 'How this program works.',
    check: {},           // said by allowances.ts, which sees all findings of a file
});
