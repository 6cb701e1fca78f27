import { crossing, toDate, type ToDate } from '../../billing/to-date.ts';
import type { JobSettings } from '../../job/model.ts';
import type { Given } from '../../provenance/source.ts';
import { printMoney } from '../../quantity/money.ts';
import type { Rational } from '../../quantity/rational.ts';
import { wordsOf } from './places.ts';

/** A contract for rules about one: two changes, one bill, one payment, nothing against the other. All of it is invented. */
export const LARCH_STREET = `edition 1

job "Larch Street 4" {
  contract {
    signed     31,200 USD on 2026-02-09 at "5b1f0c7"
    deposit    3,120 USD
    retainage  5%
    phase      "Boards and shop work" share 40% done 100%
    phase      "Beams up" share 45% done 30%
    phase      "Trim and filling" share 15%
    change     1 adds 1,450 USD on 2026-03-02 at "a40e9d2" for "A fourth line of beams in the study"
    change     2 deducts 280 USD on 2026-03-16 reference "letter of March 16"
    bill       "1" sum 3,120 USD on 2026-02-09
    payment    3,120 USD on 2026-02-11 for "deposit"
  }
}
`;

/** What of a contract is known, and how its money is printed. */
export function contractOf({ contract }: JobSettings): { readonly now: ToDate; readonly contract: NonNullable<JobSettings['contract']>; money(amount: Rational): string } | undefined {
    const now = contract && toDate(contract);
    return now && { now, contract, money: amount => printMoney(amount, now.currency) };
}

/** The first of some lines of a contract with which they come to more than it is for with its changes: where it stands, and the money in words. */
export function overContract(job: JobSettings, linesOf: (contract: NonNullable<JobSettings['contract']>) => readonly { readonly sum: Given<Rational> }[]) {
    const known = contractOf(job);
    if (!known) return undefined;
    const { contract, now: { sum }, money } = known, lines = linesOf(contract);
    const over = crossing(lines.map(one => one.sum.value), sum);
    return over && {
        place: { ...wordsOf(lines[over.at]!.sum), related: [{ at: contract.signed!.sum.at, message: 'What was signed.' }] },
        total: money(over.total), most: money(sum), tooMuch: money(over.total.sub(sum)),
    };
}
