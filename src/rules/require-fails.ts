import { defineRule } from './rule.ts';
import { changed } from './support/examples.ts';

const wrong = `edition 1

stock poplar-1x6 { size 1x6 }
stock poplar-1x8 { size 1x8 }

profile porch-box(groove: Length = 5/16") {
  require groove <= 1/4" "our bit cuts no wider"

  blocking { stock poplar-1x6 }
  sides {
    stock   poplar-1x8
    rabbet  groove x 1/4" on lower-back
  }
  bottom { stock poplar-1x6 }
}
`;

export const requireFails = defineRule({
    name: 'require-fails',
    severity: 'error',
    title: 'A value breaks what the profile requires of it',
    explanation: `
A profile may say what its parameters have to satisfy, with the reason:

    require groove <= 1/4" "our bit cuts no wider"

With a groove of 5/16" that does not hold. It is shown at the \`require\` where the profile's own defaults break it, and at
the argument where a room (or a profile that is \`like\` it) gives the value.

What else goes wrong with the same argument is not reported as long as the requirement is broken.`,
    wrong,
    right: changed(wrong, 'Length = 5/16"', 'Length = 3/16"'),
    basis: 'What the profile\'s author wrote.',
    check: {
        section({ section: { profile } }, report) {
            for (const { at, holds, text, message, left, operator, right, via } of profile.requires) {
                if (holds !== false) continue;
                const found = left ? `${left} is not ${inWords(operator!)} ${right!}` : `${text} does not hold`;
                report({
                    at, via,
                    message: `${profile.name} requires ${text}: ${found}${message ? ` (${message})` : ''}.`,
                });
            }
        },
    },
});

function inWords(operator: string): string {
    switch (operator) {
        case '<': return 'less than';
        case '<=': return 'at most';
        case '>': return 'more than';
        case '>=': return 'at least';
        default: return operator;
    }
}
