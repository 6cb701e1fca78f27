import { describe, expect, test } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { isAsked } from '../../src/measure/dimensions.ts';
import { dimensionName } from '../../src/measure/known-words.ts';
import { walkRound } from '../../src/measure/walk.ts';
import { HALL } from '../../src/rules/support/examples.ts';
import { TestWorkspace } from '../support/workspace.ts';

const read = async (words: string, before = '') => {
    const workspace = await TestWorkspace.open({ 'den.coffer': `edition 1\n${before}\nroom den {\n${words}\n}\n` });
    const [room] = readFile(workspace.document('den.coffer')).rooms;
    return room!;
};

const L_ROOM = `  wall north 12' as verified
  wall east 5'
  wall inner 4' heading west
  wall step 3' heading south
  wall south 8'
  wall west 8'
  fixture window casing on west at 2' width 3' below-ceiling 1' from south-west
  fixture door casing on west at 5' width 2' below-ceiling 1' from south-west
  fixture lamp-2 light at 9', 2'
  fixture lamp-1 light at 3', 1'
  fixture lamp-3 light at 2', 6'
  fixture lamp-4 light at 6', 6'
  ceiling { height 9'; joists 2x8 every 16" running north-south }
  longest-piece 9' as told by "the owner"
  measured { west { hump 1/4" at 3'; hollow 1/8" at 5' as verified; leans-out 1/8" } }
`;

describe('the walk round a room', () => {
    test('goes along the walls clockwise with what stands at each, then across the floor, then under the ceiling in rows, there and back', async () => {
        const stops = walkRound(await read(L_ROOM));
        expect(stops.map(({ dimension }) => dimensionName(dimension))).toEqual([
            'wall north', 'wall east', 'wall inner', 'wall step', 'wall south', 'wall west', 'window', 'door', 'the bow of wall west', 'the bow of wall west', 'the lean of wall west',
            'a diagonal', 'the height of the ceiling',
            'lamp-1', 'lamp-2', 'lamp-4', 'lamp-3', 'the joists 2x8', 'the longest piece that gets there',
        ]);
        // the west wall is walked to the north: what is 2' from its south end comes first
        expect(stops.flatMap(({ wall, along }) => (wall ? [[wall, along! / 16256 / 12]] : []))).toEqual([['west', 2], ['west', 5], ['west', NaN], ['west', NaN], ['west', NaN]]);
        expect(stops[0]!.todo).toBe('nothing');
    });

    test('what was found on site is measured, what has a day too, and a job may be content with that', async () => {
        const room = '  wall north 12\' as drawn\n  wall east 9\' on 2026-04-01\n  measured { wall west 9\' }\n  diagonal north-west to south-east measures 15\'\n';
        const todo = async (job: string) => Object.fromEntries(walkRound(await read(room, job)).map(({ dimension: { name }, todo }) => [name, todo]));
        expect(await todo('')).toEqual({ 'north': 'measure', 'east': 'verify', 'south': 'measure', 'west': 'verify', 'north-west to south-east': 'verify' });
        expect(await todo('job "Elm Row 2" { cut-from measured }')).toEqual({ 'north': 'measure', 'east': 'nothing', 'south': 'measure', 'west': 'nothing', 'north-west to south-east': 'nothing' });
    });

    test('what is measured takes the place of what was drawn, with how it is known', async () => {
        const [north] = walkRound(await read('  wall north 12\' as drawn\n  wall east 9\'\n  measured { north 11\' 11 1/2" by "Ana" }\n'));
        expect([north!.dimension.known, north!.dimension.by, north!.dimension.ticks! / 16256]).toEqual(['measured', 'Ana', 143.5]);
    });
});

test.each([
    ['', false], ['  ceiling { height 9\' as told }', true], ['  fixture lamp light at 1\', 1\' as drawn', true], ['  diagonal north-west to south-east measures 15\' as verified', true],
    ['  ceiling { height 9\' on 2026-03-01 }', false], ['  measured { wall west 9\' }', false], ['  ceiling { height 9\'; joists 2x8 every 16" running north-south as told }', true],
])('a room is asked once it says of a dimension how it is known: %s', async (words, asked) => {
    expect(isAsked(await read(`  wall north 12'\n  wall east 9' on 2026-04-01 by "Ana"\n${words}`))).toBe(asked);
    expect(isAsked(await read(`  wall north 12'\n  wall east 9'\n${words}`, 'job "Elm Row 2" { cut-from measured }'))).toBe(true);
});

test('boards that are there come last: those that were measured by their names, one fewer of those on hand, and none that is cut up', async () => {
    const workspace = await TestWorkspace.open({ 'hall.coffer': HALL.replace(/stock poplar-1x6 \{ size 1x6/, 'stock poplar-1x6 { size 1x6; lengths 8\'; on-hand 3 x 9\' as told by "the yard"').replace('  grid {', `  measured {
    board b1 poplar-1x6 as verified on 2026-03-05 by "Ines" { length 8' 11 1/2" }
    board b2 poplar-1x6 as verified { length 9'; into side-A-1-north }
  }
  grid {`) }), [room] = readFile(workspace.document('hall.coffer')).rooms;
    const last = walkRound(room!).filter(({ dimension: { kind } }) => kind === 'on-hand' || kind === 'board');
    expect(last.map(({ dimension, todo }) => [dimensionName(dimension), dimension.sizes!.map(size => size / 16256), dimension.known, dimension.by ?? '', todo])).toEqual([
        ['2 boards of poplar-1x6 on hand', [108], 'told', 'the yard', 'measure'], ['board b1', [107.5], 'verified', 'Ines', 'nothing'],
    ]);
});

test.each([
    ['cut 9\' of poplar-1x6 into side-A-1-north', ['the board of poplar-1x6 on hand']],
    ['cut 9\' of poplar-1x6 into side-A-1-north left 4\'; cut 4\' of poplar-1x6 into side-A-2-north', ['the board of poplar-1x6 on hand']],
    ['cut 9\' of poplar-1x6 into side-A-1-north; cut 9\' of poplar-1x6 into side-A-2-north', []],
    ['cut 8\' of poplar-1x6 into side-A-1-north', ['2 boards of poplar-1x6 on hand']],
])('what is cut up is not measured any more: %s', async (cut, left) => {
    const workspace = await TestWorkspace.open({ 'hall.coffer': HALL.replace(/stock poplar-1x6 \{ size 1x6/, 'stock poplar-1x6 { size 1x6; lengths 8\'; on-hand 2 x 9\'').replace('  grid {', `  measured { ${cut} }
  grid {`) }), [room] = readFile(workspace.document('hall.coffer')).rooms;
    expect(walkRound(room!).filter(({ dimension: { kind } }) => kind === 'on-hand').map(({ dimension }) => dimensionName(dimension))).toEqual(left);
});
