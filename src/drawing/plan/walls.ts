import type { Ceiling } from '../../ceiling/model.ts';
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

/** The walls round the room: the heavy line is their inner face, to which all figures run. */
export function walls(ceiling: Ceiling, view: PlanView, fileName: FileName): Group {
    const t = wallThickness(view.pointsPerTick), inner = ceiling.walls.map(({ from }): Point => [toX(view, from.x), toY(view, from.y)]);
    const outer = outside(inner, t), n = inner.length;
    const stretches = inner.map((corner, i) => [outer[i]!, outer[(i + 1) % n]!, inner[(i + 1) % n]!, corner]);
    return group('walls', { title: 'Walls' }, [
        ...stretches.map((stretch, i) => {
            const { name, length, at } = ceiling.walls[i]!, title = `Wall ${name}, ${figure(length, ceiling.room.job.show.value)}`;
            return group(`wall-ground.${name}`, { title, source: sourceReference(at, fileName) }, [polygon(stretch, null, 'tint'), ...hatch(stretch, 4.6, false)]);
        }),
        polygon(outer, 'thin'),
        polygon(inner, 'cut'),
    ]);
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
