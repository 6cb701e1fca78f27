import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { hallOf } from '../../bench/hall.ts';
import { endsOf, fileUri, inPane, isDriven, measured, open, picture, replace, test, until } from './harness.ts';

const PLAN = 'Ceiling Plan';
const tabs = (): readonly vscode.Tab[] => vscode.window.tabGroups.all.flatMap(group => group.tabs);
const paneTabs = (): readonly vscode.Tab[] => tabs().filter(({ input }) => input instanceof vscode.TabInputWebview && input.viewType.includes('cofferwright.'));

/** A room's file in the editor, and its plan beside it. */
async function openPlan(name = 'rooms/den.coffer'): Promise<vscode.TextEditor> {
    const editor = await open(name);
    await until('activation', () => vscode.extensions.getExtension('cofferwright.cofferwright')?.isActive);
    await vscode.commands.executeCommand('cofferwright.showPlan');
    return editor;
}
const coffersShown = async (): Promise<unknown> => inPane(PLAN, 'document.querySelectorAll("[data-key^=\'coffer.\']").length');
/** The first pane of a window takes its time: the editor sets up what holds them. */
const nineCoffers = (): Promise<unknown> => until('nine coffers', async () => await coffersShown() === 9, coffersShown, 40);
const isBroken = async (): Promise<unknown> => inPane(PLAN, 'document.querySelector(".page.broken") !== null');
const whole = (document: vscode.TextDocument): vscode.Range => new vscode.Range(document.positionAt(0), document.positionAt(document.getText().length));

test('the plan opens beside the text, once, and closes again', async () => {
    await openPlan();
    const tab = await until('the pane', () => paneTabs()[0]);
    await until('its name', () => paneTabs()[0]?.label === 'Den — Ceiling Plan', () => paneTabs().map(({ label }) => label));
    assert.ok(tab.group.viewColumn !== vscode.window.activeTextEditor?.viewColumn, 'it lies over the text');
    await vscode.commands.executeCommand('cofferwright.showPlan');
    assert.equal(paneTabs().length, 1);
    await vscode.window.tabGroups.close(paneTabs());
    await until('no pane', () => paneTabs().length === 0);
});

test('panes that are opened in a breath stand in one group, and nothing else does', async () => {
    await openPlan();
    for (const command of ['cofferwright.showCutList', 'cofferwright.showSection']) await vscode.commands.executeCommand(command);
    await until('three panes', () => paneTabs().length === 3);
    assert.deepEqual(new Set(paneTabs().map(({ group }) => group)).size, 1);
    assert.deepEqual(paneTabs()[0]!.group.tabs.length, 3);
});

test('panes keep a group of their own beside two columns of texts, and a text that is opened from a pane goes to the texts', async () => {
    await vscode.window.showTextDocument(fileUri('yard.coffer'), { viewColumn: vscode.ViewColumn.Two, preview: false });
    await vscode.window.showTextDocument(fileUri('rooms/den.coffer'), { viewColumn: vscode.ViewColumn.One, preview: false });
    await until('activation', () => vscode.extensions.getExtension('cofferwright.cofferwright')?.isActive);
    await vscode.commands.executeCommand('cofferwright.showPlan');
    await until('the pane', () => paneTabs()[0]);
    assert.deepEqual(paneTabs()[0]!.group.tabs.length, 1, 'it lies among texts');
    // asked for once more it has the hands on it
    await vscode.commands.executeCommand('cofferwright.showPlan');
    await until('the hands on the pane', () => paneTabs()[0]!.group.isActive);
    await vscode.commands.executeCommand('vscode.open', fileUri('details/beam.coffer'));
    await until('the detail', () => tabs().some(({ label }) => label === 'beam.coffer'), () => tabs().map(({ label }) => label));
    assert.deepEqual(paneTabs()[0]!.group.tabs.length, 1, 'a text landed on it');
});

test('the plan shows what the text says, through random edits, and the last good one while the text is broken', async () => {
    if (!isDriven) return;
    const editor = await openPlan();
    await nineCoffers();
    await picture('plan');
    // the same lots every time
    let lot = 20251125;
    const draw = (most: number): number => (lot = (lot * 1103515245 + 12345) % 2147483648) % most;
    const original = editor.document.getText();
    for (let edit = 0; edit < 8; edit++) {
        const across = 1 + draw(5), down = 1 + draw(4);
        const text = original.replace('coffers-north  3', `coffers-north  ${across}`).replace('coffers-east   3', `coffers-east   ${down}`);
        await editor.edit(change => change.replace(whole(editor.document), text.replace('  line B { beams clear-beam }\n', '')));
        await until(`${across} by ${down} coffers`, async () => await coffersShown() === across * down, coffersShown);
        if (edit % 3 !== 0) continue;
        await editor.edit(change => change.replace(whole(editor.document), text.replace('grid {', 'grid { (')));
        await until('a dimmed picture', isBroken);
        assert.equal(await coffersShown(), across * down, 'the last good picture is gone');
        if (edit !== 0) continue;
        await picture('plan-broken');
        await inPane(PLAN, 'document.querySelector("[data-act=problem]").click()');
        await until('the first error selected', () => editor.selection.active.line > 0, () => editor.selection);
        editor.selection = new vscode.Selection(0, 0, 0, 0);
    }
    await editor.edit(change => change.replace(whole(editor.document), original));
    await until('nine coffers again', async () => await coffersShown() === 9 && await isBroken() === false, coffersShown);
});

test('a click on a part selects its words, and the cursor lights up its parts', async () => {
    if (!isDriven) return;
    await openPlan();
    await nineCoffers();
    await inPane(PLAN, 'document.querySelector("[data-key=\'den.bottom-1\']").dispatchEvent(new MouseEvent("click", { bubbles: true }))');
    const beam = await until('the detail on the screen', () => vscode.window.activeTextEditor?.document.uri.path.endsWith('beam.coffer') && vscode.window.activeTextEditor);
    await until('the word selected', () => beam.document.getText(beam.selection) === 'bottom', () => beam.document.getText(beam.selection));
    await until('the bottoms lit', async () => (await inPane(PLAN, 'document.querySelectorAll("[data-key^=\'den.bottom-\'].lit").length') as number) === 8);
    await picture('plan-lit');

    const [start] = endsOf(beam.document, 'sides {');
    beam.selection = new vscode.Selection(start, start);
    await until('the sides lit, and no bottom', async () => await inPane(PLAN, '[...document.querySelectorAll(".lit")].every(part => part.dataset.key.startsWith("den.side-")) && document.querySelectorAll(".lit").length > 5') === true);
    const room = await open('rooms/den.coffer');
    const [line] = endsOf(room.document, 'line B');
    room.selection = new vscode.Selection(line, line);
    await until('line B lit', async () => await inPane(PLAN, 'document.querySelector("[data-key=\'line.B\'].lit") !== null') === true);
});

test('a pane that was hidden shows what has changed meanwhile', async () => {
    if (!isDriven) return;
    const editor = await openPlan();
    await nineCoffers();
    const column = paneTabs()[0]!.group.viewColumn;
    await vscode.window.showTextDocument(fileUri('yard.coffer'), { viewColumn: column, preserveFocus: true });
    await until('the pane hidden', () => paneTabs()[0]?.isActive === false);
    await replace(editor, 'coffers-north  3', 'coffers-north  4');
    await vscode.window.tabGroups.close(tabs().filter(({ label }) => label === 'yard.coffer'));
    await until('twelve coffers', async () => await coffersShown() === 12, coffersShown);
    await replace(editor, 'coffers-north  4', 'coffers-north  3');
});

test('a pinned pane stays with its room, another follows', async () => {
    if (!isDriven) return;
    await openPlan();
    await nineCoffers();
    await inPane(PLAN, 'document.getElementById("pin").click()');
    await until('pinned', async () => await inPane(PLAN, 'document.getElementById("pin").getAttribute("aria-pressed")') === 'true');
    const other = await vscode.workspace.openTextDocument({ language: 'coffer', content: (await vscode.workspace.openTextDocument(fileUri('rooms/den.coffer'))).getText() });
    await vscode.window.showTextDocument(other, vscode.ViewColumn.One);
    await vscode.commands.executeCommand('cofferwright.showPlan');
    await until('two panes', () => paneTabs().length === 2);
    assert.ok(paneTabs().some(({ label }) => label === 'Den — Ceiling Plan'));
});

test('a restarted server fills the panes again', async () => {
    if (!isDriven) return;
    const editor = await openPlan();
    await nineCoffers();
    await vscode.commands.executeCommand('cofferwright.restartServer');
    await replace(editor, 'coffers-east   3', 'coffers-east   2');
    await until('six coffers', async () => await coffersShown() === 6, coffersShown);
    await replace(editor, 'coffers-east   2', 'coffers-east   3');
});

const P95 = (times: readonly number[]): number => [...times].sort((a, b) => a - b)[Math.floor(times.length * 0.95)]!;
/** When the pane showed the newest picture, by the machine's clock, and which one it was. */
const painted = async (): Promise<{ count: number; at: number } | undefined> => await inPane(PLAN,
    '(mark => mark && { count: mark.detail, at: performance.timeOrigin + mark.startTime })(performance.getEntriesByName("painted")[0])') as { count: number; at: number } | null ?? undefined;
/** The newest picture, once no newer one has come for a while. */
async function settled(): Promise<{ count: number; at: number }> {
    let last = await until('the last picture', painted);
    for (;;) {
        await new Promise(resolve => setTimeout(resolve, 150));
        const now = await until('the last picture', painted);
        if (now.count === last.count) return now;
        last = now;
    }
}

test('from a keystroke to the new picture, of 12 and 40 coffers', async () => {
    if (!isDriven) return;
    for (const [across, down] of [[4, 3], [8, 5]] as const) {
        const editor = await vscode.window.showTextDocument(await vscode.workspace.openTextDocument({ language: 'coffer', content: hallOf(across, down) }));
        await vscode.commands.executeCommand('cofferwright.showPlan');
        await until('the plan', async () => await coffersShown() === across * down, coffersShown, 40);
        const toPicture: number[] = [], afterFindings: number[] = [];
        for (let key = 0; key < 40; key++) {
            // a late picture of the key before must not be taken for this one's
            const before = (await settled()).count;
            let found = 0;
            // walls that differ are a finding that changes with every key; three lengths, so that no two keys lead back to a picture that stands already
            const listening = vscode.languages.onDidChangeDiagnostics(() => { found ||= Date.now(); });
            const begun = Date.now();
            await replace(editor, `wall south ${32 + key % 3}'`, `wall south ${32 + (key + 1) % 3}'`);
            const { at } = await until('a new picture', async () => { const now = await painted(); return now && now.count > before && now; });
            await until('findings', () => found > 0);
            listening.dispose();
            toPicture.push(at - begun);
            afterFindings.push(at - found);
        }
        measured(`plan of ${across * down} coffers, keystroke to repaint, p95`, Math.round(P95(toPicture)));
        measured(`plan of ${across * down} coffers, findings to repaint, p95`, Math.round(P95(afterFindings)));
        await vscode.commands.executeCommand('workbench.action.revertAndCloseActiveEditor');
        await vscode.window.tabGroups.close(paneTabs());
    }
});
