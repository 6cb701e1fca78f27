import { describe, expect, test } from 'vitest';
import { sameData } from '../../src/plain/same-data.ts';
import { Rational } from '../../src/quantity/rational.ts';

describe('whether two values say the same', () => {
    test('in every part, at any depth, figures that are exact too', () => {
        const made = () => ({ name: 'sides', each: [{ rate: new Rational(3, 7), at: { line: 4 } }], none: undefined });
        expect(sameData(made(), made())).toBe(true);
        expect(sameData({ ...made(), name: 'cleats' }, made())).toBe(false);
        expect(sameData({ ...made(), each: [{ rate: new Rational(3, 8), at: { line: 4 } }] }, made())).toBe(false);
        expect(sameData({ ...made(), more: 1 }, made())).toBe(false);
    });

    test('a list is no object, what lacks a part is not what has it without a value, and a map is itself alone', () => {
        expect(sameData([], {})).toBe(false);
        expect(sameData({ a: undefined }, { b: undefined })).toBe(false);
        expect(sameData(new Map([['a', 1]]), new Map([['a', 2]]))).toBe(false);
        expect(sameData(null, {})).toBe(false);
        expect(sameData(Number.NaN, Number.NaN)).toBe(true);
    });
});
