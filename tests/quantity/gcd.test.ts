import { expect, test } from 'vitest';
import { gcd } from '../../src/quantity/gcd.ts';

// 252 and 105 are Euclid's 21 x 12 and 21 x 5
test.each<[number, number, number]>([[252, 105, 21], [105, 252, 21], [7, 5, 1], [6, 6, 6], [0, 5, 5], [5, 0, 5], [0, 0, 0]])('the greatest common divisor of %i and %i is %i', (a, b, wanted) => {
    expect([gcd(a, b), gcd(BigInt(a), BigInt(b))]).toEqual([wanted, BigInt(wanted)]);
});
