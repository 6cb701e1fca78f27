import { describe, expect, test } from 'vitest';
import { isOffSeason, movingOf, widthChange, yearOf, type Year } from '../../src/ceiling/moving.ts';
import type { Room, Stock } from '../../src/job/model.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { inches } from '../../src/quantity/rational.ts';
import { given } from '../cutting/samples.ts';
import { layoutsOf } from '../support/layouts-of.ts';

/**
 * How wood moves over the year: dD = D C (M2 - M1), Wood Handbook FPL-GTR-190 (2010), Eq. 13-2, with C by its Table 13-5: yellow-poplar 0.00289 flatsawn and
 * 0.00158 quartersawn, red oak 0.00369 and 0.00158. Fiberboard: 0.33 % from air of 50 % to air of 80 % (ANSI A208.2).
 */
type Seasons = NonNullable<Room['seasons']>;
const seasons = (dry: number, damp: number, goesUpAt?: number): Seasons => ({
    driest: given({ humidity: dry, celsius: 20 }), dampest: given({ humidity: damp, celsius: 24 }), ...goesUpAt !== undefined && { goesUpAt: given(goesUpAt) },
}) as unknown as Seasons;
/** From 5 % to 11 %, up at 7 % in air of 40 %. */
const YEAR: Year = { said: seasons(0.25, 0.6), driest: 5, dampest: 11, middle: 8, start: 7, startHumidity: 0.4 };
const of = (species?: string): Stock => ({ ...species !== undefined && { species: given(species) } }) as unknown as Stock;
interface Change { readonly driest: number; readonly dampest: number }
const inch = (change: Change | undefined): number[] | undefined =>
    change && [change.driest, change.dampest].map(ticks => Number((ticks / TICKS_PER_INCH).toFixed(4)));

describe('a year', () => {
    // Table 4-2 of the handbook: at 70 °F wood comes to 5.4 % in air of 25 %, and to 11.0 % in air of 60 %
    test('by the humidity and warmth of its seasons; up half way, unless it is said', () => {
        const room = (own: Seasons | undefined, ofJob?: Seasons) => ({ seasons: own, job: { seasons: ofJob } }) as unknown as Pick<Room, 'seasons' | 'job'>;
        const at = (humidity: number) => given({ humidity, celsius: 21.1 }), warm = { driest: at(0.25), dampest: at(0.6) } as unknown as Seasons;
        const year = yearOf(room(warm))!;
        expect([year.driest, year.dampest, year.middle].map(percent => Number(percent.toFixed(1)))).toEqual([5.4, 11, 8.2]);
        expect(year.start).toBe(year.middle);
        expect(yearOf(room({ ...warm, goesUpAt: given(9) } as unknown as Seasons))!.start).toBe(9);
        // air of 25 % and 60 %: what is half way is between them, and at 5.4 % it is air of 25 %
        expect(year.startHumidity).toBeGreaterThan(0.4);
        expect(year.startHumidity).toBeLessThan(0.5);
        expect(yearOf(room({ ...warm, goesUpAt: given(year.driest) } as unknown as Seasons))!.startHumidity).toBeCloseTo(0.25, 3);
        // what is the room's own goes before the house's
        expect(yearOf(room(warm, seasons(0.5, 0.7)))!.driest).toBe(year.driest);
        expect(yearOf(room(undefined, warm))!.driest).toBe(year.driest);
        expect(yearOf(room(undefined))).toBeUndefined();
    });
    // warmth: half way between the seasons', at which the humidity is asked for
    test('the air that the boards go up in is as warm as the seasons are half way', () => {
        const room = (dry: number, damp: number): Pick<Room, 'seasons' | 'job'> => ({
            seasons: { driest: given({ humidity: 0.25, celsius: dry }), dampest: given({ humidity: 0.6, celsius: damp }), goesUpAt: given(8) },
        }) as unknown as Pick<Room, 'seasons' | 'job'>;
        expect(yearOf(room(10, 30))!.startHumidity).toBeCloseTo(yearOf(room(20, 20))!.startHumidity, 9);
        expect(yearOf(room(10, 10))!.startHumidity).toBeLessThan(yearOf(room(30, 30))!.startHumidity);
    });
    test.each([[4.9, true], [4.96, false], [5, false], [11, false], [11.04, false], [11.1, true]])('wood of %s %% that gets from 5 %% to 11 %%: off season %s', (percent, off) => {
        expect(isOffSeason(percent, YEAR)).toBe(off);
    });
});

describe('what a width does', () => {
    // 5 1/2" x 0.00289 x -2 and +4; quartersawn 0.00158
    test('of a wood, flatsawn or quartersawn', () => {
        expect(inch(widthChange(inches('5 1/2'), of('yellow-poplar'), YEAR))).toEqual([-0.0318, 0.0636]);
        expect(inch(widthChange(inches('5 1/2'), of('yellow-poplar'), YEAR, 'quartersawn'))).toEqual([-0.0174, 0.0348]);
    });
    // 100" x 0.0033 x (25 - 40) / 30 and (60 - 40) / 30
    test('of fiberboard, by the humidity of the air', () => {
        expect(inch(widthChange(inches(100), of('mdf'), YEAR))).toEqual([-0.165, 0.22]);
    });
    test.each([[undefined], ['toString'], ['driftwood']])('of %s nobody knows', species => {
        expect(widthChange(inches(100), of(species), YEAR)).toBeUndefined();
    });
    test('nor where there is no stock', () => { expect(widthChange(inches(100), undefined, YEAR)).toBeUndefined(); });
});

/** Blocking of 5 1/2", bottoms of 5 1/2" less 1/32" where they are ripped, lines 1 and 2 through: they cut the bottoms of line A, which butt against them. */
const layouts = await layoutsOf(`edition 1
stock poplar { thickness 3/4"; width 5 1/2"; species yellow-poplar }
stock oak { thickness 3/4"; width 5 1/2"; species red-oak }
stock board { thickness 3/4"; width 5 1/2"; species mdf }
stock plain { thickness 3/4"; width 5 1/2" }
stock side { thickness 3/4"; width 7 1/4" }
stock wide { thickness 3/4"; width 9 1/4"; species red-oak }
profile alike { blocking { stock poplar }; sides { stock side }; bottom { stock poplar; rip 5 15/32" } }
profile unlike like alike { bottom.stock oak }
profile capped { blocking { stock poplar }; sides { stock side }; bottom { stock wide; place under-sides overhang 1/2" } }
profile unknown like alike { blocking.stock plain }
profile boxed { blocking { stock poplar; rip 5 3/8"; fit bench-box }; spacers { stock oak; height 3" }; sides { stock side }; bottom { stock poplar; rip 5 15/32" } }
profile boxed-bare { blocking { stock oak; rip 5 3/8"; fit bench-box }; sides { stock side }; bottom { stock poplar } }
${['alike', 'unlike', 'capped', 'unknown', 'boxed', 'boxed-bare'].map(name => `room in-${name} {
  wall north 13' 2"
  wall east 9' 7"
  grid { coffers-north 3; coffers-east 2; beams ${name}; through north-south }
}
`).join('')}room mixed {
  wall north 13' 2"
  wall east 9' 7"
  grid { coffers-north 3; coffers-east 2; beams alike; through north-south }
  line 2 { beams unlike }
}
`);
const moving = (name: string) => movingOf(layouts.find(({ room }) => room.name === name)!.ceiling!, YEAR);

describe('the joints of a kind of beam', () => {
    // between the sides poplar of 5 1/2", the bottom 5 15/32" of the same: -0.03179 and 0.06358, -0.03161 and 0.06322; the play is 1/32" as built
    test('of one wood: the play stays but for the difference of the widths; if one is quartersawn it does not', () => {
        const [own, ...others] = moving('in-alike');
        expect([others.length, own!.lines.map(({ name }) => name), own!.alike]).toEqual([0, ['1', '2', 'A'], true]);
        expect([own!.play!.built, inch(own!.play!)]).toEqual([inches('1/32'), [0.0311, 0.0316]]);
        // 5 15/32" x (0.00289 - 0.00158) x 4
        expect(own!.play!.unlike / TICKS_PER_INCH).toBeCloseTo(0.02866, 5);
    });
    test('a butt opens by half of what the bottom shrinks that it stands against, a corner by half of what the inside does', () => {
        const [own] = moving('in-alike');
        expect([own!.butt!.at, inch(own!.butt!)]).toEqual([['1', '2'], [0.0158, -0.0316]]);
        expect(inch(own!.corner)).toEqual([0.0159, -0.0318]);
    });
    // 5 15/32" of oak: 5.46875 x 0.00369 x -2 = -0.04036 and 0.08072. Play 0.03125 - 0.03179 + 0.04036, + 0.06358 - 0.08072
    test('of two woods: what it is between the seasons', () => {
        const [own] = moving('in-unlike');
        expect([own!.alike, inch(own!.play!)]).toEqual([false, [0.0398, 0.0141]]);
    });
    // 7" + 2 x 1/2": 8" of oak x 0.00369 x -2 = -0.05904
    test('a bottom under the sides has no play; it butts like any other', () => {
        const [own] = moving('in-capped');
        expect([own!.play, inch(own!.butt!)]).toEqual([null, [0.0295, -0.059]]);
    });
    test('a box made at the bench is as wide inside as its spacers, or as its bottom needs', () => {
        expect(moving('in-boxed').map(({ inside, bottom }) => [inside.name, bottom.name])).toEqual([['oak', 'poplar']]);
        expect(moving('in-boxed-bare').map(({ inside, bottom, alike }) => [inside.name, bottom.name, alike])).toEqual([['poplar', 'poplar', true]]);
    });
    test('what no species is said of is left out', () => { expect(moving('in-unknown')).toEqual([]); });
    // line A is cut at both, and is of the kind of line 1; it butts against either
    test('each kind by itself, with the lines whose bottoms others butt against', () => {
        expect(moving('mixed').map(({ lines, butt }) => [lines.map(({ name }) => name), butt?.at])).toEqual([[['1', 'A'], ['1']], [['2'], ['2']]]);
    });
});
