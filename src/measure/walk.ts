import { standingAtWalls } from '../ceiling/at-the-wall.ts';
import { shapeOf } from '../ceiling/room-shape.ts';
import type { Room } from '../job/model.ts';
import { TICKS_PER_FOOT, type Ticks } from '../quantity/ticks.ts';
import { dimensionsOf, isKnown, leastStatus, type Dimension } from './dimensions.ts';

/** A dimension on the walk round the room. */
export interface Stop {
    readonly dimension: Dimension;
    /** `verify`: it was measured once, and once is not enough. */
    readonly todo: 'measure' | 'verify' | 'nothing';
    /** Of what stands at a wall: that wall, and how far along it from where the walk comes to it. */
    readonly wall?: string; readonly along?: Ticks;
}

/**
 * All dimensions in the order in which one walks round the room: along the walls clockwise from the first, each with what stands at it and how straight
 * and plumb it is; then across the floor with the diagonals and the height, then under the ceiling in rows of fixtures, there and back, and what beams
 * wrap, then the survey, then up to the joists and through the covering; then down the stair by which boards come, and last the boards, where they lie.
 */
export function walkRound(room: Room): Stop[] {
    const all = dimensionsOf(room), least = leastStatus(room), walls = shapeOf(room).shape?.walls ?? [];
    const placed = new Map(standingAtWalls({ walls, room }).map(({ fixture, wall, from }) => [fixture.name, { wall: wall.name, along: Math.round(from) }]));
    const of = (kind: Dimension['kind']): Dimension[] => all.filter(dimension => dimension.kind === kind), atWalls = of('at-wall');
    const stop = (dimension: Dimension): Stop => ({ dimension, todo: isKnown(dimension, least) ? 'nothing' : dimension.known === 'measured' ? 'verify' : 'measure', ...placed.get(dimension.name) });
    const isAt = (wall: string) => ({ fixture }: Dimension): boolean => wallOf(fixture?.atWall?.wall.value) === wall;
    const known = new Set(room.walls.map(({ name }) => name));
    return [
        ...room.walls.flatMap(({ name }) => [
            ...of('wall').filter(wall => wall.name === name).map(stop),
            ...atWalls.filter(isAt(name)).map(stop).sort((a, b) => (a.along ?? 0) - (b.along ?? 0)),
            ...all.filter(one => one.name === name && (one.kind === 'straight' || one.kind === 'plumb')).map(one => ({ ...stop(one), wall: name })),
        ]),
        // at a wall that there is not
        ...atWalls.filter(({ fixture }) => !known.has(wallOf(fixture?.atWall?.wall.value))).map(stop),
        ...of('diagonal').map(stop), ...of('height').map(stop),
        ...inRows(of('fixture')).map(stop), ...(['wraps', 'survey', 'joists', 'covering', 'board-in', 'piece-in', 'stock', 'crown', 'on-hand', 'board'] as const).flatMap(kind => of(kind).map(stop)),
    ];
}

function wallOf(name = ''): string {
    return name.replace(/^wall-/, '');
}

/** One moves the ladder so far to the south, then goes back the other way. Common practice, no source. */
const ROW: Ticks = 4 * TICKS_PER_FOOT;

/** In rows from the north on, from the west to the east and back. */
function inRows(fixtures: readonly Dimension[]): Dimension[] {
    const rowOf = ({ fixture }: Dimension): number => Math.floor((fixture?.y ?? 0) / ROW);
    const way = (dimension: Dimension): number => (rowOf(dimension) % 2 === 0 ? 1 : -1) * (dimension.fixture?.x ?? 0);
    return [...fixtures].sort((a, b) => rowOf(a) - rowOf(b) || way(a) - way(b));
}
