import fc from 'fast-check';
import type { AcceptedChange, Contract, Payment, Phase, SentBill } from '../../src/job/contract.ts';
import type { Given } from '../../src/provenance/source.ts';
import { Rational } from '../../src/quantity/rational.ts';

const nowhere = { uri: 'memory:contract', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } };
export function given<T>(value: T): Given<T> {
    return { value, at: nowhere, said: true };
}
const sum = (amount: string): Given<Rational> => given(new Rational(amount));

/** What a contract says, in plain words: figures are decimal texts, shares of 1. */
export interface Plain {
    readonly signed: string; readonly deposit?: string; readonly retainage?: string; readonly until?: string;
    readonly phases?: readonly { readonly share?: string; readonly sum?: string; readonly done?: string }[];
    readonly changes?: readonly { readonly adds?: string; readonly deducts?: string; readonly done?: string }[];
    readonly bills?: readonly string[]; readonly payments?: readonly string[];
}

export function contractOf({ signed, deposit, retainage, until, phases = [], changes = [], bills = [], payments = [] }: Plain): Contract {
    const on = given('2026-03-02');
    return {
        at: nowhere, lacks: false, signed: { sum: sum(signed), currency: 'USD', on }, remit: [],
        ...deposit !== undefined && { deposit: sum(deposit) }, ...retainage !== undefined && { retainage: sum(retainage) },
        ...until !== undefined && { retainedUntil: sum(until) },
        phases: phases.map((one, i): Phase => ({ what: given(`phase ${i + 1}`), ...sums(one) })),
        changes: changes.map((one, i): AcceptedChange => ({ number: given(i + 1), on, ...sums(one) })),
        bills: bills.map((one, i): SentBill => ({ number: given(String(i + 1)), sum: sum(one), on })),
        payments: payments.map((one): Payment => ({ sum: sum(one), on })),
    };
}

/** Those of its words that are said. */
function sums<Word extends string>(said: Readonly<Partial<Record<Word, string>>>): Partial<Record<Word, Given<Rational>>> {
    const words = Object.entries<string | undefined>(said).flatMap(([word, amount]) => (amount === undefined ? [] : [[word, sum(amount)] as const]));
    return Object.fromEntries(words) as Partial<Record<Word, Given<Rational>>>;
}

const cents = (most: number): fc.Arbitrary<string> => fc.integer({ min: 0, max: most }).map(n => (n / 100).toFixed(2));
/** Of 1, to a hundredth of a percent. */
const share = fc.integer({ min: 0, max: 10_000 }).map(n => (n / 10_000).toFixed(4));

/** What a phase has: at most a seventh. */
const value = fc.oneof(fc.integer({ min: 0, max: 1400 }).map(n => ({ share: (n / 10_000).toFixed(4) })), cents(10_000).map(sum => ({ sum })));

/** Contracts that do not contradict themselves: shares, sums and one phase that has the rest; what changes deduct is there. */
export const randomContracts: fc.Arbitrary<Plain> = fc.record({
    signed: fc.integer({ min: 100_000, max: 30_000_000 }).map(n => (n / 100).toFixed(2)),
    retainage: fc.option(fc.integer({ min: 0, max: 2000 }).map(n => (n / 10_000).toFixed(4)), { nil: undefined }),
    until: fc.option(share, { nil: undefined, freq: 2 }),
    deposit: fc.option(cents(100_000), { nil: undefined }),
    // seven phases of at most a seventh each leave something for the last
    phases: fc.tuple(fc.array(fc.tuple(value, fc.option(share, { nil: undefined })), { maxLength: 6 }), share)
        .map(([some, rest]) => [...some.map(([value, done]) => ({ ...value, ...done !== undefined && { done } })), { done: rest }]),
    changes: fc.array(fc.oneof(fc.record({ adds: cents(500_000), done: share }), fc.record({ deducts: cents(1000) })), { maxLength: 5 }),
    payments: fc.array(cents(20_000), { maxLength: 5 }), bills: fc.array(cents(20_000), { maxLength: 4 }),
}).map(({ retainage, until, deposit, ...rest }) => ({
    ...rest, ...retainage !== undefined && { retainage }, ...until !== undefined && { until }, ...deposit !== undefined && { deposit },
}));
