import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { findings, noFinding, open, picture, ruleOf, test, typeOver, until } from './harness.ts';

test('a bottom that will not go in is shown where it is said, as it is typed, and its fix mends it', async () => {
    const editor = await open('details/beam.coffer');
    const { uri } = editor.document;
    await noFinding(uri, 'bottom-wont-fit');
    // a wider board, and in the next line, which the editor indents, the width it is ripped to
    await typeOver(editor, 'pine-1x6\n    ease', 'pine-1x8\nrip    5 9/16"\nease');

    // on the way the wider board stood there without its width, and that was too wide as well
    const found = await until('the finding of the whole text', () => findings(uri).find(each => ruleOf(each) === 'bottom-wont-fit' && each.message.includes('5 9/16"')), () => findings(uri).map(each => each.message));
    assert.equal(found.severity, vscode.DiagnosticSeverity.Error);
    assert.equal(found.source, 'cofferwright');
    assert.match(found.message, /5 1\/2"/);
    assert.equal(editor.document.getText(found.range), '5 9/16"');
    const related = found.relatedInformation ?? [];
    assert.ok(related.some(place => editor.document.getText(place.location.range).includes('pine-1x6')), `related: ${JSON.stringify(related.map(place => place.message))}`);

    editor.revealRange(found.range, vscode.TextEditorRevealType.InCenter);
    editor.selection = new vscode.Selection(found.range.start, found.range.start);
    await vscode.commands.executeCommand('editor.action.showHover');
    await picture('finding');

    // a fix is for the text as it stands: while the server reads the last key, there is none to be had
    let offered: string[] = [];
    const edit = await until('the quick fix', async () => {
        const fixes = await vscode.commands.executeCommand<vscode.CodeAction[]>('vscode.executeCodeActionProvider', uri, found.range, vscode.CodeActionKind.QuickFix.value);
        offered = fixes.map(action => action.title);
        return fixes.find(action => action.title.includes('5 1/2"'))?.edit;
    }, () => offered);
    assert.ok(await vscode.workspace.applyEdit(edit));
    await noFinding(uri, 'bottom-wont-fit');
    assert.deepEqual(findings(uri).map(each => each.message), []);
});

test('a misspelled property is underlined, with the right word offered', async () => {
    const editor = await open('details/beam.coffer');
    const { uri } = editor.document;
    await typeOver(editor, 'height', 'heigth');
    const found = await until('a finding about the whole word', () => findings(uri).find(each => each.message.includes('heigth')), () => findings(uri).map(each => each.message));
    assert.match(found.message, /`height`/);
    assert.equal(editor.document.getText(found.range), 'heigth');
});
