import type { LangiumDocument } from 'langium';
import type { CodeAction, Diagnostic } from 'vscode-languageserver';
import { allowUnused } from '../../rules/allow-unused.ts';
import { ruleNamed } from '../../rules/index.ts';

/** What stands for the reason until somebody gives one. */
export const REASON_TO_GIVE = 'say why';

/**
 * Lets a finding of the trade stand: a comment above its line, which has to say why. What cannot be read has no such way
 * out, and neither has a comment that allows nothing.
 */
export function silencing(document: LangiumDocument, diagnostic: Diagnostic): CodeAction[] {
    const { code: rule, range: { start: { line } } } = diagnostic;
    if (typeof rule !== 'string' || !ruleNamed(rule) || rule === allowUnused.name) return [];
    const text = document.textDocument.getText({ start: { line, character: 0 }, end: { line: line + 1, character: 0 } });
    const indentation = /^[^\S\r\n]*/.exec(text)![0];
    const end = /\r?\n$/.exec(text)?.[0] ?? '\n';
    const above = { line, character: 0 };
    return [{
        title: `Allow ${rule} here, and say why`, kind: 'quickfix', diagnostics: [diagnostic],
        edit: { changes: { [document.textDocument.uri]: [{ range: { start: above, end: above }, newText: `${indentation}// allow ${rule}: ${REASON_TO_GIVE}${end}` }] } },
    }];
}
