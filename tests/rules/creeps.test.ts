import { expect, test } from 'vitest';
import type { Layout } from '../../src/ceiling/model.ts';
import { cutterCreeps } from '../../src/rules/cutter-creeps.ts';
import type { Found } from '../../src/rules/rule.ts';
import { inches } from '../../src/quantity/rational.ts';
import { given, job, nowhere } from '../cutting/samples.ts';

/** What is told of gauges of 1/4" whose readings are off by so many ticks. */
function told(offs: readonly number[], every = 1): string[] {
    const found: Found[] = [], meant = inches('1/4'), gauges = [{ readings: offs.map(off => meant + off), meant: given(meant), every, of: 'groove', at: nowhere }];
    cutterCreeps.check.room!({ layout: { room: { gauges } } as unknown as Layout, job: job(), pieces: () => [] }, one => found.push(one));
    return found.map(({ severity, message }) => `${severity}: ${message}`);
}
const LOOK = inches('1/64'), SCRAP = inches('1/32');
const line = (first: number, step: number, count: number): number[] => Array.from({ length: count }, (_, i) => first + i * step);

test('readings that are off: up to 1/64" passes, up to 1/32" is looked at, more is scrap', () => {
    expect(told([0, 0, LOOK])).toEqual([]);
    expect(told([0, 0, -LOOK])).toEqual([]);
    expect(told([0, 0, LOOK + 1])).toEqual(['warning: The groove is off. Reading 3 is 0.016" over 1/4": look at that board.']);
    expect(told([0, SCRAP, 0])).toEqual(['warning: The groove is off. Reading 2 is 1/32" over 1/4": look at that board.']);
    expect(told([0, -SCRAP - 1, 0])).toEqual(['error: The groove is off. Reading 2 is 0.031" under 1/4": such a board is scrap.']);
});

// by 4 ticks with every reading, and 34 ticks off at the first: the sixth is 54 off, and 1/64" of 254 is 50 readings ahead, 1/32" 113
test('a cutter that creeps: fewer than 50 boards ahead it is more than a hint', () => {
    const rate = 'The groove creeps: 0.002" more with every 10 readings, 10 boards.';
    expect(told(line(34, 4, 6))).toEqual([`hint: ${rate} At that rate it is 1/64" off after 50 more boards, and 1/32", scrap, after 113 more boards. Set the cutter again before that.`]);
    expect(told(line(35, 4, 6))).toEqual([`warning: ${rate} At that rate it is 1/64" off after 49 more boards, and 1/32", scrap, after 113 more boards. Set the cutter again before that.`]);
    // by 1/128" with every fifth board, the other way: 3/128" off, so 5 boards from scrap
    expect(told(line(0, -127, 4), 5)).toEqual(['warning: The groove creeps: 1/128" less with every reading, 5 boards. At that rate it is 1/64" off now, and 1/32", scrap, after 5 more boards. Set the cutter again before that. Reading 4 is 0.023" under 1/4": look at that board.']);
    expect(told(line(0, 127, 4))[0]).toContain('every board. At that rate it is 1/64" off now, and 1/32", scrap, after one more board.');
    expect(told(line(0, 127, 5))[0]).toContain('scrap, now. Set');
    expect(told(line(254, -60, 4))).toEqual(['hint: The groove creeps: 0.004" less with every reading, every board. It goes towards what it is meant to be; watch where it stops.']);
});
