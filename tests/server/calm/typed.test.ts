import { expect, test } from 'vitest';
import { BEAM, HALL } from '../../../src/rules/support/examples.ts';
import { HOLDS_MS } from '../../../src/server/calm/holding.ts';
import { REST_MS } from '../../../src/server/calm/typing.ts';
import { atTheirOwnClock, Hand, KEY_MS } from './hand.ts';

atTheirOwnClock();

const ROOM = HALL.slice(BEAM.length);

test('right text is typed in calm, though the hand rests after every line: nothing is told but what the block still lacks, and little changes', async () => {
    const hand = await Hand.at(BEAM);
    await hand.type(ROOM, BEAM.length, { afterLine: REST_MS * 2 });
    await hand.rest();
    expect(hand.text.replace(/ +$/gm, '')).toContain(ROOM);
    for (const { message } of hand.published.flat()) expect(message).toMatch(/^`grid` (still needs .*\.|does not show .*: give .*)$/);
    expect(hand.shown).toEqual([]);
    expect(hand.published.length).toBeLessThan(10);
});

test('a wrong word is told when its line is left, though the hand does not rest; in the line that is typed nothing is', async () => {
    const hand = await Hand.at(BEAM);
    const line = '  spacers { stok poplar-1x4 }', at = BEAM.indexOf('  cleats');
    await hand.type(line, at);
    expect(hand.shown).toEqual([]);
    await hand.type('\n  ', at + line.length);
    expect(hand.shown.join()).toContain('`stok`');
    const changes = hand.published.length;
    await hand.type('/', at + line.length + '\n  '.length);
    expect(hand.published.length).toBe(changes);
    await hand.rest();
    expect(hand.shown.some(message => message.includes('`stok`'))).toBe(true);
    expect(hand.shown.length).toBeGreaterThan(1);
});

test('what is wrong at rest is told, wherever the hand rests; and what is mended at one stroke is gone at once', async () => {
    const hand = await Hand.at(BEAM);
    const at = BEAM.indexOf('3/4" x');
    await hand.edit(at, 1, 'y');
    expect(hand.shown).toEqual([]);
    await hand.rest();
    expect(hand.shown).not.toEqual([]);
    await hand.edit(at, 'y/4"'.length, '3/4"');
    expect(hand.text).toBe(BEAM);
    expect(hand.shown).toEqual([]);
});

test('who goes on typing is told that all holds still, and told when it does not; who types a figure is not', async () => {
    const hand = await Hand.at(BEAM);
    const at = BEAM.indexOf('  cleats'), figure = '// 5';
    expect(figure.length * KEY_MS + REST_MS).toBeLessThan(HOLDS_MS);
    await hand.type(figure, at);
    await hand.rest();
    expect(hand.holding).toEqual([]);
    await hand.type(' and what is to be said of it', at + figure.length);
    expect(hand.holding).toEqual([true]);
    await hand.rest();
    expect(hand.holding).toEqual([true, false]);
    // an edit that no key makes is meant as it is
    await hand.type('// and on and on', at);
    expect(hand.holding).toEqual([true, false, true]);
    await hand.edit(0, 0, '// something longer that was pasted\n');
    expect(hand.holding).toEqual([true, false, true, false]);
});
