import type { Ceiling } from '../../ceiling/model.ts';
import { intoAt } from '../../measure/bowed.ts';
import { foundFaces, placeOn, type FoundFace } from '../../measure/found-faces.ts';
import type { Show } from '../../quantity/print-length.ts';
import type { Claims } from '../claims.ts';
import { group, line, polyline, text, type Group, type Item, type Point, type TextRun } from '../display-list.ts';
import { within, type Extent } from '../extent.ts';
import { figure } from '../figures.ts';
import { patched } from '../patch.ts';
import { readingAngle } from './turn.ts';
import { toX, toY, type PlanView } from './view.ts';

/** How many times deeper than it is a bow may be drawn. */
const TIMES = [1, 2, 3, 4, 5, 8, 10, 15, 20, 30, 50, 100] as const;
/** How deep on paper, at the most, it is drawn then, in points. */
const MOST_DEPTH = 9;

/** How many times deeper than they are the bows of the walls are drawn beside their true faces; 1: they are seen as they are, undefined: there are none. */
export function bowTimes(ceiling: Ceiling, pointsPerTick: number): number | undefined {
    const deepest = Math.max(0, ...foundFaces(ceiling).flatMap(({ profile = [] }) => profile.map(({ into }) => Math.abs(into))));
    return deepest === 0 ? undefined : [...TIMES].reverse().find(times => times === 1 || times * deepest * pointsPerTick <= MOST_DEPTH);
}

/**
 * Walls as they were found, over what lies along them: the true face, dashed the same with its bow so many times as deep, since a bow of an eighth is thinner
 * than the pen, and how far it stands in and back at the most.
 */
export function foundWalls(ceiling: Ceiling, view: PlanView, room: Extent, show: Show, claims: Claims, least = 0): readonly Group[] {
    const times = bowTimes(ceiling, view.pointsPerTick);
    if (times === undefined) return [];
    const drawn = ({ points }: FoundFace): Point[] => points.map(({ x, y }): Point => [toX(view, x), toY(view, y)]);
    const deeper = foundFaces(ceiling, times);
    return foundFaces(ceiling).flatMap((face, i): Group[] => {
        const { wall, profile } = face;
        if (!profile) return [];
        const most = mostOf(profile), told = most.map(spot => `${wordsOf(spot, show)} at ${figure(Math.round(spot.along), show)}`);
        const title = `Wall ${wall.name} as found: ${told.join(', ')}`;
        const placed = (words: string, along: number): readonly Item[] => {
            const runs = claims.placeFirst(candidates(words, face, along, intoAt(profile, along) * times, view, least), extent => within(extent, room));
            return (runs ?? []).flatMap(run => patched(run, 'paper'));
        };
        const figures = most.flatMap(spot => placed(wordsOf(spot, show), spot.along));
        const own = group(`found.${wall.name}`, { title }, [polyline(drawn(face), 'cut'), ...figures]);
        if (times === 1) return [own];
        const leaders = most.map(({ along, into }) => line(pointOn(face, along, 0, view), pointOn(face, along, into * times, view), 'fine'));
        const stated = placed(`bow × ${times}`, wall.length * 0.85), names = { title: `${title}, drawn ${times} times as deep`, outOfScale: true } as const;
        return [own, group(`found-deeper.${wall.name}`, names, [polyline(drawn(deeper[i]!), 'nail'), ...leaders, ...stated])];
    });
}

type Spot = NonNullable<FoundFace['profile']>[number];

/** Where it stands farthest in, and where farthest back; of one that leans, in one piece, its middle. */
function mostOf(profile: readonly Spot[]): readonly Spot[] {
    const { along: length } = profile.at(-1)!, lean = profile[0]!.into;
    const readings = profile.slice(1, -1), spots = readings.length > 0 ? readings : [{ along: length / 2, into: lean }];
    const deepest = (sign: 1 | -1): readonly Spot[] => {
        const own = spots.filter(({ into }) => into * sign > 0);
        return own.length === 0 ? [] : [own.reduce((most, spot) => (spot.into * sign > most.into * sign ? spot : most))];
    };
    return [...deepest(1), ...deepest(-1)];
}

/** `1⁄4" in`, `3⁄16" back`. */
function wordsOf({ into }: Spot, show: Show): string {
    return `${figure(Math.abs(Math.round(into)), show)} ${into > 0 ? 'in' : 'back'}`;
}

function pointOn({ wall }: FoundFace, along: number, into: number, view: PlanView): Point {
    const { x, y } = placeOn(wall, along, into);
    return [toX(view, x), toY(view, y)];
}

/** Along the wall, off the line that is drawn: at the place itself, then to either side of it and farther in. */
function* candidates(words: string, face: FoundFace, along: number, into: number, view: PlanView, least: number): Iterable<readonly TextRun[]> {
    const { from, to } = face.wall, turned = readingAngle([to.x - from.x, to.y - from.y]), size = Math.max(6.6, least), rad = turned * Math.PI / 180;
    const inward = pointOn(face, along, 1 / view.pointsPerTick, view), at = pointOn(face, along, 0, view), u: Point = [inward[0] - at[0], inward[1] - at[1]];
    const base = Math.max(0, into * view.pointsPerTick);
    for (const off of [3, 9, 16, 24, 34, 46]) {
        for (const aside of [0, 22, -22, 44, -44, 70, -70]) {
            const middle = base + off + size * 0.4;
            // the middle of its letters, from where its baseline lies
            const [x, y] = [at[0] + u[0] * middle + Math.cos(rad) * aside, at[1] + u[1] * middle - Math.sin(rad) * aside];
            yield [text([x + Math.sin(rad) * size * 0.35, y + Math.cos(rad) * size * 0.35], words, { size, anchor: 'middle', turned })];
        }
    }
}
