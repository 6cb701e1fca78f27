import { beforeEach, describe, expect, test } from 'vitest';
import type { TestWorkspace } from '../../support/workspace.ts';
import { HOUSE, hints, openHouse } from './house.ts';

let house: TestWorkspace;
beforeEach(async () => { house = await openHouse(); });

const DEN = HOUSE['rooms/den.coffer']!;
/** 144" less 3 beams of 7" is 123", by 4; 120" less 2 beams of 7" is 106", by 3, cut to the nearest 1/32". Depth: the side of 7 1/4", held down 1/4". */
const WHOLE = ['coffers-north 4 | of 2\' 6 3/4"', 'coffers-east 3 | of 2\' 11 5/16" to 2\' 11 11/32"', 'beams box | 7 1/2" deep, 7" wide', 'line B { beams box | 7 1/2" deep, 7" wide'];

const edit = async (old: string, words: string, path = 'rooms/den.coffer', text = HOUSE[path]!): Promise<void> => {
    if (text.split(old).length !== 2) throw new Error(`"${old}" must occur once in ${path}`);
    await house.edit({ [path]: text.replace(old, words) });
};

describe('hints in sound text', () => {
    test('of a room', async () => expect(await hints(house, 'rooms/den.coffer')).toEqual(WHOLE));

    test('of a profile', async () => {
        expect(await hints(house, 'details/box.coffer')).toEqual(['gap 0" to 1/16" | no play']);
        await edit('stock  pine-1x6', 'stock  pine-1x6\n    rip    5 7/16"', 'details/box.coffer');
        expect(await hints(house, 'details/box.coffer')).toEqual(['gap 0" to 1/16" | 1/16" play in all']);
        await edit('stock  pine-1x6\n    gap    0" to 1/16"', 'stock  pine-1x8\n    rip    5 9/16"', 'details/box.coffer');
        expect(await hints(house, 'details/box.coffer')).toEqual(['bottom | 1/16" too wide']);
    });

    test('of coffers that go by their size', async () => {
        await edit('coffers-north  4\n    coffers-east   3', 'coffer-size  30" to 37"');
        expect((await hints(house, 'rooms/den.coffer'))[0]).toMatch(/^coffer-size 30" to 37" \| north 4 of 2' 6 3\/4", east 3 of 2' 11/);
    });

    test('only where they are asked for', async () => {
        const line = DEN.split('\n').findIndex(each => each.includes('coffers-east'));
        expect(await hints(house, 'rooms/den.coffer', { start: { line, character: 0 }, end: { line, character: 99 } })).toEqual([WHOLE[1]]);
    });

    test('follow what changes in another file', async () => {
        await edit('stock pine-1x8 { size 1x8 }', 'stock pine-1x8 { size 1x8; width 7" }', 'yard.coffer');
        expect((await hints(house, 'rooms/den.coffer'))[2]).toBe('beams box | 7 1/4" deep, 7" wide');
    });

    test('are silent where a room cannot be laid out as it is said', async () => {
        await edit('wall east   10\'', 'wall east   1\'');
        expect((await hints(house, 'rooms/den.coffer')).filter(hint => hint.startsWith('coffers'))).toEqual([]);
    });
});

describe('hints in broken text', () => {
    test.each([
        ['a wall half typed', 'wall north  12\'', 'wall north  12\' 3/', WHOLE],
        ['a brace gone', '  line B { beams box }\n}', '  line B { beams box }\n', WHOLE],
        ['a word half typed', 'through        north-south', 'through        north-sou', WHOLE],
        ['something behind the value', 'coffers-north  4', 'coffers-north  4 (', WHOLE],
        ['the value itself half typed', 'coffers-north  4', 'coffers-north  4 + (', WHOLE.slice(1)],
        ['the value itself taken away', 'coffers-north  4', 'coffers-north', WHOLE.slice(1)],
        ['another value, and an error beside it', 'coffers-north  4\n    coffers-east   3', 'coffers-north  5\n    coffers-east   3 "', [WHOLE[2], WHOLE[3]]],
        ['an unknown name', 'line B { beams box }', 'line B { beams bx }', WHOLE.slice(0, 3)],
    ])('%s: what stands behind the same words stays, what might be wrong goes', async (_, old, words, expected) => {
        await hints(house, 'rooms/den.coffer');
        await edit(old, words);
        expect(await hints(house, 'rooms/den.coffer')).toEqual(expected);
        await house.edit({ 'rooms/den.coffer': DEN });
        expect(await hints(house, 'rooms/den.coffer')).toEqual(WHOLE);
    });

    test('an error in a file it uses', async () => {
        await hints(house, 'rooms/den.coffer');
        await edit('use pine-1x6, pine-1x8, pine-1x2', 'use pine-1x6, pine-1x', 'details/box.coffer');
        expect(await hints(house, 'rooms/den.coffer')).toEqual(WHOLE);
    });

    test('they move with their lines', async () => {
        await hints(house, 'rooms/den.coffer');
        await edit('wall north  12\'', '\n\n  wall north  12\' (');
        expect(await hints(house, 'rooms/den.coffer')).toEqual(WHOLE);
    });

    test('a file that was never sound shows nothing', async () => {
        house = await openHouse({ 'rooms/den.coffer': DEN.replace('wall north  12\'', 'wall north  12\' (') });
        expect(await hints(house, 'rooms/den.coffer')).toEqual([]);
    });

    test('a profile keeps its fit while it is typed in', async () => {
        await hints(house, 'details/box.coffer');
        await edit('sides { stock deep }', 'sides { stock de }', 'details/box.coffer');
        expect(await hints(house, 'details/box.coffer')).toEqual(['gap 0" to 1/16" | no play']);
        await edit('stock  pine-1x6', 'stock  pine-1x', 'details/box.coffer');
        expect(await hints(house, 'details/box.coffer')).toEqual(['gap 0" to 1/16" | no play']);
    });

    test('a room that is gone for good is forgotten', async () => {
        await hints(house, 'rooms/den.coffer');
        await house.edit({ 'rooms/den.coffer': 'edition 1\n' });
        expect(await hints(house, 'rooms/den.coffer')).toEqual([]);
        await house.edit({ 'rooms/den.coffer': DEN.replace('wall north  12\'', 'wall north  12\' (') });
        expect(await hints(house, 'rooms/den.coffer')).toEqual([]);
    });
});
