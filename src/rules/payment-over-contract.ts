import { crossing } from '../billing/to-date.ts';
import { defineRule } from './rule.ts';
import { contractOf, LARCH_STREET } from './support/contract.ts';
import { changed } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

export const paymentOverContract = defineRule({
    name: 'payment-over-contract',
    severity: 'error',
    title: 'More was paid than the contract is for',
    explanation: `
All payments together are at most what was signed with the changes that were accepted. Of a contract of $31,200.00 with changes of
$1,170.00 no more than $32,370.00 can be paid: with a payment of $29,300.00 after a deposit of $3,120.00 it is $50.00 too much, so that a
change is missing, or a payment is here twice.`,
    wrong: changed(LARCH_STREET, '    payment    3,120 USD on 2026-02-11 for "deposit"\n', '    payment    3,120 USD on 2026-02-11 for "deposit"\n    payment    29,300 USD on 2026-05-04\n'),
    right: LARCH_STREET,
    basis: 'Arithmetic.',
    check: {
        job({ job }, report) {
            const known = contractOf(job);
            if (!known) return;
            const { contract: { payments }, now: { sum, currency }, money } = known, over = crossing(payments.map(one => one.sum.value), sum, currency);
            if (over) report({
                ...wordsOf(payments[over.at]!.sum), related: [{ at: known.contract.signed!.sum.at, message: 'What was signed.' }],
                message: `With this payment ${money(over.total)} is paid, and the contract is for ${money(sum)} with its changes: ${money(over.total.sub(sum))} too much. Either a change is missing, or a payment is here twice.`,
            });
        },
    },
});
