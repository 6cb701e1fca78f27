import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { endsOf, inPane, isDriven, open, picture, replace, test, until } from './harness.ts';

const PLAN = 'Ceiling Plan', SECTION = 'Beam Section', CUT_LIST = 'Cut List';

/** A room's file in the editor, and panes of these kinds beside it. */
async function openBeside(...commands: string[]): Promise<vscode.TextEditor> {
    const editor = await open('rooms/den.coffer');
    await until('activation', () => vscode.extensions.getExtension('cofferwright.cofferwright')?.isActive);
    for (const command of commands) await vscode.commands.executeCommand(command);
    return editor;
}
const entries = async (): Promise<unknown> => inPane(CUT_LIST, 'document.querySelectorAll("#list .entry").length');
const filled = (): Promise<unknown> => until('rows of the cut list', async () => Number(await entries()) > 5, entries, 40);
const look = (words: string): Promise<unknown> => inPane(CUT_LIST, `(field => { field.value = ${JSON.stringify(words)}; field.dispatchEvent(new Event("input", { bubbles: true })); return field.value; })(document.getElementById("find"))`);
const click = (pane: string, selector: string): Promise<unknown> => inPane(pane, `(at => { at?.dispatchEvent(new MouseEvent("click", { bubbles: true })); return at !== null; })(document.querySelector(${JSON.stringify(selector)}))`);

test('a piece picked in the cut list is picked on the plan, and its words are selected; and back', async () => {
    if (!isDriven) return;
    await openBeside('cofferwright.showPlan', 'cofferwright.showCutList');
    await filled();
    await look('bottom-2');
    assert.equal(await entries(), 1);
    await click(CUT_LIST, '#list .entry .mark');
    const beam = await until('the detail on the screen', () => vscode.window.activeTextEditor?.document.uri.path.endsWith('beam.coffer') && vscode.window.activeTextEditor);
    await until('the word selected', () => beam.document.getText(beam.selection) === 'bottom', () => beam.document.getText(beam.selection));
    await click(CUT_LIST, '.open-why');
    await click(CUT_LIST, '[data-find=plan]');
    await until('the piece picked on the plan', async () => await inPane(PLAN, 'document.querySelector(".picked")?.dataset.key') === 'den.bottom-2', () => inPane(PLAN, 'document.querySelector(".picked")?.outerHTML.slice(0, 200) ?? "nothing"'));
    await picture('cut-list-and-plan');
    await vscode.commands.executeCommand('cofferwright.showCutList');
    // a plan that is not there yet opens at the piece
    await vscode.window.tabGroups.close(vscode.window.tabGroups.all.flatMap(group => group.tabs).filter(({ label }) => label.endsWith(PLAN)));
    await until('the list again', async () => await entries() === 1, entries);
    await look('side-B-1-south');
    await click(CUT_LIST, '.open-why');
    await click(CUT_LIST, '#list [data-find=plan]');
    await until('the piece picked on a new plan', async () => await inPane(PLAN, 'document.querySelector(".picked")?.dataset.key') === 'den.side-B-1-south', () => inPane(PLAN, 'document.querySelectorAll("[data-key]").length'));
    await vscode.commands.executeCommand('cofferwright.showCutList');
    await until('the list again', async () => await entries() === 1, entries);
    await look('');
});

test('a tick stays when the pane is closed, stands in no file, and tells when the piece has changed since', async () => {
    if (!isDriven) return;
    const editor = await openBeside('cofferwright.showCutList');
    await filled();
    const before = editor.document.getText();
    await look('side-A-1-north');
    await inPane(CUT_LIST, 'document.querySelector("#list .entry .tick input").click()');
    const ticked = (): Promise<unknown> => inPane(CUT_LIST, 'document.querySelector("#list .entry .tick input")?.checked');
    await until('the tick', async () => await inPane(CUT_LIST, 'document.querySelector(".progress").textContent.includes("1 of ")') === true);
    await vscode.window.tabGroups.close(vscode.window.tabGroups.all.flatMap(group => group.tabs)
        .filter(({ input }) => input instanceof vscode.TabInputWebview));
    await vscode.commands.executeCommand('cofferwright.showCutList');
    await filled();
    await look('side-A-1-north');
    await until('the tick again', async () => await ticked() === true, ticked);
    assert.equal(editor.document.getText(), before);
    assert.equal(editor.document.isDirty, false);

    await replace(editor, 'wall north  14\' 2"', 'wall north  14\' 5"');
    await replace(editor, 'wall south  14\' 2"', 'wall south  14\' 5"');
    await until('it has changed', async () => await inPane(CUT_LIST, 'document.querySelector(".changed")?.textContent.startsWith("changed since cut: it was ")') === true, () => inPane(CUT_LIST, 'document.querySelector("#list")?.textContent'));
    await picture('cut-list-changed');
    assert.equal(await ticked(), false);
    await replace(editor, 'wall north  14\' 5"', 'wall north  14\' 2"');
    await replace(editor, 'wall south  14\' 5"', 'wall south  14\' 2"');
    await until('it is as it was cut', async () => await ticked() === true, ticked);
    await inPane(CUT_LIST, 'document.querySelector("#list .entry .tick input").click()');
    await until('no tick', async () => await ticked() === false, ticked);
    await look('');
});

test('the line above a room leads to its cut list', async () => {
    if (!isDriven) return;
    const editor = await openBeside();
    const lenses = await until('code lenses', async () => {
        const all = await vscode.commands.executeCommand<vscode.CodeLens[]>('vscode.executeCodeLensProvider', editor.document.uri, 20);
        const found = all?.find(({ command }) => command?.command === 'cofferwright.showPieces');
        return found;
    });
    await vscode.commands.executeCommand(lenses.command!.command, ...(lenses.command!.arguments ?? []) as unknown[]);
    await filled();
});

test('the section pane shows every section, and the cursor lights up its parts', async () => {
    if (!isDriven) return;
    const editor = await openBeside('cofferwright.showSection');
    const sections = (): Promise<unknown> => inPane(SECTION, '[...document.querySelectorAll(".choice bdi")].map(name => name.textContent).join()');
    await until('two sections', async () => await sections() === 'beam,clear-beam', sections, 40);
    await picture('section');
    await click(SECTION, '.drawing .part[aria-label="Side, left"]');
    const beam = await until('the detail on the screen', () => vscode.window.activeTextEditor?.document.uri.path.endsWith('beam.coffer') && vscode.window.activeTextEditor);
    await until('the word selected', () => beam.document.getText(beam.selection) === 'sides', () => beam.document.getText(beam.selection));
    const lit = (): Promise<unknown> => inPane(SECTION, '[...document.querySelectorAll(".part.lit")].map(part => part.getAttribute("aria-label")).join()');
    await until('the sides lit', async () => await lit() === 'Side, left,Side, right', lit);
    const [cleats] = endsOf(beam.document, 'cleats {');
    beam.selection = new vscode.Selection(cleats, cleats);
    await until('the cleats lit', async () => await lit() === 'Cleat, left,Cleat, right', lit);
    const depth = (): Promise<unknown> => inPane(SECTION, '[...document.querySelectorAll(".lengths tr")].find(row => row.textContent.startsWith("Depth"))?.querySelector(".figure").textContent');
    await until('its depth', async () => await depth() === '7 1⁄2"', depth);
    await replace(beam, 'stock  deep\n', 'stock  deep\n    held-down 1/2"\n');
    await until('a deeper beam', async () => await depth() === '7 3⁄4"', depth);
    await replace(beam, '    held-down 1/2"\n', '');
    assert.equal(editor.document.isDirty, false);
});
