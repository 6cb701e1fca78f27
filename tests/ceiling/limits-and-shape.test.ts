import { expect, test } from 'vitest';
import type { Divided } from '../../src/ceiling/division.ts';
import { layOut } from '../../src/ceiling/layout.ts';
import { cutStep } from '../../src/ceiling/limits.ts';
import type { Trouble } from '../../src/ceiling/model.ts';
import { residueOf } from '../../src/ceiling/residue.ts';
import { layingOf } from '../../src/ceiling/laying.ts';
import { shapeOf } from '../../src/ceiling/room-shape.ts';
import { inwards, isForward, isLevel, wayOf } from '../../src/ceiling/shape.ts';
import type { Grid, Room } from '../../src/job/model.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { inches } from '../../src/quantity/rational.ts';
import { given, job, nowhere } from '../cutting/samples.ts';
import { exampleRoom } from '../support/example-room.ts';
import { jobBuilder } from '../support/job-builder.ts';

test.each<[number, string | undefined]>([
    [inches('1/2'), undefined], [inches('1/2') + 1, 'not-supported'], [1, undefined], [0, 'not-positive'], [-1, 'not-positive'],
])('a tape of %i ticks', (ticks, trouble) => {
    const troubles: Trouble[] = [];
    expect(cutStep(job({ cutTo: given(ticks) }), troubles)).toBe(trouble === undefined ? ticks : undefined);
    expect(troubles.map(({ kind }) => kind)).toEqual(trouble === undefined ? [] : [trouble]);
});

test.each<[string, readonly [number, number, number, number], boolean, boolean]>([
    ['east', [0, 0, 100, 0], true, true], ['west', [100, 0, 0, 0], true, false], ['south', [0, 0, 0, 100], false, true], ['north', [0, 100, 0, 0], false, false],
    ['nearer south, far from where x begins', [100, 0, 90, 50], false, true], ['nearer west, far down', [90, 100, 40, 110], true, false],
    ['at 45 degrees, which counts as level', [0, 0, 50, 50], true, true], ['at 45 degrees to the south-west', [50, 0, 0, 50], true, false],
])('a wall that runs %s', (_, [fromX, fromY, toX, toY], level, forward) => {
    const wall = { from: { x: fromX, y: fromY }, to: { x: toX, y: toY } };
    expect([isLevel(wall), isForward(wall)]).toEqual([level, forward]);
});

// 30" to the east for 40" to the south are 50" (3 : 4 : 5); the room is to the right of who walks along, with the south below
test.each<[string, readonly [number, number, number, number], readonly number[], readonly number[]]>([
    ['east', [0, 0, 70, 0], [1, 0], [0, 1]], ['west', [70, 9, 0, 9], [-1, 0], [0, -1]], ['south', [5, 0, 5, 90], [0, 1], [-1, 0]], ['south-east', [10, 10, 40, 50], [0.6, 0.8], [-0.8, 0.6]],
])('the way of a wall that runs %s, and into its room', (_, [fromX, fromY, toX, toY], way, into) => {
    const wall = { from: { x: fromX, y: fromY }, to: { x: toX, y: toY } }, numbers = ({ x, y }: { x: number; y: number }): number[] => [x + 0, y + 0];
    expect([numbers(wayOf(wall)), numbers(inwards(wall))]).toEqual([way, into]);
});

// 41" between the bands, coffers of 10.4", 10.4" and 20.2": faces at 10.4 and 20.8 stand at 10 and 21
test('spread over coffers that differ, each face stands at its nearest mark', () => {
    const sizes = ['10 2/5', '10 2/5', '20 1/5'].map(inches), run = { start: 0, end: inches(41) };
    const { cutCoffers, rest } = residueOf(run, { widths: [0, 0], sizes } as unknown as Divided, 'spread', inches(1));
    expect([cutCoffers.map(printInches), rest]).toEqual([['10"', '11"', '20"'], 0]);
    // equal ones: 41/3 = 13 2/3 and 27 1/3
    const equal = residueOf(run, { widths: [0, 0], sizes: sizes.map(() => inches(41) / 3) } as unknown as Divided, 'spread', inches(1));
    expect(equal.cutCoffers.map(printInches)).toEqual(['14"', '13"', '14"']);
});

// 18' 4" of band out of boards of 16'
test('a band is spliced where no board is as long, unless the text says never', () => {
    const room = exampleRoom(), never = Object.fromEntries(Object.entries(room.grid!.around).map(([wall, own]) => [wall, own && { ...own, splices: given('never') }]));
    const splices = (of: Room): (number | undefined)[] => ['north', 'east'].map(wall => layOut(of).ceiling!.around[wall]?.splices.length);
    expect(splices(room)).toEqual([1, 0]);
    expect(splices({ ...room, grid: { ...room.grid!, around: never as Grid['around'] } })).toEqual([0, 0]);
});

// bottoms out of 16' and blocking out of 12', along 14' 2" between the half beams of the other two walls
test('a half beam is spliced where its bottom or its blocking is longer than its boards, whichever are the shorter', () => {
    const { stock } = jobBuilder('file:///yard.coffer'), six = (feet: string) => stock(`six-${feet}`, { thickness: '3/4"', width: '5 1/2"', lengths: [feet] });
    const splices = (blocking: string, bottom: string): (number | undefined)[] => {
        const around = layOut(exampleRoom({ width: `14' 2"`, north: { coffers: 3 }, band: { kind: 'half-beam', width: '2 1/2"' } }, { blocking: { stock: six(blocking) }, bottom: { stock: six(bottom) } })).ceiling!.around;
        return ['north', 'south'].map(wall => around[wall]?.splices.length);
    };
    expect([splices("12'", "16'"), splices("16'", "12'"), splices("16'", "16'"), splices("12'", "12'")]).toEqual([[1, 1], [1, 1], [0, 0], [1, 1]]);
});

// lines that are laid by a wall of a rectangle run along the compass as they would without a word: what is left of rounding is theirs too
test('lines by a wall of a rectangle lie as they do by themselves; split, fanned and at 45 degrees they do not', () => {
    const { grid, ...room } = exampleRoom(), { shape } = shapeOf(room);
    const laid = (how?: 'by-wall' | 'split' | 'fanned' | 'falling' | 'rising') => layingOf('north-south', { ...grid!, ...how && { layNorthSouth: { how, at: nowhere } } }, shape!, []);
    expect(laid('by-wall')).toMatchObject({ alongCompass: true, byCenters: false, over: { room: inches(220), origin: 0, ends: ['west', 'east'] } });
    expect(laid()!.lineAt(5, 5)).toEqual(laid('by-wall')!.lineAt(5, 5));
    expect((['split', 'fanned', 'falling', 'rising'] as const).map(how => { const { alongCompass, byCenters } = laid(how)!; return [alongCompass, byCenters]; })).toEqual([[false, false], [false, false], [false, true], [false, true]]);
    // at 45 degrees from corner to corner: (220" + 182") / sqrt 2
    expect(laid('rising')!.over.room / inches(1)).toBeCloseTo(402 / Math.SQRT2, 6);
});
