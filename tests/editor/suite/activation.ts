import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { fileUri, findings, inBrowser, open, test, until } from './harness.ts';

const extension = (): vscode.Extension<unknown> => {
    const found = vscode.extensions.getExtension('cofferwright.cofferwright');
    assert.ok(found, 'the extension is not installed');
    return found;
};

test('opening a job file activates the extension, and nothing did before', async () => {
    assert.equal(extension().isActive, false, 'active before any job file was opened');
    const editor = await open('yard.coffer');
    assert.equal(editor.document.languageId, 'coffer');
    await until('activation', () => extension().isActive);
});

test('its commands are there, in one category', async () => {
    const commands = await vscode.commands.getCommands(true);
    const declared = (extension().packageJSON as { contributes: { commands: { command: string; category: string; title: string }[] } }).contributes.commands;
    assert.ok(declared.length >= 2);
    for (const { command, category, title } of declared) {
        // a browser has no command line to run
        assert.equal(commands.includes(command), !(inBrowser && command === 'cofferwright.check'), command);
        assert.equal(category, 'Cofferwright');
        assert.doesNotMatch(title, /^%/, `${command} has no title in package.nls.json`);
    }
});

test('a sound job has no errors', async () => {
    for (const name of ['yard.coffer', 'details/beam.coffer', 'rooms/den.coffer']) {
        await open(name);
        // the server has answered for this file once it can name its parts
        await until(`the outline of ${name}`, async () =>
            (await vscode.commands.executeCommand<unknown[] | undefined>('vscode.executeDocumentSymbolProvider', fileUri(name)))?.length);
        const errors = findings(fileUri(name)).filter(finding => finding.severity === vscode.DiagnosticSeverity.Error);
        assert.deepEqual(errors.map(error => error.message), []);
    }
});

test('the server can be restarted', async () => {
    const editor = await open('details/beam.coffer');
    await vscode.commands.executeCommand('cofferwright.restartServer');
    await until('an outline after the restart', async () =>
        (await vscode.commands.executeCommand<unknown[] | undefined>('vscode.executeDocumentSymbolProvider', editor.document.uri))?.length);
});
