import * as vscode from 'vscode';
import type { Source } from '../../panes/messages.ts';
import { holdsPanes } from './group.ts';

/** How long words that were asked for stay lit. */
const LIT_MS = 1500;

/** Shows words in their file, selected and lit up for a moment, in an editor beside the pane where there is one. */
export class TextSelector implements vscode.Disposable {
    private readonly light = vscode.window.createTextEditorDecorationType({
        backgroundColor: new vscode.ThemeColor('editor.findMatchHighlightBackground'), borderColor: new vscode.ThemeColor('editor.findMatchHighlightBorder'),
        overviewRulerColor: new vscode.ThemeColor('editorOverviewRuler.findMatchForeground'), overviewRulerLane: vscode.OverviewRulerLane.Center,
    });

    async select({ uri, range: { start, end } }: Source): Promise<void> {
        const file = vscode.Uri.parse(uri);
        const range = new vscode.Range(start.line, start.character, end.line, end.character);
        const editor = await vscode.window.showTextDocument(
            await vscode.workspace.openTextDocument(file), { viewColumn: columnFor(file), preserveFocus: false, preview: true, selection: range },
        );
        editor.revealRange(range, vscode.TextEditorRevealType.InCenterIfOutsideViewport);
        editor.setDecorations(this.light, [range]);
        setTimeout(() => editor.setDecorations(this.light, []), LIT_MS);
    }

    /** The file's editor gets the focus, with its cursor where it was. */
    async focus(file: vscode.Uri): Promise<void> {
        await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(file), { viewColumn: columnFor(file), preserveFocus: false });
    }

    dispose(): void {
        this.light.dispose();
    }
}

/** Where the file is open; else where another job file is seen; else the first group that is not kept for panes. */
function columnFor(file: vscode.Uri): vscode.ViewColumn {
    const { visibleTextEditors, tabGroups } = vscode.window;
    const seen = visibleTextEditors.find(({ document }) => document.uri.toString() === file.toString())
        ?? visibleTextEditors.find(({ document }) => document.languageId === 'coffer');
    if (seen?.viewColumn) return seen.viewColumn;
    const group = tabGroups.all.find(({ tabs }) => tabs.some(({ input }) => input instanceof vscode.TabInputText && input.uri.toString() === file.toString()))
        ?? tabGroups.all.find(each => !holdsPanes(each));
    return group?.viewColumn ?? vscode.ViewColumn.Beside;
}
