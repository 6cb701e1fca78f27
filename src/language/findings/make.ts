import type { Finding, Fix, RelatedPlace, Severity } from '../../findings/finding.ts';
import type { Range, Source } from '../../provenance/source.ts';
import type { ReadingRule } from './rules.ts';

export interface More {
    readonly severity?: Severity;
    readonly related?: readonly RelatedPlace[];
    readonly fixes?: readonly Fix[];
}

/** A finding of the language: an error unless it says otherwise. */
export function finding(rule: ReadingRule, at: Source, message: string, more: More = {}): Finding {
    return { rule, severity: more.severity ?? 'error', at, message, related: more.related ?? [], fixes: more.fixes ?? [] };
}

/** Puts a text in the place of some words. */
export function replace(title: string, at: Source, text: string, preferred = false): Fix {
    return { title, edits: [{ uri: at.uri, range: at.range, text }], ...preferred && { preferred } };
}

/** Takes whole lines out. */
export function removeLines(title: string, at: Source): Fix {
    const range: Range = { start: { line: at.range.start.line, character: 0 }, end: { line: at.range.end.line + 1, character: 0 } };
    return { title, edits: [{ uri: at.uri, range, text: '' }], preferred: true };
}
