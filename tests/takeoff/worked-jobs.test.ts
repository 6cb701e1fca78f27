import { describe, expect, test } from 'vitest';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { takeOffOf } from '../../src/pipeline/inspect.ts';
import { workedRooms } from '../arrangement/worked.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { listed, unlike, type Listed } from './as-worked.ts';
import { workedJobs } from './worked-jobs.ts';

/** Rooms of tests/arrangement/worked.json as somebody would write them, from the text to the cut list, piece for piece. */
function namesIn({ name, walls, lines }: Pick<typeof workedJobs[number], 'name' | 'walls' | 'lines'>): (name: string) => string {
    const worked = workedRooms.find(room => room.name === name)!;
    const names = new Map([...worked.walls.map(([wall], i) => [wall, walls[i]!] as const), ...worked.lines.map(([line], i) => [line, lines[i]!] as const)]);
    return word => names.get(word) ?? word;
}

describe.each(workedJobs)('$name', ({ name, text, walls, lines, also = {} }) => {
    const worked = workedRooms.find(room => room.name === name)!;
    const named = namesIn({ name, walls, lines });

    test('piece for piece', async () => {
        const rooms = await cutListsOf(text);
        expect(unlike(rooms[0]!, worked, named)).toEqual([]);
    });
    for (const [room, pieces] of Object.entries(also)) test(room, async () => {
        const list = (await cutListsOf(text)).find(pieces => pieces.some(piece => piece.room === room))!;
        const parts = new Set<string>(pieces.map(({ part }) => part));
        expect(unlike(list.filter(({ part }) => parts.has(part)), { ...worked, pieces }, named)).toEqual([]);
    });
});

test('a length, an angle or a hand that is off is seen', async () => {
    const [{ name, text, walls, lines }] = workedJobs as [typeof workedJobs[number]];
    const worked = workedRooms.find(room => room.name === name)!, [list] = await cutListsOf(text) as [Listed[]];
    const named = namesIn({ name, walls, lines });
    const side = list.find(({ part, hand }) => part === 'side' && hand === 'left')!, i = list.indexOf(side);
    const wrong: Partial<Listed>[] = [
        { face: { ...side.face, ticks: side.face.ticks + 9 } }, { hand: 'right' }, { left: side.right!, right: side.left! }, { overall: { ...side.overall!, ticks: side.overall!.ticks - 9 } },
    ];
    for (const change of wrong) expect(unlike(list.toSpliced(i, 1, { ...side, ...change }), worked, named), JSON.stringify(change)).not.toEqual([]);
});

/** Room by room; everything goes together. */
async function cutListsOf(text: string): Promise<Listed[][]> {
    const layouts = await layoutsOf(text);
    for (const { ceiling } of layouts) expect(dryFit(ceiling!, takeOffOf(ceiling!)).faults).toEqual([]);
    return layouts.map(listed);
}
