import { expect, test } from 'vitest';
import { laidOutAsBefore } from '../../src/ceiling/as-before.ts';
import type { Layout } from '../../src/ceiling/model.ts';
import type { Room } from '../../src/job/model.ts';
import { exampleRoom } from '../support/example-room.ts';

/** Rooms of one name that were surveyed: the job's own and those of its alternates, each with another ceiling to say. */
const variants = Array.from({ length: 5 }, (_, i): Room => ({ ...exampleRoom(), survey: {} as Room['survey'], title: `Variant ${i}` } as Room));

test('a surveyed room and three alternates of it are kept beside each other; one more has the one laid out longest ago laid out again', () => {
    const laid: Room[] = [], layOut = (room: Room): Layout => { laid.push(room); return { room, troubles: [] } as unknown as Layout; };
    const ask = (...nths: number[]): number[] => {
        laid.length = 0;
        for (const i of nths) laidOutAsBefore({ ...variants[i]!, survey: {} as Room['survey'] } as Room, layOut);
        return laid.map(room => variants.findIndex(({ title }) => title === room.title));
    };
    expect(ask(0, 1, 2, 3)).toEqual([0, 1, 2, 3]);
    expect(ask(0, 1, 2, 3)).toEqual([]);
    expect(ask(4)).toEqual([4]);
    expect(ask(4, 3, 2, 1)).toEqual([]);
    expect(ask(0)).toEqual([0]);
});
