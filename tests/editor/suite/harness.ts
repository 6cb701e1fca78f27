import * as fs from 'node:fs';
import * as path from 'node:path';
import * as vscode from 'vscode';

/**
 * A test runner of few lines, because it must run inside the editor's extension host, wherever that is: in a browser's
 * workbench (src/build/test-editor.mjs) or in the desktop program (src/build/test-electron.mjs).
 */
export interface Result { readonly name: string; readonly ok: boolean; readonly milliseconds: number; readonly error?: string }

const tests: { name: string; run: () => Promise<void> }[] = [];

export function test(name: string, run: () => Promise<void>): void {
    tests.push({ name, run });
}

/** Runs all tests in the order they were declared; every test begins with all editors closed and unsaved text thrown away. */
export async function runAll(): Promise<Result[]> {
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

/** Waits until `get` gives something; fails with `what` and the last state after 10 s. */
export async function until<T>(what: string, get: () => T | undefined | false | PromiseLike<T | undefined | false>, state: () => unknown = () => ''): Promise<T> {
    const end = Date.now() + 10_000;
    for (;;) {
        const value = await get();
        if (value) return value;
        if (Date.now() > end) throw new Error(`timed out waiting for ${what}: ${JSON.stringify(state())}`);
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

/** Asks whoever drives the browser for a picture; does nothing where nobody does. */
export async function picture(name: string): Promise<void> {
    const folder = process.env['COFFERWRIGHT_PICTURES'];
    if (!folder) return;
    fs.rmSync(path.join(folder, `${name}.png`), { force: true }); // of an earlier run
    await new Promise(resolve => setTimeout(resolve, 700)); // what the editor fades in has to be there
    fs.writeFileSync(path.join(folder, `${name}.wanted`), '');
    await until(`the picture ${name}`, () => fs.existsSync(path.join(folder, `${name}.png`)));
}

async function closeAll(): Promise<void> {
    for (const document of vscode.workspace.textDocuments.filter(open => open.isDirty)) {
        await vscode.window.showTextDocument(document);
        await vscode.commands.executeCommand('workbench.action.files.revert');
    }
    await vscode.commands.executeCommand('workbench.action.closeAllEditors');
}
