import { describe, expect, test } from 'vitest';
import { whyText } from '../../src/provenance/why-text.ts';
import { sumOf, term, type Why } from '../../src/provenance/why.ts';
import { inches, millimeters } from '../../src/quantity/rational.ts';

const why = (...terms: Why['terms']): Why => ({ terms });

describe('why a length is what it is, in words', () => {
    test('a coffer and the miters at both ends', () => {
        const sides = why(term('coffer', 1, inches('49 3/8')), term('side', 2, inches('3/4')));
        expect(sumOf(sides)).toBe(inches('50 7/8'));
        expect(whyText(sides, inches('50 7/8'))).toBe(`coffer 4' 1 3/8" + 2 x side 3/4" = 4' 2 7/8"`);
    });

    test('what is taken off, also first', () => {
        expect(whyText(why(term('room', 1, inches(220)), term('band', -2, inches('3/4'))), inches('218 1/2'))).toBe(`room 18' 4" - 2 x band 3/4" = 18' 2 1/2"`);
        expect(whyText(why(term('play', -1, inches('1/4')), term('board', 1, inches(2))), inches('1 3/4'))).toBe(`-play 1/4" + board 2" = 1 3/4"`);
    });

    test('one thing alone needs no sum', () => {
        expect(whyText(why(term('stock', 1, inches('5 1/2'))), inches('5 1/2'))).toBe('stock 5 1/2"');
    });

    test('a half of something', () => {
        expect(whyText(why(term('gap', 0.5, inches('1/16')), term('room', 1, inches(2))), inches('2 1/32'))).toBe('1/2 x gap 1/16" + room 2" = 2 1/32"');
    });

    test('a length that is rounded at the saw shows both figures', () => {
        expect(whyText(why(term('coffer', 1, millimeters('1250.34')), term('side', 2, millimeters(18))), millimeters(1286), 'millimeters'))
            .toBe('coffer ~1250.3 mm + 2 x side 18 mm = ~1286.3 mm, cut at 1286 mm');
    });
});
