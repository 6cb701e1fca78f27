import type { LangiumDocument } from 'langium';
import type { Finding, Fix, TextChange } from '../../findings/finding.ts';
import type { Range } from '../../provenance/source.ts';

/**
 * Findings with all their places inside the text they stand in: something that is missing at the end of a line is missing at its last
 * place, and a last line without a line end is as whole as the others.
 */
export function withinText(document: LangiumDocument, findings: readonly Finding[]): Finding[] {
    const uri = document.uri.toString(), text = document.textDocument;
    const placed = (range: Range): Range => ({ start: text.positionAt(text.offsetAt(range.start)), end: text.positionAt(text.offsetAt(range.end)) });
    const isWithin = ({ start, end }: Range): boolean => {
        const within = placed({ start, end });
        return [[start, within.start], [end, within.end]].every(([a, b]) => a!.line === b!.line && a!.character === b!.character);
    };
    const edited = (edit: TextChange): TextChange => {
        if (edit.uri !== uri || isWithin(edit.range)) return edit;
        const below = edit.range.start.line >= text.lineCount && edit.text !== '';
        return { uri, range: placed(edit.range), text: below ? `\n${edit.text.replace(/\n$/, '')}` : edit.text };
    };
    const mended = (fix: Fix): Fix => fix.edits.every(edit => edit.uri !== uri || isWithin(edit.range)) ? fix : { ...fix, edits: fix.edits.map(edited) };
    return findings.map(finding => {
        const fixes = finding.fixes.map(mended);
        const at = finding.at.uri === uri && !isWithin(finding.at.range) ? { uri, range: placed(finding.at.range) } : finding.at;
        return at === finding.at && fixes.every((fix, i) => fix === finding.fixes[i]) ? finding : { ...finding, at, fixes };
    });
}
