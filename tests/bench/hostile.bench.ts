// Texts and folders that somebody wrote to make a program stop, as large as they are read at all, through `check`: seconds of the processor.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { MOST_FILES } from '../../src/language/workspace/most-files.ts';
import { cofferwright } from '../cli/world.ts';
import { hostileFolders, hostileHouses, type Hostile } from '../hostile/texts.ts';

/** Just below what is refused. */
const WHOLE = { size: 290_000, words: 59_000 };
const FILES = MOST_FILES;

export default async function measure(): Promise<Record<string, number>> {
    return { ...await slowest('one file', hostileHouses(WHOLE)), ...await slowest(`${FILES} files`, hostileFolders(FILES)) };
}

async function slowest(what: string, houses: readonly Hostile[]): Promise<Record<string, number>> {
    const taken: { name: string; seconds: number }[] = [];
    for (const { name, files } of houses) {
        const folder = mkdtempSync(join(tmpdir(), 'cofferwright-hostile-'));
        for (const [file, text] of Object.entries(files)) writeFileSync(join(folder, file), text);
        const before = process.cpuUsage();
        await cofferwright(folder, ['check', '.']);
        const { user, system } = process.cpuUsage(before);
        taken.push({ name, seconds: (user + system) / 1e6 });
        rmSync(folder, { recursive: true });
    }
    taken.sort((a, b) => b.seconds - a.seconds);
    for (const { name, seconds } of taken.slice(0, 10)) console.log(`  ${seconds.toFixed(2)} ${name}`);
    return { [`${what}, of ${taken.length} the slowest, s`]: taken[0]!.seconds, [`${what}, in the middle, s`]: taken[taken.length >> 1]!.seconds };
}
