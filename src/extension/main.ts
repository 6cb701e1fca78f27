import * as vscode from 'vscode';
import { CheckTasks } from './check-tasks.ts';
import { begin, end } from './extension.ts';
import { nameCommits, readStored } from './stored-files.ts';

/** The extension where the editor has a machine: the server is a process, and the command line is at hand for tasks. */
export function activate(context: vscode.ExtensionContext): void {
    begin(context, async options => {
        // loaded when it is needed, which is after the editor has been told that the extension is there
        const { LanguageClient, TransportKind } = await import('vscode-languageclient/node');
        const module = context.asAbsolutePath('dist/server/main.cjs');
        const run = { module, transport: TransportKind.ipc };
        return new LanguageClient('cofferwright', 'Cofferwright', { run, debug: { ...run, options: { execArgv: ['--nolazy', '--inspect=6009'] } } }, options);
    }, { read: readStored, name: nameCommits });

    const tasks = new CheckTasks(context.asAbsolutePath('dist/cli/main.js'));
    context.subscriptions.push(
        vscode.tasks.registerTaskProvider(CheckTasks.type, tasks),
        vscode.commands.registerCommand('cofferwright.check', (file?: vscode.Uri) => tasks.run(file ?? vscode.window.activeTextEditor?.document.uri)),
    );
    void vscode.commands.executeCommand('setContext', 'cofferwright.hasCommandLine', true);
}

export const deactivate = end;
