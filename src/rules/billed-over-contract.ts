import { crossing } from '../billing/to-date.ts';
import { defineRule } from './rule.ts';
import { contractOf, LARCH_STREET } from './support/contract.ts';
import { changed } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

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
            const known = contractOf(job);
            if (!known) return;
            const { contract: { bills }, now: { sum, currency }, money } = known, over = crossing(bills.map(one => one.sum.value), sum, currency);
            if (over) report({
                ...wordsOf(bills[over.at]!.sum), related: [{ at: known.contract.signed!.sum.at, message: 'What was signed.' }],
                message: `With this bill ${money(over.total)} is billed, and the contract is for ${money(sum)} with its changes: ${money(over.total.sub(sum))} too much. A bill says what it asked for by itself, without those before it.`,
            });
        },
    },
});
