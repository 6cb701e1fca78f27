import fc from 'fast-check';
import { expect, test } from 'vitest';
import loadHighs from 'highs';
import { choosePlane, type Hanging } from '../../src/survey/choose-plane.ts';
import { deepestHollow, type SideUnder } from '../../src/survey/sides.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { runs } from '../support/full.ts';

/**
 * The plane that sides hang by, against two other ways: a program of whole numbers, solved by HiGHS (sides to scribe counted by binaries, then the
 * deepest at that count), and every plane of a fine raster tried.
 */
interface Drawn { readonly heldDown: number; readonly trim: number; readonly spots: readonly (readonly [number, number, number])[] }

/** Inches, as a side by itself: all that the choice looks at. */
function sideOf({ heldDown, trim, spots }: Drawn): SideUnder {
    const stations = spots.map(([x, y, up]) => ({ x: x * TICKS_PER_INCH, y: y * TICKS_PER_INCH, up: up * TICKS_PER_INCH, along: 0 }));
    return { heldDown: heldDown * TICKS_PER_INCH, trim: trim * TICKS_PER_INCH, known: [stations], length: 1 } as unknown as SideUnder;
}

const room = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: -40, max: 40 }), fc.array(fc.record({
    x: fc.integer({ min: 0, max: 20 }), y: fc.integer({ min: 0, max: 14 }), long: fc.integer({ min: 2, max: 5 }), east: fc.boolean(),
    heldDown: fc.constantFrom(1 / 4, 5 / 16), trim: fc.constantFrom(3 / 4, 1), bumps: fc.array(fc.integer({ min: -8, max: 8 }), { minLength: 3, maxLength: 3 }),
}), { minLength: 2, maxLength: 10 })).map(([tilt, other, sides]): Drawn[] => sides.map(({ x, y, long, east, heldDown, trim, bumps }) => ({
    heldDown, trim, spots: bumps.map((bump, i) => {
        const at = [12 * (x + (east ? i * long / 2 : 0)), 12 * (y + (east ? 0 : i * long / 2))] as const;
        return [...at, 14 + at[0] * tilt / 20_000 + at[1] * other / 20_000 + bump / 16] as const;
    }),
})));
const SLOPE = 1 / 4 / 120, HAIR = 1 / 128, FINE = 1 / 512;

/** Fewest sides that have to give way by more than `scribed`, in inches; then the least depth with that many (or `most` as many). */
async function byProgram(drawn: readonly Drawn[], scribed: number, most?: number): Promise<{ count: number; depth: number }> {
    const highs = await loadHighs();
    const FAR = 100, hollow = (one: Drawn): number => deepestHollow(sideOf(one))! / TICKS_PER_INCH;
    const rows: string[] = [], plane = ([x, y]: readonly number[]): string => `c + ${x} a + ${y} b`;
    drawn.forEach((one, i) => one.spots.forEach((spot, j) => {
        rows.push(`hollow${i}x${j}: ${plane(spot)} >= ${spot[2] - hollow(one)}`);
        rows.push(`scribe${i}x${j}: ${plane(spot)} - ${FAR} z${i} <= ${spot[2] + one.heldDown + scribed}`);
        rows.push(`deep${i}x${j}: ${plane(spot)} - d <= ${spot[2] + one.heldDown}`);
    }));
    const all = drawn.map((_, i) => `z${i}`), bounds = `Bounds\n-100 <= c <= 100\n-${SLOPE} <= a <= ${SLOPE}\n-${SLOPE} <= b <= ${SLOPE}\n-10 <= d <= 100\nBinary\n${all.join(' ')}\nEnd`;
    const solve = (goal: string, more: readonly string[]): number => {
        const solved = highs.solve(`Minimize\n${goal}\nSubject To\n${[...rows, ...more].join('\n')}\n${bounds}`, { mip_feasibility_tolerance: 1e-9, primal_feasibility_tolerance: 1e-9 });
        expect(solved.Status).toBe('Optimal');
        return solved.ObjectiveValue;
    };
    const count = most ?? Math.round(solve(all.join(' + '), []));
    return { count, depth: solve('d', [`count: ${all.join(' + ')} <= ${count}`]) };
}

test('following, it is the one that a program of whole numbers finds', async () => {
    let bent = 0;
    await fc.assert(fc.asyncProperty(room, async drawn => {
        const sides = drawn.map(sideOf), level = choosePlane(sides, { kind: 'level' })!, chosen = choosePlane(sides, { kind: 'following', slope: SLOPE })!;
        expect(chosen.proved).toBe(true);
        if (level.scribed === 0) return expect(chosen).toEqual(level);
        bent++;
        // the count is proved to within 1/512", and so is the depth at it
        expect(chosen.scribed).toBeGreaterThanOrEqual((await byProgram(drawn, HAIR + 1e-6)).count);
        expect(chosen.scribed).toBeLessThanOrEqual((await byProgram(drawn, HAIR - FINE - 1e-6)).count);
        if (chosen.scribed === 0) return;
        expect(chosen.deepest / TICKS_PER_INCH).toBeLessThanOrEqual((await byProgram(drawn, HAIR - FINE - 1e-6, chosen.scribed)).depth + 2 * FINE);
    }), { seed: 3, numRuns: runs(120, 6) });
    expect(bent).toBeGreaterThan(runs(4, 1));
}, 120_000);

test.each<[string, Hanging]>([['level', { kind: 'level' }], ['following', { kind: 'following', slope: SLOPE }]])('%s, no plane of a raster is better', (_, hanging) => {
    const steps = hanging.kind === 'level' ? [0] : Array.from({ length: 17 }, (_, i) => (i - 8) / 8 * SLOPE);
    fc.assert(fc.property(room, drawn => {
        const sides = drawn.map(sideOf), chosen = choosePlane(sides, hanging)!;
        const count = (at: number, east: number, south: number): readonly [number, number] | undefined => {
            const depths = drawn.map(one => Math.max(...one.spots.map(([x, y, up]) => at + east * x + south * y - up)) - one.heldDown);
            const hollow = (one: Drawn): number => deepestHollow(sideOf(one))! / TICKS_PER_INCH + 1e-9;
            const laps = drawn.every(one => one.spots.every(([x, y, up]) => up - at - east * x - south * y <= hollow(one)));
            return laps ? [depths.filter(depth => depth > HAIR).length, Math.max(...depths)] : undefined;
        };
        // the one chosen keeps what it has to
        const { plane } = chosen, own = count(plane.at / TICKS_PER_INCH + 1e-7, plane.east, plane.south);
        expect(own?.[0]).toBe(chosen.scribed);
        for (const east of steps) for (const south of steps) {
            for (let at = 12; at < 16; at += 1 / 64) {
                const other = count(at, east, south);
                if (!other) continue;
                const isBetter = other[0] < chosen.scribed && other[1] < HAIR - FINE
                    || other[0] === chosen.scribed && chosen.scribed > 0 && other[1] < chosen.deepest / TICKS_PER_INCH - 2 * FINE;
                expect(isBetter, `${at} ${east} ${south}: ${other.join(' ')} against ${chosen.scribed} ${chosen.deepest / TICKS_PER_INCH}`).toBe(false);
                break;                                  // a higher plane of this tilt scribes no fewer, and none less deep
            }
        }
    }), { seed: 8, numRuns: runs(150, 5) });
});

test('where nothing has to be scribed it stays half way between what trim and blocking lap and the lowest ceiling', () => {
    const flat = (up: number): SideUnder => sideOf({ heldDown: 1 / 4, trim: 3 / 4, spots: [[0, 0, up], [60, 0, up]] });
    // trim laps 3/8 of 3/4 - 1/4: down to 1/8 below 14; the side touches the ceiling at 14 1/4
    expect(choosePlane([flat(14)], { kind: 'level' })).toEqual({ plane: { at: (14 + 1 / 16) * TICKS_PER_INCH, east: 0, south: 0 }, scribed: 0, deepest: 0, proved: true });
    expect(choosePlane([{ ...flat(14), known: [] }], { kind: 'level' })).toBeUndefined();
});
