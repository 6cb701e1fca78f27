import * as vscode from 'vscode';
import { BuiltinDocuments } from './builtin-documents.ts';
import { Server } from './server.ts';

/**
 * The extension: it starts the language server and hands over what the editor needs besides the protocol. It knows
 * nothing about ceilings, so that every editor shows the same.
 */
let server: Server | undefined;

export async function activate(context: vscode.ExtensionContext): Promise<void> {
    const started = server = new Server(context.asAbsolutePath('dist/server/main.cjs'));
    context.subscriptions.push(
        started,
        vscode.workspace.registerTextDocumentContentProvider(BuiltinDocuments.scheme, new BuiltinDocuments((method, params) => started.ask(method, params))),
        vscode.commands.registerCommand('cofferwright.restartServer', () => started.restart()),
        vscode.commands.registerCommand('cofferwright.showOutput', () => started.output.show()),
        // imports may not leave the open folders, and the server is told of those when it starts
        vscode.workspace.onDidChangeWorkspaceFolders(() => started.restart()),
    );
    await started.start();
}

export async function deactivate(): Promise<void> {
    await server?.stop();
}
