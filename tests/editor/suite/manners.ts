import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { endsOf, fileUri, findings, open, replace, ruleOf, test, until } from './harness.ts';

const errorsOf = (uri: vscode.Uri): string[] => findings(uri).filter(found => found.severity === vscode.DiagnosticSeverity.Error).map(found => found.message);

test('a new job is a whole one: a file not saved yet, without a mistake, and checked as it is changed', async () => {
    await vscode.commands.executeCommand('cofferwright.newJob');
    const editor = vscode.window.activeTextEditor!;
    assert.equal(editor.document.isUntitled, true);
    assert.equal(editor.document.languageId, 'coffer');
    await replace(editor, 'height  5"', 'height  6 1/2"');
    await until('what the walkthrough promises', () => findings(editor.document.uri).some(found => ruleOf(found) === 'spacer-hits-cleat'), () => errorsOf(editor.document.uri));
    await replace(editor, 'height  6 1/2"', 'height  5"');
    await until('no errors', () => errorsOf(editor.document.uri).length === 0, () => errorsOf(editor.document.uri));
});

test('the built-in vocabulary opens by its command', async () => {
    await vscode.commands.executeCommand('cofferwright.openVocabulary');
    assert.equal(vscode.window.activeTextEditor?.document.uri.scheme, 'builtin');
    assert.match(vscode.window.activeTextEditor.document.getText(), /kind Spacers/);
});

test('renaming a profile renames it in every file that uses it', async () => {
    const beam = await open('details/beam.coffer');
    const room = await open('rooms/den.coffer');
    const [, end] = endsOf(room.document, 'line B { beams clear-beam');
    const edit = await until('the edits of a rename', () =>
        vscode.commands.executeCommand<vscode.WorkspaceEdit | undefined>('vscode.executeDocumentRenameProvider', room.document.uri, end, 'fine-beam'));
    assert.deepEqual(edit.entries().map(([uri]) => uri.path.split('/').at(-1)!).sort(), ['beam.coffer', 'den.coffer']);
    assert.ok(await vscode.workspace.applyEdit(edit));
    assert.match(beam.document.getText(), /profile fine-beam\(\)/);
    assert.match(room.document.getText(), /use beam, fine-beam\n/);
    assert.match(room.document.getText(), /line B { beams fine-beam }/);
    await until('no errors after the rename', () => errorsOf(room.document.uri).length === 0, () => errorsOf(room.document.uri));
});

test('a file is laid out when it is saved, where the editor is set so', async () => {
    const editor = await open('yard.coffer');
    const tidy = editor.document.getText();
    const settings = vscode.workspace.getConfiguration('editor', { languageId: 'coffer' });
    await settings.update('formatOnSave', true, vscode.ConfigurationTarget.Global, true);
    try {
        await replace(editor, 'stock pine-1x8 {\n  size     1x8', 'stock pine-1x8 {\n      size 1x8');
        await editor.document.save();
        assert.equal(editor.document.getText(), tidy);
        assert.equal(new TextDecoder().decode(await vscode.workspace.fs.readFile(fileUri('yard.coffer'))), tidy);
    } finally {
        await settings.update('formatOnSave', undefined, vscode.ConfigurationTarget.Global, true);
        await vscode.workspace.fs.writeFile(fileUri('yard.coffer'), new TextEncoder().encode(tidy));
    }
});

test('what is surely meant is mended as a file is saved, where the editor is set so; and left where it is not', async () => {
    const editor = await open('yard.coffer');
    const right = editor.document.getText(), wrong = right.replace('stock pine-1x8 {\n  size ', 'stock pine-1x8 {\n  sise ');
    assert.ok(wrong !== right);
    const settings = vscode.workspace.getConfiguration('editor', { languageId: 'coffer' });
    const misspell = async (): Promise<void> => {
        await replace(editor, 'stock pine-1x8 {\n  size ', 'stock pine-1x8 {\n  sise ');
        await until('the mistake told', () => errorsOf(editor.document.uri).length > 0);
        await editor.document.save();
    };
    try {
        await misspell();
        assert.equal(editor.document.getText(), wrong);
        await replace(editor, 'stock pine-1x8 {\n  sise ', 'stock pine-1x8 {\n  size ');
        await settings.update('codeActionsOnSave', { 'source.fixAll.cofferwright': 'explicit' }, vscode.ConfigurationTarget.Global, true);
        await misspell();
        assert.equal(editor.document.getText(), right);
        assert.equal(new TextDecoder().decode(await vscode.workspace.fs.readFile(fileUri('yard.coffer'))), right);
        await until('no errors', () => errorsOf(editor.document.uri).length === 0, () => errorsOf(editor.document.uri));
        // saved in the same breath as it is typed, before anything is told
        await replace(editor, 'stock pine-1x8 {\n  size ', 'stock pine-1x8 {\n  sise ');
        await editor.document.save();
        assert.equal(editor.document.getText(), right);
    } finally {
        await settings.update('codeActionsOnSave', undefined, vscode.ConfigurationTarget.Global, true);
        await vscode.workspace.fs.writeFile(fileUri('yard.coffer'), new TextEncoder().encode(right));
    }
});

test('a template is offered among the rest, with places to fill in', async () => {
    const editor = await open('yard.coffer');
    await replace(editor, 'edition 1\n', 'edition 1\n\nsto\n');
    const [, after] = endsOf(editor.document, '\nsto\n');
    const at = editor.document.positionAt(editor.document.offsetAt(after) - 1);
    const offered = await until('a template', async () => {
        const { items } = await vscode.commands.executeCommand<vscode.CompletionList>('vscode.executeCompletionItemProvider', editor.document.uri, at);
        return items.find(item => (typeof item.label === 'string' ? item.label : item.label.label) === 'stock');
    });
    assert.ok(offered.insertText instanceof vscode.SnippetString, 'with places to fill in');
    assert.match(offered.insertText.value, /size\s+\$\{2:1x\d+\}/);
});
