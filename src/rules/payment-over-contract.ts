import { defineRule } from './rule.ts';
import { LARCH_STREET, overContract } from './support/contract.ts';
import { changed } from './support/examples.ts';

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
            const over = overContract(job, ({ payments }) => payments);
            if (over) report({
                ...over.place,
                message: `With this payment ${over.total} is paid, and the contract is for ${over.most} with its changes: ${over.tooMuch} too much. Either a change is missing, or a payment is here twice.`,
            });
        },
    },
});
