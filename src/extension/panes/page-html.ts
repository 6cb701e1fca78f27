import * as vscode from 'vscode';
import type { PaneKind } from '../../panes/messages.ts';
import { paneDocument } from './document.ts';
import { KINDS } from './kinds.ts';

/** Where the panes' scripts and letters lie: nothing else is open to a pane. */
export function paneFiles(extension: vscode.Uri): vscode.Uri {
    return vscode.Uri.joinPath(extension, 'dist', 'panes');
}

export function pageHtml(webview: vscode.Webview, extension: vscode.Uri, kind: PaneKind): string {
    const file = (name: string): string => webview.asWebviewUri(vscode.Uri.joinPath(paneFiles(extension), name)).toString();
    return paneDocument({
        title: KINDS[kind].title(), language: vscode.env.language, nonce: newNonce(), origin: webview.cspSource,
        script: file(`${kind}.js`), letters: file('fonts.css'), words: vscode.l10n.bundle ?? {},
    });
}

/** On its tab. */
export function iconOf(kind: PaneKind, extension: vscode.Uri): { readonly light: vscode.Uri; readonly dark: vscode.Uri } {
    const file = (ground: string): vscode.Uri => vscode.Uri.joinPath(extension, 'syntaxes', 'icons', `${kind}-${ground}.svg`);
    return { light: file('light'), dark: file('dark') };
}

function newNonce(): string {
    return [...crypto.getRandomValues(new Uint8Array(24))].map(byte => byte.toString(16).padStart(2, '0')).join('');
}
