import { findingOf, type Finding, type Fix, type Said } from '../../findings/finding.ts';
import type { Range, Source } from '../../provenance/source.ts';
import type { ReadingRule } from './rules.ts';

/** A finding of the language: an error unless it says otherwise. */
export function finding(rule: ReadingRule, at: Source, message: string, more: Omit<Said, 'rule' | 'at' | 'message'> = {}): Finding {
    return findingOf({ rule, at, message, ...more });
}

/** Takes whole lines out. */
export function removeLines(title: string, at: Source): Fix {
    const range: Range = { start: { line: at.range.start.line, character: 0 }, end: { line: at.range.end.line + 1, character: 0 } };
    return { title, edits: [{ uri: at.uri, range, text: '' }], preferred: true };
}
