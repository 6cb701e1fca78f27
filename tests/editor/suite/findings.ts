import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { endsOf, finding, noFinding, open, picture, replace, ruleOf, test, typeOver } from './harness.ts';

test('a bottom that will not go in is shown where it is said, as it is typed, and its fix mends it', async () => {
    const editor = await open('details/beam.coffer');
    const { uri } = editor.document;
    await noFinding(uri, 'bottom-wont-fit');
    await replace(editor, 'ease   1/16"', 'rip    5 1/2"\n    ease   1/16"');
    await replace(editor, '    stock   pine-1x6\n    screws', '    stock   pine-1x6\n    rip     5 3/8"\n    screws');

    const found = await finding(uri, 'bottom-wont-fit');
    assert.equal(found.severity, vscode.DiagnosticSeverity.Error);
    assert.equal(found.source, 'cofferwright');
    assert.match(found.message, /5 1\/2"/);
    assert.match(found.message, /5 3\/8"/);
    assert.equal(editor.document.getText(found.range), '5 1/2"');
    const related = found.relatedInformation ?? [];
    assert.ok(related.some(place => editor.document.getText(place.location.range).includes('5 3/8"')), `related: ${JSON.stringify(related.map(place => place.message))}`);

    editor.revealRange(found.range, vscode.TextEditorRevealType.InCenter);
    editor.selection = new vscode.Selection(found.range.start, found.range.start);
    await vscode.commands.executeCommand('editor.action.showHover');
    await picture('finding');

    const fixes = await vscode.commands.executeCommand<vscode.CodeAction[]>('vscode.executeCodeActionProvider', uri, found.range, vscode.CodeActionKind.QuickFix.value);
    const fix = fixes.find(action => action.diagnostics?.some(diagnostic => ruleOf(diagnostic) === 'bottom-wont-fit'));
    assert.ok(fix?.edit, `no quick fix among ${JSON.stringify(fixes.map(action => action.title))}`);
    assert.ok(await vscode.workspace.applyEdit(fix.edit));
    await noFinding(uri, 'bottom-wont-fit');
});

test('a misspelled property is underlined, with the right word offered', async () => {
    const editor = await open('details/beam.coffer');
    const { uri } = editor.document;
    await typeOver(editor, 'height', 'heigth');
    const [start, end] = endsOf(editor.document, 'heigth');
    const found = vscode.languages.getDiagnostics(uri).find(diagnostic => diagnostic.range.isEqual(new vscode.Range(start, end)))
        ?? await finding(uri, 'unknown-property');
    assert.match(found.message, /heigth/);
    assert.match(found.message, /height/);
    assert.equal(editor.document.getText(found.range), 'heigth');
});
