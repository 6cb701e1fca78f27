import type { LangiumDocument, MaybePromise } from 'langium';
import type { CodeActionProvider } from 'langium/lsp';
import { DiagnosticSeverity, CancellationToken, type CodeAction, type CodeActionParams, type Diagnostic } from 'vscode-languageserver';
import { plainFix, preferredFix, together } from '../../language/features/fix-all.ts';
import { CofferQuickFixes } from '../../language/features/quick-fixes.ts';
import { t } from '../../pages/shared/words.ts';
import type { ClosingFigures } from './closing-figures.ts';
import { GRID, type GridActions } from './grid-actions.ts';
import { silencing } from './silence.ts';

const FIX_ALL = 'source.fixAll.cofferwright';
export const CODE_ACTION_KINDS = ['quickfix', FIX_ALL, GRID];

/** Fixes of a finding, of all findings of its rule in the file, of all that need no choice; leave to let one stand, with a reason; and other grids. */
export class CofferCodeActions implements CodeActionProvider {
    private readonly quickFixes = new CofferQuickFixes();

    constructor(private readonly grids: GridActions, private readonly closing: ClosingFigures) {}

    getCodeActions(document: LangiumDocument, params: CodeActionParams, cancelled: CancellationToken = CancellationToken.None): MaybePromise<CodeAction[]> {
        const fixes = this.closing.said(this.quickFixes.getCodeActions(document, params), document, params, cancelled);
        const all = (told: readonly CodeAction[]): MaybePromise<CodeAction[]> => this.withOthers(told, document, params, cancelled);
        return Array.isArray(fixes) ? all(fixes) : fixes.then(all);
    }

    private withOthers(
        fixes: readonly CodeAction[], document: LangiumDocument, params: CodeActionParams, cancelled: CancellationToken,
    ): MaybePromise<CodeAction[]> {
        const actions = [...fixes];
        if (isAsked('quickfix', params)) {
            for (const rule of new Set(params.context.diagnostics.map(({ code }) => code))) actions.push(...allOfRule(document, rule));
            actions.push(...params.context.diagnostics.flatMap(diagnostic => silencing(document, diagnostic)));
        }
        if (isAsked(FIX_ALL, params, false)) actions.push(...allOfFile(document));
        const grids = isAsked(GRID, params) ? this.grids.at(document, params, cancelled) : [];
        return Array.isArray(grids) ? [...actions, ...grids] : grids.then(others => [...actions, ...others]);
    }
}

/** Offered where there are several; one alone has its own fix. */
function allOfRule(document: LangiumDocument, rule: Diagnostic['code']): CodeAction[] {
    const diagnostics = (document.diagnostics ?? []).filter(({ code }) => code === rule);
    const { edits, made } = together(document, diagnostics.flatMap(diagnostic => plainFix(diagnostic) ?? []));
    if (made < 2) return [];
    return [{ title: t('Fix all {0} of {1} in this file', made, String(rule)), kind: 'quickfix', diagnostics: diagnostics.filter(one => plainFix(one)), edit: { changes: { [document.textDocument.uri]: edits } } }];
}

/**
 * What may be mended without being looked at, as when a file is saved: what is surely meant. A hint is for a person to think
 * about, and is left alone.
 */
function allOfFile(document: LangiumDocument): CodeAction[] {
    const { edits } = together(document, (document.diagnostics ?? []).filter(({ severity }) => severity !== DiagnosticSeverity.Information)
        .flatMap(diagnostic => preferredFix(diagnostic) ?? []));
    return edits.length === 0 ? [] : [{ title: t('Fix all that can be fixed in this file'), kind: FIX_ALL, edit: { changes: { [document.textDocument.uri]: edits } } }];
}

/** `source` asks for `source.fixAll.cofferwright` too. What nobody asked for in particular is given where `always` says so. */
function isAsked(kind: string, { context: { only } }: CodeActionParams, always = true): boolean {
    return only ? only.some(wanted => wanted === '' || kind === wanted || kind.startsWith(`${wanted}.`)) : always;
}
