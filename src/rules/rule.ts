import type { LaidOut, Layout, Section } from '../ceiling/model.ts';
import type { DryFit } from '../dryfit/model.ts';
import type { Fix, RelatedPlace, Severity } from '../findings/finding.ts';
import type { Commits } from '../job/commits.ts';
import type { JobSettings, Stock } from '../job/model.ts';
import type { Source } from '../provenance/source.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';

/**
 * One rule of the checker: one file, with its words, explanation, check and fix; its tests stand in tests/rules by the
 * same name. The reference page and `cofferwright explain` are made from it.
 */
export interface Rule {
    readonly name: string;
    readonly severity: Severity;
    /** One line: what goes wrong. */
    readonly title: string;
    /** Markdown: why it matters, with worked numbers, and what to do. */
    readonly explanation: string;
    /**
     * A whole file that triggers it, and the same file mended. Both run as tests. Where it takes several files, lines
     * `// file PATH` part them, and the last is the one that is looked at.
     */
    readonly wrong: string;
    readonly right: string;
    /** Where the figures come from: a published source, or "common practice, no source". */
    readonly basis: string;
    /** Rules that name a deeper cause: where one of them speaks at the same words, this one is silent. */
    readonly silentAfter?: readonly string[];
    readonly check: Checks;
}

/**
 * What a rule looks at: the job said in the file, each stock, each section (a profile with its arguments), each room; and,
 * off the path of a keystroke, the cut list of a room: how it goes together, and whether its work has a price; and, where git can be asked, the commits
 * that the job names.
 */
export interface Checks {
    job?(subject: JobSubject, report: Report): void;
    stock?(subject: StockSubject, report: Report): void;
    section?(subject: SectionSubject, report: Report): void;
    room?(subject: RoomSubject, report: Report): void;
    fit?(subject: FitSubject, report: Report): void;
    commits?(subject: CommitsSubject, report: Report): void;
}
interface JobSubject { readonly job: JobSettings }
interface StockSubject { readonly stock: Stock; readonly job: JobSettings }
interface SectionSubject { readonly section: Section; readonly job: JobSettings }
interface RoomSubject {
    readonly layout: Layout;
    readonly job: JobSettings;
    /** Its cut list, for the rules that need it: it is made when one asks. None where the room could not be laid out. */
    pieces(): readonly Piece[];
}

/** `commits`: as far as anything is known of them. */
export interface CommitsSubject { readonly job: JobSettings; readonly commits: Commits }
interface FitSubject { readonly layout: LaidOut; readonly fit: DryFit; readonly takeOff: TakeOff; readonly job: JobSettings }

export interface Report {
    (found: Found): void;
}
/** What a check hands over; run.ts makes the finding of it, and decides in which file it is shown. */
export interface Found {
    /** The words that cause it, and the arguments they came through. */
    readonly at: Source;
    readonly via?: readonly Source[];
    readonly message: string;
    /** Where it differs from the rule's own. */
    readonly severity?: Severity;
    readonly related?: readonly RelatedPlace[];
    readonly fixes?: readonly Fix[];
}

export function defineRule<const Name extends string>(rule: NamedRule<Name>): NamedRule<Name> { return rule; }
/** Its name is known by its type. */
export type NamedRule<Name extends string> = Rule & { readonly name: Name };
