import type { Layout, Section } from '../ceiling/model.ts';
import type { Fix, RelatedPlace, Severity } from '../findings/finding.ts';
import type { JobSettings, Stock } from '../job/model.ts';
import type { Source } from '../provenance/source.ts';

/**
 * One rule of the checker: one file, with its words, explanation, check and fix; its tests stand in tests/rules by the
 * same name. The reference page and `cofferwright explain` are made from it.
 */
export interface Rule<Subject extends keyof Subjects = keyof Subjects> {
    readonly name: string;
    /** What it looks at: once for each stock, each section (a profile with its arguments), or each room. */
    readonly looksAt: Subject;
    readonly severity: Severity;
    /** One line: what goes wrong. */
    readonly title: string;
    /** Markdown: why it matters, with worked numbers, and what to do. */
    readonly explanation: string;
    /** A whole file that triggers it, and the same file mended. Both run as tests. */
    readonly wrong: string;
    readonly right: string;
    /** Where the figures come from: a published source, or "common practice, no source". */
    readonly basis: string;
    check(subject: Subjects[Subject], report: Report): void;
}
export interface Subjects {
    stock: StockSubject;
    section: SectionSubject;
    room: RoomSubject;
}
export interface StockSubject { readonly stock: Stock; readonly job: JobSettings }
export interface SectionSubject { readonly section: Section; readonly job: JobSettings }
export interface RoomSubject { readonly layout: Layout; readonly job: JobSettings }

export interface Report {
    (finding: {
        readonly at: Source; readonly message: string;
        /** Where it differs from the rule's own. */
        readonly severity?: Severity;
        readonly related?: readonly RelatedPlace[]; readonly fixes?: readonly Fix[];
    }): void;
}

export function defineRule<S extends keyof Subjects>(rule: Rule<S>): Rule<S> { return rule; }
