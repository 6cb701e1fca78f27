import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ringsOf } from '../../src/plain/rings.ts';
import { runs } from '../support/full.ts';

test('two things have the same ring exactly where each leads to the other', () => {
    const graph = fc.integer({ min: 1, max: 8 }).chain(size => fc.array(fc.array(fc.nat(size - 1), { maxLength: 4 }), { minLength: size, maxLength: size }));
    fc.assert(fc.property(graph, to => {
        const rings = ringsOf(to.keys(), node => to[node]!);
        const reached = to.map((_, from) => {
            const seen = new Set<number>(), todo = [...to[from]!];
            for (let next = todo.pop(); next !== undefined; next = todo.pop()) if (!seen.has(next)) { seen.add(next); todo.push(...to[next]!); }
            return seen;
        });
        for (const a of to.keys()) {
            expect(rings.has(a)).toBe(reached[a]!.has(a));
            for (const b of to.keys()) if (a !== b) expect(rings.has(a) && rings.get(a) === rings.get(b)).toBe(reached[a]!.has(b) && reached[b]!.has(a));
        }
    }), { seed: 12, numRuns: runs(2000) });
});

test('a chain of a hundred thousand needs no stack', () => {
    expect(ringsOf(Array.from({ length: 100_000 }, (_, i) => i).values(), i => [Math.min(i + 1, 99_999)])).toEqual(new Map([[99_999, 99_999]]));
});
