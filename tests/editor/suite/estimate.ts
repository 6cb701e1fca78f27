import * as assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { inPane, isDriven, open, picture, test, until } from './harness.ts';

const ESTIMATE = 'Estimate';
const RATES = '\nlabor { crew 2 rate 60 USD per h; blocking 3 min per ft; sides 5 min per ft }\nbid { overhead 10%; profit 15% of price }\n';
const total = async (): Promise<unknown> => inPane(ESTIMATE, 'document.querySelector(".sum strong")?.textContent');
const missing = async (): Promise<unknown> => inPane(ESTIMATE, '[...document.querySelectorAll(".missing li")].map(one => one.textContent).join("\\n")');

test('the estimate follows the text: what has no rate is said, and is priced once it has one', async () => {
    if (!isDriven) return;
    const editor = await open('rooms/den.coffer');
    await until('activation', () => vscode.extensions.getExtension('cofferwright.cofferwright')?.isActive);
    await vscode.commands.executeCommand('cofferwright.showEstimate');
    await until('what is missing', async () => String(await missing()).includes('labor.sides'), missing, 40);
    const before = await total();
    const { document } = editor, end = document.positionAt(document.getText().length);
    await editor.edit(change => change.insert(end, RATES));
    await until('another price', async () => await total() !== before && !String(await missing()).includes('labor.sides'), total);
    assert.match(String(await missing()), /labor\.cleats/);
    await picture('estimate');
    const priced = await total();
    const at = document.getText().indexOf('sides 5 min') + 'sides '.length;
    await editor.edit(change => change.replace(new vscode.Range(document.positionAt(at), document.positionAt(at + 1)), '9'));
    await until('a dearer one', async () => Number(String(await total()).replace(/[^\d.]/g, '')) > Number(String(priced).replace(/[^\d.]/g, '')), total);
});
