import type { Given } from '../provenance/source.ts';

/** How a dimension is known, the better the further on: off a drawing, from somebody who said it, measured once, measured again and found the same. */
const STATUSES = ['drawn', 'told', 'measured', 'verified'] as const;
export type Status = (typeof STATUSES)[number];

/** `assumed`: nobody says the dimension at all; `unsaid`: nobody says how it is known. */
export type Known = Status | 'assumed' | 'unsaid';
const KNOWN: readonly Known[] = ['assumed', 'unsaid', ...STATUSES];
export function isBetter(a: Known, b: Known): boolean {
    return KNOWN.indexOf(a) > KNOWN.indexOf(b);
}

/** The last of those that are known least; undefined of none. */
export function leastKnown<One extends { readonly known: Known }>(all: readonly One[]): One | undefined {
    return all.reduce<One | undefined>((least, one) => (least && isBetter(one.known, least.known) ? least : one), undefined);
}

/** How a dimension is known, when and by whom, as far as it is said. Of what has a day or was found on site `measured` stands, and is not `said`. */
export interface Recorded { readonly status?: Given<Status>; readonly on?: string; readonly by?: string }

/** How it is known, when and by whom; `unsaid` of what says nothing. */
export function knownOf({ status, on, by }: Recorded = {}): { readonly known: Known } & Omit<Recorded, 'status'> {
    return { known: status?.value ?? 'unsaid', ...on && { on }, ...by && { by } };
}

/** Whether a dimension is known at least so well. */
export function isAsGood(status: Status | undefined, least: Status): boolean {
    return status !== undefined && STATUSES.indexOf(status) >= STATUSES.indexOf(least);
}

/** `drawn`, `told by the owner`, `measured 2026-03-02 by Ana`, `not said`, `assumed`. */
export function knownWords({ known, on, by }: { readonly known: Known } & Omit<Recorded, 'status'>): string {
    if (known === 'assumed') return 'assumed';
    return [known === 'unsaid' ? 'not said' : known, on, by && `by ${by}`].filter(Boolean).join(' ');
}

/** The same of what says of itself how it is known, or when or by whom; empty where it says nothing. */
export function recordWords(record: Recorded): string {
    return record.status?.said || record.on || record.by ? knownWords(knownOf(record)) : '';
}
