import type { AcceptedChange, Phase } from '../job/contract.ts';
import type { Given } from '../provenance/source.ts';
import { printMoney } from '../quantity/money.ts';
import type { Rational } from '../quantity/rational.ts';
import { defineRule } from './rule.ts';
import { LARCH_STREET } from './support/contract.ts';
import { changed } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { shareText } from './support/percents.ts';

export const phaseOverWhole = defineRule({
    name: 'phase-over-whole',
    severity: 'error',
    title: 'A phase or a change is done to more than all of it, or has more than the contract',
    explanation: `
What is done of a phase is at most 100 % of it, and a phase has at most what was signed. \`done 130%\` of a phase of $14,040.00 would
bill $18,252.00 for work that was sold for $14,040.00. Work beyond what was signed is a change: it has a number, a day and a sum of
its own.`,
    wrong: changed(LARCH_STREET, 'share 45% done 30%', 'share 45% done 130%'),
    right: LARCH_STREET,
    basis: 'Arithmetic.',
    check: {
        job({ job: { contract } }, report) {
            if (!contract) return;
            const done = (what: string, share: Given<Rational> | undefined): void => {
                if (share?.value.gt(1)) report({ ...wordsOf(share), message: `${what} is ${shareText(share.value)} done: 100% is all of it. Work beyond it is a change of its own.`, fixes: replacing(share, '100%', 'Write 100%') });
            };
            for (const phase of contract.phases) { done(phaseNamed(phase), phase.done); }
            for (const change of contract.changes) done(changeNamed(change), change.done);
            for (const phase of contract.phases) {
                const { signed } = contract, { share, sum } = phase;
                if (share?.value.gt(1)) report({ ...wordsOf(share), message: `${phaseNamed(phase)} has ${shareText(share.value)} of what was signed: 100% is all of it.` });
                else if (signed && sum?.value.gt(signed.sum.value)) report({
                    ...wordsOf(sum), related: [{ at: signed.sum.at, message: 'Signed for here.' }],
                    message: `${phaseNamed(phase)} has ${printMoney(sum.value, signed.currency)}, and ${printMoney(signed.sum.value, signed.currency)} was signed for all phases together.`,
                });
            }
        },
    },
});

function phaseNamed({ what }: Phase): string {
    return `The phase "${what.value}"`;
}
function changeNamed({ number }: AcceptedChange): string {
    return `Change ${number.value}`;
}
