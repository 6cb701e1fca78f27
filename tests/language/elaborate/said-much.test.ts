import { describe, expect, it } from 'vitest';
import { layOut } from '../../../src/ceiling/layout.ts';
import { readFile } from '../../../src/language/read-file.ts';
import { withinLimits } from '../../../src/job/said-much.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const BEAMS = `edition 1
stock board { size 1x6 }
profile plain { blocking { stock board }; sides { stock board }; bottom { stock board } }
profile hung like plain { spacers { stock board; height 3"; every 4" } }
`;
/** A room of 60' by 60'. */
const room = (name: string, north: string, east: string, beams = 'plain'): string =>
    `room ${name} { wall north 60'; wall east 60'; grid { ${north}; ${east}; beams ${beams}; through north-south } }\n`;
const square = (name: string, coffers: number, beams?: string): string => room(name, `coffers-north ${coffers}`, `coffers-east ${coffers}`, beams);

async function readOf(text: string) {
    const workspace = await TestWorkspace.open({ 'hall.coffer': BEAMS + text });
    const { rooms, alternates } = readFile(workspace.document('hall.coffer'));
    return { rooms, alternates, laid: rooms.filter(({ tooMuch }) => !tooMuch).map(({ name }) => name) };
}

describe('the rooms of one file together', () => {
    it('are laid out up to the limit, and one with which they would be more is told so and does not count', async () => {
        const { laid, rooms } = await readOf(square('a', 15) + square('b', 13) + square('c', 3) + square('d', 3));
        expect(laid).toEqual(['a', 'b']);
        expect(rooms[3]!.tooMuch).toEqual({ of: 'rooms', what: 'coffers', count: 403, most: 400 });
        const { ceiling, troubles } = layOut(rooms[3]!);
        expect([ceiling, troubles]).toEqual([undefined, [{ kind: 'too-much-in-file', of: 'rooms', what: 'coffers', count: 403, most: 400, at: rooms[3]!.grid!.at }]]);
        expect((await readOf(square('a', 15) + square('b', 14) + square('c', 13) + square('d', 2))).laid).toEqual(['a', 'c', 'd']);
    });
    it('do not count one that has more than a room may have, which is told of the room', async () => {
        expect((await readOf(square('a', 21) + square('b', 3_000_000) + square('c', 20))).laid).toEqual(['a', 'b', 'c']);
    });
    it('count by the middle of a size, and by lines', async () => {
        const sized = room('a', 'coffer-size 30" to 42"', 'coffers-east 18');
        expect((await readOf(sized + square('b', 6))).laid).toEqual(['a', 'b']);
        expect((await readOf(sized + square('b', 7))).laid).toEqual(['a']);
        expect((await readOf(square('a', 19) + room('b', `lines-north ${Array.from({ length: 19 }, (_, i) => `${3 + 3 * i}'`).join(', ')}`, 'coffers-east 2'))).laid).toEqual(['a']);
    });
    it('have so many spacers and no more, as they hang in its densest line', async () => {
        const { laid, rooms } = await readOf(square('a', 10, 'hung') + square('b', 5, 'hung') + square('c', 2, 'hung') + square('d', 5));
        expect([laid, rooms[1]!.tooMuch]).toEqual([['a', 'c', 'd'], { of: 'rooms', what: 'spacers', count: 4680, most: 4000 }]);
        const own = square('b', 5).replace(' }\n', '; line A { beams hung } }\n');
        expect((await readOf(square('a', 10, 'hung') + own)).laid).toEqual(['a']);
    });
    it('stay what they were while there are few', async () => {
        const { rooms } = await readOf(square('a', 3) + square('b', 3));
        expect(withinLimits(rooms)).toBe(rooms);
    });
});

it('the rooms that alternates make have a limit of their own', async () => {
    const { alternates, laid } = await readOf(`${square('a', 20)}${Array.from({ length: 4 }, (_, i) => `alternate less-${i} { a.grid.coffers-north ${9 - i} }\n`).join('')}`);
    expect([laid, alternates.map(({ rooms }) => rooms[0]!.room.tooMuch?.count)]).toEqual([['a'], [undefined, undefined, 480, 460]]);
});
