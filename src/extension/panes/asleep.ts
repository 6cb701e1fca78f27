import * as vscode from 'vscode';
import { paneOf } from './group.ts';

/** How long a pane may take to come back before one goes on without it. Milliseconds. */
const PATIENCE_MS = 4000;
/** The editor's commands that lead to a group, the first one's first. */
const TO_GROUP = [
    'workbench.action.focusFirstEditorGroup', 'workbench.action.focusSecondEditorGroup', 'workbench.action.focusThirdEditorGroup',
    'workbench.action.focusFourthEditorGroup', 'workbench.action.focusFifthEditorGroup', 'workbench.action.focusSixthEditorGroup',
    'workbench.action.focusSeventhEditorGroup', 'workbench.action.focusEighthEditorGroup',
];

/**
 * Panes that have a tab and no page yet: after a reload the editor brings a pane back only once its tab is looked at. Whoever asks for one wakes it,
 * or there would be two.
 */
export class Asleep {
    private isWoken: (() => void) | undefined;

    /** A pane has come back. */
    woken(): void {
        this.isWoken?.();
    }

    /**
     * Wakes a pane of this type, and ends when it is there. False where none sleeps. `awake`: all that are there. `keepsFocus`: where
     * the hands are they stay.
     */
    async wake(type: string, awake: readonly vscode.WebviewPanel[], keepsFocus: boolean): Promise<boolean> {
        const tab = sleeping(type, awake), toGroup = TO_GROUP[(tab?.group.viewColumn ?? 0) - 1];
        if (!tab || toGroup === undefined) return false;
        const { activeTextEditor } = vscode.window, { viewColumn } = vscode.window.tabGroups.activeTabGroup;
        const back = new Promise<boolean>(resolve => {
            this.isWoken = () => resolve(true);
            setTimeout(() => resolve(false), PATIENCE_MS);
        });
        // one that is looked at already is on its way
        if (tab.isActive) return back;
        await vscode.commands.executeCommand(toGroup);
        await vscode.commands.executeCommand('workbench.action.openEditorAtIndex', tab.group.tabs.indexOf(tab));
        const isBack = await back;
        if (keepsFocus && activeTextEditor) await vscode.window.showTextDocument(activeTextEditor.document, { viewColumn });
        return isBack;
    }
}

/** A tab of this type that no pane stands for. Those that are awake are known by their names and columns. */
function sleeping(type: string, awake: readonly vscode.WebviewPanel[]): vscode.Tab | undefined {
    const names = awake.filter(({ viewType }) => viewType === type).map(({ title, viewColumn }) => `${viewColumn ?? 0} ${title}`);
    const tabs = vscode.window.tabGroups.all.flatMap(group => group.tabs).filter(({ input }) => paneOf(input) === type);
    if (tabs.length <= names.length) return undefined;
    const unknown = tabs.filter(tab => {
        const at = names.indexOf(`${tab.group.viewColumn} ${tab.label}`);
        if (at >= 0) names.splice(at, 1);
        return at < 0;
    });
    return unknown.find(({ isActive }) => !isActive) ?? unknown[0];
}
