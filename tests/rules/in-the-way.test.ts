import { expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Cause, Clash, Misfit } from '../../src/dryfit/model.ts';
import type { Fixture } from '../../src/job/model.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { Found } from '../../src/rules/rule.ts';
import { causeWords, clashWords, FAULT_OF_THE_LIST, relatedTo, theFirst } from '../../src/rules/support/fit-words.ts';
import { hits } from '../../src/rules/support/in-the-way.ts';
import { sizesOf } from '../../src/rules/support/words.ts';
import { PARTS } from '../../src/takeoff/model.ts';
import { job, nowhere, piece, stock } from '../cutting/samples.ts';
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
    expect(told(6)).toEqual(['1.', '2.', '3.', '4.', '5. There is 1 more of this kind: `cofferwright dry-fit` lists all.']);
    expect(told(8).at(-1)).toBe('5. There are 3 more of this kind: `cofferwright dry-fit` lists all.');
});

test('what shows is named before what does not, the ceiling last, of equal parts the one that is off the most; three, or two and how many others', () => {
    const clash = (other: string, ticks: number): Clash =>
        ({ ticks, other: other === 'ceiling' ? 'the ceiling' : piece(`den.${other}-1`, stock(), 1, { part: PARTS.find(part => part === other)! }) }) as unknown as Clash;
    const words = (...clashes: Clash[]): string => clashWords(clashes, ({ ticks }) => `by ${ticks}`);
    expect(words(clash('ceiling', 9), clash('blocking', 1), clash('side', 1))).toBe('side 1 by 1, blocking 1 by 1 and the ceiling by 9');
    expect(words(clash('trim', 1), clash('trim', -3))).toBe('trim 1 by -3 and trim 1 by 1');
    expect(words(clash('cleat', 1), clash('band', 1), clash('bottom', 1), clash('ceiling', 1))).toBe('bottom 1 by 1, band 1 by 1 and 2 other pieces');
});

test('what of a line of the list is off, each figure with what would be right; or that the text has it so', () => {
    const side = piece('den.side-A-1-north', stock(), inches(50), { part: 'side' }), size = sizesOf(job());
    const words = (...causes: Cause[]): string => causeWords({ kind: 'misfit', piece: side, causes, clashes: [], alike: [] }, size, 'It is said so.');
    const inList = (what: string): string => `In the list ${what}. ${FAULT_OF_THE_LIST}`;
    const lengths = (what: 'length' | 'width' | 'thickness' | 'rabbet width' | 'rabbet height' | 'face'): string => words({ what, is: inches(5), wanted: inches('4 7/8') });
    expect([lengths('length'), lengths('width'), lengths('thickness'), lengths('rabbet width'), lengths('rabbet height'), lengths('face')]).toEqual([
        'it is 5" long and its place takes 4 7/8"', 'it is 5" wide and its place takes 4 7/8"', 'it is 5" thick and its place takes 4 7/8"',
        'its rabbet is 5" wide instead of 4 7/8"', 'its rabbet is 5" high instead of 4 7/8"', 'its face is 5", and its back less the miters leaves 4 7/8"',
    ].map(inList));
    expect([words({ what: 'rabbet' }), words({ what: 'hand', is: null }), words({ what: 'hand', is: 'left' })]).toEqual([
        'its rabbet is missing, or along another edge', 'it has no hand, and it cannot be turned around', 'it is a left one, mitered at the wrong end',
    ].map(inList));
    // it lies from west to east
    expect([words({ what: 'miter', end: 'first', is: 0, wanted: 45 }), words({ what: 'miter', end: 'last', is: -22.506, wanted: 0 })]).toEqual([
        'its west end is square instead of mitered at 45 degrees', 'its east end is mitered at 22.51 degrees, longer at the face instead of square',
    ].map(inList));
    expect(words({ what: 'length', is: inches(5), wanted: inches(4) }, { what: 'hand', is: 'right' })).toBe(inList('it is 5" long and its place takes 4" and it is a right one, mitered at the wrong end'));
    expect(words()).toBe('It is said so.');
    const alike = (count: number): string => causeWords({ kind: 'misfit', piece: side, causes: [], clashes: [], alike: Array.from({ length: count }, () => side) }, size, 'It is said so.');
    expect([alike(1), alike(3)]).toEqual(['It is said so. The same goes for 1 other side.', 'It is said so. The same goes for 3 other sides.']);
});

test('beside what overlaps stands where the other piece comes from, unless that is the same words', () => {
    const there = { ...nowhere, range: { start: { line: 9, character: 0 }, end: { line: 9, character: 4 } } };
    const side = piece('den.side-A-1-north', stock(), 1), same = piece('den.side-A-2-north', stock(), 1), bottom = piece('den.bottom-2', stock(), 1, { source: there });
    const beside = (...others: Clash['other'][]) => relatedTo({ kind: 'misfit', piece: side, causes: [], alike: [], clashes: others.map(other => ({ kind: 'overlap', other, ticks: 1 })) } as unknown as Misfit);
    expect(beside('the ceiling', same, bottom)).toEqual([{ at: there, message: 'bottom 2 comes from here' }]);
    expect(beside('the ceiling', same)).toEqual([]);
});
