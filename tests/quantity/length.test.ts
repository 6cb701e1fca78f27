import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { createFront } from '../../src/language/front.ts';
import { plainValue } from '../../src/language/lexer/pasted.ts';
import { isOnRule, printInches, printLength, printMark, printRun } from '../../src/quantity/print-length.ts';
import { inches, millimeters, Rational, toTicks } from '../../src/quantity/rational.ts';
import { readLength } from '../../src/quantity/read-length.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../../src/quantity/ticks.ts';
import { runs } from '../support/full.ts';

const SEED = { seed: 20_240, numRuns: runs(2000) };
const PART = TICKS_PER_INCH / 128;
const TENTH = TICKS_PER_MM / 10;

describe('what is printed reads back as the same length', () => {
    const steps = fc.integer({ min: -2_000_000, max: 2_000_000 });

    test('every multiple of 1/128" in feet and inches', () => {
        fc.assert(fc.property(steps, n => {
            const text = printLength(n * PART);
            expect(text).not.toContain('~');
            expect(Number(readLength(text))).toBe(n * PART);
        }), SEED);
    });

    test('every multiple of 1/128" in inches alone', () => {
        fc.assert(fc.property(steps, n => {
            expect(Number(readLength(printInches(n * PART)))).toBe(n * PART);
        }), SEED);
    });

    test('every multiple of 0.1 mm', () => {
        fc.assert(fc.property(steps, n => {
            const text = printLength(n * TENTH, 'millimeters');
            expect(text).not.toContain('~');
            expect(Number(readLength(text))).toBe(n * TENTH);
        }), SEED);
    });

    test('anything else is said in millimeters where these have it, or marked, and is at the nearest mark of a tape', () => {
        const near = fc.integer({ min: -9e9, max: 9e9 }), multiples = (of: number) => near.map(ticks => ticks - ticks % of);
        const all = fc.oneof(near, multiples(TICKS_PER_MM / 2), multiples(TICKS_PER_INCH / 64));
        fc.assert(fc.property(all, fc.constantFrom(['feet-inches', PART, TICKS_PER_MM / 2, TICKS_PER_INCH / 32], ['millimeters', TENTH, TENTH, TICKS_PER_MM / 2] as const), (ticks, [show, own, other, mark]) => {
            const text = printLength(ticks, show);
            expect(text.startsWith('~')).toBe(ticks % own !== 0 && ticks % other !== 0);
            const back = Number(readLength(text.replace('~', '')));
            if (!text.startsWith('~')) { expect(back).toBe(ticks); return; }
            expect(Math.abs(back - ticks)).toBeLessThanOrEqual(mark / 2);
            expect(Math.abs(back % mark)).toBe(0);
        }), SEED);
    });

    test.each<[number, string, string]>([
        [0, '0"', '0 mm'],
        [inches('50 7/8'), `4' 2 7/8"`, '~1292 mm'],
        [inches('7 1/4'), '7 1/4"', '~184 mm'],
        [inches(16 * 12), "16'", '4876.8 mm'],
        [inches('168 1/2'), `14' 0 1/2"`, '4279.9 mm'],
        [-inches('1/32'), '-1/32"', '~-1 mm'],
        [millimeters(1239), '1239 mm', '1239 mm'],
        [millimeters('3.2'), '~1/8"', '3.2 mm'],
        [millimeters('12.5'), '12.5 mm', '12.5 mm'],
        [inches('1/128'), '1/128"', '~0 mm'],
        [inches(100) + 3000, `~8' 4 3/16"`, '~2544.5 mm'],
        [1, '~0"', '~0 mm'],
        [-1, '~0"', '~0 mm'],
    ])('%d ticks', (ticks, us, metric) => {
        expect(printLength(ticks)).toBe(us);
        expect(printLength(ticks, 'millimeters')).toBe(metric);
    });

    it('shows a length nobody could know as one, and does not throw', () => {
        expect(printLength(Number.NaN)).toBe('no length');
        expect(printLength(Number.POSITIVE_INFINITY, 'millimeters')).toBe('no length');
    });
});

describe('reading', () => {
    test.each<[string, string]>([
        [`14' 3 1/2"`, '171 1/2'], [`14' 3-1/2"`, '171 1/2'], [`14'-3-1/2"`, '171 1/2'], [`14′ 3 ½″`, '171 1/2'], [`14’ 3½”`, '171 1/2'],
        [`5 1/2"`, '5 1/2'], [`5-1/2"`, '5 1/2'], [`5½"`, '5 1/2'], [`5 ½"`, '5 1/2'], [`41.5"`, '41 1/2'], [`10'-5"`, '125'], [`10' 5"`, '125'],
        [`10'5"`, '125'], ['10 ft 5 in', '125'], ['10ft 5in', '125'], ["14'", '168'], ['14 ft', '168'], ["2.5'", '30'], ['1/4 in', '1/4'], ['½"', '1/2'],
        [`-1/32"`, '-1/32'], [`−1/32"`, '-1/32'], [`- 3"`, '-3'], [' 7 1/4" ', '7 1/4'], ['25.4 mm', '1'], [`1/08"`, '1/8'], [`2 3/010"`, '23/10'], ['2.54 cm', '1'], ['0.0254 m', '1'], ['1 ¾ m', '8750/127'],
    ])('%s', (text, inchesText) => {
        expect(readLength(text)?.toFraction()).toBe(new Rational(inchesText).mul(TICKS_PER_INCH).toFraction());
    });

    it('knows every fraction that is one sign, alone and after inches and feet', () => {
        const signs: readonly (readonly [string, string])[] = [['¼', '1/4'], ['½', '1/2'], ['¾', '3/4'], ['⅛', '1/8'], ['⅜', '3/8'], ['⅝', '5/8'], ['⅞', '7/8']];
        for (const [sign, over] of signs) {
            for (const [before, whole] of [['', 0], ['3', 3], ['2 ', 2], ['-1', -1], ["4' 6", 54]] as const) {
                const exact = before.startsWith('-') ? new Rational(over).add(1).neg() : new Rational(over).add(whole);
                expect(readLength(`${before}${sign}"`)?.toFraction(), `${before}${sign}`).toBe(exact.mul(TICKS_PER_INCH).toFraction());
            }
        }
    });

    it('keeps thirds exact', () => {
        expect(readLength('1/3"')?.toFraction()).toBe('16256/3');
    });

    test.each(['', '5', '5 1/2', 'abc', '"', "'", `5 1/0"`, `5/00"`, `-5/0"`, `- 2 5/0"`, `5''`, `5" 3"`, '5 1/2 1/2"', '5 mm mm', `5' 3 mm`, '1e9 mm', '5,5 mm', '+3"', '--3"', '5.'])
    ('%j is no length', text => {
        expect(readLength(text)).toBeUndefined();
    });

    it('gives up on a page of digits at once', () => {
        expect(readLength(`${'9'.repeat(1_000_000)}"`)).toBeUndefined();
        expect(Number(readLength(`${'9'.repeat(70)}"`))).toBeGreaterThan(1e70);
    });

    it('reads whatever the language takes for a length, as what it is', () => {
        const lexer = createFront().parser.Lexer;
        const whole = fc.nat(400);
        const over = fc.tuple(fc.integer({ min: 1, max: 63 }), fc.constantFrom(2, 3, 4, 8, 16, 32, 64));
        const gap = fc.constantFrom('', ' ', '  ', '\u00a0');
        const amount = fc.oneof(
            whole.map(n => ({ text: `${n}`, exact: new Rational(n) })),
            fc.tuple(whole, fc.nat(999)).map(([n, d]) => ({ text: `${n}.${d}`, exact: new Rational(`${n}.${d}`) })),
            over.map(([n, d]) => ({ text: `${n}/${d}`, exact: new Rational(n, d) })),
            fc.tuple(whole, fc.constantFrom(' ', '-', '\u2013', '\u00a0'), over).map(([n, between, [o, u]]) => ({ text: `${n}${between}${o}/${u}`, exact: new Rational(o, u).add(n) })),
            fc.tuple(fc.option(whole), gap, fc.constantFrom(['¼', '1/4'], ['½', '1/2'], ['⅞', '7/8'], ['⅓', '1/3'])).map(([n, between, [glyph, exact]]) =>
                ({ text: n === null ? glyph! : `${n}${between}${glyph}`, exact: new Rational(exact!).add(n ?? 0) })),
        );
        const inch = fc.constantFrom('"', '″', '”', ' in', 'in', "''");
        const foot = fc.constantFrom("'", '′', '’', ' ft', 'ft');
        const inInches = fc.tuple(amount, inch).map(([a, mark]) => ({ text: a.text + mark, ticks: a.exact.mul(TICKS_PER_INCH) }));
        const inFeet = fc.tuple(whole, foot).map(([n, mark]) => ({ text: `${n}${mark}`, ticks: new Rational(n).mul(12 * TICKS_PER_INCH) }));
        const both = fc.tuple(inFeet, fc.constantFrom(' ', '-', ''), inInches).map(([f, between, i]) => ({ text: f.text + between + i.text, ticks: f.ticks.add(i.ticks) }));
        const metric = fc.tuple(amount, gap, fc.constantFrom(['mm', 1], ['cm', 10], ['m', 1000]) as fc.Arbitrary<[string, number]>)
            .map(([a, between, [unit, mm]]) => ({ text: a.text + between + unit, ticks: a.exact.mul(mm * TICKS_PER_MM) }));
        let taken = 0;
        fc.assert(fc.property(fc.oneof(inInches, inFeet, both, metric), ({ text, ticks }) => {
            const [token, more] = lexer.tokenize(text).tokens.filter(t => t.tokenType.name !== 'EOL');
            if (more || token?.tokenType.name !== 'LENGTH' || token.image !== text) return;
            taken++;
            expect(readLength(plainValue(text))?.toFraction(), text).toBe(ticks.toFraction());
        }), SEED);
        // What the lexer takes otherwise (`3'4 in` glued together) is few.
        expect(taken).toBeGreaterThan(0.8 * SEED.numRuns);
    });
});

describe('sums are exact', () => {
    test('any number of 128ths and tenths of a millimeter, in any order, come to what they are', () => {
        const length = fc.oneof(fc.integer({ min: 0, max: 100_000 }).map(n => ({ text: `${n}/128"`, exact: new Rational(n, 128).mul('25.4') })),
            fc.integer({ min: 0, max: 100_000 }).map(n => ({ text: `${n / 10} mm`, exact: new Rational(n, 10) })));
        fc.assert(fc.property(fc.array(length, { maxLength: 60 }), lengths => {
            const ticks = lengths.reduce((sum, l) => sum + toTicks(readLength(l.text)!), 0);
            const millimetersExact = lengths.reduce((sum, l) => sum.add(l.exact), new Rational(0));
            expect(new Rational(ticks, TICKS_PER_MM).equals(millimetersExact)).toBe(true);
        }), SEED);
    });

    test.each<[string, number]>([['1/2', 1], ['-1/2', -1], ['1/3', 0], ['-1/3', 0], ['5/2', 3], ['-5/2', -3], ['7', 7]])('%s of a tick is rounded to %d', (text, ticks) => {
        expect(toTicks(new Rational(text)) + 0).toBe(ticks);
    });
});

test('what lies end to end is told in feet and whole inches, or in meters, not in tens of thousands of millimeters', () => {
    expect(printRun(millimeters(64963), 'millimeters')).toBe('64.96 m');
    expect(printRun(millimeters('12.4'), 'millimeters')).toBe('0.01 m');
    expect(printRun(inches('202 7/8'))).toBe('16\' 11"');
    expect(printRun(inches('10 7/8'))).toBe('10 7/8"');
});

// Marks of common steel rules and tapes: 64ths of an inch, half millimeters; a tenth is read between two of them. Common practice, no source.
test.each<[string, number, boolean, boolean]>([
    ['a 64th', inches('1/64'), true, false], ['a 128th', inches('1/128'), false, false], ['an inch', inches(1), true, true], ['a millimeter', millimeters(1), false, true],
    ['0.1 mm', millimeters('0.1'), false, true], ['0.05 mm', millimeters('0.05'), false, false], ['41 and 63/64', inches('41 63/64'), true, false],
])('%s is on a rule', (_, ticks, inInches, inMillimeters) => {
    expect([isOnRule(ticks, 'feet-inches'), isOnRule(ticks, 'millimeters')]).toEqual([inInches, inMillimeters]);
});

test.each<[string, string, string]>([['7 1/64', '7 1/32"', '178 mm'], ['7 3/256', '7"', '178 mm'], ['-7 3/64', '-7 1/16"', '-179 mm'], ['12 11/32', '1\' 0 11/32"', '314 mm']])
('what was worked out as %s inches is read off the tape at its nearest mark', (exact, onThirtySeconds, onMillimeters) => {
    const ticks = exact.startsWith('-') ? -inches(exact.slice(1)) : inches(exact);
    expect(printMark(ticks, { show: 'feet-inches', step: inches('1/32') })).toBe(onThirtySeconds);
    expect(printMark(ticks, { show: 'millimeters', step: millimeters(1) })).toBe(onMillimeters);
});
