import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder of its own for one test, with the given files in it. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
    const folder = realpathSync(mkdtempSync(join(tmpdir(), 'cofferwright-')));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    for (const [name, text] of Object.entries(files)) {
        mkdirSync(dirname(join(folder, name)), { recursive: true });
        writeFileSync(join(folder, name), text);
    }
    return folder;
}
