import { describe, expect, test } from 'vitest';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { takeOffOf } from '../../src/pipeline/inspect.ts';
import { SOUND } from '../../src/pipeline/standing.ts';
import type { CutListJson } from '../../src/report/cut-list/shape.ts';
import { jsonCutList } from '../../src/report/cut-list/json.ts';
import { number, workedRooms, type WorkedPiece, type WorkedRoom } from '../arrangement/worked.ts';
import { files } from '../report/samples.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { workedJobs } from './worked-jobs.ts';

/**
 * Rooms of tests/arrangement/worked.json as somebody would write them, from the text to the cut list as JSON: every piece of the list is one of
 * the independent model's, with both edges, both ends with cut and angle, hand, and what it runs between; and none is missing.
 */
type Listed = CutListJson['pieces'][number];

describe.each(workedJobs)('$name', ({ name, text, walls, lines, also = {} }) => {
    const worked = workedRooms.find(room => room.name === name)!;
    const names = new Map([...worked.walls.map(([wall], i) => [wall, walls[i]!] as const), ...worked.lines.map(([line], i) => [line, lines[i]!] as const)]);

    test('piece for piece', async () => {
        const rooms = await cutListsOf(text);
        expect(compare(rooms[0]!, worked, names)).toEqual([]);
    });
    for (const [room, pieces] of Object.entries(also)) test(room, async () => {
        const list = (await cutListsOf(text)).find(pieces => pieces.some(piece => piece.room === room))!;
        const parts = new Set<string>(pieces.map(({ part }) => part));
        expect(compare(list.filter(({ part }) => parts.has(part)), { ...worked, pieces }, names)).toEqual([]);
    });
});

test('a length, an angle or a hand that is off is seen', async () => {
    const [{ name, text, walls, lines }] = workedJobs as [typeof workedJobs[number]];
    const worked = workedRooms.find(room => room.name === name)!, [list] = await cutListsOf(text) as [Listed[]];
    const names = new Map([...worked.walls.map(([wall], i) => [wall, walls[i]!] as const), ...worked.lines.map(([line], i) => [line, lines[i]!] as const)]);
    const side = list.find(({ part, hand }) => part === 'side' && hand === 'left')!, i = list.indexOf(side);
    const wrong: Partial<Listed>[] = [
        { face: { ...side.face, ticks: side.face.ticks + 9 } }, { hand: 'right' }, { left: side.right!, right: side.left! }, { overall: { ...side.overall!, ticks: side.overall!.ticks - 9 } },
    ];
    for (const change of wrong) expect(compare(list.toSpliced(i, 1, { ...side, ...change }), worked, names), JSON.stringify(change)).not.toEqual([]);
});

/** Room by room; everything goes together. */
async function cutListsOf(text: string): Promise<Listed[][]> {
    const layouts = await layoutsOf(text);
    return layouts.map(({ room, ceiling }) => {
        const takeOff = takeOffOf(ceiling!);
        expect(dryFit(ceiling!, takeOff).faults).toEqual([]);
        return (JSON.parse(jsonCutList([{ job: room.job, rooms: [{ room, takeOff, standing: SOUND }] }], files)) as CutListJson).pieces as Listed[];
    });
}

/** What is in one list and not in the other: empty where they agree. */
function compare(list: readonly Listed[], { pieces }: WorkedRoom, names: ReadonlyMap<string, string>): string[] {
    const left = pieces.flatMap(piece => piece.at.map(at => ({ piece, at })));
    const unlike = list.flatMap(piece => {
        const fit = left.findIndex(each => isIt(piece, each.piece, each.at, names));
        if (fit >= 0) left.splice(fit, 1);
        return fit >= 0 ? [] : [`${piece.id} ${JSON.stringify([piece.face.text, piece.back.text, piece.left, piece.right, piece.hand, piece.meets])}`];
    });
    return [...unlike, ...left.map(({ piece, at }) => `nothing is ${JSON.stringify([piece.part, piece.of, piece.edges, piece.angles, at])}`)];
}

/** The tape's thousandth of an inch is nothing here: lengths agree to a tick. */
function isIt(piece: Listed, worked: WorkedPiece, at: readonly (string | number)[], names: ReadonlyMap<string, string>): boolean {
    const { part, of, edges, cuts, angles, hand, width, overall } = worked;
    const near = (length: { readonly ticks: number } | undefined, inches: string): boolean =>
        length !== undefined && Math.abs(length.ticks - number(inches)) <= 1;
    const named = (name: string | number): string => names.get(String(name)) ?? String(name);
    if (piece.part !== part.replace('wall-', '')) return false;
    const longest = number(edges[0]) > number(edges[1]) ? edges[0] : edges[1];
    const [first, second] = part === 'cleat' ? [piece.back, piece.back] : [piece.face, piece.back];
    const sizes = (part === 'cleat' || near(first, edges[0])) && near(second, edges[1]) && near(piece.overall, overall ?? longest)
        && (width === undefined || near(piece.width, width) || part === 'band' && near(piece.thickness, width));
    const ends = [piece.left!, piece.right!].every((end, i) => Math.abs(end.angle! - angles[i]!) < 0.001 && (cuts === undefined || end.how === cuts[i]));
    const between = [...piece.meets!].map(String).sort().join();
    const place = part === 'trim' ? piece.coffer === at[0] && piece.on === at[1]
        : part === 'side' || part === 'cleat' ? piece.line === named(of!) && piece.on === at[0] && between === at.slice(1).map(named).sort().join()
            : part === 'band' ? piece.on === named(of!) : piece.line === named(of!) && between === at.map(named).sort().join();
    return sizes && ends && place && (hand === undefined || piece.hand === hand);
}
