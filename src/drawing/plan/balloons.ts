import type { Ceiling, Line } from '../../ceiling/model.ts';
import type { Direction } from '../../job/model.ts';
import { circle, group, line, text, type Group, type Point } from '../display-list.ts';
import { fitText } from '../text/fit-text.ts';
import { centerOf } from '../../ceiling/bays.ts';
import { sourceReference, type FileName } from '../source-reference.ts';

/** How the balloons of one direction are set: in one row where the lines are far enough apart, else staggered. */
export interface BalloonRows {
    readonly radius: number;
    readonly rows: number;
    /** Where even that is too close, only each n-th is named. */
    readonly each: number;
    readonly depth: number;
}

const MOST_ROWS = 3;

/** @param centers where the lines stand, in points. */
export function balloonRows(centers: readonly number[]): BalloonRows {
    const apart = Math.min(Infinity, ...centers.slice(1).map((center, i) => center - centers[i]!));
    if (centers.length === 0) return { radius: 0, rows: 0, each: 1, depth: 0 };
    if (apart >= 25) return { radius: 11, rows: 1, each: 1, depth: 22 };
    const radius = 8;
    const rows = Math.min(MOST_ROWS, Math.ceil((2 * radius + 2) / apart));
    const each = Math.max(1, Math.ceil((2 * radius + 2) / (apart * rows)));
    return { radius, rows, each, depth: rows * (2 * radius + 3) };
}

/** A line's name in its balloon, on its center line. */
export function balloon(
    each: Line, rows: BalloonRows, index: number,
    place: { readonly balloonAt: (row: number) => Point; readonly strokes: readonly (readonly [Point, Point])[]; readonly towards: Point }, fileName: FileName,
): Group {
    const row = Math.floor(index / rows.each) % rows.rows;
    const center = place.balloonAt(row);
    const [dx, dy] = place.towards;
    const rim: Point = [center[0] + dx * rows.radius, center[1] + dy * rows.radius];
    const first = place.strokes[0]!;
    const name = fitText(each.name, 1.5 * rows.radius, rows.radius * 1.1, 4, 600);
    const strokes = [line(rim, first[1], 'center'), ...place.strokes.slice(1).map(([from, to]) => line(from, to, 'center'))];
    const shown = index % rows.each === 0
        ? [circle(center, rows.radius, 'edge', 'paper'), text([center[0], center[1] + name.size * 0.35], name.text, { size: name.size, weight: 600, anchor: 'middle' })]
        : [];
    return group(`line.${each.name}`, { title: `Line ${each.name}`, source: sourceReference(each.at, fileName) }, [...strokes, ...shown]);
}

export function centersOf(lines: readonly Line[]): readonly number[] {
    return lines.map(centerOf);
}

/** Lines that run one way, from the north or west. */
export function ofWay({ lines }: Ceiling, runs: Direction): readonly Line[] {
    return lines.filter(line => line.runs === runs).sort((a, b) => a.low - b.low);
}
