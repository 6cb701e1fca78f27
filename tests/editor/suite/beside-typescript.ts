import * as vscode from 'vscode';
import { findings, measured, open, test, typeOver, until } from './harness.ts';

/** Not many more: each waits until the hand is taken to rest. */
const TIMES = 12;
const SCALE = `${Array.from({ length: 40 }, (_, i) => `function step${i}(inches: number, count: number): number {\n    return inches * count + ${i};\n}`).join('\n')}\nstep0(10, 12);\n`;

/** From the last key to the findings it leads to, in milliseconds, the shortest first: `right` and `wrong` are typed in turns for each other. */
async function keyToFindings(editor: vscode.TextEditor, right: string, wrong: string, isWrong: () => boolean): Promise<number[]> {
    const times: number[] = [];
    for (let time = 0; time < TIMES; time++) {
        const [from, to] = time % 2 === 0 ? [right, wrong] : [wrong, right];
        let changed = 0;
        const listening = vscode.languages.onDidChangeDiagnostics(({ uris }) => {
            if (uris.some(uri => uri.toString() === editor.document.uri.toString()) && isWrong() === (to === wrong)) changed ||= Date.now();
        });
        await typeOver(editor, from, to);
        const typed = Date.now();
        await until(`findings of ${to}`, () => changed > 0, () => findings(editor.document.uri).map(({ message }) => message), 30);
        listening.dispose();
        times.push(changed - typed);
    }
    await vscode.commands.executeCommand('workbench.action.files.revert');
    return times.sort((a, b) => a - b);
}

const middle = (sorted: readonly number[]): number => sorted[Math.floor(sorted.length / 2)]!;

/** In the same run, on the same machine: what somebody is used to who also writes programs. */
test('from the last key to findings, beside the editor\'s own TypeScript', async () => {
    const script = await vscode.window.showTextDocument(await vscode.workspace.openTextDocument({ language: 'typescript', content: SCALE }));
    // its server starts with the first file
    await until('TypeScript', async () => (await vscode.commands.executeCommand<vscode.Hover[]>('vscode.executeHoverProvider', script.document.uri, new vscode.Position(0, 10))).length > 0, undefined, 60);
    const theirs = await keyToFindings(script, 'step0(10, 12);', 'step0(10, "");', () => findings(script.document.uri).length > 0);
    const room = await open('rooms/den.coffer');
    await until('activation', () => vscode.extensions.getExtension('cofferwright.cofferwright')?.isActive);
    const ours = await keyToFindings(room, 'wall south  14\' 2"', 'wall south  14\' 9"', () => findings(room.document.uri).some(({ severity }) => severity <= vscode.DiagnosticSeverity.Warning));
    for (const [what, times] of [['TypeScript', theirs], ['a room', ours]] as const) {
        measured(`last key to findings, ${what}, median`, middle(times));
        measured(`last key to findings, ${what}, longest of ${TIMES}`, times.at(-1)!);
    }
});
