import { expect, test } from 'vitest';
import { aroundWords } from '../../src/ceiling/around-words.ts';
import { layOut } from '../../src/ceiling/layout.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { exampleRoom } from '../support/example-room.ts';
import type { RoomWords } from '../support/job-builder.ts';

// a band of 7 1/4", half beams of 2 1/2" and a side of 3/4"
const half = { kind: 'half-beam', width: '2 1/2"' } as const;
test.each<[RoomWords, string[]]>([
    [{}, ['a band 7 1/4" high around the walls']], [{ band: half }, ['a half beam 3 1/4" wide around the walls']], [{ band: null }, []],
    [{ around: { west: null } }, ['a band 7 1/4" high along the north, the east and the south wall']],
    [{ around: { west: null, south: null, east: half } }, ['a band 7 1/4" high along the north wall', 'a half beam 3 1/4" wide along the east wall']],
    [{ around: { east: half, south: half } }, ['a band 7 1/4" high along the north and the west wall', 'a half beam 3 1/4" wide along the east and the south wall']],
])('what runs along the walls in words: %j', (words, told) => {
    expect(aroundWords(layOut(exampleRoom(words)).ceiling!.around, printInches)).toEqual(told);
});
