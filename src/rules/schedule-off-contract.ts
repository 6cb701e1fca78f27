import type { Contract, Phase } from '../job/contract.ts';
import type { ToDate } from '../billing/to-date.ts';
import type { Fix } from '../findings/finding.ts';
import { printAmount } from '../quantity/money.ts';
import { defineRule, type Found } from './rule.ts';
import { contractOf, LARCH_STREET } from './support/contract.ts';
import { changed } from './support/examples.ts';
import { replacing } from './support/fixes.ts';
import { wordsOf } from './support/places.ts';
import { shareText } from './support/percents.ts';

export const scheduleOffContract = defineRule({
    name: 'schedule-off-contract',
    severity: 'error',
    title: 'The schedule of values does not come to the sum that was signed',
    explanation: `
The phases together are what was signed, to the cent: a bill asks for what is done of each of them, and when all are done it asks
for the contract, no more and no less. Phases of 40 %, 45 % and 13 % of $31,200.00 come to $30,576.00: $624.00 of the contract would
never be billed. A phase that says neither \`share\` nor \`sum\` has the rest, which also takes the cents that shares leave. Changes
are lines of their own and do not count here.`,
    wrong: changed(LARCH_STREET, 'share 15%', 'share 13%'),
    right: LARCH_STREET,
    basis: 'That a schedule of values adds up to the contract: 48 CFR 52.232-5(b)(1)(i) has a request for payment itemized by the elements of the work; that they come to the whole price, common practice, no source.',
    check: {
        job({ job }, report) {
            const known = contractOf(job);
            if (!known || known.contract.phases.some(({ share, sum }) => share?.value.gt(1) || sum?.value.gt(known.now.signed))) return;
            const { contract: { phases, signed }, now: { off, schedule, signed: whole }, money } = known, related = [{ at: signed!.sum.at, message: 'Signed for here.' }];
            const open = phases.filter(isOpen), [rest, second] = open;
            if (second) {
                report({ ...wordsOf(second.what), related: [{ at: rest!.what.at, message: 'This one has it.' }], message: `Only one phase can have the rest: give "${second.what.value}" its share or its sum.` });
                return;
            }
            const left = rest && schedule.find(({ phase }) => phase === rest)!.value;
            if (left?.lt(0)) {
                report({ ...wordsOf(rest!.what), related, message: `Nothing is left for "${rest!.what.value}": the other phases come to ${money(whole.sub(left))}, and ${money(whole)} was signed.` });
                return;
            }
            if (off.equals(0)) return;
            report({
                ...wordsOf(lastSaid(phases)), related,
                message: `The phases come to ${money(whole.add(off))}${sharesIn(phases)}, and ${money(whole)} was signed: ${money(off.abs())} too ${off.gt(0) ? 'much' : 'little'}. Together they have to be what was signed; a phase without share and sum has the rest.`,
                fixes: fixOf(known.now, known.contract),
            } satisfies Found);
        },
    },
});

function isOpen({ share, sum }: Phase): boolean {
    return !share && !sum;
}

function lastSaid(phases: readonly Phase[]): NonNullable<Phase['share']> {
    const { share, sum } = phases.at(-1)!;
    return share ?? sum!;
}

/** ` (98%)`, where all of them are shares. */
function sharesIn(phases: readonly Phase[]): string {
    const shares = phases.flatMap(({ share }) => share?.value ?? []);
    return shares.length < phases.length ? '' : ` (${shareText(shares.reduce((all, one) => all.add(one)))})`;
}

/** The last phase as it would have to be, where it can be written: nothing where there would be nothing left of it. */
function fixOf({ off, schedule, signed, currency }: ToDate, { phases }: Contract): Fix[] {
    const last = schedule.at(-1)!.value.sub(off), { share, sum, what } = phases.at(-1)!, title = (text: string): string => `Make "${what.value}" ${text}`;
    if (last.lte(0)) return [];
    if (sum) { const text = `${printAmount(last)} ${currency}`; return replacing(sum, text, title(text)); }
    const percent = last.div(signed).mul(100);
    return percent.mul(10000).d === 1n ? replacing(share, shareText(percent.div(100)), title(shareText(percent.div(100)))) : [];
}
