import type { LangiumDocument } from 'langium';
import type { CodeAction, Diagnostic } from 'vscode-languageserver';
import { t } from '../../pages/shared/words.ts';
import { allowUnused } from '../../rules/allow-unused.ts';
import { ruleNamed } from '../../rules/index.ts';
import type { Rule } from '../../rules/rule.ts';

/** What stands for the reason until somebody gives one. */
function reasonToGive(): string {
    return t('say why');
}

/** A comment that allows nothing is not to be allowed in its turn. */
export function isAllowable(rule: Rule): boolean {
    return rule !== allowUnused;
}

/**
 * Lets a finding of the trade stand: a comment above its line, which has to say why. What cannot be read has no such way
 * out, and neither has a comment that allows nothing.
 */
export function silencing(document: LangiumDocument, diagnostic: Diagnostic): CodeAction[] {
    const { code: rule, range: { start: { line } } } = diagnostic;
    const found = typeof rule === 'string' ? ruleNamed(rule) : undefined;
    if (!found || !isAllowable(found)) return [];
    const text = document.textDocument.getText({ start: { line, character: 0 }, end: { line: line + 1, character: 0 } });
    const indentation = /^[^\S\r\n]*/.exec(text)![0];
    const end = /\r?\n$/.exec(text)?.[0] ?? '\n';
    const above = { line, character: 0 };
    return [{
        title: t('Allow {0} here, and say why', found.name), kind: 'quickfix', diagnostics: [diagnostic],
        edit: { changes: { [document.textDocument.uri]: [{ range: { start: above, end: above }, newText: `${indentation}// allow ${found.name}: ${reasonToGive()}${end}` }] } },
    }];
}
