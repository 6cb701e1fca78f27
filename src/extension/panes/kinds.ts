import * as vscode from 'vscode';
import type { PaneKind } from '../../panes/messages.ts';

/** A kind of pane as the editor knows it. Its command in the manifest is `cofferwright.show` and the name here. */
interface KindOfPane { readonly command: string; readonly title: () => string }

/** One line a kind: beside it a line in src/pages/pages.ts, a folder in src/panes, the command in package.json. */
export const KINDS: Readonly<Record<PaneKind, KindOfPane>> = {
    plan: { command: 'cofferwright.showPlan', title: () => vscode.l10n.t('Ceiling Plan') },
    section: { command: 'cofferwright.showSection', title: () => vscode.l10n.t('Beam Section') },
    boards: { command: 'cofferwright.showBoards', title: () => vscode.l10n.t('Boards') },
    estimate: { command: 'cofferwright.showEstimate', title: () => vscode.l10n.t('Estimate') },
    'cut-list': { command: 'cofferwright.showCutList', title: () => vscode.l10n.t('Cut List') },
    changes: { command: 'cofferwright.showChanges', title: () => vscode.l10n.t('Changes') },
    suggest: { command: 'cofferwright.showSuggest', title: () => vscode.l10n.t('Suggestions') },
    'put-up': { command: 'cofferwright.showPutUp', title: () => vscode.l10n.t('Putting Up') },
    view: { command: 'cofferwright.showView', title: () => vscode.l10n.t('In Three Dimensions') },
};

/** Type of a kind's webviews: by it the editor brings them back after a reload. */
export function viewType(kind: PaneKind): string {
    return `cofferwright.${kind}`;
}
