import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readFile } from '../../../src/language/read-file.ts';
import { Rational, toTicks } from '../../../src/quantity/rational.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../../../src/quantity/ticks.ts';
import { TestWorkspace } from '../../support/workspace.ts';
import { runs } from '../../support/full.ts';

/** An expression with its exact value in ticks (lengths) or as a plain number, and how tightly its text binds. */
interface Written { readonly text: string; readonly exact: Rational; readonly binds: number }

const leaf = (text: string, exact: Rational): Written => ({ text, exact, binds: 3 });
const lengths: fc.Arbitrary<Written> = fc.oneof(
    fc.record({ whole: fc.nat(40), over: fc.integer({ min: 1, max: 31 }) }).map(({ whole, over }) => leaf(`${whole} ${over}/32"`, new Rational(32 * whole + over, 32).mul(TICKS_PER_INCH))),
    fc.integer({ min: 1, max: 400 }).map(mm => leaf(`${mm} mm`, new Rational(mm * TICKS_PER_MM))),
    fc.integer({ min: 1, max: 99 }).map(tenths => leaf(`${tenths / 10}"`, new Rational(tenths, 10).mul(TICKS_PER_INCH))),
);
const numbers: fc.Arbitrary<Written> = fc.oneof(fc.integer({ min: 1, max: 9 }).map(n => leaf(String(n), new Rational(n))), fc.integer({ min: 1, max: 95 }).map(n => leaf(`${n}%`, new Rational(n, 100))));

const inside = (part: Written, binds: number): string => part.binds < binds ? `(${part.text})` : part.text;
const joined = (a: Written, operator: string, b: Written, exact: Rational): Written => {
    const binds = operator === '+' || operator === '-' ? 1 : 2;
    return { text: `${inside(a, binds)} ${operator} ${inside(b, binds + 1)}`, exact, binds };
};
const { length } = fc.letrec<{ length: Written; number: Written }>(tie => ({
    number: fc.oneof({ maxDepth: 4 }, numbers,
        fc.tuple(tie('number'), tie('number')).map(([a, b]) => joined(a, '+', b, a.exact.add(b.exact))),
        fc.tuple(tie('number'), tie('number')).map(([a, b]) => joined(a, '*', b, a.exact.mul(b.exact)))),
    length: fc.oneof({ maxDepth: 5 }, lengths,
        fc.tuple(tie('length'), tie('length')).map(([a, b]) => joined(a, '+', b, a.exact.add(b.exact))),
        fc.tuple(tie('length'), tie('length')).map(([a, b]) => joined(a, '-', b, a.exact.sub(b.exact))),
        fc.tuple(tie('number'), tie('length')).map(([a, b]) => joined(a, '*', b, a.exact.mul(b.exact))),
        fc.tuple(tie('length'), tie('number')).map(([a, b]) => joined(a, '/', b, a.exact.div(b.exact))),
        tie('length').map(a => ({ text: `-${inside(a, 3)}`, exact: a.exact.neg(), binds: 2 }))),
}));

/** Wide enough for whatever the sums come to, and nothing the language has an opinion on. */
const LONGEST = 1000 * 12 * TICKS_PER_INCH;

test('expressions come to what arithmetic says, exactly, and are rounded once, half a tick away from zero', async () => {
    const workspace = await TestWorkspace.open({});
    await fc.assert(fc.asyncProperty(fc.array(length, { minLength: 20, maxLength: 20 }), async all => {
        const some = all.filter(one => one.exact.abs().compare(LONGEST) <= 0);
        await workspace.edit({ 'main.coffer': some.map((one, i) => `stock s${i} {\n  width  ${one.text}\n  thickness 1"\n}`).join('\n') });
        const { stocks, findings } = readFile(workspace.document('main.coffer'));
        expect(findings.filter(({ rule }) => rule !== 'likely-slip')).toEqual([]);       // no board is eight feet wide
        expect(stocks.map(stock => stock.width?.value.ticks)).toEqual(some.map(one => toTicks(one.exact)));
    }), { seed: 41, numRuns: runs(40) });
});

test('a third of a foot taken three times is a foot: nothing is rounded on the way', async () => {
    const workspace = await TestWorkspace.open({ 'main.coffer': 'let third = 0.1" / 3\nstock a { width third + third + third; thickness third }' });
    const [stock] = readFile(workspace.document('main.coffer')).stocks;
    expect(stock!.width!.value.ticks).toBe(1626);            // 0.1" is 1625.6 ticks
    expect(stock!.thickness!.value.ticks).toBe(542);
});

test('what shares a cause cancels within an expression; what does not adds up', async () => {
    const workspace = await TestWorkspace.open({ 'main.coffer': [
        'stock a { size 1x6; width 5 1/2" ± 1/64" }', 'stock b { size 1x6; width a.width - a.width + 5"; thickness 2 * a.width / 4 }',
        'stock c { size 1x6; width (5" ± 1/64") - (2" +/- 1/32") }', 'let w = 5" ± 1/64"', 'stock d { size 1x6; width 2 * w - w }',
    ].join('\n') });
    const [, b, c, d] = readFile(workspace.document('main.coffer')).stocks;
    const reach = (n: number) => n * TICKS_PER_INCH / 64;
    expect(b!.width!.value.tolerance).toEqual([]);
    expect(b!.thickness!.value.tolerance).toEqual([{ cause: 'stock:file:///house/main.coffer#a', reach: reach(1) / 2 }]);
    expect(c!.width!.value.tolerance).toEqual([{ cause: `stock:${c!.key}`, reach: reach(3) }]);
    expect(d!.width!.value.tolerance).toEqual([{ cause: `stock:${d!.key}`, reach: reach(1) }]);
});
