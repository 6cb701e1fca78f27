import type { Contract, KnownBy, Payment, SentBill } from '../job/contract.ts';
import { roundMoney } from '../quantity/money.ts';
import { Rational } from '../quantity/rational.ts';
import { NOTHING, toDate, total, type ChangeLine, type ScheduleLine, type ToDate } from './to-date.ts';

/**
 * A bill: what is done by now at the values of the schedule, less retainage, less what was paid. Each line is rounded once, and every sum is a sum of
 * lines, so that whoever adds up the paper comes to the same cent.
 */
export interface Bill {
    readonly toDate: ToDate;
    readonly isFinal: boolean;
    readonly work: readonly WorkLine[];
    /** Of all lines together. */
    readonly earned: Rational;
    /** What the client keeps for now; nothing on the final bill. */
    readonly retained: Rational;
    /** What it is a share of: all that is earned, or as much of it as the contract has something kept of. */
    readonly retainedOf: Rational;
    /** What of the deposit is due before it is earned. */
    readonly ahead: Rational;
    readonly payments: readonly Payment[];
    readonly before: readonly SentBill[];
    /** earned - retained + ahead - paid; less than nothing where more was paid than is due by now. */
    readonly due: Rational;
    /** What was billed before and is not paid. */
    readonly open: Rational;
    /** What is left of the contract once this bill is paid, retainage with it. */
    readonly toFinish: Rational;
    /** Its lines add up and none is done to more than all of it, so that nothing can be asked for beyond the contract. */
    readonly isConsistent: boolean;
    /** Lines that are not done: there is no final bill while there are any. */
    readonly undone: readonly WorkLine[];
}
/** `done` is a share of 1. */
export interface WorkLine { readonly of: ScheduleLine | ChangeLine; readonly value: Rational; readonly done: Rational; readonly earned: Rational }

/** How much of all pieces is known to be done; undefined where there are none. */
type Known = (by: KnownBy) => Rational | undefined;

/** Undefined where the contract could not be read, or where what a phase is known by is not known. */
export function billOf(contract: Contract, known: Known, isFinal: boolean): Bill | undefined {
    const now = toDate(contract), work = now && workOf(now, known);
    if (!now || !work) return undefined;
    const earned = total(work.map(line => line.earned)), undone = work.filter(({ done }) => !done.equals(1));
    const retainedOf = most(contract.retainedUntil ? least(earned, now.sum.mul(contract.retainedUntil.value)) : earned, NOTHING);
    const retained = isFinal || !contract.retainage ? NOTHING : roundMoney(retainedOf.mul(contract.retainage.value));
    const ahead = isFinal ? NOTHING : most(least(now.deposit, now.sum).sub(earned.sub(retained)), NOTHING);
    const due = earned.sub(retained).add(ahead).sub(now.paid);
    return {
        toDate: now, isFinal, work, earned, retained, retainedOf, ahead, payments: contract.payments, before: contract.bills, due,
        isConsistent: now.off.equals(0) && now.sum.gte(0) && now.schedule.every(({ value }) => value.gte(0)) && work.every(({ done }) => done.lte(1)),
        open: most(now.billed.sub(now.paid), NOTHING), toFinish: now.sum.sub(now.paid).sub(most(due, NOTHING)), undone,
    };
}

function workOf({ schedule, changes }: ToDate, known: Known): WorkLine[] | undefined {
    const lines = [...schedule, ...changes].map((of): WorkLine | undefined => {
        const done = doneOf(of, known);
        return done && { of, value: of.value, done, earned: roundMoney(of.value.mul(done)) };
    });
    const whole = lines.filter(line => line !== undefined);
    return whole.length === lines.length ? whole : undefined;
}

/** What deducts counts from the day it was accepted. What is known by pieces is rounded down to a hundredth, so that no more is billed than is there. */
function doneOf(of: ScheduleLine | ChangeLine, known: Known): Rational | undefined {
    if ('change' in of) return of.change.deducts ? new Rational(1) : of.change.done?.value ?? NOTHING;
    const { knownBy, done } = of.phase ?? {};
    if (!knownBy) return done?.value ?? NOTHING;
    return known(knownBy.value)?.mul(100).floor().div(100);
}

function most(a: Rational, b: Rational): Rational {
    return a.gt(b) ? a : b;
}
function least(a: Rational, b: Rational): Rational {
    return a.lt(b) ? a : b;
}
