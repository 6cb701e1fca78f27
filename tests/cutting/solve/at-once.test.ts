import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Effort } from '../../../src/cutting/solve/effort.ts';
import { faultOf } from '../../../src/cutting/solve/layouts.ts';
import { partsAtOnce } from '../../../src/cutting/solve/parts.ts';
import { costOfLayouts } from '../../../src/cutting/solve/problem.ts';
import { quickPlan } from '../../../src/cutting/solve/quick.ts';
import { Simplex } from '../../../src/cutting/solve/simplex.ts';
import { runs } from '../../support/full.ts';
import { solver } from './problems.ts';
import { from, plain, ripped } from './small-jobs.ts';

const effort = (): Effort => new Effort(Infinity);

describe('a linear program at once', () => {
    const program = fc.record({
        wanted: fc.array(from(0, 9), { minLength: 1, maxLength: 5 }), available: fc.array(from(0, 4), { maxLength: 2 }),
        columns: fc.array(fc.record({ cost: from(0, 30), gives: fc.array(from(0, 4), { minLength: 5, maxLength: 5 }), of: from(0, 3) }), { maxLength: 12 }),
    });
    // checked against HiGHS
    test('costs as little as another solver finds, its pieces are worth as much together, and columns may come in on the way', () => {
        let cut = 0;
        fc.assert(fc.property(program, from(0, 12), ({ wanted, available, columns }, late) => {
            const dear = 500, own = new Simplex(wanted, available, dear, effort());
            const linear = columns.map(({ cost, gives, of }) => ({
                cost, entries: [...wanted.flatMap((_, row): [number, number][] => (gives[row]! > 0 ? [[row, gives[row]!]] : [])),
                    ...(of < available.length ? [[wanted.length + of, 1] as [number, number]] : [])],
            }));
            const other = solver.program([...wanted.map(least => ({ least, most: Infinity })), ...available.map(most => ({ least: -Infinity, most }))]);
            other.add([...linear, ...wanted.map((_, row) => ({ cost: dear, entries: [[row, 1] as [number, number]] }))]);
            const { objective } = other.solve()!;
            other.dispose();
            linear.slice(0, late).forEach(column => own.add(column));
            own.solve(1000);
            linear.slice(late).forEach(column => own.add(column));
            const { values, duals } = own.solve(1000), limits = [...wanted, ...available];
            const given = limits.map((_, row) => linear.reduce((sum, { entries }, j) => sum + values[j]! * (entries.find(([r]) => r === row)?.[1] ?? 0), 0));
            const leftOut = wanted.reduce((sum, count, row) => sum + Math.max(0, count - given[row]!), 0);
            expect(linear.reduce((sum, { cost }, j) => sum + cost * values[j]!, 0) + dear * leftOut).toBeCloseTo(objective, 5);
            expect(limits.reduce((sum, limit, row) => sum + limit * duals[row]!, 0)).toBeCloseTo(objective, 5);
            available.forEach((most, k) => expect(given[wanted.length + k]!).toBeLessThanOrEqual(most + 1e-6));
            for (const { cost, entries } of linear)
                expect(entries.reduce((sum, [row, value]) => sum + duals[row]! * value, 0)).toBeLessThanOrEqual(cost + 1e-5);
            cut += values.some(value => value > 0) ? 1 : 0;
        }), { seed: 95, numRuns: runs(500) });
        expect(cut).toBeGreaterThan(0);
    });
    test('a program that is given up costs no less', () => {
        const program = new Simplex([4, 4], [], 100, effort());
        program.add({ cost: 3, entries: [[0, 1]] });
        program.add({ cost: 3, entries: [[1, 1]] });
        expect([...program.solve(1).values].sort((a, b) => a - b)).toEqual([0, 4]);
        expect([...program.solve(1).values]).toEqual([4, 4]);
    });
});

describe('a solution in parts at once', () => {
    test.each([['boards cut to length', plain], ['boards that are ripped', ripped]])('%s: it cuts all that is wanted, each board as it may be cut, and costs no more than the plan it began with', (_, jobs) => {
        fc.assert(fc.property(jobs, problem => {
            const start = quickPlan(problem, effort());
            fc.pre(start !== undefined);
            const { used, values, cost } = partsAtOnce(problem, start!, effort(), 100_000);
            expect(cost).toBeLessThanOrEqual(costOfLayouts(problem, start!) + 1e-6);
            for (const { column, times } of used) {
                expect(times).toBeGreaterThan(0);
                const wanted = new Map(column.gives), own = { ...problem, items: problem.items.map((item, i) => ({ ...item, count: wanted.get(i) ?? 0 })) };
                expect(faultOf(own, [{ ...column, times: 1 }])).toBeUndefined();
            }
            problem.items.forEach(({ count }, i) => {
                const given = used.reduce((sum, { column, times }) => sum + times * (new Map(column.gives).get(i) ?? 0), 0);
                expect(given).toBeGreaterThanOrEqual(count - 1e-6);
                expect(values[i]!).toBeGreaterThanOrEqual(0);
            });
        }), { seed: 96, numRuns: runs(300) });
    });
});
