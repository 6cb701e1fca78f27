import { describe, expect, test } from 'vitest';
import { shapeOf } from '../../src/ceiling/room-shape.ts';
import type { Diagonal, Room } from '../../src/job/model.ts';
import type { Spot } from '../../src/job/outline.ts';
import { inches } from '../../src/quantity/rational.ts';
import { exampleRoom } from '../support/example-room.ts';
import { jobBuilder, ticksOf, type RoomWords } from '../support/job-builder.ts';

const { at } = jobBuilder('file:///rooms/shapes.coffer');
const withWalls = (wallList: RoomWords['wallList'], diagonals: readonly Omit<Diagonal, 'at'>[] = []): Room => ({ ...exampleRoom({ wallList }), diagonals: diagonals.map(each => ({ ...each, at: at() })) });
const cornersOf = (room: Room) => shapeOf(room).shape?.walls.map(({ name, from }) => [name, from.x, from.y]);
const N = 0, E = 90, S = 180, W = 270;

const ELL: NonNullable<RoomWords['wallList']> = [
    { name: 'north', length: `20' 6"`, bearing: E }, { name: 'east', length: `9' 10"`, bearing: S }, { name: 'wing-south', length: `8'`, bearing: W },
    { name: 'inner-east', length: `7' 6"`, bearing: S }, { name: 'south', length: `12' 6"`, bearing: W }, { name: 'west', length: `17' 4"`, bearing: N },
];
const ELL_CORNERS = [['north', '0', '0'], ['east', '246', '0'], ['wing-south', '246', '118'], ['inner-east', '150', '118'], ['south', '150', '208'], ['west', '0', '208']]
    .map(([name, x, y]) => [name, Number(inches(x!)), Number(inches(y!))]);

describe('walls one after the other', () => {
    test('an ell', () => {
        expect(shapeOf(withWalls(ELL))).toMatchObject({ shape: { width: inches(246), length: inches(208), square: true }, troubles: [] });
        expect(cornersOf(withWalls(ELL))).toEqual(ELL_CORNERS);
    });
    test.each(ELL.map(({ name }) => [name]))('wall %s is found from the others', missing => {
        expect(cornersOf(withWalls(ELL.map(wall => (wall.name === missing ? { name: wall.name, bearing: wall.bearing } : wall))))).toEqual(ELL_CORNERS);
    });
    test('two that run different ways are found from the others', () => {
        expect(cornersOf(withWalls(ELL.map(wall => (['wing-south', 'west'].includes(wall.name) ? { name: wall.name, bearing: wall.bearing } : wall))))).toEqual(ELL_CORNERS);
    });
    test('what a tape cannot tell is taken off the longest wall that way, and the walls stay square', () => {
        const off = shapeOf(withWalls(ELL.map(wall => (wall.name === 'south' ? { ...wall, length: `12' 6 1/32"` } : wall))));
        expect(off.troubles).toEqual([]);
        expect(off.shape!.walls.every(({ from, to }) => from.x === to.x || from.y === to.y)).toBe(true);
        expect(off.shape!.width).toBe(inches('246 1/32'));
    });
    test('more is told, and how much a wall was stretched', () => {
        const off = shapeOf(withWalls(ELL.map(wall => (wall.name === 'west' ? { ...wall, length: `17' 4 3/16"` } : wall))));
        expect(off.troubles).toMatchObject([{ kind: 'tape-doesnt-close', gap: { x: 0, y: -inches('3/16') }, stretched: [{ wall: 'west', to: ticksOf(`17' 4"`) }] }]);
        expect(off.shape).toBeDefined();
    });
    test('a bay with walls at 45 degrees: exactly as far one way as the other', () => {
        const corners = cornersOf(withWalls([
            { name: 'north', length: `12'`, bearing: E }, { name: 'east', length: `9'`, bearing: S }, { name: 'right', length: `2'`, bearing: W },
            { name: 'cheek-right', bearing: 225 }, { name: 'bay', length: `5'`, bearing: W }, { name: 'cheek-left', length: `2' 4"`, bearing: 315 },
            { name: 'left', bearing: W }, { name: 'west', length: `9'`, bearing: N },
        ]))!;
        const [a, b] = [corners[3]!, corners[4]!] as [[string, number, number], [string, number, number]];
        expect(a[1] - b[1]).toBe(b[2] - a[2]);
    });
    test('a room out of square by its turns: the wall that nobody measured closes it', () => {
        const { shape, troubles } = shapeOf(withWalls([
            { name: 'north', length: `12'`, bearing: E }, { name: 'east', length: `9'`, bearing: 179 }, { name: 'south', length: `12'`, bearing: W }, { name: 'west', bearing: N },
        ]));
        expect(troubles).toEqual([]);
        const { from, to } = shape!.walls[3]!;
        expect(Math.abs(to.x - from.x)).toBe(Math.round(ticksOf(`9'`) * Math.sin(Math.PI / 180)));
    });
});

/**
 * Four walls and a diagonal. The area of the quadrilateral by Bretschneider's formula from all four sides and both diagonals,
 * 16 A² = 4 p² q² - (b² + d² - a² - c²)²  (C. A. Bretschneider, Archiv der Mathematik und Physik 2,
 * 1842; also Weisstein, "Bretschneider's Formula", MathWorld).
 */
describe('four walls and a diagonal', () => {
    const LENGTHS = { north: `18' 4 1/4"`, east: `15' 1 1/8"`, south: `18' 6"`, west: `15' 3/4"` };
    const four = (diagonals: readonly Omit<Diagonal, 'at'>[]): Room => withWalls(Object.entries(LENGTHS).map(([name, length], i) => ({ name, length, bearing: 90 * ((i + 1) % 4) })), diagonals);
    const falling = { from: 'north-west', to: 'south-east', ticks: ticksOf(`23' 10 1/8"`) } as const;
    const rising = { from: 'south-west', to: 'north-east', ticks: inches('285.30716') } as const;

    test.each([['falling', [falling]], ['rising', [rising]]])('by the %s one', (_, diagonals) => {
        const { shape, troubles } = shapeOf(four(diagonals));
        expect(troubles).toEqual([]);
        const [nw, ne, se, sw] = shape!.walls.map(({ from }) => from) as [Spot, Spot, Spot, Spot];
        shape!.walls.forEach(({ name, length }) => expect(Math.abs(length - ticksOf(LENGTHS[name as keyof typeof LENGTHS])), name).toBeLessThanOrEqual(1));
        const [p, q] = [Math.hypot(se.x - nw.x, se.y - nw.y), Math.hypot(sw.x - ne.x, sw.y - ne.y)];
        expect([Math.abs(p - falling.ticks) <= 1.5, Math.abs(q - rising.ticks) <= 1.5]).toEqual([true, true]);
        const area = Math.abs(nw.x * ne.y - ne.x * nw.y + ne.x * se.y - se.x * ne.y + se.x * sw.y - sw.x * se.y + sw.x * nw.y - nw.x * sw.y) / 2;
        const [a, b, c, d] = shape!.walls.map(({ length }) => length) as [number, number, number, number];
        const bretschneider = Math.sqrt(4 * p * p * q * q - (b * b + d * d - a * a - c * c) ** 2) / 4;
        expect(Math.abs(area / bretschneider - 1)).toBeLessThan(1e-5);
    });
    test('the second one is held against the first', () => {
        expect(shapeOf(four([falling, { ...rising, ticks: ticksOf(`23' 9 7/8"`) }])).troubles).toMatchObject([{ kind: 'diagonal-differs', measured: ticksOf(`23' 9 7/8"`), from: 'south-west' }]);
    });
    test('a square is cut by its diagonals as Euclid has it (Elements I.47)', () => {
        const square = withWalls([{ name: 'north', length: `12'`, bearing: E }, { name: 'east', length: `9'`, bearing: S }, { name: 'south', length: `12'`, bearing: W }, { name: 'west', length: `9'`, bearing: N }],
            [{ from: 'north-west', to: 'south-east', ticks: ticksOf(`15'`) }]);
        expect(shapeOf(square)).toMatchObject({ shape: { square: true }, troubles: [] });
    });
});

// the wall back east crosses the east wall halfway, and the north wall nothing: its neighbors at its own corners do not count
test('of walls that cross each other those two are named that do', () => {
    const walls: NonNullable<RoomWords['wallList']> = [
        { name: 'north', length: `10'`, bearing: E }, { name: 'east', length: `6'`, bearing: S }, { name: 'in', length: `6'`, bearing: W }, { name: 'up', length: `3'`, bearing: N },
        { name: 'back', length: `10'`, bearing: E }, { name: 'far', length: `6'`, bearing: S }, { name: 'south', length: `14'`, bearing: W }, { name: 'west', length: `9'`, bearing: N },
    ];
    expect(shapeOf(withWalls(walls)).troubles).toMatchObject([{ kind: 'no-room', why: 'crosses-itself', walls: ['east', 'back'] }]);
});
