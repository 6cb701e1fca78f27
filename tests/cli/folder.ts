import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder of its own for one test, with the given files in it, in a repository of its own: what lies above stays out. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array>>): string {
    const repository = realpathSync(mkdtempSync(join(tmpdir(), 'cofferwright-')));
    onTestFinished(() => rmSync(repository, { recursive: true, force: true }));
    const folder = join(repository, 'house');
    mkdirSync(join(repository, '.git'));
    mkdirSync(folder);
    for (const [name, text] of Object.entries(files)) {
        mkdirSync(dirname(join(folder, name)), { recursive: true });
        writeFileSync(join(folder, name), text);
    }
    return folder;
}
