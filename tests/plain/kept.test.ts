import { expect, test } from 'vitest';
import { kept } from '../../src/plain/kept.ts';

test('what somebody else still holds is not made twice, however many others were asked about since', () => {
    const things = Array.from({ length: 5 }, (_, i) => ({ i })), asked: number[] = [];
    const doubled = kept(({ i }: { i: number }) => { asked.push(i); return { twice: 2 * i }; }, 2);
    const held = things.map(thing => doubled(thing));
    expect(things.map(thing => doubled(thing))).toEqual(held);
    expect(things.every((thing, i) => doubled(thing) === held[i] && doubled.has(thing))).toBe(true);
    expect(asked).toEqual([0, 1, 2, 3, 4]);
});

test('what is no object is made again once so many others were asked about', () => {
    const [a, b, c] = [{ i: 1 }, { i: 2 }, { i: 3 }], asked: number[] = [];
    const doubled = kept(({ i }: { i: number }) => { asked.push(i); return 2 * i; }, 2);
    expect([a, b, c, b, a].map(thing => doubled(thing))).toEqual([2, 4, 6, 4, 2]);
    expect([doubled.has(a), asked]).toEqual([true, [1, 2, 3, 1]]);
});
