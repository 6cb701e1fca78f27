import type { Ceiling, Line } from '../../ceiling/model.ts';
import { centerOf } from '../../ceiling/bays.ts';
import type { Claims } from '../claims.ts';
import { group, line as stroke, type Item, type Point } from '../display-list.ts';
import { around, type Extent } from '../extent.ts';
import { sourceReference, type FileName } from '../source-reference.ts';
import { balloon, balloonLength, INSIDE_RADIUS, namedOutside, type BalloonRows } from './balloons.ts';
import { unitOf } from '../../ceiling/along.ts';
import { endsOf, isOutside, outOf, type LineEnd } from './line-ends.ts';
import { OVER_STRINGS, PAST_WALL, type PlacedPlan } from './place.ts';
import { toX, toY, type PlanView } from './view.ts';
import { wallThickness } from './walls.ts';

type Stretch = readonly [Point, Point];

/** Center lines end so far past the outer face of a wall, or past the face of the line that theirs ends at. */
const PAST = 4;

/**
 * Every line's center line over its own stretch, with its name: 1, 2, 3 above the plan, A, B, C at its right; of lines that do not get
 * there at their end in the room, of those that run askew outside the wall. Claims the ground of the names in the room.
 */
export function centerLines(ceiling: Ceiling, placed: PlacedPlan, claims: Claims, fileName: FileName): readonly Item[] {
    const above = namedOutside(ceiling, 'north-south'), right = namedOutside(ceiling, 'east-west');
    const draw = (line: Line): Item => {
        const i = above.indexOf(line), j = right.indexOf(line);
        const items = i >= 0 ? fromAbove(ceiling, line, placed, i) : j >= 0 ? fromTheRight(ceiling, line, placed, j) : atItsEnd(ceiling, line, placed, claims);
        return group(`line.${line.name}`, { title: `Line ${line.name}`, source: sourceReference(line.at, fileName) }, items);
    };
    return ceiling.lines.map(draw);
}

/** The center line leaves out the strings that stand between. */
function fromAbove(ceiling: Ceiling, line: Line, { view, top, across }: PlacedPlan, index: number): readonly Item[] {
    const wall = wallThickness(view.pointsPerTick), x = toX(view, centerOf(line)), [start, end] = endsOf(ceiling, line);
    const centerString = view.top - (top.lines[Math.max(0, top.lines.length - 2)] ?? wall);
    const balloonsFoot = view.top - top.depth - OVER_STRINGS;
    const foot = toY(view, end.at.y) + (end.wall ? wall + PAST_WALL : PAST);
    const center = (row: number): Point => [x, balloonsFoot - across.radius - row * (2 * across.radius + 3)];
    return named(line, across, index, center, [0, -1], [[[x, 0], [x, centerString]], [[x, toY(view, start.at.y) - wall - PAST], [x, foot]]]);
}

function fromTheRight(ceiling: Ceiling, line: Line, { view, down, toBalloon }: PlacedPlan, index: number): readonly Item[] {
    const wall = wallThickness(view.pointsPerTick), y = toY(view, centerOf(line)), [start] = endsOf(ceiling, line);
    const right = toX(view, ceiling.width) + wall + toBalloon;
    const center = (row: number): Point => [right + down.radius + row * (2 * down.radius + 3), y];
    return named(line, down, index, center, [1, 0], [[[0, y], [toX(view, start.at.x) - (start.wall ? wall : 0) - PAST, y]]]);
}

/** The first stroke begins at the balloon's rim. */
function named(line: Line, rows: BalloonRows, index: number, at: (row: number) => Point, away: Point, strokes: readonly Stretch[]): readonly Item[] {
    const center = at(Math.floor(index / rows.each) % rows.rows), first = strokes[0]!;
    const rim: Point = [center[0] - away[0] * rows.radius, center[1] - away[1] * rows.radius];
    return [
        stroke(rim, first[1], 'center'), ...strokes.slice(1).map(([from, to]) => stroke(from, to, 'center')),
        ...index % rows.each === 0 ? balloon(line.name, center, away, rows.radius) : [],
    ];
}

/** Along the line's own direction; the name outside the wall where it runs askew, else in the room, next to the wall or the line that it ends at. */
function atItsEnd(ceiling: Ceiling, line: Line, { view, outsideStrings }: PlacedPlan, claims: Claims): readonly Item[] {
    const wall = wallThickness(view.pointsPerTick), { x, y } = unitOf(line), ends = endsOf(ceiling, line);
    const point = ({ at }: LineEnd, by: number): Point => [toX(view, at.x) + x * by, toY(view, at.y) + y * by];
    const past = (end: LineEnd): number => (end.wall ? offWall(end, [x, y], wall + PAST) : PAST);
    const center = stroke(point(ends[0], -past(ends[0])), point(ends[1], past(ends[1])), 'center');
    const places = [...(x !== 0 && y !== 0 ? outsideOf() : []), ...insideOf()];
    const place = places.find(({ ground }) => ground.every(extent => claims.isFree(extent))) ?? places[0]!;
    place.ground.forEach(extent => claims.take(extent));
    return [center, ...place.leader, ...balloon(line.name, place.center, place.away, INSIDE_RADIUS)];

    function* outward(): Iterable<Place> {
        for (const [end, way] of [[ends[0], -1], [ends[1], 1]] as const) {
            if (!end.wall) continue;
            for (const more of [0, 20, 40]) {
                const by = offWall(end, [x, y], outsideStrings + INSIDE_RADIUS + more), at = point(end, way * by);
                if (!isOutside(ceiling, inTicks(view, at))) continue;
                yield placeAt(at, [x * way, y * way], [stroke(point(end, way * past(end)), point(end, way * (by - INSIDE_RADIUS)), 'center')]);
            }
        }
    }
    function outsideOf(): readonly Place[] {
        return [...outward()];
    }
    function insideOf(): readonly Place[] {
        const inOrder = ([[ends[0], 1], [ends[1], -1]] as const).toSorted((a, b) => Number(b[0].wall !== undefined) - Number(a[0].wall !== undefined));
        return [0, 12, 24, 48].flatMap(more => inOrder.map(([end, way]) => placeAt(point(end, way * (INSIDE_RADIUS + 5 + more)), [x * way, y * way], [])));
    }
    function placeAt(at: Point, away: Point, leader: readonly Item[]): Place {
        return { center: at, away, leader, ground: groundOf(at, away, balloonLength(line.name, INSIDE_RADIUS)) };
    }
}

interface Place { readonly center: Point; readonly away: Point; readonly leader: readonly Item[]; readonly ground: readonly Extent[] }

/** Ring after ring along it. */
function groundOf(center: Point, [x, y]: Point, long: number): readonly Extent[] {
    const far = long - 2 * INSIDE_RADIUS, steps = Math.ceil(far / INSIDE_RADIUS);
    return Array.from({ length: steps + 1 }, (_, i) => {
        const by = steps === 0 ? 0 : far * i / steps;
        return around([center[0] + x * by, center[1] + y * by], INSIDE_RADIUS + 1, INSIDE_RADIUS + 1);
    });
}

/** How far along the line it stands so far off the wall, square to it; at a sharp angle no farther than three times that. */
function offWall({ wall }: LineEnd, [x, y]: Point, by: number): number {
    const out = outOf(wall!);
    return by / Math.max(1 / 3, Math.abs(x * out.x + y * out.y));
}

function inTicks(view: PlanView, [x, y]: Point): { readonly x: number; readonly y: number } {
    return { x: (x - view.left) / view.pointsPerTick, y: (y - view.top) / view.pointsPerTick };
}
