import * as assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import * as vscode from 'vscode';
import { fileUri, finding, isDriven, measured, noFinding, open, picture, replace, seen, test, until } from './harness.ts';

/** What needs a machine behind the editor: a command line for tasks, and somebody who looks at the screen. */
test('checking is a task, and its program says what the matcher reads', async () => {
    const tasks = await vscode.tasks.fetchTasks({ type: 'cofferwright' });
    assert.deepEqual(tasks.map(task => task.name), ['check all files']);
    const { process, args, options } = tasks[0]!.execution as vscode.ProcessExecution;
    const broken = fileUri('rooms/broken.coffer');
    await vscode.workspace.fs.writeFile(broken, new TextEncoder().encode('edition 1\n\nstock pine {\n  size  1x6\n  heigth  5"\n}\n'));
    try {
        const { status, stdout } = spawnSync(process, args, { cwd: options!.cwd!, env: { ...globalThis.process.env, ...options!.env }, encoding: 'utf8' });
        assert.equal(status, 1, stdout);
        const { problemMatchers } = (vscode.extensions.getExtension('cofferwright.cofferwright')!.packageJSON as { contributes: { problemMatchers: { pattern: { regexp: string } }[] } }).contributes;
        const lines = stdout.split('\n').filter(line => line.includes('broken.coffer')).map(line => new RegExp(problemMatchers[0]!.pattern.regexp).exec(line)?.slice(1, 4));
        assert.deepEqual(lines, [['rooms/broken.coffer', '5', '3']]);
    } finally {
        await vscode.workspace.fs.delete(broken);
    }
});

if (isDriven) {
    test('the status bar tells how the server is and what was found in the job', async () => {
        const bar = (): Promise<string> => seen('#status\\.languageStatus');
        const editor = await open('details/beam.coffer');
        await until('nothing found', async () => /Cofferwright.*Nothing found|Nothing found.*Cofferwright/s.test(await bar()), bar);
        await replace(editor, 'height  4"', 'height  6 1/2"');
        await finding(editor.document.uri, 'spacer-hits-cleat');
        await until('the error, counted', async () => /Errors: [1-9]/.test(await bar()), bar);
        // the room that uses the beam is of the same job
        await open('rooms/den.coffer');
        await until('the error, counted from the room too', async () => /Errors: [1-9]/.test(await bar()), bar);
        await replace(await open('details/beam.coffer'), 'height  6 1/2"', 'height  4"');
        await noFinding(editor.document.uri, 'spacer-hits-cleat');
    });

    test('the walkthrough has its steps', async () => {
        await vscode.commands.executeCommand('workbench.action.openWalkthrough', 'cofferwright.cofferwright#firstCeiling');
        const page = (): Promise<string> => seen('.gettingStartedContainer');
        await until('four steps', async () => {
            const words = await page();
            return ['Write a ceiling down', 'See what does not fit', 'Fix it, or say why it stays', 'Check the whole house'].every(step => words.includes(step));
        }, page);
        await picture('walkthrough');
    });

    test('the editor says how long activation took', async () => {
        await vscode.commands.executeCommand('workbench.action.showRuntimeExtensions');
        const row = (await until('the figure', async () => /Cofferwright[^]*?Activation: (\d+)ms/.exec(await seen('.runtime-extensions-editor')), () => seen('.runtime-extensions-editor')))!;
        measured('activation', Number(row[1]));
        assert.ok(Number(row[1]) > 0);
    });
}
