import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { fileUri, finding, findings, open, picture, replace, test, until } from './harness.ts';

test('a change of a shared board re-checks the room that reaches it through another file', async () => {
    const room = fileUri('rooms/den.coffer');
    await open('rooms/den.coffer');
    const errors = (): string[] => findings(room).map(found => found.message);
    await until('a clean room', () => errors().length === 0, errors);

    const yard = await vscode.window.showTextDocument(await vscode.workspace.openTextDocument(fileUri('yard.coffer')), vscode.ViewColumn.Beside);
    // line B's sides come from this board; a quarter of an inch off its width, and the beams are nearly, but not quite, of one depth
    await replace(yard, 'stock clear-1x8 {\n  size     1x8', 'stock clear-1x8 {\n  size     1x8\n  width    7"');
    const found = await finding(room, 'depths-nearly-equal');
    assert.equal(found.severity, vscode.DiagnosticSeverity.Warning);
    await vscode.commands.executeCommand('workbench.actions.view.problems');
    await picture('shared-file');
    await vscode.commands.executeCommand('workbench.action.closePanel');

    await replace(yard, '\n  width    7"', '');
    await until('a clean room again', () => errors().length === 0, errors);
});
