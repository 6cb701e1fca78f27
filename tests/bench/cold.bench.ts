// The command line in a process of its own, from nothing to the exit code: `check` of a house. Milliseconds.
import { execFileSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { madeHouse } from './made-house.ts';
import { median } from './spread.ts';

export default function measure(): Record<string, number> {
    const figures: Record<string, number> = {};
    const cli = join(process.cwd(), 'dist/cli/main.js');
    if (!existsSync(cli)) throw new Error('run `npm run build` first');
    for (const rooms of [1, 10, 20, 200]) {
        const folder = mkdtempSync(join(tmpdir(), 'house-'));
        for (const { path, text } of madeHouse(rooms)) {
            mkdirSync(dirname(join(folder, path)), { recursive: true });
            writeFileSync(join(folder, path), text);
        }
        const times: number[] = [];
        for (let run = 0; run < 5; run++) {
            const began = performance.now();
            execFileSync(process.execPath, [cli, 'check', '--exit-zero', '--format', 'json', folder], { stdio: ['ignore', 'ignore', 'inherit'] });
            times.push(performance.now() - began);
        }
        figures[`${rooms} rooms, median ms`] = median(times);
        rmSync(folder, { recursive: true });
    }
    return figures;
}
