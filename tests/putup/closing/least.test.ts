import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastClosing } from '../../../src/putup/closing/least.ts';
import { runs } from '../../support/full.ts';
import { judge, type Meeting, type Strand, type Tie, type Web } from '../../../src/putup/closing/web.ts';
import { everyChoice } from './exhaustive.ts';

/** So many lines each way, with these ends, the first of the two directions through. */
function gridOf(upright: number, level: number, end: Tie = 'free'): Web {
    const strand = (name: string): Strand => ({ name, biscuits: true, ends: [end, end] });
    const range = (count: number): number[] => Array.from({ length: count }, (_, i) => i);
    return {
        strands: [...range(upright).map(i => strand(`${i + 1}`)), ...range(level).map(i => strand(`${i}`))],
        meetings: range(upright).flatMap(i => range(level).map((k): Meeting => ({ kind: 'crossing', of: [i, upright + k], at: [{ along: k }, { along: i }], now: 0 }))),
    };
}

describe('full grids between bands', () => {
    it.each([[1, 1], [2, 2], [3, 2], [4, 3], [4, 4], [8, 8]])('%i by %i lines leave (n - 1)(m - 1), and that is proved', (upright, level) => {
        const least = leastClosing(gridOf(upright, level))!;
        expect(least).toMatchObject({ closing: (upright - 1) * (level - 1), proved: true });
        expect(judge(gridOf(upright, level), least.throughs)).toMatchObject({ closing: least.closing, cycle: null });
    });
    it.each([[2, 2], [3, 3], [4, 3]])('%i by %i lines between bare walls: whole lines one way, every other piece closes', (upright, level) => {
        expect(leastClosing(gridOf(upright, level, 'tight'))).toMatchObject({ closing: upright * level + Math.min(upright, level), proved: true });
    });
    it('a pinwheel of four crossings has no first piece, and is told by its pieces', () => {
        const web = gridOf(2, 2), { cycle } = judge(web, [0, 1, 1, 0]);
        expect(cycle?.map(({ strand, nth }) => `${web.strands[strand]!.name}/${nth}`).sort()).toEqual(['0/1', '1/0', '1/0', '2/1'].sort());
    });
});

/** Anything with up to twelve meetings: lines that cross, end at each other or both, some without biscuits, some at walls or half beams. */
const webs: fc.Arbitrary<Web> = fc.record({
    ends: fc.array(fc.tuple(fc.constantFrom<Tie>('free', 'free', 'tight', 'biscuits'), fc.constantFrom<Tie>('free', 'free', 'tight', 'biscuits'), fc.integer({ min: 0, max: 9 })), { minLength: 2, maxLength: 7 }),
    meetings: fc.array(fc.tuple(fc.nat(6), fc.nat(6), fc.constantFrom('crossing', 'crossing', 'crossing', 'tee', 'ring'), fc.boolean(), fc.boolean(), fc.boolean(), fc.nat(50), fc.nat(50)), { minLength: 1, maxLength: 12 }),
}).map(({ ends, meetings }): Web => {
    const own = ends.map(([a, b]): [Tie | null, Tie | null] => [a, b]), met = new Set<string>(), made: Meeting[] = [];
    for (const [i, k, kind, first, second, now, atA, atB] of meetings) {
        const a = i % own.length, b = k % own.length, key = [Math.min(a, b), Math.max(a, b)].join();
        if (a === b || met.has(key)) continue;
        const endA = first ? 0 : 1, endB = second ? 0 : 1, which = now ? 0 : 1;
        if (kind !== 'crossing' && own[b]![endB] === null || kind === 'ring' && own[a]![endA] === null) continue;
        met.add(key);
        if (kind === 'crossing') made.push({ kind, of: [a, b], at: [{ along: atA + made.length / 100 }, { along: atB + made.length / 100 }], now: which });
        if (kind === 'tee') { own[b]![endB] = null; made.push({ kind, of: [a, b], at: [{ along: atA + made.length / 100 }, { end: endB }], now: which }); }
        if (kind === 'ring') { own[a]![endA] = null; own[b]![endB] = null; made.push({ kind, of: [a, b], at: [{ end: endA }, { end: endB }], now: which }); }
    }
    return {
        strands: own.map(([from, to], i): Strand => {
            const biscuits = ends[i]![2] > 0, tie = (end: Tie | null): Tie | null => (end === 'biscuits' && !biscuits ? 'tight' : end);
            return { name: `${i}`, biscuits, ends: [tie(from), tie(to)] };
        }),
        meetings: made,
    };
});

it.each([false, true])('of any web no choice that can be put up leaves fewer, tees free: %s', free => {
    fc.assert(fc.property(webs, web => {
        const least = leastClosing(web, { tees: free ? 'free' : 'as said', steps: 1e6 }), every = everyChoice(web, free);
        expect(least?.closing).toBe(every.least);
        if (least) {
            expect(least).toMatchObject({ proved: true, atLeast: every.least });
            expect(judge(web, least.throughs)).toMatchObject({ closing: least.closing, cycle: null });
        }
    }), { seed: 20, numRuns: runs(1500, 100) });
});

it('a ring of tees that only a line without biscuits parts has a first piece once that runs through', () => {
    const line = (name: string, biscuits: boolean, last: Tie | null): Strand => ({ name, biscuits, ends: ['free', last] });
    const tee = (bar: number, stem: number, along: number): Meeting => ({ kind: 'tee', of: [bar, stem], at: [{ along }, { end: 1 }], now: 1 });
    const web: Web = {
        strands: [line('0', true, null), line('1', true, null), line('2', false, 'free'), line('3', true, null)],
        meetings: [tee(3, 0, 0), tee(1, 3, 1), tee(0, 1, 2), { kind: 'crossing', of: [2, 0], at: [{ along: 3 }, { along: 3 }], now: 1 }],
    };
    expect(leastClosing(web)).toMatchObject({ closing: everyChoice(web, false).least, proved: true });
});

it('what is not proved within the steps is told with its bound', () => {
    fc.assert(fc.property(webs, web => {
        const least = leastClosing(web, { steps: 1 }), every = everyChoice(web, false);
        if (!least || every.least === undefined) return;
        expect(least.atLeast).toBeLessThanOrEqual(every.least);
        expect(least.closing).toBeGreaterThanOrEqual(every.least);
        expect(least.proved).toBe(least.closing === least.atLeast);
    }), { seed: 21, numRuns: runs(300, 40) });
});
