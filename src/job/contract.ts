import type { Given, Source } from '../provenance/source.ts';
import type { Rational } from '../quantity/rational.ts';

/**
 * What was signed for a house and what came of it since, line by line as the text has it. Sums are exact, in the major unit of the contract's own
 * currency; shares are 1 for 100 %; days are `2026-03-04`.
 */
export interface Contract {
    /** Its word. */
    readonly at: Source;
    /** Something in it is said and could not be read: what follows from all of it is then unknown. */
    readonly lacks: boolean;
    readonly signed?: Signed;
    readonly deposit?: Given<Rational>;
    readonly retainage?: Given<Rational>;
    /** The share of the contract to date that is done when no more is kept. */
    readonly retainedUntil?: Given<Rational>;
    /** The schedule of values. */
    readonly phases: readonly Phase[];
    readonly changes: readonly AcceptedChange[];
    readonly bills: readonly SentBill[];
    readonly payments: readonly Payment[];
    readonly dueDays?: Given<number>;
    readonly remit: readonly Given<string>[];
}

export interface Signed {
    readonly sum: Given<Rational>;
    readonly currency: string;
    readonly on: Given<string>;
    /** The commit that it was signed for. */
    readonly commit?: Given<string>;
}

/** Of `share` and `sum` one; neither where it has the rest. */
export interface Phase {
    readonly what: Given<string>;
    readonly share?: Given<Rational>;
    readonly sum?: Given<Rational>;
    readonly done?: Given<Rational>;
    readonly knownBy?: Given<KnownBy>;
}
/** Whereby it is known how much is done: by the pieces that are cut, or that are up. */
export type KnownBy = 'cut' | 'put-up';

/** `adds` or `deducts`: a sum of nothing or more. */
export interface AcceptedChange {
    readonly number: Given<number>;
    readonly adds?: Given<Rational>;
    readonly deducts?: Given<Rational>;
    readonly on: Given<string>;
    readonly commit?: Given<string>;
    readonly reference?: Given<string>;
    readonly what?: Given<string>;
    readonly done?: Given<Rational>;
}
export interface SentBill { readonly number: Given<string>; readonly sum: Given<Rational>; readonly on: Given<string> }
export interface Payment { readonly sum: Given<Rational>; readonly on: Given<string>; readonly what?: Given<string> }
