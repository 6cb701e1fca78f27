import type { Severity } from '../../findings/finding.ts';
import type { Count } from '../amounts-json.ts';
import type { RangeJson } from '../place-json.ts';

/**
 * What `cofferwright check --format json` prints.
 * @title Findings
 */
export interface FindingsJson {
    readonly version: 1;
    readonly kind: 'cofferwright.findings';
    /** Files that were checked. */
    readonly files: readonly string[];
    readonly summary: {
        readonly errors: Count;
        readonly warnings: Count;
        readonly hints: Count;
        /** Findings that a comment in the text allows; they are counted only here. */
        readonly allowed: Count;
    };
    /** In the order of the text. */
    readonly findings: readonly OneFinding[];
}

interface InText { readonly file: string; readonly range: RangeJson }

interface OneFinding extends InText {
    /** Its page: `cofferwright explain RULE`. */
    readonly rule: string;
    readonly severity: Severity;
    readonly message: string;
    /** The room it is about, where it is about one. */
    readonly room?: string;
    /** Where the other half of the contradiction stands. */
    readonly related: readonly Related[];
    /** Changes of text that mend it. */
    readonly fixes: readonly { readonly title: string; readonly preferred: boolean; readonly edits: readonly Edit[] }[];
    /** There where a comment in the text allows it. */
    readonly allowed?: Allowed;
}
interface Related extends InText { readonly message: string }
interface Edit extends InText { readonly text: string }
interface Allowed extends InText { readonly reason: string }
