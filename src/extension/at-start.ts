import * as vscode from 'vscode';

/** The walkthrough as the editor names it: extension, then walkthrough. */
const TOUR = 'cofferwright.cofferwright#firstCeiling';

/** Opens what the user wants to see beside the first job file of a window; once. */
export function atStart(): vscode.Disposable {
    const wanted = vscode.workspace.getConfiguration('cofferwright').get<string>('atStart', 'nothing');
    if (wanted === 'nothing') return vscode.Disposable.from();
    const listening = vscode.window.onDidChangeActiveTextEditor(editor => void look(editor));
    const look = async (editor: vscode.TextEditor | undefined): Promise<void> => {
        if (editor?.document.languageId !== 'coffer') return;
        listening.dispose();
        if (wanted === 'tour') {
            await vscode.commands.executeCommand('workbench.action.openWalkthrough', TOUR, false);
            await vscode.window.showTextDocument(editor.document, { viewColumn: vscode.ViewColumn.One, preview: false });
        }
        await vscode.commands.executeCommand('cofferwright.showPlan');
    };
    void look(vscode.window.activeTextEditor);
    return listening;
}
