import type { Ceiling } from '../../ceiling/model.ts';
import { TICKS_PER_INCH } from '../../quantity/ticks.ts';
import { group, polygon, rectangle, type Group, type Point } from '../display-list.ts';
import { hatch } from '../fill/hatch.ts';
import { extentOf, type PlanView } from './view.ts';

/** How thick the walls are shown. Their real thickness is not known and does not matter. */
export function wallThickness(pointsPerTick: number): number {
    return Math.min(13, Math.max(5, 3.5 * TICKS_PER_INCH * pointsPerTick));
}

/** The walls round the room: the heavy line is their inner face, to which all figures run. */
export function walls(ceiling: Ceiling, view: PlanView): Group {
    const { left, right, top, foot } = extentOf(view, { west: 0, east: ceiling.width, north: 0, south: ceiling.length });
    const t = wallThickness(view.pointsPerTick);
    const inner: readonly Point[] = [[left, top], [right, top], [right, foot], [left, foot]];
    const outer: readonly Point[] = [[left - t, top - t], [right + t, top - t], [right + t, foot + t], [left - t, foot + t]];
    const stretches = inner.map((corner, i) => [outer[i]!, outer[(i + 1) % 4]!, inner[(i + 1) % 4]!, corner]);
    return group('walls', { title: 'Walls' }, [
        ...stretches.map(stretch => polygon(stretch, null, 'tint')),
        ...stretches.flatMap(stretch => hatch(stretch, 4.6, false)),
        polygon(outer, 'thin'),
        rectangle(left, top, right, foot, 'cut'),
    ]);
}
