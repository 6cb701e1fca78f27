import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { atom, combine, COUNT, fits, LENGTH, many, MONEY, NAME, NUMBER, pair, PERCENT, quantity, RATIO, sameDimensions, SIZE, TEXT, type Type } from '../../../src/language/types/type.ts';
import { inWords, wantedInWords } from '../../../src/language/types/words.ts';

const exponent = fc.integer({ min: -3, max: 3 });
const quantities = fc.record({ length: exponent, mass: exponent, time: exponent, angle: exponent, money: exponent }).map(dimensions => quantity(dimensions, 'USD'));

describe('dimensions', () => {
    test('equal types are one object', () => {
        fc.assert(fc.property(quantities, type => {
            expect(quantity({ ...type.dimensions }, type.currency)).toBe(type);
            expect(pair(type, LENGTH)).toBe(pair(type, LENGTH));
            expect(many(type)).toBe(many(type));
        }), { seed: 3 });
    });
    test('what is multiplied and divided by the same is as it was; a product does not mind its order', () => {
        fc.assert(fc.property(quantities, quantities, (a, b) => {
            expect(sameDimensions(combine(combine(a, b, 1), b, -1), a)).toBe(true);
            expect(combine(a, b, 1)).toBe(combine(b, a, 1));
            expect(combine(a, a, -1)).toBe(NUMBER);
        }), { seed: 5 });
    });
    test('two currencies make no product', () => {
        expect(combine(quantity({ money: 1 }, 'USD'), quantity({ money: 1 }, 'EUR'), 1)).toBeUndefined();
        expect(combine(quantity({ money: 1 }, 'USD'), MONEY, -1)).toBe(NUMBER);
    });
});

test.each([
    [LENGTH, undefined, true], [undefined, LENGTH, true], [LENGTH, LENGTH, true], [LENGTH, COUNT, false],
    [COUNT, NUMBER, true], [COUNT, PERCENT, false], [COUNT, RATIO, false], [RATIO, PERCENT, true], [RATIO, COUNT, true],
    [MONEY, quantity({ money: 1 }, 'EUR'), true], [quantity({ money: 1 }, 'USD'), quantity({ money: 1 }, 'EUR'), false],
    [many(LENGTH), LENGTH, true], [many(LENGTH), COUNT, false], [pair(COUNT, LENGTH), pair(COUNT, LENGTH), true],
    [pair(COUNT, LENGTH), pair(LENGTH, COUNT), false],
    [pair(LENGTH, LENGTH, 'range'), pair(LENGTH, LENGTH), false], [pair(COUNT, COUNT), SIZE, true], [pair(LENGTH, LENGTH), SIZE, false],
    [NAME, TEXT, true], [NAME, COUNT, true], [NAME, LENGTH, false], [atom('Stock'), atom('Profile'), false], [atom('Corners', ['mitered']), atom('Corners', ['mitered']), true],
] as [Type | undefined, Type | undefined, boolean][])('%o wanted, %o found: %s', (want, got, expected) => {
    expect(fits(want, got)).toBe(expected);
});

test.each([
    [LENGTH, 'a length', 'a length'], [COUNT, 'a count', 'a count'], [PERCENT, 'a percentage', 'a percentage'], [NUMBER, 'a number', 'a number'],
    [quantity({ length: 2 }), 'an area', 'an area'], [quantity({ length: 3 }), 'a volume', 'a volume'], [quantity({ money: 1 }, 'CAD'), 'money (CAD)', 'money (CAD)'],
    [quantity({ money: 1, length: -1 }), 'a price per length', 'a price per length such as 2.70 USD per ft'], [quantity({ time: 1, length: -1 }), 'a time per length', 'a time per length such as 5 min per ft'],
    [quantity({ length: -1 }), 'a number per length', 'a number per length'], [quantity({ length: 1, time: -2 }), 'a length per time per time', 'a length per time per time'],
    [pair(atom('Gauge'), LENGTH), 'a gauge x a length', 'a gauge x a length, such as 18 ga x 1 1/4"'], [many(SIZE), 'a nominal size', 'a nominal size such as 1x6'],
    [atom('TrimCorners', ['mitered', 'coped']), 'a word for trim corners', 'mitered or coped'], [atom('BeamLine'), 'a line', 'a line'], [atom('Wall'), 'a wall', 'a wall'],
] as [Type, string, string][])('%o in words', (type, found, wanted) => {
    expect([inWords(type), wantedInWords(type)]).toEqual([found, wanted]);
});
