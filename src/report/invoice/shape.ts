import type { MoneyJson, Whole } from '../amounts-json.ts';
import type { SourceJson } from '../place-json.ts';
import type { StandingJson } from '../standing-json.ts';

/**
 * What `cofferwright invoice --format json` prints: the contract to date of every house, and the bill that follows from it.
 * @title Invoices
 */
export interface InvoicesJson {
    readonly version: 1;
    readonly kind: 'cofferwright.invoice';
    readonly standing: StandingJson;
    readonly invoices: readonly Invoice[];
    /** Houses that nothing is billed for. */
    readonly none: readonly { readonly job: string | null; readonly why: string }[];
}

interface Invoice {
    readonly job: string | null;
    readonly number: string;
    /** As it was given; null: nobody gave one. */
    readonly date: string | null;
    /** All of the work is done, and what was retained is asked for. */
    readonly final: boolean;
    readonly contractor: string | null;
    readonly client: string | null;
    /** Why it is not fit to be sent yet. */
    readonly draft: readonly string[];
    readonly contract: Contract;
    /** Every line of the schedule of values, and every change, in the order of the text. */
    readonly work: readonly Work[];
    /** The sum of all lines. */
    readonly earned: MoneyJson;
    readonly retained: MoneyJson;
    /** What of the deposit is due before it is earned. */
    readonly ahead: MoneyJson;
    readonly payments: readonly { readonly on: DayJson; readonly amount: MoneyJson; readonly what: string | null }[];
    /** earned - retained + ahead - payments. */
    readonly due: MoneyJson;
    readonly billedBefore: readonly { readonly number: string; readonly on: DayJson; readonly amount: MoneyJson }[];
    /** What of that is not paid; it is in what is due. */
    readonly open: MoneyJson;
    /** Left of the contract once this bill is paid, retainage with it. */
    readonly left: MoneyJson;
    /** How many days after its date it is due; null: nobody says. */
    readonly dueDays: Whole | null;
    readonly remit: readonly string[];
}

interface Contract {
    readonly signed: MoneyJson;
    readonly on: DayJson;
    /** The commit that it was signed for. */
    readonly commit: string | null;
    readonly source: SourceJson;
    readonly changes: readonly Change[];
    /** What was signed with all changes: no bill asks for more. */
    readonly sum: MoneyJson;
}

interface Change {
    readonly number: Whole;
    readonly on: DayJson;
    /** Less than nothing where it deducts. */
    readonly amount: MoneyJson;
    readonly what: string | null;
    readonly commit: string | null;
    readonly reference: string | null;
    readonly source: SourceJson;
}

interface Work {
    readonly what: string;
    /** The number of the change; null where it is a phase. */
    readonly change: Whole | null;
    readonly value: MoneyJson;
    /** A share of 1, as a fraction. */
    readonly done: string;
    readonly earned: MoneyJson;
    readonly source: SourceJson;
}

/**
 * A day.
 * @pattern ^\d{4}-\d{2}-\d{2}$
 */
export type DayJson = string;
