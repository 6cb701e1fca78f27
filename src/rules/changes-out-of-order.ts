import { defineRule } from './rule.ts';
import { LARCH_STREET } from './support/contract.ts';
import { changed } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';

export const changesOutOfOrder = defineRule({
    name: 'changes-out-of-order',
    severity: 'error',
    title: 'Changes of the contract are not numbered one after the other, or not in the order of their days',
    explanation: `
Changes are numbered from 1, one after the other, as they were accepted: a gap says that one is missing, a number that comes twice
that one is counted twice. One with an earlier day than the change before it, or than the contract itself, has the wrong day or the
wrong number: change 2 of March 16 cannot come before change 1 of April 2.`,
    wrong: changed(LARCH_STREET, 'change     2 deducts', 'change     3 deducts'),
    right: LARCH_STREET,
    basis: 'Common practice, no source.',
    check: {
        job({ job: { contract } }, report) {
            const { changes = [], signed } = contract ?? {};
            let before = signed && { on: signed.on, what: 'the contract was signed' };
            for (const [i, { number, on }] of changes.entries()) {
                if (number.value !== i + 1 && !contract!.lacks) report({
                    ...wordsOf(number), message: `This is change ${i + 1} of the contract, and its number is ${number.value}. Changes are numbered one after the other, in the order in which they were accepted.`,
                    fixes: replacing(number, String(i + 1), `Number it ${i + 1}`),
                });
                if (before && on.value < before.on.value) report({
                    ...wordsOf(on), related: [{ at: before.on.at, message: 'That day.' }],
                    message: `Change ${number.value} was accepted on ${on.value}, before ${before.what} on ${before.on.value}. Put them in their order, or mend the day.`,
                });
                before = { on, what: `change ${number.value}` };
            }
        },
    },
});
