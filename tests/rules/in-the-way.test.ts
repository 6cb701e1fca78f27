import { expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Clash } from '../../src/dryfit/model.ts';
import type { Fixture } from '../../src/job/model.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { Found } from '../../src/rules/rule.ts';
import { clashWords, theFirst } from '../../src/rules/support/fit-words.ts';
import { hits } from '../../src/rules/support/in-the-way.ts';
import { PARTS } from '../../src/takeoff/model.ts';
import { piece, stock } from '../cutting/samples.ts';
import { exampleRoom } from '../support/example-room.ts';

// 220" x 182", a band of 3/4" all round; line 1 from 50 1/8" to 57 1/8", line A from 56 1/4" to 63 1/4". 3" are wanted round the fixture
test.each<[string, string, string, string[]]>([
    ['in the middle of a coffer', '25', '28', []],
    ['at the north wall', '25', '2', ['the band 1 3/4" south']], ['at the south wall', '25', '180', ['the band 1 3/4" north']],
    ['at the west wall', '2', '28', ['the band 1 3/4" east']], ['at the east wall', '218', '28', ['the band 1 3/4" west']],
    ['clear of the band', '25', '3 3/4', []], ['a hair too near', '25', '3 47/64', ['the band 1/64" south']],
    ['west in line 1', '52', '28', ['line 1 4 7/8" west']], ['east in it', '55', '28', ['line 1 5 1/8" east']], ['on its center', '53 5/8', '28', ['line 1 6 1/2" west']],
    ['north in line A', '25', '58', ['line A 4 3/4" north']], ['south in it', '25', '61', ['line A 5 1/4" south']], ['on its center', '25', '59 3/4', ['line A 6 1/2" north']],
    ['beside line 1, clear', '47 1/8', '28', []],
])('a fixture %s, %s" from the west and %s" from the north', (_, x, y, wanted) => {
    const place = { fixture: {} as Fixture, x: inches(x), y: inches(y), half: 0 };
    expect(hits(place, inches(3), layOut(exampleRoom()).ceiling!).map(({ name, by, way }) => `${name} ${printInches(by)} ${way}`)).toEqual(wanted);
});

test('five findings of a kind are told; of more the last says how many there are besides', () => {
    const told = (count: number): string[] => theFirst(Array.from({ length: count }, (_, i) => ({ message: `${i + 1}.` }) as Found)).map(({ message }) => message);
    expect(told(5)).toEqual(['1.', '2.', '3.', '4.', '5.']);
    expect(told(6)).toEqual(['1.', '2.', '3.', '4.', '5. There is 1 more of this kind: `cofferwright dry-fit` tells all.']);
    expect(told(8).at(-1)).toBe('5. There are 3 more of this kind: `cofferwright dry-fit` tells all.');
});

test('what shows is named before what does not, the ceiling last, of equal parts the one that is off the most; three, or two and how many others', () => {
    const clash = (other: string, ticks: number): Clash =>
        ({ ticks, other: other === 'ceiling' ? 'the ceiling' : piece(`den.${other}-1`, stock(), 1, { part: PARTS.find(part => part === other)! }) }) as unknown as Clash;
    const words = (...clashes: Clash[]): string => clashWords(clashes, ({ ticks }) => `by ${ticks}`);
    expect(words(clash('ceiling', 9), clash('blocking', 1), clash('side', 1))).toBe('side 1 by 1, blocking 1 by 1 and the ceiling by 9');
    expect(words(clash('trim', 1), clash('trim', -3))).toBe('trim 1 by -3 and trim 1 by 1');
    expect(words(clash('cleat', 1), clash('band', 1), clash('bottom', 1), clash('ceiling', 1))).toBe('bottom 1 by 1, band 1 by 1 and 2 other pieces');
});
