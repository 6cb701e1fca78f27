import type { Diagnostic, Location, Range } from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { follow, type Edit, type Span } from './follow.ts';

/** A finding after some edits: undefined where its words are gone; `lost`: its words, or those of a place that it is related to. */
export interface Moved { readonly diagnostic: Diagnostic | undefined; readonly lost: boolean }

/**
 * Where findings are after edits of one file, their own place and those of others that they are related to. `edited`: the file; `after`: its
 * text then.
 */
export function placesAfter(edited: string, edits: readonly Edit[], after: string): (file: string, diagnostic: Diagnostic) => Moved {
    const first = edits[0];
    if (!first) return (_, diagnostic) => ({ diagnostic, lost: false });
    const before = TextDocument.create(edited, '', 0, first.before), now = TextDocument.create(edited, '', 0, after);
    const rangeOf = (range: Range): Range | undefined => {
        let span: Span | undefined = { from: before.offsetAt(range.start), to: before.offsetAt(range.end) };
        for (const edit of edits) span &&= follow(span, edit);
        return span && { start: now.positionAt(span.from), end: now.positionAt(span.to) };
    };
    const related = (location: Location): Location | undefined => {
        const range = location.uri === edited ? rangeOf(location.range) : location.range;
        return range && { ...location, range };
    };
    return (file, diagnostic) => {
        const range = file === edited ? rangeOf(diagnostic.range) : diagnostic.range;
        const relatedInformation = diagnostic.relatedInformation?.flatMap(one => {
            const location = related(one.location);
            return location ? [{ ...one, location }] : [];
        });
        const lost = !range || relatedInformation?.length !== diagnostic.relatedInformation?.length;
        return { diagnostic: range && { ...diagnostic, range, ...relatedInformation && { relatedInformation } }, lost };
    };
}
