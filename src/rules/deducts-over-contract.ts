import { crossing } from '../billing/to-date.ts';
import { defineRule } from './rule.ts';
import { contractOf, LARCH_STREET } from './support/contract.ts';
import { changed } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

export const deductsOverContract = defineRule({
    name: 'deducts-over-contract',
    severity: 'error',
    title: 'Changes deduct more than the contract is for',
    explanation: `
What changes deduct is at most what was signed and what other changes add. Of $31,200.00 signed and $1,450.00 added a change that deducts
$34,000.00 leaves $1,350.00 less than nothing: nobody owes a client for work that is not done.`,
    wrong: changed(LARCH_STREET, 'deducts 280 USD', 'deducts 34,000 USD').replace(/ {4}(bill|payment) .*\n/g, ''),
    right: LARCH_STREET,
    basis: 'Arithmetic.',
    check: {
        job({ job }, report) {
            const known = contractOf(job);
            if (!known) return;
            const { contract: { changes, signed }, now, money } = known, less = changes.filter(({ deducts }) => deducts);
            const most = now.changes.reduce((sum, { value }) => (value.gt(0) ? sum.add(value) : sum), now.signed);
            const over = crossing(less.map(({ deducts }) => deducts!.value), most);
            if (over) report({
                ...wordsOf(less[over.at]!.deducts!), related: [{ at: signed!.sum.at, message: 'What was signed.' }],
                message: `With change ${less[over.at]!.number.value} ${money(over.total)} is deducted, and there is ${money(most)} in all, signed and added.`,
            });
        },
    },
});
