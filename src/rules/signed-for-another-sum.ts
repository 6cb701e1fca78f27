import { isNearSigned } from '../job/commits.ts';
import { printMoney } from '../quantity/money.ts';
import { defineRule } from './rule.ts';
import { knownCommits } from './support/commits.ts';
import { LARCH_STREET } from './support/contract.ts';
import { changed } from './support/examples.ts';
import { wordsOf } from './support/places.ts';

export const signedForAnotherSum = defineRule({
    name: 'signed-for-another-sum',
    severity: 'hint',
    title: 'What was signed is far from what the house came to at the commit that it was signed for',
    explanation: `
The sum of a contract comes from the bid of the commit that it names. A bid is rounded and haggled over: 31,200 USD for a house that
came to 31,384 is well. 31,200 USD for one that came to 22,160 is not: the commit is another than the one whose bid was signed, or a
figure was mistyped, and every change order is then reckoned from the wrong state. Up to 10 % either way nothing is said.

It is found where git can be asked, and where that state can be priced: rates and prices for all of it, in the currency of the contract.
Its boards are planned at once for that, without the search that an estimate makes, so that the sum may be a few dollars above the one
that was bid.`,
    wrong: changed(LARCH_STREET, 'at "5b1f0c7"', 'at "0d5a9e3"'),
    right: LARCH_STREET,
    basis: 'Common practice, no source.',
    check: {
        commits(subject, report) {
            const signed = subject.job.contract?.signed;
            if (!signed) return;
            const found = knownCommits(subject).find(({ what }) => what === 'contract'), price = found?.known.price;
            if (!price || isNearSigned(signed, price) !== false) return;
            const money = (amount: typeof price.amount): string => printMoney(amount, price.currency);
            report({
                ...wordsOf(signed.sum), related: [{ at: found.name.at, message: 'The commit.' }],
                message: `The contract is for ${money(signed.sum.value)}, and the house came to about ${money(price.amount)} at commit ${found.name.value}, its boards planned at once. Look whether it is the commit whose bid was signed, and the sum that was signed.`,
            });
        },
    },
});
