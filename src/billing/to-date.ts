import type { AcceptedChange, Contract, Phase } from '../job/contract.ts';
import type { Source } from '../provenance/source.ts';
import { roundMoney } from '../quantity/money.ts';
import { Rational } from '../quantity/rational.ts';

/**
 * The contract to date: what was signed and the changes that were accepted, as a schedule of values. Every sum is rounded once, to the currency's
 * minor unit, where it becomes a line; every total is a sum of lines as they stand there.
 */
export interface ToDate {
    readonly currency: string;
    readonly signed: Rational;
    readonly schedule: readonly ScheduleLine[];
    readonly changes: readonly ChangeLine[];
    /** What the changes come to together, those that deduct taken off. */
    readonly changed: Rational;
    /** What was signed with all changes: no bill asks for more. */
    readonly sum: Rational;
    /** What the schedule has too much, or too little where it is less than nothing, beside what was signed. */
    readonly off: Rational;
    readonly deposit: Rational;
    readonly billed: Rational;
    readonly paid: Rational;
}
/** `phase` is undefined where there is no schedule: then all of the work is one line. */
export interface ScheduleLine { readonly phase?: Phase; readonly value: Rational; readonly at: Source }
/** `value` is less than nothing where it deducts. */
export interface ChangeLine { readonly change: AcceptedChange; readonly value: Rational }

export const NOTHING = new Rational(0);
export function total(sums: readonly Rational[]): Rational {
    return sums.reduce((all, one) => all.add(one), NOTHING);
}

/** Undefined where something of it is said and could not be read: nothing follows from the rest then. */
export function toDate({ signed: said, lacks, deposit, phases, changes: accepted, bills, payments }: Contract): ToDate | undefined {
    if (!said || lacks) return undefined;
    const { currency } = said, signed = roundMoney(said.sum.value), schedule = scheduleOf(phases, signed);
    const changes = accepted.map((change): ChangeLine => ({ change, value: roundMoney(change.adds?.value ?? change.deducts!.value.neg()) }));
    const changed = total(changes.map(({ value }) => value));
    return {
        currency, signed, changes, changed, sum: signed.add(changed),
        schedule: schedule ?? [{ value: signed, at: said.sum.at }],
        off: schedule ? total(schedule.map(({ value }) => value)).sub(signed) : NOTHING,
        deposit: deposit ? roundMoney(deposit.value) : NOTHING,
        billed: total(bills.map(({ sum }) => roundMoney(sum.value))), paid: total(payments.map(({ sum }) => roundMoney(sum.value))),
    };
}

/** The first phase that says neither share nor sum has the rest, any other one nothing. */
function scheduleOf(phases: readonly Phase[], signed: Rational): ScheduleLine[] | undefined {
    if (phases.length === 0) return undefined;
    const values = phases.map(({ share, sum }) => (sum ? roundMoney(sum.value) : share && roundMoney(signed.mul(share.value))));
    const rest = signed.sub(total(values.filter(value => value !== undefined))), open = values.indexOf(undefined);
    return phases.map((phase, i) => ({ phase, value: values[i] ?? (i === open ? rest : NOTHING), at: phase.what.at }));
}

/** Where sums, each rounded as a line, come to more than there is, one after the other; and what they come to there. */
export function crossing(sums: readonly Rational[], most: Rational): { readonly at: number; readonly total: Rational } | undefined {
    let all = NOTHING;
    for (const [at, sum] of sums.entries()) {
        all = all.add(roundMoney(sum));
        if (all.gt(most)) return { at, total: all };
    }
    return undefined;
}
