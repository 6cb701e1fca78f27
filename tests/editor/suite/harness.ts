import * as vscode from 'vscode';
import { report } from './outside.ts';

export { inPane, isDriven, picture, seen } from './outside.ts';

/**
 * A test runner of few lines, because it must run inside the editor's extension host, wherever that is: in a browser's
 * workbench (src/build/test-editor.mjs) or in the desktop program (src/build/test-electron.mjs).
 */
export interface Result { readonly name: string; readonly ok: boolean; readonly milliseconds: number; readonly error?: string }
/** `figures`: what was measured on the way, in milliseconds. */
export interface Report { readonly editor: string; readonly results: readonly Result[]; readonly figures: Readonly<Record<string, number>> }

const tests: { name: string; run: () => Promise<void> }[] = [];

export function test(name: string, run: () => Promise<void>): void {
    tests.push({ name, run });
}

/** In a browser's worker: there is no machine behind the extension. */
export const inBrowser = 'importScripts' in globalThis;

const figures: Record<string, number> = {};
/** Notes what was measured; figures are shown and never judged, for machines differ. */
export function measured(what: string, milliseconds: number): void {
    figures[what] = milliseconds;
    console.log(`ok - ${what}: ${milliseconds} ms`);
}

/** The contract of every host: resolve where all is well, reject where not. */
export async function runAndReport(): Promise<void> {
    const results = await runAll();
    report({ editor: `${vscode.env.appName} ${vscode.version}${inBrowser ? ', in the browser' : ''}`, results, figures });
    const failed = results.filter(result => !result.ok);
    if (failed.length > 0 || results.length === 0) throw new Error(`${failed.length} of ${results.length} failed`);
}

/** Runs all tests in the order they were declared; every test begins with all editors closed and unsaved text thrown away. */
async function runAll(): Promise<Result[]> {
    const results: Result[] = [];
    for (const { name, run } of tests) {
        const begun = Date.now();
        try {
            await closeAll();
            await run();
            results.push({ name, ok: true, milliseconds: Date.now() - begun });
            console.log(`ok - ${name}`);
        } catch (error) {
            results.push({ name, ok: false, milliseconds: Date.now() - begun, error: error instanceof Error ? error.stack ?? error.message : String(error) });
            console.log(`not ok - ${name}: ${String(error)}`);
        }
    }
    await closeAll();
    return results;
}

/** Waits until `get` gives something; fails with `what` and the last state after 10 s, or as many as are given. */
export async function until<T>(what: string, get: () => T | undefined | false | PromiseLike<T | undefined | false>, state: () => unknown = () => '', seconds = 10): Promise<T> {
    const end = Date.now() + seconds * 1000;
    for (;;) {
        const value = await get();
        if (value) return value;
        if (Date.now() > end) throw new Error(`timed out waiting for ${what}: ${JSON.stringify(await state())}`);
        await new Promise(resolve => setTimeout(resolve, 30));
    }
}

export function fileUri(name: string): vscode.Uri {
    const folder = vscode.workspace.workspaceFolders?.[0];
    if (!folder) throw new Error('the test workspace is not open');
    return vscode.Uri.joinPath(folder.uri, name);
}

/** Opens a file of the test workspace in the editor. */
export async function open(name: string): Promise<vscode.TextEditor> {
    return vscode.window.showTextDocument(await vscode.workspace.openTextDocument(fileUri(name)));
}

/** Types in place of a piece of text that occurs once, as fingers do: select, then type. */
export async function typeOver(editor: vscode.TextEditor, old: string, text: string): Promise<void> {
    editor.selection = new vscode.Selection(...endsOf(editor.document, old));
    await vscode.commands.executeCommand('type', { text });
}

/** Replaces a piece of text that occurs once, without the editor's automatic brackets and indents. */
export async function replace(editor: vscode.TextEditor, old: string, text: string): Promise<void> {
    const [start, end] = endsOf(editor.document, old);
    if (!await editor.edit(edit => edit.replace(new vscode.Range(start, end), text))) throw new Error(`the editor refused to replace ${old}`);
}

/** Start and end of a piece of text that occurs once. */
export function endsOf(document: vscode.TextDocument, words: string): [vscode.Position, vscode.Position] {
    const text = document.getText();
    const at = text.indexOf(words);
    if (at < 0 || text.indexOf(words, at + 1) >= 0) throw new Error(`"${words}" must occur once in ${document.uri.path}`);
    return [document.positionAt(at), document.positionAt(at + words.length)];
}

export function findings(uri: vscode.Uri): vscode.Diagnostic[] {
    return vscode.languages.getDiagnostics(uri);
}

export function ruleOf(finding: vscode.Diagnostic): string {
    return String(typeof finding.code === 'object' ? finding.code.value : finding.code);
}

/** Waits for a finding of one rule in a file. */
export async function finding(uri: vscode.Uri, rule: string): Promise<vscode.Diagnostic> {
    return until(`${rule} in ${uri.path}`, () => findings(uri).find(found => ruleOf(found) === rule), () => findings(uri).map(found => `${ruleOf(found)}: ${found.message}`));
}

export async function noFinding(uri: vscode.Uri, rule: string): Promise<void> {
    await until(`no ${rule} in ${uri.path}`, () => !findings(uri).some(found => ruleOf(found) === rule), () => findings(uri).map(found => found.message));
}

async function closeAll(): Promise<void> {
    for (const document of vscode.workspace.textDocuments.filter(open => open.isDirty)) {
        await vscode.window.showTextDocument(document);
        await vscode.commands.executeCommand('workbench.action.files.revert');
    }
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
}
