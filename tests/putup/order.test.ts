import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { laborOf } from '../../src/estimate/labor.ts';
import { Rational } from '../../src/quantity/rational.ts';
import { calendarOf } from '../../src/putup/calendar.ts';
import { hoursOf } from '../../src/putup/hours.ts';
import { cycleIn } from '../../src/putup/graph.ts';
import { firstBayOf } from '../../src/putup/first-bay.ts';
import { measuresOf } from '../../src/putup/measures.ts';
import type { PutUpSaid } from '../../src/job/model.ts';
import type { OrderSaid } from '../../src/job/put-up.ts';
import type { Before } from '../../src/putup/model.ts';
import { putUp } from '../../src/putup/put-up.ts';
import { inches } from '../../src/quantity/rational.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { randomRates } from '../estimate/random-rates.ts';
import { exampleRoom } from '../support/example-room.ts';
import type { RoomWords } from '../support/job-builder.ts';
import { runs } from '../support/full.ts';

function example(words: RoomWords = {}): Ceiling {
    return layOut(exampleRoom(words)).ceiling!;
}
function closing(ceiling: Ceiling): string[] {
    return putUp(ceiling).steps.flatMap(({ placings }) => placings.filter(({ path }) => path?.over).map(({ piece }) => piece.id));
}

describe('the example', () => {
    test('blocking, the first bay, spacers, sides with their cleats coffer by coffer, bottoms, band, trim', () => {
        const { steps, stuck, cycle, firstBay } = putUp(example());
        expect([stuck, cycle, firstBay!.coffer]).toEqual([[], null, 6]);
        const kinds = steps.map(({ kind }) => kind);
        expect([...new Set(kinds)]).toEqual(['blocking', 'first-bay', 'spacers', 'sides', 'bottoms', 'band', 'trim']);
        expect(kinds.filter((kind, i) => kind !== kinds[i - 1]).length).toBe(7);
        expect(kinds.filter(kind => kind === 'sides').length).toBe(11);
        expect(kinds.filter(kind => kind === 'trim').length).toBe(12);
    });
    test('the two bays at the walls go up beside their places, towards the band that is not there yet; those between are closing pieces', () => {
        // by hand: bays 2 and 3 of either line stand between bottoms that run through, with biscuits in both
        expect(closing(example()).sort()).toEqual(['parlor.bottom-A-2', 'parlor.bottom-A-3', 'parlor.bottom-B-2', 'parlor.bottom-B-3']);
        expect(closing(example({ through: 'east-west' })).sort()).toEqual(['parlor.bottom-1-2', 'parlor.bottom-2-2', 'parlor.bottom-3-2']);
        const at = putUp(example()).steps.flatMap(({ placings }) => placings).filter(({ path }) => path!.aside.x !== 0 || path!.aside.y !== 0);
        // a #10 biscuit is 19 mm wide and its slot 1/32" deeper than half of that; 1/16" more is left
        const by = Math.ceil(9.5 * 640 - inches('1/32')) + inches('1/16');
        expect(at.map(({ piece, path }) => [piece.id, path!.aside.x, path!.aside.y]).sort(([a], [b]) => (a! < b! ? -1 : 1))).toEqual([
            ['parlor.bottom-A-1', -by, 0], ['parlor.bottom-A-4', by, 0], ['parlor.bottom-B-1', -by, 0], ['parlor.bottom-B-4', by, 0],
        ]);
    });
    test('what is measured at the first bay, as it should be', () => {
        const ceiling = example(), measures = measuresOf(firstBayOf(ceiling, takeOffOf(ceiling), putUp(ceiling).before)!, ceiling);
        // 49 3/8" by 55 1/2"; its diagonal by Pythagoras
        expect(measures.filter(({ kind }) => kind === 'edge').map(({ wanted }) => wanted)).toEqual([inches('49 3/8'), inches('55 1/2'), inches('49 3/8'), inches('55 1/2')]);
        expect(measures.filter(({ kind }) => kind === 'diagonal').map(({ wanted }) => wanted)).toEqual([1, 1].map(() => Math.round(Math.hypot(inches('49 3/8'), inches('55 1/2')))));
        expect(measures.filter(({ kind, of }) => kind === 'channel' && of === '1, 2, A, B').map(({ wanted }) => wanted)).toEqual([inches('5 1/2')]);
        expect(measures.find(({ kind }) => kind === 'underside')!.wanted).toBe(inches('7 1/2'));
    });
    // 7 1/4" wide and held down 1/4"; what is over a side that hangs on a plane differs from place to place
    test('below a ceiling that was surveyed, how wide a side is, and not how far it hangs', () => {
        const ceiling = example(), at = { uri: 'memory:den', range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } } };
        const surveyed = { ...ceiling, room: { ...ceiling.room, survey: { points: [], hanging: { value: 'level' as const, at, said: false } } } } as unknown as Ceiling;
        const measures = measuresOf(firstBayOf(ceiling, takeOffOf(ceiling), putUp(ceiling).before)!, surveyed);
        expect(measures.some(({ kind }) => kind === 'underside')).toBe(false);
        expect(measures.filter(({ kind }) => kind === 'side-width').map(({ of, wanted, goesTo }) => [of, wanted, goesTo.words])).toEqual([['1, 2, A, B', inches('7 1/4'), 'sides']]);
    });
});

test('steps in an order in which the first waits for the last are no calendar: it says so, and comes to an end', () => {
    const order = putUp(example()), crew = { people: 2, day: new Rational(480) }, none = new Rational(0);
    const hours = { layout: none, finish: none, steps: new Map(order.steps.map(({ number }) => [number, new Rational(30)])), crew };
    const [first, last] = [order.steps[0]!, order.steps.at(-1)!].map(({ placings }) => placings[0]!.piece.id) as [string, string];
    for (const crews of [1, 2]) {
        expect(calendarOf(order, hours, crews).shifts.size).toBe(order.steps.length);
        expect(() => calendarOf({ ...order, before: [...order.before, { first: last, then: first, why: 'said' }] }, hours, crews)).toThrow('Steps wait for each other');
    }
});

test('the steps take as long as the estimate has it, whatever the rates', () => {
    const ceiling = example();
    let timed = 0;
    fc.assert(fc.property(randomRates, rates => {
        const priced = { ...ceiling, room: { ...ceiling.room, rates } }, room = { ceiling: priced, takeOff: takeOffOf(ceiling) };
        const order = putUp(ceiling), hours = hoursOf(room, order);
        const estimated = laborOf([room], 0, rates.labor).lines.reduce((sum, { minutes }) => sum.add(minutes), new Rational(0));
        const all = hours ? [hours.layout, hours.finish, ...hours.steps.values()].reduce((sum, each) => sum.add(each), new Rational(0)) : new Rational(0);
        expect(all.toFraction()).toBe(estimated.toFraction());
        if (!hours?.crew) return;
        timed++;
        const { shifts } = calendarOf(order, hours, 1), days = order.steps.map(({ number }) => shifts.get(number)!);
        // without a break: a step begins on the day on which the one before it ends, or on the next
        days.forEach(({ first, last }, i) => {
            expect(first <= last && (i === 0 || first === days[i - 1]!.last || first === days[i - 1]!.last + 1)).toBe(true);
        });
        const up = all.sub(hours.finish), { people, day } = hours.crew;
        expect(days.at(-1)!.last).toBe(Math.max(1, Math.ceil(up.div(day).div(people).valueOf())));
        // two crews: nobody begins before what he needs is done, and together they are no slower than that one after the other
        const two = calendarOf(order, hours, 2).shifts;
        const stepOf = new Map(order.steps.flatMap(({ number, placings }) => placings.map(({ piece }) => [piece.id, number] as const)));
        for (const { first, then } of order.before) {
            expect(two.get(stepOf.get(first)!)!.first).toBeLessThanOrEqual(two.get(stepOf.get(then)!)!.last);
        }
        expect(two.size).toBe(order.steps.length);
    }), { seed: 21, numRuns: runs(200, 30) });
    expect(timed).toBeGreaterThan(10);
});

describe('what the text says of it', () => {
    const words = { uri: 'file:///den.coffer', range: { start: { line: 3, character: 0 }, end: { line: 3, character: 9 } } };
    const given = <T>(value: T) => ({ value, at: words, said: true });
    const said = (orders: readonly Omit<OrderSaid, 'at'>[], more: Partial<PutUpSaid> = {}): Ceiling => {
        const ceiling = example();
        return { ...ceiling, room: { ...ceiling.room,
            putUp: { at: words, crews: given(1), up: [], waits: [], orders: orders.map(order => ({ ...order, at: words })), ...more } } };
    };
    const kinds = (ceiling: Ceiling): string[] => [...new Set(putUp(ceiling).steps.map(({ kind }) => kind))];

    test('a band before the bottoms gives up its custom, and then leaves the bays at the walls no room either', () => {
        const ceiling = said([{ what: [given('band')], before: given('bottoms') }]);
        expect(kinds(ceiling)).toEqual(['blocking', 'first-bay', 'spacers', 'sides', 'band', 'bottoms', 'trim']);
        expect(closing(ceiling).length).toBe(8);
    });
    test('one piece after another of its kind; a line after one that its blocking runs through for is a circle', () => {
        const { steps, stuck } = putUp(said([{ what: [given('blocking-2')], after: given('blocking-3') }]));
        const at = (id: string): number => steps.findIndex(({ placings }) => placings.some(({ piece }) => piece.id === `parlor.${id}`));
        expect(stuck).toEqual([]);
        expect(at('blocking-2')).toBeGreaterThan(at('blocking-3'));
        expect(putUp(said([{ what: [given('line-2')], after: given('line-B') }])).cycle).not.toBeNull();
    });
    test('what cannot be is a circle of pieces, with the words that close it', () => {
        const { cycle, stuck } = putUp(said([{ what: [given('bottoms')], before: given('cleats') }]));
        expect(cycle!.every(({ first, then }) => /^parlor\./.test(first) && /^parlor\./.test(then))).toBe(true);
        expect(cycle!.filter(({ at }) => at === words).length).toBe(1);
        cycle!.forEach(({ then }, i) => { expect(cycle![(i + 1) % cycle!.length]!.first).toBe(then); });
        expect(stuck.every(id => id.startsWith('parlor.'))).toBe(true);
    });
    test('a coffer of its own for the first bay; names that nothing has; a day to wait for', () => {
        expect(putUp(said([], { firstBay: given(1) })).firstBay!.coffer).toBe(1);
        expect(putUp(said([{ what: [given('bottum')], before: given('band') }])).unknown.map(({ value }) => value)).toEqual(['bottum']);
        const late = putUp(said([{ what: [given('trim')], day: given(5) }], { crews: given(2) }));
        expect(new Set(late.steps.filter(({ kind }) => kind === 'trim').map(({ notBefore }) => notBefore))).toEqual(new Set([5]));
        const one = new Rational(60), minutes = new Map(late.steps.map(({ number }) => [number, one]));
        const none = new Rational(0), crew = { people: 2, day: new Rational(480) };
        const { shifts } = calendarOf(late, { layout: none, finish: none, steps: minutes, crew }, 2);
        for (const { number, kind } of late.steps) if (kind === 'trim') expect(shifts.get(number)!.first).toBeGreaterThanOrEqual(5);
        expect(new Set([...shifts.values()].map(({ crew }) => crew))).toEqual(new Set([1, 2]));
    });
});

describe('a circle', () => {
    const edges = (...pairs: string[]): Before[] => pairs.map(pair => ({ first: pair[0]!, then: pair[1]!, why: 'carries' }));
    test('is found, each waiting for the one before it, the first for the last', () => {
        const cycle = cycleIn(['a', 'b', 'c', 'd'], edges('ab', 'bc', 'ca', 'cd'))!;
        expect(cycle.length).toBe(3);
        cycle.forEach(({ then }, i) => { expect(cycle[(i + 1) % cycle.length]!.first).toBe(then); });
        expect(new Set(cycle.map(({ first }) => first))).toEqual(new Set(['a', 'b', 'c']));
    });
    test('is the shortest through its pieces, and none where there is none', () => {
        expect(cycleIn(['a', 'b', 'c'], edges('ab', 'bc', 'ca', 'ba'))!.length).toBe(2);
        expect(cycleIn([], edges('ab'))).toBeNull();
        expect(cycleIn(['b'], edges('ab'))).toBeNull();
    });
});
