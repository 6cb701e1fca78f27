// npm run test:electron: the same suite in the desktop editor, for machines that may download it (once, to .vscode-test).
// VSCODE_VERSION chooses another version than the oldest supported, VSCODE_PROGRAM one that is installed.
import { cpSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runTests } from '@vscode/test-electron';
import { packageExtension } from './package.mjs';
import { main, root } from './ready.mjs';
import { bundleSuite, judge, workspace } from './test-editor.mjs';

await main(async () => {
    await packageExtension();
    const extensionTestsPath = await bundleSuite();
    const folder = mkdtempSync(join(tmpdir(), 'cofferwright-editor-'));
    const results = join(folder, 'results.json');
    cpSync(workspace, join(folder, 'workspace'), { recursive: true });
    try {
        const program = process.env.VSCODE_PROGRAM ? { vscodeExecutablePath: process.env.VSCODE_PROGRAM } : { version: process.env.VSCODE_VERSION ?? '1.100.3' };
        await runTests({
            ...program,
            // the folder the package is made from: what is tested is what is shipped
            extensionDevelopmentPath: join(root, '.cache/package'), extensionTestsPath,
            launchArgs: [join(folder, 'workspace'), '--disable-extensions', '--disable-workspace-trust', '--disable-gpu'],
            extensionTestsEnv: { COFFERWRIGHT_RESULTS: results },
        });
        judge(results);
    } finally {
        rmSync(folder, { recursive: true, force: true });
    }
});
