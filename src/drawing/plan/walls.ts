import type { Ceiling } from '../../ceiling/model.ts';
import { foundFaces } from '../../measure/found-faces.ts';
import { TICKS_PER_INCH } from '../../quantity/ticks.ts';
import { group, polygon, type Group, type Point } from '../display-list.ts';
import { figure } from '../figures.ts';
import { hatch } from '../fill/hatch.ts';
import { sourceReference, type FileName } from '../source-reference.ts';
import { toX, toY, type PlanView } from './view.ts';

/** How thick the walls are shown. Their real thickness is not known and does not matter. */
export function wallThickness(pointsPerTick: number): number {
    return Math.min(13, Math.max(5, 3.5 * TICKS_PER_INCH * pointsPerTick));
}

/** The walls round the room: the heavy line is their inner face, as it was found where something is said of that; figures run from corner to corner. */
export function walls(ceiling: Ceiling, view: PlanView, fileName: FileName): Group {
    const t = wallThickness(view.pointsPerTick), inner = ceiling.walls.map(({ from }): Point => [toX(view, from.x), toY(view, from.y)]);
    const outer = outside(inner, t), n = inner.length;
    const faces = foundFaces(ceiling).map(({ points }) => points.map(({ x, y }): Point => [toX(view, x), toY(view, y)]));
    const stretches = faces.map((face, i) => [outer[i]!, outer[(i + 1) % n]!, ...[...face].reverse()]);
    return group('walls', { title: 'Walls' }, [
        ...stretches.map((stretch, i) => {
            const { name, length, at } = ceiling.walls[i]!, title = `Wall ${name}, ${figure(length, ceiling.room.job.show.value)}`;
            return group(`wall-ground.${name}`, { title, source: sourceReference(at, fileName) }, [polygon(stretch, null, 'tint'), ...quadsOf(faces[i]!, outer[i]!, outer[(i + 1) % n]!).flatMap(quad => hatch(quad, 4.6, false))]);
        }),
        polygon(outer, 'thin'),
        polygon(ringOf(faces), 'cut'),
    ]);
}

/** The ground behind each straight part of a face: convex, as what is hatched has to be. */
function quadsOf(face: readonly Point[], from: Point, to: Point): readonly (readonly Point[])[] {
    const [first, last] = [face[0]!, face.at(-1)!], way: Point = [last[0] - first[0], last[1] - first[1]], squared = way[0] ** 2 + way[1] ** 2 || 1;
    const behind = face.map((at, i): Point => {
        const share = i === 0 ? 0 : i === face.length - 1 ? 1 : ((at[0] - first[0]) * way[0] + (at[1] - first[1]) * way[1]) / squared;
        return share === 0 ? from : share === 1 ? to : [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
    });
    return face.slice(1).map((at, i) => [behind[i]!, behind[i + 1]!, at, face[i]!]);
}

/** The faces one after the other, a corner that two of them share once. */
function ringOf(faces: readonly (readonly Point[])[]): readonly Point[] {
    const all = faces.flat();
    return all.filter(([x, y], i) => { const [nextX, nextY] = all[(i + 1) % all.length]!; return x !== nextX || y !== nextY; });
}

/** The same corners so far out. In a corner that is nearly straight, or very sharp, no farther than three times that. */
function outside(corners: readonly Point[], by: number): readonly Point[] {
    const n = corners.length, left = corners.map(([x, y], i) => {
        const [nextX, nextY] = corners[(i + 1) % n]!, long = Math.hypot(nextX - x, nextY - y) || 1;
        return [(nextY - y) / long, (x - nextX) / long] as const;
    });
    return corners.map(([x, y], i): Point => {
        const [a, b] = [left[(i + n - 1) % n]!, left[i]!], share = by / Math.max(1 / 3, 1 + a[0] * b[0] + a[1] * b[1]);
        return [x + (a[0] + b[0]) * share, y + (a[1] + b[1]) * share];
    });
}
