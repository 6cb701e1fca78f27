import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { fileUri, finding, findings, noFinding, open, replace, test, until } from './harness.ts';

const outline = async (uri: vscode.Uri): Promise<string[]> =>
    (await vscode.commands.executeCommand<vscode.DocumentSymbol[] | undefined>('vscode.executeDocumentSymbolProvider', uri) ?? []).map(symbol => symbol.name);

test('a half-typed line costs itself and nothing else', async () => {
    const editor = await open('details/beam.coffer');
    const { uri } = editor.document;
    await replace(editor, 'height  4"', 'height  4 1/');
    await until('a finding on the broken line', () => findings(uri).length > 0);
    const line = editor.document.getText().split('\n').findIndex(text => text.includes('height'));
    assert.deepEqual(findings(uri).filter(found => found.range.start.line !== line).map(found => `${found.range.start.line + 1}: ${found.message}`), []);
    assert.deepEqual((await outline(uri)).filter(name => name.includes('beam')), ['beam', 'clear-beam']);
});

test('the server survives what nobody should type', async () => {
    const editor = await open('rooms/den.coffer');
    const { uri } = editor.document;
    const original = editor.document.getText();
    const whole = (): vscode.Range => new vscode.Range(editor.document.positionAt(0), editor.document.positionAt(editor.document.getText().length));
    for (const text of ['{'.repeat(3000), `room a { grid { coffers-north ${'('.repeat(3000)}1${')'.repeat(3000)} } }`, '\u0000\u0001\ufffd\u0002'.repeat(2000), 'profile', '']) {
        await editor.edit(edit => edit.replace(whole(), text));
        await outline(uri);
    }
    await editor.edit(edit => edit.replace(whole(), original));
    await until('the room in the outline', async () => (await outline(uri)).some(name => name.includes('den')));
    await replace(editor, 'wall south  14\' 2"', 'wall south  13\' 2"');
    await finding(uri, 'room-not-rectangular');
    await replace(editor, 'wall south  13\' 2"', 'wall south  14\' 2"');
    await noFinding(uri, 'room-not-rectangular');
});

test('an import that is not there is an error at its path, and gone when the file comes', async () => {
    const editor = await open('rooms/den.coffer');
    const { uri } = editor.document;
    await replace(editor, '"../details/beam.coffer"', '"../details/new-beam.coffer"');
    const found = await until('an error at the path', () => findings(uri).find(each => editor.document.getText(each.range).includes('new-beam.coffer')));
    assert.equal(found.severity, vscode.DiagnosticSeverity.Error);
    const beam = await vscode.workspace.fs.readFile(fileUri('details/beam.coffer'));
    const created = fileUri('details/new-beam.coffer');
    try {
        await vscode.workspace.fs.writeFile(created, beam);
        await until('no errors', () => !findings(uri).some(each => each.severity === vscode.DiagnosticSeverity.Error), () => findings(uri).map(each => each.message));
    } finally {
        await vscode.workspace.fs.delete(created);
    }
    await until('the error again', () => findings(uri).some(each => editor.document.getText(each.range).includes('new-beam.coffer')));
    // findings of a file that is gone are gone with it
    await until('nothing said of the deleted file', () => findings(created).length === 0, () => findings(created).map(each => each.message));
});
