import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { calendarOf } from '../../src/putup/calendar.ts';
import { putUp } from '../../src/putup/put-up.ts';
import { Rational } from '../../src/quantity/rational.ts';
import { roomsBefore } from '../../src/report/put-up/days.ts';
import type { PutUpSaid, Room, WaitSaid } from '../../src/job/model.ts';
import { exampleRoom } from '../support/example-room.ts';
import { runs } from '../support/full.ts';

const words = { uri: 'file:///den.coffer', range: { start: { line: 3, character: 0 }, end: { line: 3, character: 9 } } };
const given = <T>(value: T) => ({ value, at: words, said: true });
const ceiling = layOut(exampleRoom({})).ceiling!;

function saying(more: Partial<PutUpSaid>): Ceiling {
    return { ...ceiling, room: { ...ceiling.room, putUp: { at: words, crews: given(1), up: [], orders: [], waits: [], ...more } } };
}
function trade(name: string, before: readonly string[], untilDay?: number): WaitSaid {
    return { kind: 'trade', trade: given(name), before: before.map(given), ...untilDay !== undefined && { untilDay: given(untilDay) } };
}
function room(name: string, before: readonly string[] = []): WaitSaid {
    return { kind: 'room', room: given({ name, room: undefined }), before: before.map(given) };
}
/** An hour a step, two people who work eight hours a day. */
function daysOf(order: ReturnType<typeof putUp>, crews: number, done: Readonly<Record<string, number>> = {}) {
    const minutes = new Map(order.steps.map(({ number }) => [number, new Rational(60)]));
    const hours = { layout: new Rational(60), finish: new Rational(120), steps: minutes, crew: { people: 2, day: new Rational(480) } };
    return calendarOf(order, hours, crews, ({ name }) => done[name]);
}

describe('what others finish first', () => {
    test('a part goes up on the day after they are done, and what does not wait goes up meanwhile', () => {
        const order = putUp(saying({ waits: [trade('painter', ['trim'], 6)] })), { shifts } = daysOf(order, 1);
        const days = (is: boolean): number[] => order.steps.filter(({ kind }) => (kind === 'trim') === is).map(({ number }) => shifts.get(number)!.first);
        // 43 steps and setting out at half an hour each: 16 steps a day
        expect(Math.max(...days(false))).toBe(2);
        expect(new Set(days(true))).toEqual(new Set([7]));
        expect(order.steps.filter(({ waits }) => waits.length > 0).every(({ kind }) => kind === 'trim')).toBe(true);
    });
    test('all of a room is begun after another one, after a trade, on a day that is said: whichever is last', () => {
        const first = (more: Partial<PutUpSaid>, done = {}): number => daysOf(putUp(saying(more)), 1, done).shifts.get(1)!.first;
        expect(first({})).toBe(1);
        expect(first({ fromDay: given(3) })).toBe(3);
        expect(first({ fromDay: given(3), waits: [room('pantry')] }, { pantry: 4 })).toBe(5);
        expect(first({ fromDay: given(9), waits: [room('pantry')] }, { pantry: 4 })).toBe(9);
        expect(first({ waits: [trade('plasterer', [], 2)] })).toBe(3);
        // nobody knows when: the days go on
        expect(first({ waits: [room('pantry'), trade('plasterer', [])] })).toBe(1);
    });
    test('it is done when it is filled and sanded, on a day that others can wait for', () => {
        const order = putUp(saying({})), { shifts, done } = daysOf(order, 1), last = Math.max(...[...shifts.values()].map(shift => shift.last));
        // 60 + 43 x 60 + 120 minutes of one, 960 a day of both
        expect(done).toBe(Math.ceil((60 + order.steps.length * 60 + 120) / 960));
        expect(done!).toBeGreaterThanOrEqual(last);
    });
    test('a line that waits has all after it that needs it, with a bay in two steps where only a part of it waits', () => {
        const { steps, stuck } = putUp(saying({ waits: [trade('electrician', ['line-B'])] }));
        const at = (id: string): number => steps.findIndex(({ placings }) => placings.some(({ piece }) => piece.id === `parlor.${id}`));
        expect(stuck).toEqual([]);
        expect(at('side-A-1-north')).toBeLessThan(at('blocking-B-1'));
        expect(at('blocking-B-1')).toBeGreaterThan(at('spacer-1-1-1'));
        expect(steps.filter(({ waits }) => waits.length > 0).every(({ placings }) => placings.some(({ piece }) => piece.line === 'B'))).toBe(true);
    });
});

test('whatever is said: every piece is put up once, nothing before what it needs or before its day, and one crew does the steps in their order', () => {
    const part = fc.constantFrom('blocking', 'spacers', 'sides', 'cleats', 'bottoms', 'trim', 'line-A', 'line-2', 'bottom-A-2');
    const wait = fc.oneof(
        fc.tuple(fc.array(part, { maxLength: 2 }), fc.option(fc.integer({ min: 1, max: 20 }), { nil: undefined })).map(([before, day]) => trade('painter', before, day)),
        fc.array(part, { maxLength: 2 }).map(before => room('pantry', before)),
    );
    const some = fc.array(wait, { minLength: 1, maxLength: 3 });
    fc.assert(fc.property(some, fc.integer({ min: 1, max: 3 }), fc.integer({ min: 1, max: 20 }), (waits, crews, done) => {
        const order = putUp(saying({ waits, crews: given(crews) })), { shifts } = daysOf(order, crews, { pantry: done }), { steps } = order;
        const ids = steps.flatMap(({ placings }) => placings.map(({ piece }) => piece.id));
        expect(order.stuck).toEqual([]);
        expect(new Set(ids).size).toBe(ids.length);
        const stepOf = new Map(steps.flatMap(({ number, placings }) => placings.map(({ piece }) => [piece.id, number] as const)));
        for (const { first, then } of order.before) expect(stepOf.get(first) ?? 0).toBeLessThanOrEqual(stepOf.get(then) ?? Infinity);
        const until = (one: WaitSaid): number => (one.kind === 'room' ? done : one.untilDay?.value ?? 0);
        for (const step of steps) for (const one of [...step.waits, ...order.begin.waits]) expect(shifts.get(step.number)!.first).toBeGreaterThan(until(one));
        const inOrder = crews === 1 ? steps.map(({ number }) => shifts.get(number)!) : [];
        inOrder.slice(1).forEach(({ first }, i) => { expect(first).toBeGreaterThanOrEqual(inOrder[i]!.last); });
    }), { seed: 31, numRuns: runs(200, 8) });
});

test('rooms come after those that they wait for, each once, however they hang together', () => {
    const named = (name: string, ...before: Room[]): Room => ({ ...ceiling.room, name, putUp: { at: words, crews: given(1), up: [], orders: [],
        waits: before.map(other => ({ kind: 'room', room: given({ name: other.name, room: other }), before: [] })) } });
    const attic = named('attic'), den = named('den', attic), pantry = named('pantry', attic, den), hall = named('hall', pantry, den);
    expect(roomsBefore(hall).map(({ name }) => name)).toEqual(['attic', 'den', 'pantry']);
    let chain = named('0');
    for (let i = 1; i <= 5000; i++) chain = named(String(i), chain);
    expect(roomsBefore(chain).length).toBe(5000);
});
