import type { Finding, Fix, RelatedPlace, Severity } from '../../findings/finding.ts';
import type { Source } from '../../provenance/source.ts';
import type { LanguageRule } from './rules.ts';

/** What a check says. Everything but the place and the words has a usual value. */
export interface Said {
    readonly rule: LanguageRule;
    readonly at: Source;
    readonly message: string;
    readonly severity?: Severity;
    readonly related?: readonly RelatedPlace[];
    readonly fixes?: readonly Fix[];
    /** The room it is about, where it is about one alone. */
    readonly room?: string;
}
export type Report = (said: Said) => void;

export function findingOf({ rule, at, message, severity = 'error', related = [], fixes = [], room }: Said): Finding {
    return { rule, severity, at, message, related, fixes, ...room !== undefined && { room } };
}

/** A fix that puts something else where a word stands. */
export function replacing(at: Source, text: string): Fix {
    return { title: `Write ${text}`, edits: [{ uri: at.uri, range: at.range, text }], preferred: true };
}

/** One fix for each thing that may have been meant, the likeliest first. */
export function replacingAny(at: Source, texts: readonly string[]): readonly Fix[] {
    return texts.map((text, i) => i === 0 ? replacing(at, text) : { title: `Write ${text}`, edits: [{ uri: at.uri, range: at.range, text }] });
}
