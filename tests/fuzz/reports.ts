import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { cofferwright } from '../cli/world.ts';
import { OUTPUTS } from '../standing/outputs.ts';
import { Broken } from '../hostile/within.ts';
import type { Corpus } from './texts.ts';

/** Everything the command line makes of the house with one file mutilated: it ends with a code that it knows, and writes only where it was asked to. */
export async function makeReports({ house }: Corpus, path: string, text: string): Promise<number> {
    const folder = mkdtempSync(join(tmpdir(), 'cofferwright-fuzz-'));
    try {
        for (const [name, content] of Object.entries({ ...house, [path]: text })) {
            mkdirSync(dirname(join(folder, name)), { recursive: true });
            writeFileSync(join(folder, name), content);
        }
        const before = namesIn(folder);
        const all = [{ argv: ['check'] }, ...OUTPUTS] as readonly { argv: readonly string[]; folder?: string }[];
        for (const { argv, folder: asked } of all) {
            const { code, err } = await cofferwright(folder, argv);
            if (code !== 0 && code !== 1 && code !== 2) throw new Broken(`${argv.join(' ')} ends with ${code}: ${err}`);
            if (asked !== undefined) rmSync(join(folder, asked), { recursive: true, force: true });
            const after = namesIn(folder);
            if (after !== before) throw new Broken(`${argv.join(' ')} wrote where it was not asked to:\n${after}`);
        }
        return all.length;
    } finally {
        rmSync(folder, { recursive: true, force: true });
    }
}

function namesIn(folder: string): string {
    return readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort().join('\n');
}
