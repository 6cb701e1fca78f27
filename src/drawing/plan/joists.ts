import { joistsOf } from '../../ceiling/joists.ts';
import type { Ceiling } from '../../ceiling/model.ts';
import { group, line, type Group, type Item, type Point } from '../display-list.ts';
import { sourceReference, type FileName } from '../source-reference.ts';
import { toX, toY, type PlanView } from './view.ts';

/** Edges nearer than this, in points, would run into one: then a joist is one stroke. */
const TOO_NEAR = 2.2;

/** The joists over the room, dashed and quiet, since the ceiling hides them; null where nobody knows where they are. */
export function joistLines(ceiling: Ceiling, view: PlanView, fileName: FileName): Group | null {
    const joists = joistsOf(ceiling);
    if (!joists || joists.all.length === 0) return null;
    const axis = joists.runs === 'north-south' ? 'x' : 'y', other = axis === 'x' ? 'y' : 'x';
    const stroke = (at: number, [from, to]: readonly [number, number]): Item => {
        const point = (along: number): Point => (axis === 'x' ? [toX(view, at), toY(view, along)] : [toX(view, along), toY(view, at)]);
        return line(point(from), point(to), 'hidden');
    };
    const items = joists.all.flatMap(({ center, half }) => {
        const edges = 2 * half * view.pointsPerTick < TOO_NEAR ? [center] : [center - half, center + half];
        return edges.flatMap(at => stretchesAt(ceiling, axis, other, at).map(stretch => stroke(at, stretch)));
    });
    return group('joists', { title: `Joists, running ${joists.runs}`, source: sourceReference(joists.said.at, fileName) }, items);
}

/** From where to where a straight across the room lies in it. */
function stretchesAt({ walls }: Ceiling, axis: 'x' | 'y', other: 'x' | 'y', at: number): (readonly [number, number])[] {
    const crossings = walls.flatMap(({ from, to }) => {
        if (from[axis] <= at === to[axis] <= at) return [];
        return [from[other] + (to[other] - from[other]) * (at - from[axis]) / (to[axis] - from[axis])];
    }).sort((a, b) => a - b);
    return crossings.flatMap((from, i) => (i % 2 === 0 && crossings[i + 1] !== undefined ? [[from, crossings[i + 1]!] as const] : []));
}
