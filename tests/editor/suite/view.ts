import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { inPane, isDriven, measured, open, picture, test, until } from './harness.ts';

const VIEW = 'In Three Dimensions';
const frames = async (): Promise<number> => Number(await inPane(VIEW, 'Number(document.querySelector("canvas")?.dataset.frames ?? 0)') ?? 0);
const picked = async (): Promise<unknown> => inPane(VIEW, 'document.querySelector("#picked .link")?.textContent ?? ""');

test('the ceiling in three dimensions is drawn in a pane of the editor, and a piece leads to its words', async () => {
    const editor = await open('rooms/den.coffer');
    await until('activation', () => vscode.extensions.getExtension('cofferwright.cofferwright')?.isActive);
    const began = Date.now();
    await vscode.commands.executeCommand('cofferwright.showView');
    const labels = (): string[] => vscode.window.tabGroups.all.flatMap(group => group.tabs).map(({ label }) => label);
    await until('the room it shows', () => labels().includes(`Den — ${VIEW}`), labels, 40);
    // what is in the pane is seen only from outside of the editor
    if (!isDriven) return;
    await until('the first frame', async () => await frames() > 0, frames, 60);
    measured('view in three dimensions, from the command to the first frame', Date.now() - began);
    await picture('view');
    editor.selection = new vscode.Selection(0, 0, 0, 0);
    await inPane(VIEW, 'document.querySelector("#canvas").dispatchEvent(new KeyboardEvent("keydown", { key: "n", bubbles: true }))');
    await until('a piece by name', async () => String(await picked()) !== '', picked);
    await inPane(VIEW, 'document.querySelector("#canvas").dispatchEvent(new KeyboardEvent("keydown", { key: "Enter", bubbles: true }))');
    await until('its words in the text', () => vscode.window.visibleTextEditors.some(each => !each.selection.isEmpty), () => vscode.window.visibleTextEditors.map(each => each.selection));
    const before = await frames();
    assert.ok(before > 0);
    await inPane(VIEW, 'document.querySelector("#look-above").click()');
    await until('another frame', async () => await frames() > before, frames, 30);
});
