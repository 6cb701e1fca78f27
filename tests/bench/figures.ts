import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Figures of one benchmark, printed beside the last recorded ones; `RECORD=1 npm run bench` records them anew. */
export class Figures {
    private readonly taken = new Map<string, number>();

    constructor(private readonly benchmark: string) {}

    take(name: string, value: number): void { this.taken.set(name, value); }

    /** Median and 95th percentile of many timings. */
    spread(name: string, values: readonly number[]): void {
        const sorted = [...values].sort((a, b) => a - b);
        const at = (share: number): number => sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))]!;
        this.take(`${name}, median`, at(0.5));
        this.take(`${name}, p95`, at(0.95));
    }

    print(): void {
        const file = join(process.cwd(), 'tests/bench/recorded.json');
        const recorded: Record<string, Record<string, number>> = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : {};
        const before = recorded[this.benchmark] ?? {};
        const width = Math.max(...[...this.taken.keys()].map(name => name.length));
        console.log(`${''.padEnd(width)}       now  recorded`);
        for (const [name, value] of this.taken) console.log(`${name.padEnd(width)}  ${shown(value)} ${shown(before[name])}`);
        if (process.env['RECORD'] === '1') {
            recorded[this.benchmark] = Object.fromEntries([...this.taken].map(([name, value]) => [name, Number(value.toPrecision(3))]));
            writeFileSync(file, JSON.stringify(recorded, null, 2) + '\n');
        }
    }
}

function shown(value: number | undefined): string {
    return (value === undefined ? '-' : value >= 100 ? value.toFixed(0) : value.toPrecision(3)).padStart(8);
}
