import { expect, it } from 'vitest';
import type { Ceiling } from '../../src/ceiling/model.ts';
import { pressedRows } from '../../src/putup/pressed.ts';
import { inches } from '../../src/quantity/rational.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { roomText } from './closing/room.ts';
import { pressedElastica } from './closing/elastica.ts';

async function rowsOf(words: Parameters<typeof roomText>[0], band: 'first' | 'last' = 'last') {
    const ceiling = (await layoutsOf(roomText(words)))[0]!.ceiling! as Ceiling;
    return pressedRows(ceiling, takeOffOf(ceiling), { band });
}

it('two inner bays that press 1/32" each bow the last 50 7/8" by 1 1/16", or push lines 1 and 3 off by 1/32" each', async () => {
    const [row, ...others] = await rowsOf({ bottom: '; press 1/32"' });
    expect(others).toEqual([]);
    // by hand: bays 2 and 3 stand between lines 1, 2 and 3; those at the walls have the band's 3/4" behind them
    expect(row).toMatchObject({ lines: ['A', 'B'], said: true, pieces: 4, between: 2, press: inches('1/32'), sum: inches('1/16'), asCut: inches('1/16'), closes: inches('1/32') });
    expect(row!.pushes).toEqual({ lines: ['1', '3'], by: inches('1/32') });
    expect(row!.bows.length).toBe(inches('50 7/8'));
    // squeezed by pi² 3/4² / (12 x 50 7/8) it stays straight; what is left of 1/16" bows it, as a beam of large bows that is pressed at its ends has it
    const squeezed = Math.PI ** 2 * 0.75 ** 2 / (12 * 50.875), beam = pressedElastica(50.875, 1, 1 / 16 - squeezed);
    expect(row!.bows.straightUpTo / TICKS_PER_INCH).toBeCloseTo(squeezed, 4);
    expect(row!.bows.by / TICKS_PER_INCH).toBeCloseTo(beam.bow, 2);
    // of wood that is not said nobody knows the force
    expect(row!.force).toBeNull();
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

it('a piece of yellow-poplar presses with what a beam of its stiffness takes when it begins to bow', async () => {
    const [row] = await rowsOf({ bottom: '; press 1/32"', species: 'species yellow-poplar; ' });
    // Wood Handbook Table 5-3b: 1.58 million psi at 12 %, and 10 % more for bending alone; I = 5 1/2 x 3/4³ / 12
    const stiffness = 1.58e6 * 1.1 * 5.5 * 0.75 ** 3 / 12, hardlyBent = pressedElastica(50.875, stiffness, 1e-4);
    expect(row!.force!).toBeCloseTo(hardlyBent.force, 0);
    // Euler's strain at that load is what the piece is squeezed by: P l / E A
    expect(row!.force! * 50.875 / (1.58e6 * 1.1 * 5.5 * 0.75)).toBeCloseTo(row!.bows.straightUpTo / TICKS_PER_INCH, 4);
});

it('the shorter a piece is, the more it is squeezed before it bows', async () => {
    const [row] = await rowsOf({ coffers: 8, north: `10' 1"`, bottom: '; press 1/64"' });
    expect(row!.between).toBe(6);
    expect(row!.bows.straightUpTo / TICKS_PER_INCH).toBeGreaterThan(0.03);
    expect(row!.bows.straightUpTo / TICKS_PER_INCH).toBeCloseTo(Math.PI ** 2 * 0.75 ** 2 / (12 * row!.bows.length / TICKS_PER_INCH), 4);
});

it('a row of one piece presses nothing', async () => {
    expect((await rowsOf({ bottom: '; press 1/32"' })).flatMap(({ lines }) => lines)).not.toContain('1');
    expect(await rowsOf({ bottom: '; press 1/32"', through: 'north-south', coffers: 2 })).toEqual([]);
});
