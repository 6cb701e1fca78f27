import { defineRule } from './rule.ts';
import { LARCH_STREET, overContract } from './support/contract.ts';
import { changed } from './support/examples.ts';

export const billedOverContract = defineRule({
    name: 'billed-over-contract',
    severity: 'error',
    title: 'More was billed than the contract is for',
    explanation: `
All bills together are at most what was signed with the changes that were accepted. Of a contract of $31,200.00 with changes of
$1,170.00 no more than $32,370.00 can be billed: a bill of $30,000.00 after one of $3,120.00 is $750.00 too much. Each \`bill\` says what that
bill alone asked for, not what it came to with those before it.`,
    wrong: changed(LARCH_STREET, '    bill       "1" sum 3,120 USD on 2026-02-09\n', '    bill       "1" sum 3,120 USD on 2026-02-09\n    bill       "2" sum 30,000 USD on 2026-05-04\n'),
    right: LARCH_STREET,
    basis: 'Arithmetic.',
    check: {
        job({ job }, report) {
            const over = overContract(job, ({ bills }) => bills);
            if (over) report({
                ...over.place,
                message: `With this bill ${over.total} is billed, and the contract is for ${over.most} with its changes: ${over.tooMuch} too much. A bill says what it asked for by itself, without those before it.`,
            });
        },
    },
});
