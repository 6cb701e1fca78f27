import { expect, it } from 'vitest';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { pressedRows } from '../../src/putup/pressed.ts';
import { inches } from '../../src/quantity/rational.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { roomText } from './closing/room.ts';
import { elastica } from './closing/elastica.ts';

async function rowsOf(words: Parameters<typeof roomText>[0], band: 'first' | 'last' = 'last') {
    const ceiling = (await layoutsOf(roomText(words)))[0]!.ceiling! as Ceiling;
    return pressedRows(ceiling, takeOffOf(ceiling), { band });
}

it('two inner bays that press 1/32" each bow the last 50 7/8" by 1 5/32", or push lines 1 and 3 off by 1/32" each', async () => {
    const [row, ...others] = await rowsOf({ bottom: '; press 1/32"' });
    expect(others).toEqual([]);
    // by hand: bays 2 and 3 stand between lines 1, 2 and 3; those at the walls have the band's 3/4" behind them
    expect(row).toMatchObject({ lines: ['A', 'B'], said: true, pieces: 4, between: 2, press: inches('1/32'), sum: inches('1/16'), asCut: inches('1/16'), closes: inches('1/32') });
    expect(row!.pushes).toEqual({ lines: ['1', '3'], by: inches('1/32') });
    expect(row!.bows.length).toBe(inches('50 7/8'));
    // sqrt(1/16 x 50 7/8 / 2.4), and as a beam of large bows has it
    expect(row!.bows.by / TICKS_PER_INCH).toBeCloseTo(1.151, 3);
    expect(row!.bows.by / TICKS_PER_INCH).toBeCloseTo(elastica(50.875, 1, 1 / 16).bow, 2);
});

it('where nothing is said it is told what 1/64" and 1/32" would do; the tape of thirty-seconds takes 1/64" off again', async () => {
    const rows = await rowsOf({});
    expect(rows.map(({ press, said, sum, asCut }) => [press, said, sum, asCut])).toEqual([
        [inches('1/64'), false, inches('1/32'), 0], [inches('1/32'), false, inches('1/16'), inches('1/16')],
    ]);
});

it('with the band up first all four press, and there is no room to push anything off into', async () => {
    const [row] = await rowsOf({ bottom: '; press 1/32"' }, 'first');
    expect(row).toMatchObject({ between: 4, sum: inches('1/8'), pushes: null });
});

it('a row of one piece presses nothing', async () => {
    expect((await rowsOf({ bottom: '; press 1/32"' })).flatMap(({ lines }) => lines)).not.toContain('1');
    expect(await rowsOf({ bottom: '; press 1/32"', through: 'north-south', coffers: 2 })).toEqual([]);
});
