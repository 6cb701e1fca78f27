import type { LangiumDocument } from 'langium';
import type { CodeActionProvider } from 'langium/lsp';
import type { CodeActionParams } from 'vscode-languageserver-protocol';
import type { CodeAction, Diagnostic, TextEdit } from 'vscode-languageserver-types';
import type { Fix } from '../../findings/finding.ts';
import { fixesOf } from '../workspace/diagnostics.ts';

/** Offers the fixes that findings carry. */
export class CofferQuickFixes implements CodeActionProvider {
    getCodeActions(_document: LangiumDocument, params: CodeActionParams): CodeAction[] {
        const { only, diagnostics } = params.context;
        if (only && !only.some(kind => kind === '' || kind === 'quickfix' || kind.startsWith('quickfix.'))) return [];
        return diagnostics.flatMap(diagnostic => fixesOf(diagnostic).map(fix => actionOf(fix, diagnostic)));
    }
}

function actionOf(fix: Fix, diagnostic: Diagnostic): CodeAction {
    const changes: Record<string, TextEdit[]> = {};
    for (const { uri, range, text } of fix.edits) (changes[uri] ??= []).push({ range, newText: text });
    return { title: fix.title, kind: 'quickfix', diagnostics: [diagnostic], edit: { changes }, ...fix.preferred && { isPreferred: true } };
}
