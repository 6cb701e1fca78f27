import { describe, expect, test } from 'vitest';
import { reachingInto, standingAtWalls } from '../../src/ceiling/at-the-wall.ts';
import { layOut } from '../../src/ceiling/layout.ts';
import type { Ceiling } from '../../src/ceiling/model.ts';
import type { AtWall, Fixture } from '../../src/job/model.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches } from '../../src/quantity/rational.ts';
import { given, nowhere } from '../cutting/samples.ts';
import { exampleRoom } from '../support/example-room.ts';

// 18' 4" by 15' 2"; a band of 3/4" whose foot is 7 3/4" down; lines of 7" that end 7 1/2" down, 1 from 50 1/8", A from 56 1/4"; trim of 1/2", 1 1/2" down
const room = exampleRoom(), ceiling = layOut(room).ceiling!;
interface Words { readonly begins?: string; readonly from?: AtWall['from']; readonly width?: string; readonly depth?: string }
function withOne(wall: string, { begins, from = 'north-west', width, depth = '1' }: Words): Ceiling {
    const atWall: AtWall = {
        wall: given(wall), from, depth: inches(depth), ...begins && { begins: given(inches(begins)) }, ...width && { width: given(inches(width)) },
    };
    const fixture: Fixture = { name: 'win', at: nowhere, kind: 'casing', atWall };
    return { ...ceiling, room: { ...ceiling.room, fixtures: [fixture, { name: 'lamp', at: nowhere, kind: 'light', x: 0, y: 0 }] } };
}

describe('from where to where something stands along its wall, counted clockwise round the room', () => {
    const stands = (wall: string, words: Words): string[][] =>
        standingAtWalls(withOne(wall, words)).map(({ from, to, wall: { name } }) => [name, printInches(from), printInches(to)]);
    test.each<[string, AtWall['from'], string, string]>([
        // north runs to the east, east to the south, south to the west, west to the north
        ['north', 'north-west', '10"', '40"'], ['north', 'north-east', '180"', '210"'], ['east', 'north-east', '10"', '40"'], ['east', 'south-east', '142"', '172"'],
        ['south', 'south-east', '10"', '40"'], ['south', 'south-west', '180"', '210"'], ['west', 'south-west', '10"', '40"'], ['west', 'north-west', '142"', '172"'],
    ])('30" wide, 10" from the end of the %s wall in the %s', (wall, from, begins, ends) => {
        expect(stands(wall, { begins: '10', from, width: '30' })).toEqual([[wall, begins, ends]]);
        expect(stands(`wall-${wall}`, { begins: '10', from, width: '30' })).toEqual([[wall, begins, ends]]);
    });
    test('without a width from there to the end of the wall, without a place all along it; at no wall nowhere', () => {
        expect(stands('east', { begins: '10' })).toEqual([['east', '10"', '192"']]);
        expect(stands('east', {})).toEqual([['east', '0"', '182"']]);
        expect(stands('east', { width: '30' })).toEqual([['east', '0"', '182"']]);
        expect(stands('porch', { begins: '10', width: '30' })).toEqual([]);
    });
});

describe('what reaches into it', () => {
    const reaching = (wall: string, words: Words, below = '0'): string[] => {
        const one = withOne(wall, words), [standing] = standingAtWalls(one);
        return reachingInto(standing!, one, inches(below)).map(({ name, of, into, foot }) => `${name} (${of}) ${printInches(into)} ${printInches(foot)}`);
    };
    const band = (wall: string, into = '1"') => `the band along the ${wall} wall (${wall}) ${into} 7 3/4"`;
    const FIRST: Words = { begins: '50', width: '10', depth: '2' };
    test('the band along the wall all of it, a line and the trim of the coffer beside it from the band on', () => {
        expect(reaching('north', FIRST)).toEqual([`line 1 (1) 1 1/4" 7 1/2"`, band('north', '2"'), `the trim of coffer 1 (trim) 1 1/4" 1 1/2"`, `the trim of coffer 2 (trim) 1 1/4" 1 1/2"`]);
        expect(reaching('north', { ...FIRST, depth: '1/2' })).toEqual([band('north', '1/2"')]);
        // line A from the north-west corner on, along the west wall
        expect(reaching('west', { begins: '57', width: '5', depth: '2' })).toEqual([`line A (A) 1 1/4" 7 1/2"`, band('west', '2"')]);
        expect(reaching('east', { begins: '57', from: 'north-east', width: '5', depth: '2' })).toEqual([`line A (A) 1 1/4" 7 1/2"`, band('east', '2"')]);
    });
    test('only what hangs lower than it begins, by more than rounding', () => {
        expect(reaching('north', FIRST, '1 1/2')).toEqual([`line 1 (1) 1 1/4" 7 1/2"`, band('north', '2"')]);
        expect(reaching('north', FIRST, '7 31/64')).toEqual([`line 1 (1) 1 1/4" 7 1/2"`, band('north', '2"')]);
        expect(reaching('north', FIRST, '7 1/2')).toEqual([band('north', '2"')]);
        expect(reaching('north', FIRST, '7 3/4')).toEqual([]);
    });
    test('not what stands beside it, or has an edge in common with it', () => {
        expect(reaching('north', { begins: '57 1/8', width: '10', depth: '2' })).toEqual([band('north', '2"'), `the trim of coffer 2 (trim) 1 1/4" 1 1/2"`]);
        expect(reaching('north', { begins: '57 7/64', width: '10', depth: '2' })[0]).toBe(`line 1 (1) 1 1/4" 7 1/2"`);
        expect(reaching('north', { begins: '40', width: '10 1/8', depth: '3/4' })).toEqual([band('north', '3/4"')]);
    });
    test('in a corner the bands along both walls', () => {
        expect(reaching('north', { begins: '0', from: 'north-east', width: '20', depth: '1' }).filter(words => words.includes('band'))).toEqual([band('north'), band('east', '1/4"')]);
    });
});
