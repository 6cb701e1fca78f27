import * as vscode from 'vscode';
import { SHOW_RULE, SHOW_USES, type ShowUsesParams } from '../server/messages.ts';
import { BuiltinDocuments } from './builtin-documents.ts';
import { atStart } from './at-start.ts';
import { Findings } from './findings.ts';
import firstJob from '../language/builtin/first-job.coffer';
import { Panes } from './panes/panes.ts';
import { Server, type NewClient } from './server.ts';
import type { Store } from './stored-files.ts';
import { Trials } from './trials.ts';

/**
 * The extension: it starts the language server and hands over what the editor needs besides the protocol. It knows
 * nothing about ceilings, so that every editor shows the same.
 */
let server: Server | undefined;

/** Sets everything up and returns; the server is ready when it is, and the editor does not wait for it. */
export function begin(context: vscode.ExtensionContext, newClient: NewClient, store?: Store): void {
    const started = server = new Server(newClient, store);
    context.subscriptions.push(
        started,
        new Findings(started),
        new Panes(context, started, started.history),
        new Trials(started),
        vscode.workspace.registerTextDocumentContentProvider(BuiltinDocuments.scheme, new BuiltinDocuments((method, params) => started.ask(method, params))),
        vscode.commands.registerCommand('cofferwright.restartServer', () => started.restart()),
        vscode.commands.registerCommand('cofferwright.showOutput', () => started.output.show()),
        vscode.commands.registerCommand('cofferwright.newJob', newJob),
        vscode.commands.registerCommand('cofferwright.openVocabulary', () => vscode.window.showTextDocument(BuiltinDocuments.vocabulary)),
        vscode.commands.registerCommand(SHOW_RULE, showRule),
        vscode.commands.registerCommand(SHOW_USES, showUses),
        // imports may not leave the open folders, and the server is told of those when it starts
        vscode.workspace.onDidChangeWorkspaceFolders(() => started.restart()),
    );
    context.subscriptions.push(atStart());
    void vscode.commands.executeCommand('setContext', 'cofferwright.active', true);
    void started.start();
}

export async function end(): Promise<void> {
    await server?.stop();
}

/** A small whole job in a file that is not saved yet, to change into one's own. It has a name already, and with it the file's icon. */
async function newJob(): Promise<void> {
    const open = new Set(vscode.workspace.textDocuments.map(({ uri }) => uri.toString()));
    let uri: vscode.Uri, count = 1;
    do {
        uri = vscode.Uri.from({ scheme: 'untitled', path: count === 1 ? 'ceiling.coffer' : `ceiling-${count}.coffer` });
        count++;
    } while (open.has(uri.toString()));
    const edit = new vscode.WorkspaceEdit();
    edit.insert(uri, new vscode.Position(0, 0), firstJob);
    const document = await vscode.workspace.openTextDocument(uri);
    await vscode.workspace.applyEdit(edit);
    await vscode.window.showTextDocument(document);
}

/** The page of a rule, as the editor shows Markdown. Whoever can write a link can call this, so it takes nothing but the name of a rule. */
async function showRule(name: unknown): Promise<void> {
    if (typeof name !== 'string' || !/^[a-z0-9-]+$/.test(name)) return;
    await vscode.commands.executeCommand('markdown.showPreview', vscode.Uri.from({ scheme: BuiltinDocuments.scheme, path: `/rules/${name}.md` }));
}

/** The places that name a stock or a profile, beside its own words. */
async function showUses({ uri, position: { line, character } }: ShowUsesParams): Promise<void> {
    const at = vscode.Uri.parse(uri), position = new vscode.Position(line, character);
    const places = await vscode.commands.executeCommand<vscode.Location[]>('vscode.executeReferenceProvider', at, position);
    const others = places.filter(({ uri: file, range }) => file.toString() !== at.toString() || !range.contains(position));
    await vscode.commands.executeCommand('editor.action.showReferences', at, position, others);
}
