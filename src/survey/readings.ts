import { isOutside } from '../ceiling/room-shape.ts';
import type { Ceiling } from '../ceiling/model.ts';
import type { Survey, SurveyPoint } from '../job/survey.ts';
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

/** The first reading at each place in the room, and what is wrong with the others. */
export function soundReadings({ width, length, walls }: Pick<Ceiling, 'width' | 'length' | 'walls'>, { points }: Survey): { points: readonly SurveyPoint[]; troubles: readonly SurveyTrouble[] } {
    const first = new Map<string, SurveyPoint>(), troubles: SurveyTrouble[] = [], corners = walls.map(({ from }) => from);
    for (const one of points) {
        const point = fromNorthWest(one, width, length);
        const before = first.get(`${point.x} ${point.y}`);
        const isBeyond = Math.max(-point.x, -point.y, point.x - width, point.y - length) > AT_THE_WALL;
        if (isBeyond || corners.length > 4 && isOutside(corners, point)) troubles.push({ kind: 'outside', point });
        else if (!before) first.set(`${point.x} ${point.y}`, point);
        else if (before.up !== point.up) troubles.push({ kind: 'read-twice', point, before });
    }
    const sound = [...first.values()];
    return { points: sound, troubles: isInOneRow(sound) ? [...troubles, { kind: 'no-surface', places: sound.length }] : troubles };
}

/** Places in a file may be measured from any corner of the box round the room. */
function fromNorthWest(point: SurveyPoint, width: Ticks, length: Ticks): SurveyPoint {
    const from = point.inFile?.from ?? 'north-west';
    return from === 'north-west' ? point : { ...point, x: from.endsWith('east') ? width - point.x : point.x, y: from.startsWith('south') ? length - point.y : point.y };
}

function isInOneRow([a, b, ...rest]: readonly SurveyPoint[]): boolean {
    return !a || !b || rest.every(point => sideOf(a, b, point) === 0);
}
