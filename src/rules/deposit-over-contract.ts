import { defineRule } from './rule.ts';
import { contractOf, LARCH_STREET } from './support/contract.ts';
import { changed } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

export const depositOverContract = defineRule({
    name: 'deposit-over-contract',
    severity: 'error',
    title: 'The deposit is more than the contract',
    explanation: `
A deposit is a part of the sum that was signed, and due before any of it is earned. With $31,200.00 signed, a deposit of $312,000.00 has a
figure too many. How large a deposit may be, local law often limits: it is not looked at here.`,
    wrong: changed(LARCH_STREET, 'deposit    3,120 USD', 'deposit    312,000 USD'),
    right: LARCH_STREET,
    basis: 'Arithmetic.',
    check: {
        job({ job }, report) {
            const known = contractOf(job), deposit = known?.contract.deposit;
            if (!known || !deposit || known.now.deposit.lte(known.now.signed)) return;
            report({
                ...wordsOf(deposit), related: [{ at: known.contract.signed!.sum.at, message: 'What was signed.' }],
                message: `The deposit is ${known.money(known.now.deposit)}, and ${known.money(known.now.signed)} was signed.`,
            });
        },
    },
});
