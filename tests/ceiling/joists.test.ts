import { expect, test } from 'vitest';
import { joistsOf } from '../../src/ceiling/joists.ts';
import type { Room } from '../../src/job/model.ts';
import { inches } from '../../src/quantity/rational.ts';
import { given } from '../cutting/samples.ts';
import { exampleRoom } from '../support/example-room.ts';

/** Joists of a room of 96" by 60": 1 1/2" wide, every 16" from 8" on. */
function centers(words: { readonly every?: string; readonly first?: string; readonly from?: 'west' | 'east' | 'north' | 'south'; readonly running?: 'north-south' | 'east-west' }): number[] | undefined {
    const { every = '16', first = '8', from = 'west', running = 'north-south' } = words;
    const joists = { running: given(running), every: given(inches(every)), first: given(inches(first)), from, width: inches('1 1/2'), found: [] } as unknown as Room['joists'];
    const laid = joistsOf({ room: { ...exampleRoom(), joists } as Room, width: inches(96), length: inches(60) });
    return laid?.all.map(({ center }) => center / inches(1));
}

test('the row of joists runs from its first one to the other wall, from the side that it is counted from', () => {
    expect(centers({})).toEqual([8, 24, 40, 56, 72, 88]);
    expect(centers({ from: 'east' })).toEqual([8, 24, 40, 56, 72, 88]);
    expect(centers({ from: 'east', first: '4' })).toEqual([12, 28, 44, 60, 76, 92]);
    expect(centers({ from: 'north', running: 'east-west' })).toEqual([8, 24, 40, 56]);
    // one that is just at the other wall is one of them
    expect(centers({ every: '44', first: '8' })).toEqual([8, 52, 96]);
});

test('nothing from one to the next, or less, makes no row', () => {
    expect([centers({ every: '0' }), centers({ every: '-16' }), centers({ every: '0', first: '96' })]).toEqual([undefined, undefined, undefined]);
});
