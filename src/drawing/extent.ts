import type { Item, Point, TextRun } from './display-list.ts';
import { CAP_HEIGHT, DESCENT, runWidth } from './text/measure-text.ts';

/** A rectangle on the sheet, in points. */
export interface Extent { readonly left: number; readonly top: number; readonly right: number; readonly foot: number }

/** The room a line of text takes, by the font's own widths; of one that stands askew the box round it. */
export function textExtent(run: TextRun): Extent {
    const width = runWidth(run);
    const before = run.anchor === 'start' ? 0 : run.anchor === 'middle' ? width / 2 : width;
    const up = run.size * CAP_HEIGHT;
    const down = run.size * DESCENT;
    const [x, y] = run.at;
    if (run.turned === 90) return { left: x - up, right: x + down, top: y + before - width, foot: y + before };
    return run.turned === 0 ? { left: x - before, right: x - before + width, top: y - up, foot: y + down } : pointsExtent(textCorners(run));
}

/** The same as boxes that follow it where it stands askew: one round all of it would be mostly empty. */
export function textExtents(run: TextRun): readonly Extent[] {
    if (run.turned % 90 === 0) return [textExtent(run)];
    const [a, b, c, d] = textCorners(run), parts = Math.max(1, Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]) / run.size));
    const between = (from: Point, to: Point, part: number): Point => [from[0] + (to[0] - from[0]) * part / parts, from[1] + (to[1] - from[1]) * part / parts];
    return Array.from({ length: parts }, (_, i) => pointsExtent([between(a, b, i), between(a, b, i + 1), between(d, c, i), between(d, c, i + 1)]));
}

/** Corners of the box of a line of text as it stands, from the upper left one as it is read; `by`: so much larger all round. */
export function textCorners(run: TextRun, by = 0): readonly [Point, Point, Point, Point] {
    const width = runWidth(run), before = run.anchor === 'start' ? 0 : run.anchor === 'middle' ? width / 2 : width;
    const [left, right, top, foot] = [-before - by, width - before + by, -run.size * CAP_HEIGHT - by, run.size * DESCENT + by];
    const cos = Math.cos(run.turned * Math.PI / 180), sin = Math.sin(run.turned * Math.PI / 180);
    const at = (along: number, down: number): Point => [run.at[0] + along * cos + down * sin, run.at[1] - along * sin + down * cos];
    return [at(left, top), at(right, top), at(right, foot), at(left, foot)];
}

export function itemExtent(item: Item): Extent {
    switch (item.kind) {
        case 'line': return pointsExtent([item.from, item.to]);
        case 'polyline': return pointsExtent(item.points);
        case 'circle': return around(item.center, item.radius, item.radius);
        case 'text': return textExtent(item);
        case 'group': return itemsExtent(item.items);
    }
}

export function itemsExtent(items: readonly Item[]): Extent {
    const extents = items.map(itemExtent);
    return {
        left: Math.min(...extents.map(e => e.left)), right: Math.max(...extents.map(e => e.right)),
        top: Math.min(...extents.map(e => e.top)), foot: Math.max(...extents.map(e => e.foot)),
    };
}

function pointsExtent(points: readonly Point[]): Extent {
    return {
        left: Math.min(...points.map(([x]) => x)), right: Math.max(...points.map(([x]) => x)),
        top: Math.min(...points.map(([, y]) => y)), foot: Math.max(...points.map(([, y]) => y)),
    };
}

export function around([x, y]: Point, halfWidth: number, halfHeight: number): Extent {
    return { left: x - halfWidth, right: x + halfWidth, top: y - halfHeight, foot: y + halfHeight };
}

export function grown(extent: Extent, by: number): Extent {
    return { left: extent.left - by, right: extent.right + by, top: extent.top - by, foot: extent.foot + by };
}

export function overlap(a: Extent, b: Extent): boolean {
    return a.left < b.right && b.left < a.right && a.top < b.foot && b.top < a.foot;
}

export function within(inner: Extent, outer: Extent): boolean {
    return inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top && inner.foot <= outer.foot;
}

/** Whether a straight line runs through an extent, by its stretch inside of each pair of edges; one that only touches it does not. */
export function runsThrough([fromX, fromY]: Point, [toX, toY]: Point, { left, right, top, foot }: Extent): boolean {
    let [first, last] = [0, 1];
    for (const [from, to, least, most] of [[fromX, toX, left, right], [fromY, toY, top, foot]] as const) {
        if (from === to) {
            if (from <= least || from >= most) return false;
            continue;
        }
        const [one, other] = [(least - from) / (to - from), (most - from) / (to - from)];
        first = Math.max(first, Math.min(one, other));
        last = Math.min(last, Math.max(one, other));
    }
    return first < last;
}
