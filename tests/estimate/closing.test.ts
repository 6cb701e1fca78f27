import { expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { laborOf } from '../../src/estimate/labor.ts';
import type { ClosingWord } from '../../src/job/closing-word.ts';
import { closingTime } from '../../src/job/rates.ts';
import { readFile } from '../../src/language/read-file.ts';
import { Rational } from '../../src/quantity/rational.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { exampleRoom } from '../support/example-room.ts';
import { NO_RATES } from '../support/no-rates.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { given } from './random-rates.ts';

const ceiling = layOut(exampleRoom({})).ceiling!, takeOff = takeOffOf(ceiling);
const time = (minutes: number, of?: ClosingWord) => given({ minutes: new Rational(minutes), ...of && { of } });

// by hand: bays 2 and 3 of either of two lines stand between bottoms that run through, with biscuits in both; nobody says how they get in
test('four closing pieces take what is said of one, four times; a time of another way is not theirs', () => {
    const lines = (...closing: ReturnType<typeof time>[]) =>
        laborOf([{ ceiling, takeOff }], 0, { ...NO_RATES.labor, closing }).lines.map(({ what, minutes }) => [what, minutes.valueOf()]);
    expect(lines(time(9))).toEqual([['closing pieces', 36]]);
    expect(lines(time(60, 'kerfed'), time(9))).toEqual([['closing pieces', 36]]);
    expect(lines(time(60, 'kerfed'))).toEqual([]);
});
test('without a time they are missing, and counted as nothing', () => {
    const { lines, missing } = laborOf([{ ceiling, takeOff }], 0, NO_RATES.labor);
    expect(lines).toEqual([]);
    expect(missing.filter(({ rate }) => rate === 'labor.closing').map(({ of }) => of)).toEqual(['4 closing pieces']);
});

test('of one way, and of a nearer folder: what is said nearest and last counts', async () => {
    const workspace = await TestWorkspace.open({
        'rates.coffer': 'edition 1\nlabor {\n  closing 10 min per piece\n  closing 45 min per piece of kerfed\n  closing 50 min per piece of kerfed\n}\n',
        'house/job.coffer': 'edition 1\njob "House" {}\nlabor { closing 8 min per piece; butt 6 min per joint }\n',
    });
    const { labor } = readFile(workspace.document('house/job.coffer')).rates;
    expect(labor.closing!.map(({ value: { minutes, of } }) => [minutes.valueOf(), of])).toEqual([[8, undefined], [50, 'kerfed'], [45, 'kerfed'], [10, undefined]]);
    expect([closingTime(labor, 'kerfed'), closingTime(labor, 'sprung'), closingTime(labor, undefined)].map(found => found!.value.valueOf())).toEqual([50, 8, 8]);
    expect(closingTime(NO_RATES.labor, 'kerfed')).toBeUndefined();
});
