import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { endsOf, findings, open, picture, replace, test, typeOver, until } from './harness.ts';

const textOf = (hover: vscode.Hover): string => hover.contents.map(content => typeof content === 'string' ? content : content.value).join('\n');
const labelOf = (item: vscode.CompletionItem): string => typeof item.label === 'string' ? item.label : item.label.label;

async function completions(uri: vscode.Uri, at: vscode.Position): Promise<string[]> {
    const list = await vscode.commands.executeCommand<vscode.CompletionList>('vscode.executeCompletionItemProvider', uri, at);
    return list.items.map(labelOf);
}

test('hover says what a property means', async () => {
    const editor = await open('details/beam.coffer');
    const [start] = endsOf(editor.document, 'height');
    const hovers = await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', editor.document.uri, start);
    assert.match(hovers.map(textOf).join('\n'), /clear of the cleats/);
});

test('completion offers the properties that fit the place', async () => {
    const editor = await open('details/beam.coffer');
    await replace(editor, 'ease   1/16"', 'ease   1/16"\n    ');
    const [, after] = endsOf(editor.document, 'ease   1/16"\n    ');
    const labels = await until('properties of a bottom', async () => {
        const offered = await completions(editor.document.uri, after);
        return offered.includes('biscuits') && offered;
    });
    assert.ok(labels.includes('press'), labels.join(', '));
    assert.ok(!labels.includes('held-down'), 'a bottom is not held down');
    assert.ok(!labels.includes('coffers-north'), 'a bottom has no coffers');
});

test('completion offers the words a property takes', async () => {
    const editor = await open('rooms/den.coffer');
    const [start] = endsOf(editor.document, 'north-south');
    const labels = await until('directions', async () => {
        const offered = await completions(editor.document.uri, start);
        return offered.includes('east-west') && offered;
    });
    assert.ok(labels.includes('north-south'), labels.join(', '));
});

test('the outline names the parts of a file', async () => {
    const editor = await open('details/beam.coffer');
    const symbols = await until('the outline', () =>
        vscode.commands.executeCommand<vscode.DocumentSymbol[] | undefined>('vscode.executeDocumentSymbolProvider', editor.document.uri));
    assert.deepEqual(symbols.filter(symbol => symbol.name.includes('beam')).map(symbol => symbol.name), ['beam', 'clear-beam']);
    await vscode.commands.executeCommand('outline.focus');
    await picture('outline');
});

test('a property leads to the vocabulary, which opens read only', async () => {
    const editor = await open('details/beam.coffer');
    const [start] = endsOf(editor.document, 'height');
    const places = await vscode.commands.executeCommand<(vscode.Location | vscode.LocationLink)[]>('vscode.executeDefinitionProvider', editor.document.uri, start);
    const target = places[0] && ('targetUri' in places[0] ? places[0].targetUri : places[0].uri);
    assert.equal(target?.toString(), 'builtin:/builtin.coffer');
    const vocabulary = await vscode.workspace.openTextDocument(target);
    assert.match(vocabulary.getText(), /kind Spacers/);
    assert.equal(vocabulary.languageId, 'coffer');
});

test('formatting lines a file up, and changes nothing the second time', async () => {
    const editor = await open('details/beam.coffer');
    const tidy = editor.document.getText();
    await replace(editor, '    height  4"', '        height      4"');
    await vscode.commands.executeCommand('editor.action.formatDocument');
    await until('the formatted text', () => editor.document.getText() === tidy, () => editor.document.getText());
    await vscode.commands.executeCommand('editor.action.formatDocument');
    assert.equal(editor.document.getText(), tidy);
});

test('the call hierarchy leads from a detail to the rooms that are built with it', async () => {
    const editor = await open('details/beam.coffer');
    const [, start] = endsOf(editor.document, 'profile beam');
    const [item] = await until('a detail', async () => {
        const items = await vscode.commands.executeCommand<vscode.CallHierarchyItem[]>('vscode.prepareCallHierarchy', editor.document.uri, start);
        return items.length > 0 && items;
    });
    assert.equal(item!.name, 'beam');
    const users = await vscode.commands.executeCommand<vscode.CallHierarchyIncomingCall[]>('vscode.provideIncomingCalls', item);
    assert.ok(users.some(({ from }) => from.name === 'den'), users.map(({ from }) => from.name).join(', '));
});

test('the code of a finding leads to the page of its rule', async () => {
    const editor = await open('details/beam.coffer');
    await typeOver(editor, 'height', 'heigth');
    const { code } = await until('a finding', () => findings(editor.document.uri).find(found => typeof found.code === 'object'));
    assert.match((code as { target: vscode.Uri }).target.toString(true), /^command:cofferwright\.showRule\?\["[a-z-]+"\]$/);
    await vscode.commands.executeCommand('cofferwright.showRule', 'spacer-hits-cleat');
    await until('the page', () => vscode.window.tabGroups.all.flatMap(({ tabs }) => tabs).some(({ input, label }) =>
        input instanceof vscode.TabInputWebview && label.includes('spacer-hits-cleat')));
    await picture('rule page');
});

test('above a detail stands where it is used, and leads to the places', async () => {
    const editor = await open('details/beam.coffer');
    const lens = await until('where it is used', async () => {
        const lenses = await vscode.commands.executeCommand<vscode.CodeLens[]>('vscode.executeCodeLensProvider', editor.document.uri, 50);
        return lenses.find(({ command }) => command?.title.includes('used in'));
    });
    assert.match(lens.command!.title, /den/);
});
