import * as vscode from 'vscode';

/** A task in `tasks.json`: `{ "type": "cofferwright", "task": "check", "files": ["rooms"] }`. */
interface CheckDefinition extends vscode.TaskDefinition { readonly task: string; readonly files?: readonly string[] }

/** Offers `cofferwright check` as a task. The program is the one that came with the extension, nothing of the workspace's. */
export class CheckTasks implements vscode.TaskProvider {
    static readonly type = 'cofferwright';

    /** `program`: path of the bundled command line. */
    constructor(private readonly program: string) {}

    provideTasks(): vscode.Task[] {
        return (vscode.workspace.workspaceFolders ?? []).filter(hasDisk).map(folder => this.checkOf(folder, { type: CheckTasks.type, task: 'check' }));
    }

    resolveTask({ definition, scope }: vscode.Task): vscode.Task | undefined {
        const folder = typeof scope === 'object' ? scope : vscode.workspace.workspaceFolders?.find(hasDisk);
        return folder && definition['task'] === 'check' ? this.checkOf(folder, definition as CheckDefinition) : undefined;
    }

    /** Checks the folder that a file lies in, or the first. */
    async run(file: vscode.Uri | undefined): Promise<void> {
        const folder = (file && vscode.workspace.getWorkspaceFolder(file)) ?? vscode.workspace.workspaceFolders?.find(hasDisk);
        if (folder && hasDisk(folder)) await vscode.tasks.executeTask(this.checkOf(folder, { type: CheckTasks.type, task: 'check' }));
        else void vscode.window.showInformationMessage(vscode.l10n.t('Open a folder with job files to check them all.'));
    }

    private checkOf(folder: vscode.WorkspaceFolder, definition: CheckDefinition): vscode.Task {
        // the editor's own Node runs it; a desktop editor's program is asked to be only that
        const run = new vscode.ProcessExecution(process.execPath, [this.program, 'check', '--format', 'concise', ...definition.files ?? []],
            { cwd: folder.uri.fsPath, env: { ELECTRON_RUN_AS_NODE: '1' } });
        const task = new vscode.Task(definition, folder, vscode.l10n.t('check all files'), 'cofferwright', run, '$cofferwright');
        task.group = vscode.TaskGroup.Build;
        task.presentationOptions = { reveal: vscode.TaskRevealKind.Silent, clear: true };
        return task;
    }
}

function hasDisk(folder: vscode.WorkspaceFolder): boolean {
    return folder.uri.scheme === 'file';
}
