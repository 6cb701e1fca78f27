import type { LangiumDocument } from 'langium';
import type { Diagnostic, TextEdit } from 'vscode-languageserver-types';
import type { Fix, TextChange } from '../../findings/finding.ts';
import { fixesOf } from '../workspace/diagnostics.ts';

/** The one fix of a finding that needs no choice: the preferred one, or the only one. */
export function plainFix(diagnostic: Diagnostic): Fix | undefined {
    const fixes = fixesOf(diagnostic);
    return preferredFix(diagnostic) ?? (fixes.length === 1 ? fixes[0] : undefined);
}

export function preferredFix(diagnostic: Diagnostic): Fix | undefined {
    return fixesOf(diagnostic).find(fix => fix.preferred);
}

/**
 * The edits of many fixes at once, as far as they change this file alone and do not get in each other's way: of two fixes
 * that change the same words the first is made, and the other stays to be offered again. Two that say the same are one.
 */
export function together(document: LangiumDocument, fixes: readonly Fix[]): { readonly edits: TextEdit[]; readonly made: number } {
    const uri = document.uri.toString();
    const offsets = ({ range }: TextChange) => ({ from: document.textDocument.offsetAt(range.start), to: document.textDocument.offsetAt(range.end) });
    const accepted: { from: number; to: number; text: string; edit: TextEdit }[] = [];
    let made = 0;
    for (const fix of fixes) {
        if (fix.edits.length === 0 || fix.edits.some(edit => edit.uri !== uri)) continue;
        const changes = fix.edits.map(edit => ({ ...offsets(edit), text: edit.text, edit: { range: edit.range, newText: edit.text } }));
        const fresh = changes.filter(({ from, to, text }) => !accepted.some(other => other.from === from && other.to === to && other.text === text));
        if (fresh.some(one => accepted.some(other => overlap(one, other)))) continue;
        accepted.push(...fresh);
        made++;
    }
    return { edits: accepted.sort((a, b) => a.from - b.from).map(({ edit }) => edit), made };
}

interface Span { readonly from: number; readonly to: number }
/** Two insertions at one place would have no order of their own, so they count as one place too. */
function overlap(a: Span, b: Span): boolean {
    return a.from === b.from || (a.from < b.to && b.from < a.to);
}
