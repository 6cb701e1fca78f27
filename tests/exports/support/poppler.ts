import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Poppler's reader of PDF, of its own make. `.ci/run` installs it (poppler-utils); elsewhere tests that want it say that it is missing. */
export function hasPoppler(): boolean {
    const found = spawnSync('pdftotext', ['-v']).error === undefined;
    if (!found && process.env['CI']) throw new Error('pdftotext is missing: install poppler-utils');
    if (!found) console.warn('pdftotext is missing (poppler-utils): PDF is not read back here. .ci/run reads it.');
    return found;
}

/** The words of a file, page by page. */
export function wordsOf(pdf: Uint8Array): string[] {
    return run('pdftotext', ['-layout'], pdf, ['-']).split('\f').slice(0, -1);
}
export function fontsOf(pdf: Uint8Array): string[] {
    return run('pdffonts', [], pdf, []).split('\n').slice(2).filter(line => line !== '');
}
/** Width and height of each page in points. */
export function pageSizes(pdf: Uint8Array, pages: number): [number, number][] {
    return [...run('pdfinfo', ['-f', '1', '-l', String(pages)], pdf, []).matchAll(/^Page +\d+ size: +([\d.]+) x ([\d.]+) pts/gm)].map(([, w, h]) => [Number(w), Number(h)]);
}

function run(program: string, before: string[], pdf: Uint8Array, after: string[]): string {
    const folder = mkdtempSync(join(tmpdir(), 'bid-'));
    try {
        const path = join(folder, 'bid.pdf');
        writeFileSync(path, pdf);
        const { status, stdout, stderr } = spawnSync(program, [...before, path, ...after], { encoding: 'utf8' });
        if (status !== 0) throw new Error(`${program}: ${stderr}`);
        return stdout;
    } finally {
        rmSync(folder, { recursive: true, force: true });
    }
}
