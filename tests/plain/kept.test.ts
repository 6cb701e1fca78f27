import { expect, test } from 'vitest';
import { kept, keptInSteps } from '../../src/plain/kept.ts';
import { atOnce } from '../../src/plain/steps.ts';

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

test('what is made in steps is made once, whether all at once or step by step, and of two who make it at the same time the first has it', () => {
    let made = 0;
    const doubled = keptInSteps(function* ({ i }: { readonly i: number }, by: number) {
        yield;
        made++;
        return { product: by * i };
    });
    const first = { i: 2 }, second = { i: 3 };
    const one = doubled.inSteps(first, 5), other = doubled.inSteps(first, 5);
    expect([one.next().done, other.next().done, doubled.has(first)]).toEqual([false, false, false]);
    const there = other.next().value;
    expect(there).toEqual({ product: 10 });
    expect(one.next().value).toBe(there);
    expect(doubled(first, 5)).toBe(there);
    expect(made).toBe(2);
    const now = doubled(second, 5);
    expect([now, doubled.has(second)]).toEqual([{ product: 15 }, true]);
    expect(atOnce(doubled.inSteps(second, 7))).toBe(now);
    expect(made).toBe(3);
});
