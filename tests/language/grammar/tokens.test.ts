import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { createFront } from '../../../src/language/front.ts';
import { plainValue } from '../../../src/language/lexer/pasted.ts';
import { Rational } from '../../../src/quantity/rational.ts';
import { readLength } from '../../../src/quantity/read-length.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../../../src/quantity/ticks.ts';

const { parser: { Lexer: lexer } } = createFront();
const rows = readFileSync(new URL('tokens.txt', import.meta.url), 'utf8').split('\n').filter(line => line.includes(' => ') && !line.startsWith('# '))
    .map(line => line.split(/ +=> /) as [string, string]);

test.each(rows)('%s => %s', (text, expected) => {
    const tokens = lexer.tokenize(text).tokens.filter(token => token.tokenType.name !== 'EOL');
    const kinds = tokens.map(token => token.tokenType.name).join(' ');
    const [first] = tokens;
    const plain = plainValue(first!.image);
    expect([kinds, `${kinds} ${plain}`]).toContain(expected);
    if (expected === kinds && /\d/.test(first!.image[0]!)) expect(plain).toBe(first!.image);
});

/** Whatever is lexed as a length is read as one, in its plain spelling. */
test.each<[string, Rational]>([
    ['14\' 3 1/2"', new Rational(343, 2).mul(TICKS_PER_INCH)],
    ['10\'–5"', new Rational(125).mul(TICKS_PER_INCH)],
    ['5 ½”', new Rational(11, 2).mul(TICKS_PER_INCH)],
    ["5''", new Rational(5).mul(TICKS_PER_INCH)],
    ['.5"', new Rational(1, 2).mul(TICKS_PER_INCH)],
    ['5 1/2 "', new Rational(11, 2).mul(TICKS_PER_INCH)],
    ['8""', new Rational(8).mul(TICKS_PER_INCH)],
    ['5 ft 6 in', new Rational(66).mul(TICKS_PER_INCH)],
    ['1.25 m', new Rational(1250).mul(TICKS_PER_MM)],
    ['⅓"', new Rational(1, 3).mul(TICKS_PER_INCH)],
])('%s', (text, ticks) => {
    const [token] = lexer.tokenize(text).tokens;
    expect(token!.tokenType.name).toBe('LENGTH');
    expect(token!.image).toBe(text);
    expect(readLength(plainValue(token!.image))?.toFraction()).toBe(ticks.toFraction());
});

test('a minus and a dash are spelled plainly in the tree, their places stay', () => {
    const [, minus, name] = lexer.tokenize('10\' − north–south').tokens;
    expect([minus!.image, minus!.startOffset, name!.image, name!.startOffset]).toEqual(['-', 4, 'north-south', 6]);
});
