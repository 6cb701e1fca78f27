import * as vscode from 'vscode';

/** Asks where, and writes there by the editor's own file system, which is there in a browser too. */
export async function saveFile(name: string, bytes: Uint8Array, beside: vscode.Uri | undefined): Promise<void> {
    const folder = beside && beside.scheme !== 'untitled' ? vscode.Uri.joinPath(beside, '..') : vscode.workspace.workspaceFolders?.[0]?.uri;
    const ending = name.slice(name.lastIndexOf('.') + 1);
    const to = await vscode.window.showSaveDialog({
        filters: { [ending.toUpperCase()]: [ending] }, ...folder && { defaultUri: vscode.Uri.joinPath(folder, name) },
    });
    if (!to) return;
    try {
        await vscode.workspace.fs.writeFile(to, bytes);
    } catch (error) {
        void vscode.window.showErrorMessage(vscode.l10n.t('{0} could not be written: {1}', name, error instanceof Error ? error.message : String(error)));
        return;
    }
    const open = vscode.l10n.t('Open');
    const choice = await vscode.window.showInformationMessage(vscode.l10n.t('{0} is written.', name), open);
    if (choice === open) await vscode.commands.executeCommand('vscode.open', to);
}
