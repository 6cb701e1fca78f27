import * as vscode from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/browser';
import { begin, end } from './extension.ts';

type WorkerLike = ConstructorParameters<typeof LanguageClient>[3];
declare const Worker: new (address: string) => WorkerLike;

/** The extension in a browser: the server is a worker, and there is no command line. */
export function activate(context: vscode.ExtensionContext): void {
    begin(context, async options => {
        const { LanguageClient } = await import('vscode-languageclient/browser');
        const address = await loadable(vscode.Uri.joinPath(context.extensionUri, 'dist/server/browser.js'));
        return new LanguageClient('cofferwright', 'Cofferwright', options, new Worker(address));
    });
}

export const deactivate = end;

/** A browser does not load a worker from the other machine of a remote window; its text, fetched by the editor, it does. */
async function loadable(script: vscode.Uri): Promise<string> {
    if (script.scheme !== 'vscode-remote') return script.toString(true);
    return URL.createObjectURL(new Blob([await vscode.workspace.fs.readFile(script)], { type: 'text/javascript' }));
}
