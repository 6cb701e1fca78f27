import * as vscode from 'vscode';
import type { PaneKind } from '../../panes/messages.ts';
import { viewType } from './kinds.ts';

/** Where the panes' scripts and letters lie: nothing else is open to a pane. */
export function paneFiles(extension: vscode.Uri): vscode.Uri {
    return vscode.Uri.joinPath(extension, 'dist', 'panes');
}

/**
 * The empty page of a pane. Its policy lets in its own script and style sheets, by a nonce, and the letters of the drawings;
 * nothing from elsewhere, and nothing that markup brings along.
 */
export function pageHtml(webview: vscode.Webview, extension: vscode.Uri, kind: PaneKind): string {
    const nonce = newNonce();
    const file = (name: string): string => webview.asWebviewUri(vscode.Uri.joinPath(paneFiles(extension), name)).toString();
    const policy = `default-src 'none'; script-src 'nonce-${nonce}'; style-src 'nonce-${nonce}'; font-src ${webview.cspSource}; img-src data: blob:`;
    // an element that holds data ends at the next `</`, so there is none in it
    const words = JSON.stringify(vscode.l10n.bundle ?? {}).replaceAll('<', '\\u003c');
    return `<!doctype html>
<html lang="${vscode.env.language.replace(/[^\w-]/g, '')}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${viewType(kind)}</title>
<link rel="stylesheet" nonce="${nonce}" href="${file('fonts.css')}">
</head>
<body>
<script type="application/json" id="words">${words}</script>
<script nonce="${nonce}" src="${file(`${kind}.js`)}"></script>
</body>
</html>`;
}

function newNonce(): string {
    return [...crypto.getRandomValues(new Uint8Array(24))].map(byte => byte.toString(16).padStart(2, '0')).join('');
}
