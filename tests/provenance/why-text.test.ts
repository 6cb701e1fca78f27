import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { whyText } from '../../src/provenance/why-text.ts';
import { sumOf, term, type Why } from '../../src/provenance/why.ts';
import type { Tape } from '../../src/quantity/print-length.ts';
import { inches, millimeters, Rational } from '../../src/quantity/rational.ts';
import { readLength } from '../../src/quantity/read-length.ts';
import { roundDown } from '../../src/quantity/round.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../../src/quantity/ticks.ts';
import { runs } from '../support/full.ts';

const why = (...terms: Why['terms']): Why => ({ terms });
const INCHES: Tape = { show: 'feet-inches', step: inches('1/32') };
const MILLIMETERS: Tape = { show: 'millimeters', step: millimeters('0.5') };

describe('why a length is what it is, in words', () => {
    test('a coffer and the miters at both ends', () => {
        const sides = why(term('coffer', 1, inches('49 3/8')), term('side', 2, inches('3/4')));
        expect(sumOf(sides)).toBe(inches('50 7/8'));
        expect(whyText(sides, inches('50 7/8'), INCHES)).toBe(`coffer 4' 1 3/8" + 2 x side 3/4" = 4' 2 7/8"`);
    });

    test('what is taken off, also first', () => {
        expect(whyText(why(term('room', 1, inches(220)), term('band', -2, inches('3/4'))), inches('218 1/2'), INCHES)).toBe(`room 18' 4" - 2 x band 3/4" = 18' 2 1/2"`);
        expect(whyText(why(term('play', -1, inches('1/4')), term('board', 1, inches(2))), inches('1 3/4'), INCHES)).toBe(`-play 1/4" + board 2" = 1 3/4"`);
    });

    test('one thing alone needs no sum', () => {
        expect(whyText(why(term('stock', 1, inches('5 1/2'))), inches('5 1/2'), INCHES)).toBe('stock 5 1/2"');
    });

    test('a half of something', () => {
        expect(whyText(why(term('gap', 0.5, inches('1/16')), term('room', 1, inches(2))), inches('2 1/32'), INCHES)).toBe('1/2 x gap 1/16" + room 2" = 2 1/32"');
    });
});

describe('figures that no tape has', () => {
    test('a coffer stands there as it is cut, and the sum needs no rounding', () => {
        const exact = inches('49 3/8') + 100;
        expect(whyText(why(term('coffer', 1, exact, undefined, inches('49 3/8')), term('side', 2, inches('3/4'))), inches('50 7/8'), INCHES)).toBe(`coffer 4' 1 3/8" + 2 x side 3/4" = 4' 2 7/8"`);
    });

    test('what rounding leaves is a term of its own', () => {
        expect(whyText(why(term('coffer', 1, millimeters('1250.34')), term('side', 2, millimeters(18))), millimeters(1286), MILLIMETERS))
            .toBe('coffer 1250.5 mm + 2 x side 18 mm - rounding 0.5 mm = 1286 mm');
        expect(whyText(why(term('spacer height', 1, millimeters(125))), inches('4 29/32'), INCHES)).toBe('spacer height 4 29/32"');
    });

    test('what was said finer than the tape stays as it was said, and what is finer than any rule goes into the rounding', () => {
        expect(whyText(why(term('coffer', 1, inches(24)), term('press', 1, inches('1/64'))), inches(24), INCHES)).toBe(`coffer 2' + press 1/64" - rounding 1/64" = 2'`);
        expect(whyText(why(term('coffer', 1, inches(24)), term('gap', 2, inches('1/128'))), inches(24), INCHES)).toBe(`coffer 2'`);
    });

    test('every sum adds up as it is printed, in figures of the rule', () => {
        const ticks = fc.integer({ min: 1, max: 120 * TICKS_PER_INCH });
        const onRule = ticks.map(t => t - t % (TICKS_PER_INCH / 64));
        const terms = fc.array(fc.record({ times: fc.constantFrom(1, 2, -1, -2), ticks: fc.oneof(ticks, onRule) }), { minLength: 1, maxLength: 5 });
        const tapes = [INCHES, MILLIMETERS, { show: 'feet-inches', step: inches('1/16') }, { show: 'millimeters', step: millimeters(1) }] as const;
        fc.assert(fc.property(terms, fc.constantFrom(...tapes), (all, tape) => {
            const sum = why(...all.map(({ times, ticks }) => term('part', times, ticks)));
            const total = roundDown(sumOf(sum), tape.step);
            fc.pre(total !== 0);
            const text = whyText(sum, total, tape);
            expect(text).not.toContain('~');
            const [terms, result] = text.split(' = ') as [string, string | undefined];
            const figures = terms.split(/ (?=[+-] )/).map(words => {
                const [, sign, times, length] = /^([+-]? ?)(?:(\d+) x )?(?:part|rounding) (.*)$/.exec(words)!;
                const exact = readLength(length!)!.mul(times ?? 1);
                return sign!.startsWith('-') ? exact.neg() : exact;
            });
            const told = figures.reduce((a, b) => a.add(b), new Rational(0));
            expect(Number(told)).toBe(total);
            if (result !== undefined) expect(Number(readLength(result))).toBe(total);
            for (const figure of figures) expect(Math.abs(Number(figure) % (tape.show === 'millimeters' ? TICKS_PER_MM / 10 : TICKS_PER_INCH / 64))).toBe(0);
        }), { seed: 1132, numRuns: runs(500) });
    });
});
