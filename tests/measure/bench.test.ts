import { describe, expect, test } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { boardsAtBench } from '../../src/measure/bench.ts';
import { layoutOf, takeOffOf } from '../../src/pipeline/inspect.ts';
import { HALL } from '../../src/rules/support/examples.ts';
import { nameInRoom } from '../../src/takeoff/ids.ts';
import { TestWorkspace } from '../support/workspace.ts';

const INCH = 16256;

async function benchOf(words: string, text = HALL) {
    const workspace = await TestWorkspace.open({ 'hall.coffer': text.replace('north-south\n  }\n', `north-south\n  }\n  measured {\n${words}\n  }\n`) });
    const [room] = readFile(workspace.document('hall.coffer')).rooms, layout = layoutOf(room!), { pieces } = takeOffOf(layout.ceiling!);
    return { boards: boardsAtBench(room!, pieces, room!.job), pieces };
}

describe('a measured board', () => {
    test('does for a piece or does not: of each piece of its stock one of both is told', async () => {
        for (const size of ['width 3 3/8"', 'width 1"', 'thickness 23/32"', 'thickness 13/16"', 'length 5\'', 'width 3 1/2"', 'width 4"; thickness 7/8"; length 4\'']) {
            const { boards: [board], pieces } = await benchOf(`board b1 poplar-1x4 { ${size} }`), own = pieces.filter(({ stock }) => stock.name === 'poplar-1x4');
            const spoiled = [...board!.spoils.values()].flat().map(nameInRoom);
            expect([...spoiled, ...board!.mayGo.map(nameInRoom)].sort(), size).toEqual(own.map(nameInRoom).sort());
        }
    });

    // held against the sizes by themselves
    test('is too narrow for what is wider, too short for what is longer with what is cut off its ends', async () => {
        const { boards: [board], pieces } = await benchOf('board b1 poplar-1x4 { width 3 7/16"; length 5\' }');
        for (const piece of pieces.filter(({ stock }) => stock.name === 'poplar-1x4')) {
            const does = piece.width <= 3.4375 * INCH && piece.cutOverall <= 59 * INCH;
            // 1/16" narrower is more than what passes, in what nobody sees too
            expect(board!.mayGo.includes(piece), nameInRoom(piece)).toBe(does);
        }
    });

    test('takes one behind the other no more than its length, kerfs and trimmed ends counted', async () => {
        const { boards: [board] } = await benchOf('board b1 poplar-1x6 { length 12\' 6" }'), takes = board!.takes;
        const used = takes.reduce((sum, piece) => sum + piece.cutOverall, 0) + (takes.length - 1) * INCH / 8 + INCH;
        expect(takes.length).toBeGreaterThan(1);
        expect(used).toBeLessThanOrEqual(150 * INCH);
        expect(board!.mayGo.length).toBeGreaterThan(takes.length);
    });

    const SPOILED = 'board b1 poplar-1x6 { thickness 11/16"; into side-A-1-north, side-A-2-north, side-A-3-north, side-A-1-south }';
    const recut = async (more: string, words = '') => {
        const { boards: [board], pieces } = await benchOf(`${words}${SPOILED}`, HALL.replace('stock poplar-1x6 { size 1x6 }', `stock poplar-1x6 { size 1x6; ${more} }`));
        return { from: board!.recut.map(one => one.from && [one.from.what, one.from.length / INCH]), pieces };
    };

    // a side of 4' with its kerf comes out of 4' 6" less 1" for its ends, two out of 9'
    test('what was cut from it and is spoiled is cut again from the shortest wood that is there and long enough, each stick once', async () => {
        expect((await recut('on-hand 1 x 4\' 6", 1 x 9\'')).from).toEqual([['on hand', 54], ['on hand', 108], ['on hand', expect.any(Number)], null]);
    });

    test('first of all from wood that nothing else is planned on: what is reckoned to be left of a board that is cut, offcuts', async () => {
        const { from, pieces } = await recut('', 'cut 16\' of poplar-1x6 into side-1-1-east; '), side = pieces.find(piece => nameInRoom(piece) === 'side-1-1-east')!;
        // 16' less 1/2" at its other end, the side and its kerf, a slanted one a hair more, down to the tape's mark
        const left = 192 - 0.5 - side.cutOverall / INCH - 0.125;
        expect(from[0]![0]).toBe('left');
        expect(left - Number(from[0]![1])).toBeGreaterThanOrEqual(0);
        expect(left - Number(from[0]![1])).toBeLessThan(0.125);
        // of boards of 14' less is cut than they hold
        expect((await recut('lengths 14\'; price 1 USD per ft')).from.filter(each => each?.[0] === 'offcut').length).toBeGreaterThan(0);
    });

    test('a rabbet that is off spoils what has one, and may be ripped away for what has none', async () => {
        const grooved = HALL.replace('sides { stock poplar-1x6 }', 'sides { stock poplar-1x6; rabbet 1/4" x 1/4" on lower-back }').replace('cleats { rip 3/4" x 3/4" from strip-1x2 }', 'cleats { rip 3/4" x 3/4" from poplar-1x6 }');
        const { boards: [off, good] } = await benchOf('board b1 poplar-1x6 { rabbet 5/16" }; board b2 poplar-1x6 { rabbet 1/4" }', grooved);
        expect([...off!.spoils.keys()]).toEqual(['groove-off']);
        expect(new Set(off!.mayGo.map(({ part }) => part))).toEqual(new Set(['cleat']));
        expect(good!.spoils.size).toBe(0);
    });
});
