import fc from 'fast-check';
import { expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { dayLoads } from '../../src/putup/by-day.ts';
import { calendarOf } from '../../src/putup/calendar.ts';
import { putUp } from '../../src/putup/put-up.ts';
import { Rational } from '../../src/quantity/rational.ts';
import { exampleRoom } from '../support/example-room.ts';
import { runs } from '../support/full.ts';

const order = putUp(layOut(exampleRoom({})).ceiling!), some = fc.integer({ min: 0, max: 900 }).map(minutes => new Rational(minutes));

test('what is done by the day: together all hours; full days until the last for one crew, never more than all people work', () => {
    const minutes = fc.array(some, { minLength: order.steps.length, maxLength: order.steps.length });
    fc.assert(fc.property(minutes, some, some, fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 3 }), (each, layout, finish, people, crews) => {
        const hours = { layout, finish, steps: new Map(order.steps.map(({ number }, i) => [number, each[i]!])), crew: { people, day: new Rational(480) } };
        const calendar = calendarOf(order, hours, crews), days = dayLoads(calendar, hours), all = [layout, finish, ...each].reduce((sum, one) => sum.add(one));
        expect(days.reduce((sum, day) => sum.add(day.minutes), new Rational(0)).toFraction()).toBe(all.toFraction());
        for (const day of days) expect(day.minutes.valueOf()).toBeLessThanOrEqual(480 * people);
        if (crews === 1) for (const day of days.slice(0, -1)) expect(day.minutes.valueOf()).toBe(480 * people);
        // every step on the days that its shift has
        for (const [number, { first, last }] of calendar.shifts) {
            const on = days.filter(({ steps }) => steps.includes(number)).map(({ day }) => day);
            expect([on[0], on.at(-1)]).toEqual([first, last]);
        }
    }), { seed: 61, numRuns: runs(200, 40) });
});
