import * as vscode from 'vscode';
import { LanguageClient, TransportKind, type ServerOptions } from 'vscode-languageclient/node';
import { CheckTasks } from './check-tasks.ts';
import { begin, end } from './extension.ts';

/** The extension where the editor has a machine: the server is a process, and the command line is at hand for tasks. */
export function activate(context: vscode.ExtensionContext): void {
    const module = context.asAbsolutePath('dist/server/main.cjs');
    const runs: ServerOptions = {
        run: { module, transport: TransportKind.ipc },
        debug: { module, transport: TransportKind.ipc, options: { execArgv: ['--nolazy', '--inspect=6009'] } },
    };
    begin(context, options => new LanguageClient('cofferwright', 'Cofferwright', runs, options));

    const tasks = new CheckTasks(context.asAbsolutePath('dist/cli/main.js'));
    context.subscriptions.push(
        vscode.tasks.registerTaskProvider(CheckTasks.type, tasks),
        vscode.commands.registerCommand('cofferwright.check', (file?: vscode.Uri) => tasks.run(file ?? vscode.window.activeTextEditor?.document.uri)),
    );
    void vscode.commands.executeCommand('setContext', 'cofferwright.hasCommandLine', true);
}

export const deactivate = end;
