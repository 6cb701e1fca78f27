import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { GaugeLog } from '../job/model.ts';

/** What a cutter may drift before the board is looked at, and before it is scrap. Common practice, no source. */
export const LOOK: Ticks = inches('1/64');
export const SCRAP: Ticks = inches('1/32');
/** A trend that chance alone makes of readings without one in no more than this share of cases. */
const CHANCE = 0.05;
/** Less from the first reading to the last is the caliper's own, 0.001". Common practice, no source. */
const CALIPER: Ticks = inches('1/1000');
const FEWEST = 4;

/** How a cutter goes by the readings of its gauge. */
export interface Drift {
    readonly log: GaugeLog;
    /** By a reading, in ticks: the middle of all slopes between two of them (Theil 1950, Sen 1968), which one bad reading does not turn. */
    readonly slope: number;
    /** How often chance alone would make as clear a trend the same way of readings without one (Kendall's S); 1 where there are too few to tell. */
    readonly chance: number;
    readonly creeps: boolean;
    /** Off what it is meant to be: where the trend has come to, or, without one, the last reading. */
    readonly now: number;
    /** The reading that is farthest off, and which one it is, from one. */
    readonly worst: { readonly off: Ticks; readonly reading: number };
    /** In how many more boards it would be off enough to be looked at, or scrap, if it goes on; undefined where it does not go that way, 0 where it is. */
    readonly untilLook?: number; readonly untilScrap?: number;
}

export function driftOf(log: GaugeLog): Drift {
    const { readings, meant, every } = log, n = readings.length, offs = readings.map(reading => reading - meant.value);
    const slopes = offs.flatMap((a, i) => offs.slice(i + 1).map((b, j) => (b - a) / (j + 1)));
    const slope = n < 2 ? 0 : median(slopes), at = median(offs.map((off, i) => off - slope * i)), s = kendall(offs);
    const chance = n < FEWEST ? 1 : chanceOf(n, Math.abs(s)), creeps = chance <= CHANCE && Math.abs(slope) * (n - 1) > CALIPER;
    const now = creeps ? at + slope * (n - 1) : offs.at(-1)!;
    const worst = offs.reduce((most, off, i) => (Math.abs(off) > Math.abs(most.off) ? { off, reading: i + 1 } : most), { off: 0, reading: 1 });
    // towards what it is meant to be it mends itself at first
    const goes = creeps && now * slope > 0, until = (limit: Ticks): number => Math.max(0, Math.floor((limit - Math.abs(now)) / Math.abs(slope) * every));
    return { log, slope, chance, creeps, now, worst, ...goes && { untilLook: until(LOOK), untilScrap: until(SCRAP) } };
}

/** In how many readings, 1, 10 or 100, it goes by what a caliper shows, half a thousandth of an inch: what it does in one may be less. */
export function readingsToTell(slope: number): number {
    return [1, 10, 100].find(readings => readings * Math.abs(slope) >= CALIPER / 2) ?? 1000;
}

function median(values: readonly number[]): number {
    const sorted = [...values].sort((a, b) => a - b), half = Math.floor(sorted.length / 2);
    return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** How many pairs of readings rise, less those that fall (Kendall 1938, Mann 1945). */
function kendall(values: readonly number[]): number {
    return values.reduce((sum, a, i) => sum + values.slice(i + 1).reduce((rises, b) => rises + Math.sign(b - a), 0), 0);
}

/** From here on the normal distribution is as good. */
const EXACT = 40;

/** How often chance makes S of n readings as large as that or larger: by counting all orders of them; of many by the normal distribution. */
export function chanceOf(n: number, s: number): number {
    if (n > EXACT) return upperTail((s - 1) / Math.sqrt(n * (n - 1) * (2 * n + 5) / 18));
    // shares of the orders of 1, 2, 3 … readings by how many pairs fall
    let shares = [1];
    for (let size = 2; size <= n; size++) {
        const next = new Array<number>(shares.length + size - 1).fill(0);
        shares.forEach((share, falls) => { for (let more = 0; more < size; more++) next[falls + more]! += share / size; });
        shares = next;
    }
    const pairs = n * (n - 1) / 2;
    return shares.reduce((sum, share, falls) => (pairs - 2 * falls >= s ? sum + share : sum), 0);
}

/** Of the normal distribution: Abramowitz and Stegun, Handbook of Mathematical Functions (1964), 26.2.17 (from memory; good to 7.5e-8). */
function upperTail(z: number): number {
    if (z < 0) return 1 - upperTail(-z);
    const t = 1 / (1 + 0.2316419 * z), d = Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
    return d * t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
}
