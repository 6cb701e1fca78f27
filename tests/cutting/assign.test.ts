import fc from 'fast-check';
import load from 'highs';
import { describe, expect, test } from 'vitest';
import { assign } from '../../src/cutting/assign.ts';
import { runs } from '../support/full.ts';

type Gains = readonly (readonly number[])[];
const sized = <T>(of: fc.Arbitrary<T>, length: number): fc.Arbitrary<T[]> => fc.array(of, { minLength: length, maxLength: length });
const gain = fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 1_000_000 }));
const tableOf = (rows: number, columns: number): fc.Arbitrary<Gains> => sized(sized(gain, columns), rows);
const size = (most: number): fc.Arbitrary<number> => fc.integer({ min: 1, max: most });
const table = (most: number): fc.Arbitrary<Gains> => fc.tuple(size(most), size(most)).chain(([rows, columns]) => tableOf(rows, columns));
const assigned = (gains: Gains) => assign(gains.length, gains[0]!.length, (r, c) => gains[r]![c]!);
const sumOf = (gains: Gains, pairs: readonly (readonly [number, number])[]): number => pairs.reduce((sum, [r, c]) => sum + gains[r]![c]!, 0);

/** By trying every way: each row with each column that is free, or with none. */
function bestOf(gains: Gains, row = 0, taken = 0): number {
    if (row === gains.length) return 0;
    let best = bestOf(gains, row + 1, taken);
    gains[row]!.forEach((each, c) => { if (!(taken & 1 << c)) best = Math.max(best, each + bestOf(gains, row + 1, taken | 1 << c)); });
    return best;
}

describe('pairs that gain most', () => {
    test('as much as the best of all ways, tried one by one; each at most once, none for nothing; proved', () => {
        fc.assert(fc.property(table(6), gains => {
            const { pairs, proved } = assigned(gains);
            expect(sumOf(gains, pairs)).toBe(bestOf(gains));
            expect(new Set(pairs.map(([r]) => r)).size).toBe(pairs.length);
            expect(new Set(pairs.map(([, c]) => c)).size).toBe(pairs.length);
            expect(pairs.every(([r, c]) => gains[r]![c]! > 0)).toBe(true);
            expect(proved).toBe(true);
        }), { seed: 1, numRuns: runs(2000, 200) });
    });

    test('as much as a solver of linear programs finds (HiGHS), for as many as a house has', async () => {
        const highs = await load();
        for (const [rows, columns, seed] of [[40, 60, 1], [60, 25, 2], [50, 50, 3]] as const) {
            const [gains] = fc.sample(tableOf(rows, columns), { seed, numRuns: 1 });
            const names = gains!.flatMap((row, r) => row.flatMap((each, c) => (each > 0 ? [{ name: `x${r}_${c}`, r, c, each }] : [])));
            type Name = (typeof names)[number];
            const atMostOne = (of: (one: Name) => number, count: number, letter: string): string[] => Array.from({ length: count }, (_, i) => {
                const own = names.filter(one => of(one) === i);
                return own.length === 0 ? '' : ` ${letter}${i}: ${own.map(one => one.name).join(' + ')} <= 1`;
            }).filter(line => line !== '');
            const program = ['Maximize', ` obj: ${names.map(({ name, each }) => `${each} ${name}`).join(' + ')}`, 'Subject To', ...atMostOne(one => one.r, rows, 'r'), ...atMostOne(one => one.c, columns, 'c'), 'End'];
            const solved = highs.solve(program.join('\n'));
            const { pairs, proved } = assigned(gains!);
            expect(solved.Status).toBe('Optimal');
            expect(sumOf(gains!, pairs)).toBe(Math.round(solved.ObjectiveValue));
            expect(proved).toBe(true);
        }
    });

    test('more than is looked through is paired all the same, and nothing is claimed', () => {
        const { pairs, proved } = assign(401, 401, (r, c) => (r === c ? 5 : 1));
        expect(pairs).toHaveLength(401);
        expect(proved).toBe(false);
    });

    test('of more than is looked through the greatest go first, of equal ones the first; those that are alike are asked about once', () => {
        const kind = fc.integer({ min: 0, max: 7 }), many = fc.array(kind, { minLength: 401, maxLength: 450 });
        fc.assert(fc.property(many, many, sized(sized(fc.integer({ min: 0, max: 5 }), 8), 8), (rows, columns, gains) => {
            const all = rows.flatMap((row, r) => columns.map((column, c) => [gains[row]![column]!, r, c] as const)).filter(([each]) => each > 0);
            const takenRows = new Set<number>(), takenColumns = new Set<number>(), wanted: [number, number][] = [];
            for (const [, r, c] of all.sort((a, b) => b[0] - a[0] || a[1] - b[1] || a[2] - b[2])) {
                if (takenRows.has(r) || takenColumns.has(c)) continue;
                takenRows.add(r);
                takenColumns.add(c);
                wanted.push([r, c]);
            }
            let asked = 0;
            const gainOf = (r: number, c: number): number => { asked++; return gains[rows[r]!]![columns[c]!]!; };
            const { pairs, proved } = assign(rows.length, columns.length, gainOf, { row: r => String(rows[r]), column: c => String(columns[c]) });
            expect([pairs, proved, asked <= 64]).toEqual([wanted.sort(([a], [b]) => a - b), false, true]);
            expect(assign(rows.length, columns.length, (r, c) => gains[rows[r]!]![columns[c]!]!)).toEqual({ pairs, proved });
        }), { seed: 4, numRuns: runs(20, 4) });
    });

    test('nothing to pair', () => {
        expect(assign(0, 3, () => 1)).toEqual({ pairs: [], proved: true });
        expect(assign(2, 2, () => 0)).toEqual({ pairs: [], proved: true });
    });
});
