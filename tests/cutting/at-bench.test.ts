import { describe, expect, test } from 'vitest';
import { asMeasured } from '../../src/cutting/at-bench.ts';
import { planBoards } from '../../src/cutting/first-plan.ts';
import { restToCut } from '../../src/cutting/rest.ts';
import type { MeasuredBoard } from '../../src/job/model.ts';
import { readFile } from '../../src/language/read-file.ts';
import { layoutOf, takeOffOf } from '../../src/pipeline/inspect.ts';
import { inches } from '../../src/quantity/rational.ts';
import { HALL } from '../../src/rules/support/examples.ts';
import { nameInRoom } from '../../src/takeoff/ids.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { given, stock } from './samples.ts';

const feet = (count: number): number => inches(12 * count);
const pine = stock({ name: 'pine', feet: [8] });
const onHand = (...lengths: number[]) => lengths.map(length => given({ count: 1, length }));
const board = (sizes: Partial<MeasuredBoard>): MeasuredBoard => ({ name: 'b1', at: pine.at, stock: given(pine), into: [], ...sizes });
const told = (boards: readonly MeasuredBoard[], ...lengths: number[]) =>
    asMeasured(onHand(...lengths), boards, pine).map(({ value: { length, measured, width } }) => [length, measured, width]);

describe('boards on hand as they were measured', () => {
    test('one is the shortest of those that are at least as long, and as long as it was measured', () => {
        expect(told([board({ length: given(inches(94)) })], feet(8), feet(12), feet(7))).toEqual([
            [feet(12), undefined, undefined], [feet(7), undefined, undefined], [inches(94), 'b1', undefined],
        ]);
    });
    test('where none is as long it is there besides; where nobody measured its length, or pieces were cut from it, nothing is said of it', () => {
        expect(told([board({ length: given(feet(10)) })], feet(8))).toEqual([[feet(8), undefined, undefined], [feet(10), 'b1', undefined]]);
        const unmeasured = [board({ width: given(inches(5)) }), board({ length: given(feet(8)), into: [given('bottom-2')] })];
        expect(told(unmeasured, feet(8))).toEqual([[feet(8), undefined, undefined]]);
    });
    test('each is another one: what was measured is not measured again, and a strip is no board', () => {
        const two = [board({ length: given(feet(10)) }), board({ name: 'b2', length: given(feet(9)) })];
        expect(told(two, feet(8))).toEqual([[feet(8), undefined, undefined], [feet(10), 'b1', undefined], [feet(9), 'b2', undefined]]);
        expect(told(two, feet(12), feet(10))).toEqual([[feet(10), 'b1', undefined], [feet(9), 'b2', undefined]]);
        const strip = given({ count: 1, length: feet(10), width: inches(2) });
        expect(asMeasured([strip], [board({ length: given(feet(8)) })], pine).map(({ value }) => [value.length, value.measured])).toEqual([[feet(10), undefined], [feet(8), 'b1']]);
        expect(asMeasured([given({ count: 0, length: feet(10) })], [board({ length: given(feet(8)) })], pine).map(({ value }) => [value.count, value.measured])).toEqual([[1, 'b1']]);
    });
    test('one that is narrow has its width, one that is thin is not there', () => {
        const width = given(pine.width!.value.ticks - inches('1/16')), thickness = given(pine.thickness!.value.ticks - inches('1/16'));
        expect(told([board({ length: given(feet(8)), width })], feet(8))).toEqual([[feet(8), 'b1', width.value]]);
        expect(told([board({ length: given(feet(8)), thickness })], feet(8))).toEqual([]);
    });
});

describe('the plan of boards', () => {
    const planned = async (words: string, sold = 'lengths 10\'; price 3 USD per ft') => {
        const text = HALL.replace('stock poplar-1x6 { size 1x6 }', `stock poplar-1x6 { size 1x6; ${sold} }`).replace('rip 3/4" x 3/4" from strip-1x2', 'rip 3/4" x 3/4" from poplar-1x6');
        const workspace = await TestWorkspace.open({ 'hall.coffer': text.replace('north-south\n  }\n', `north-south\n  }\n  measured {\n${words}\n  }\n`) });
        const [room] = readFile(workspace.document('hall.coffer')).rooms, { pieces } = takeOffOf(layoutOf(room!).ceiling!);
        const wanted = restToCut([{ room: room!, pieces }]).pieces(room!), { stocks } = planBoards(wanted, room!.job);
        return { boards: stocks.find(one => one.stock.name === 'poplar-1x6')!.boards, wanted: wanted.map(nameInRoom) };
    };

    test('a piece that is cut from a board that is no good for it is wanted again, once, and not once it is cut again', async () => {
        const count = async (words: string): Promise<number> => (await planned(words)).wanted.filter(name => name === 'side-A-1-north').length;
        expect(await count('cut 10\' of poplar-1x6 into side-A-1-north')).toBe(0);
        expect(await count('cut 10\' of poplar-1x6 into side-A-1-north; board b1 poplar-1x6 { thickness 11/16"; into side-A-1-north }')).toBe(1);
        expect(await count('cut 10\' of poplar-1x6 into side-A-1-north; spoiled side-A-1-north; board b1 poplar-1x6 { thickness 11/16"; into side-A-1-north }')).toBe(1);
        expect(await count('cut 10\' of poplar-1x6 into side-A-1-north; cut 10\' of poplar-1x6 into side-A-1-north; board b1 poplar-1x6 { thickness 11/16"; into side-A-1-north }')).toBe(0);
        expect(await count('board b1 poplar-1x6 { thickness 11/16"; into side-A-1-north }')).toBe(1);
        // nothing is wrong with it
        expect(await count('cut 10\' of poplar-1x6 into side-A-1-north; board b1 poplar-1x6 { thickness 3/4"; into side-A-1-north }')).toBe(0);
    });

    test('a narrow board is ripped and never cut across whole; strips and what is left beside them are of its own width', async () => {
        const { boards } = await planned('board b1 poplar-1x6 { width 5 1/4"; length 9\' 8" }'), narrow = boards.find(({ measured }) => measured === 'b1');
        expect(narrow).toMatchObject({ from: 'on hand', length: inches(116), width: inches('5 1/4') });
        expect(narrow!.strips.every(({ rippedTo, pieces }) => rippedTo !== undefined || pieces.length === 0)).toBe(true);
        const across = narrow!.strips.reduce((sum, { rippedTo = 0 }) => sum + rippedTo + inches('1/8'), 0) - inches('1/8');
        expect(across).toBeLessThanOrEqual(inches('5 1/4'));
    });

    test('a board is as long as it was measured', async () => {
        const { boards } = await planned('board b1 poplar-1x6 { length 9\' 7" }', 'lengths 10\'; on-hand 1 x 10\'; price 3 USD per ft'), there = boards.filter(({ from }) => from === 'on hand');
        expect(there.map(({ length, measured }) => [length, measured])).toEqual([[inches(115), 'b1']]);
    });
});
