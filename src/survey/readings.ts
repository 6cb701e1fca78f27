import { isOutside } from '../ceiling/room-shape.ts';
import type { Ceiling } from '../ceiling/model.ts';
import type { Survey, SurveyPoint } from '../job/survey.ts';
import { distance, minus, type Point } from '../plane/point.ts';
import { sideOf } from '../plane/polygon.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';

export type SurveyTrouble =
    /** Fewer than three places, or all of them in one row. */
    | { readonly kind: 'no-surface'; readonly places: number }
    /** Two readings at one place. */
    | { readonly kind: 'read-twice'; readonly point: SurveyPoint; readonly before: SurveyPoint }
    /** No ceiling is there. */
    | { readonly kind: 'outside'; readonly point: SurveyPoint };

/** A reading is taken so near to a wall, and the wall is measured so. */
const AT_THE_WALL: Ticks = inches(1);
/** What a tape does not tell over a room, where walls stand back: one that lies so far outside is on the wall. Common practice, no source. */
export const ON_THE_WALL: Ticks = inches('1/8');

/** The first reading at each place in the room, and what is wrong with the others. `moved`: how many lay outside by what a tape does not tell. */
export function soundReadings(
    { width, length, walls }: Pick<Ceiling, 'width' | 'length' | 'walls'>, { points }: Survey,
): { points: readonly SurveyPoint[]; troubles: readonly SurveyTrouble[]; moved: number } {
    const first = new Map<string, SurveyPoint>(), troubles: SurveyTrouble[] = [], corners = walls.map(({ from }) => from);
    let moved = 0;
    for (const one of points) {
        const said = fromNorthWest(one, width, length), onWall = corners.length > 4 && isOutside(corners, said) ? nearest(said, corners) : undefined;
        const point = onWall ? { ...said, ...onWall } : said;
        const before = first.get(`${point.x} ${point.y}`);
        const isBeyond = Math.max(-point.x, -point.y, point.x - width, point.y - length) > AT_THE_WALL;
        if (isBeyond || corners.length > 4 && !onWall && isOutside(corners, point)) troubles.push({ kind: 'outside', point });
        else if (!before) {
            first.set(`${point.x} ${point.y}`, point);
            if (onWall) moved++;
        }
        else if (before.up !== point.up) troubles.push({ kind: 'read-twice', point, before });
    }
    const sound = [...first.values()];
    return { points: sound, moved, troubles: isInOneRow(sound) ? [...troubles, { kind: 'no-surface', places: sound.length }] : troubles };
}

/** The place on a wall that is nearest, in whole ticks, where it is no farther than a tape tells. */
function nearest(place: Point, corners: readonly Point[]): Point | undefined {
    let best: Point | undefined;
    corners.forEach((from, i) => {
        const to = corners[(i + 1) % corners.length]!, along = minus(to, from), off = minus(place, from), square = along.x ** 2 + along.y ** 2;
        const share = square === 0 ? 0 : Math.min(1, Math.max(0, (off.x * along.x + off.y * along.y) / square));
        const on = { x: from.x + along.x * share, y: from.y + along.y * share };
        if (distance(on, place) <= ON_THE_WALL && (!best || distance(on, place) < distance(best, place))) best = on;
    });
    return best && { x: Math.round(best.x), y: Math.round(best.y) };
}

/** Places in a file may be measured from any corner of the box round the room. */
function fromNorthWest(point: SurveyPoint, width: Ticks, length: Ticks): SurveyPoint {
    const from = point.inFile?.from ?? 'north-west';
    return from === 'north-west' ? point : { ...point, x: from.endsWith('east') ? width - point.x : point.x, y: from.startsWith('south') ? length - point.y : point.y };
}

function isInOneRow([a, b, ...rest]: readonly SurveyPoint[]): boolean {
    return !a || !b || rest.every(point => sideOf(a, b, point) === 0);
}
