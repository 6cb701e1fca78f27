import * as assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import * as path from 'node:path';
import * as vscode from 'vscode';
import { inPane, isDriven, open, picture, test, until } from './harness.ts';

const CHANGES = 'Changes', root = vscode.workspace.workspaceFolders![0]!.uri;
const words = async (): Promise<string> => String(await inPane(CHANGES, 'document.querySelector("#changes")?.innerText ?? document.body.innerText'));
const git = (...argv: readonly string[]): void => {
    execFileSync('git', ['-c', 'user.name=A Carpenter', '-c', 'user.email=carpenter@example.org', '-c', 'commit.gpgsign=false', '-c', 'core.hooksPath=/dev/null', ...argv], { cwd: root.fsPath, stdio: 'ignore' });
};
interface Git { getAPI(version: 1): { openRepository?(at: vscode.Uri): Promise<unknown> } }

test('the changes since the last commit, by the editor\'s own git, follow the text; without a repository it is said', async () => {
    const own = vscode.extensions.getExtension<Git>('vscode.git');
    if (!isDriven || !own) return;
    const editor = await open('rooms/den.coffer'), { document } = editor;
    await until('activation', () => vscode.extensions.getExtension('cofferwright.cofferwright')?.isActive);
    await vscode.commands.executeCommand('cofferwright.showChanges');
    await until('that git is switched off', async () => /switched off/.test(await words()), words, 40);
    const setting = vscode.workspace.getConfiguration('git');
    await setting.update('enabled', true, vscode.ConfigurationTarget.Global);
    await until('that there is no repository', async () => /no git repository/.test(await words()), words, 40);
    git('init', '-q');
    git('add', '.');
    git('commit', '-q', '-m', 'As it was signed');
    await (await own.activate()).getAPI(1).openRepository?.(root);
    await until('nothing changed', async () => /As it was signed[\s\S]*Nothing changed/.test(await words()), words, 40);
    const at = document.getText().indexOf('coffers-north  3') + 'coffers-north  '.length;
    await editor.edit(change => change.replace(new vscode.Range(document.positionAt(at), document.positionAt(at + 1)), '4'));
    await until('what changed', async () => /coffers-north\s+3\s+4/.test(await words()), words, 40);
    assert.match(await words(), /line 2 is new|is new/);
    await picture('changes');
    const lenses = async (): Promise<string[]> => (await vscode.commands.executeCommand<vscode.CodeLens[]>('vscode.executeCodeLensProvider', document.uri, 20)).map(({ command }) => command?.title ?? '');
    await until('a line above the room', async () => (await lenses()).some(title => title.startsWith('since the last commit:')), lenses, 40);
    await document.save();
    git('commit', '-q', '-a', '-m', 'Four of them');
    await until('another last commit', async () => /Four of them[\s\S]*Nothing changed/.test(await words()), words, 60);
    assert.equal(path.basename(document.uri.fsPath), 'den.coffer');
});
