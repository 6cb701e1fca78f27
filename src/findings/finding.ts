import { compareTexts } from '../plain/order.ts';
import { compareSources, type Range, type Source } from '../provenance/source.ts';

export type Severity = 'error' | 'warning' | 'hint';

/**
 * Something wrong, at the words that cause it. Every finding of the program, from a missing brace to a bottom that
 * will not go in, is one of these; adapters only translate it.
 */
export interface Finding {
    /** Kebab-case name; `cofferwright explain RULE` prints its page. */
    readonly rule: string;
    readonly severity: Severity;
    readonly at: Source;
    /** In the carpenter's words, with both numbers, and what would be right. Plain text, one paragraph. */
    readonly message: string;
    /** Where the other half of the contradiction stands. */
    readonly related: readonly RelatedPlace[];
    readonly fixes: readonly Fix[];
    /** The room it is about, where it is about one. */
    readonly room?: string;
    /** Set where a comment in the text allows it, with the reason given there. */
    readonly allowed?: { readonly reason: string; readonly at: Source };
}
export interface RelatedPlace { readonly at: Source; readonly message: string }

/** A change of text that mends the finding. */
export interface Fix { readonly title: string; readonly edits: readonly TextChange[]; readonly preferred?: boolean }
export interface TextChange { readonly uri: string; readonly range: Range; readonly text: string }

/** What a check says. Everything but rule, place and words has a usual value. */
export type Said = Pick<Finding, 'rule' | 'at' | 'message'> & Partial<Pick<Finding, 'severity' | 'related' | 'fixes' | 'room'>>;

export function findingOf({ rule, severity = 'error', at, message, related = [], fixes = [], room }: Said): Finding {
    return { rule, severity, at, message, related, fixes, ...room !== undefined && { room } };
}

/** Puts a text in the place of some words; `preferred` where nothing else can have been meant. */
export function replacing(at: Source, text: string, { title = `Write ${text}`, preferred = true } = {}): Fix {
    return { title, edits: [{ uri: at.uri, range: at.range, text }], ...preferred && { preferred } };
}

/** The order in which findings are listed: by place in the text, then the graver first, then by name. */
export function compareFindings(a: Finding, b: Finding): number {
    return compareSources(a.at, b.at) || GRAVITY[a.severity] - GRAVITY[b.severity]
        || compareTexts(a.rule, b.rule) || compareTexts(a.message, b.message);
}
const GRAVITY: Record<Severity, number> = { error: 0, warning: 1, hint: 2 };
