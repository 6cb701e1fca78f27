import { expect, test } from 'vitest';
import { foundFaces } from '../../src/measure/found-faces.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { HALL } from '../../src/rules/support/examples.ts';
import { layoutsOf } from '../support/layouts-of.ts';

async function facesOf(text: string, times?: number): Promise<Record<string, number[][]>> {
    const [layout] = await layoutsOf(text), inches = (ticks: number): number => Math.round(ticks / TICKS_PER_INCH * 1e4) / 1e4;
    return Object.fromEntries(foundFaces(layout!.ceiling!, times).map(({ wall, points }) => [wall.name, points.map(({ x, y }) => [inches(x), inches(y)])]));
}
/** 154" by 113". */
const hall = (walls: Readonly<Record<string, string>>): string => Object.entries(walls)
    .reduce((text, [wall, words]) => text.replace(new RegExp(`(wall ${wall} +[^\\n]*)\\n`), `$1 { ${words} }\n`), HALL.replace(/(wall east +[^\n]*)\n/, '$1\n  wall south 12\' 10"\n'));

test('a face runs through every reading, as far into the room as that says, the same way round as the walls', async () => {
    const { north, east, south, west } = await facesOf(hall({ north: 'hump 1/4" at 4\'; hollow 1/8" at 3\' from east', south: 'hump 1/2" at 2\'' }));
    expect(north).toEqual([[0, 0], [48, 0.25], [118, -0.125], [154, 0]]);
    expect(east).toEqual([[154, 0], [154, 113]]);
    // clockwise the south wall runs from east to west; into the room is to the north
    expect(south).toEqual([[154, 113], [24, 112.5], [0, 113]]);
    expect(west).toEqual([[0, 113], [0, 0]]);
});

test('a wall that leans moves its corners along the walls beside it, and its bows with it', async () => {
    const { north, east, west } = await facesOf(hall({ north: 'leans-in 3/8"; hump 1/8" at 5\'', east: 'leans-out 1/4"' }));
    expect(north).toEqual([[0, 0.375], [60, 0.5], [154.25, 0.375]]);
    expect(east).toEqual([[154.25, 0.375], [154.25, 113]]);
    expect(west).toEqual([[0, 113], [0, 0.375]]);
});

test('so many times as deep, offsets alone grow', async () => {
    const { north, east } = await facesOf(hall({ north: 'hump 1/4" at 4\'', east: 'leans-in 1/8"' }), 10);
    expect([north, east]).toEqual([[[0, 0], [48, 2.5], [152.75, 0]], [[152.75, 0], [152.75, 113]]]);
});

test('at a corner of 135 degrees two walls that lean meet where their strings do, moved square to each', async () => {
    // a corner cut off at 45 degrees: 24" from the corner on both walls, 24 * sqrt(2) = 33.9411" long
    const text = HALL.replace(/  wall north[^\n]*\n  wall east[^\n]*\n/, `  wall north      10' 10" { leans-in 1" }
  wall north-east 2' 9 15/16" turn 45 deg { leans-in 1" }
  wall east       7' 5"
  wall south      12' 10"
  wall west
`);
    const faces = await facesOf(text);
    // the bisector of 135 degrees: 1" off both walls, and tan(22.5 degrees) = 0.4142" back from the corner along the north wall
    expect(faces.north![0]).toEqual([0, 1]);
    expect(faces.north![1]![0]).toBeCloseTo(130 - Math.tan(Math.PI / 8), 2);
    expect(faces.north![1]![1]).toBeCloseTo(1, 3);
    expect(faces['north-east']![0]).toEqual(faces.north![1]);
    // the east wall stands where it was: 1" off the slanted one is sqrt(2)" farther down it
    expect(faces.east![0]![0]).toBeCloseTo(154, 1);
    expect(faces.east![0]![1]).toBeCloseTo(24 + Math.SQRT2, 1);
});
