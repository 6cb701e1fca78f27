import type { Item, Point } from '../display-list.ts';

/**
 * By how many degrees, to the left, words along this direction are turned to be read from the foot or from the right of the sheet: over -80
 * to 100, so that what is nearly upright is read from the right.
 */
export function readingAngle([x, y]: Point): number {
    const angle = Math.round(Math.atan2(-y, x) * 180 / Math.PI * 1000) / 1000;
    return (angle > 100 ? angle - 180 : angle <= -80 ? angle + 180 : angle) + 0;
}

/** What was drawn from [0, 0] to the right, turned to the left by so many degrees, and begun somewhere else. */
export function turnedBy(items: readonly Item[], degrees: number, start: Point): readonly Item[] {
    const [cos, sin] = degrees === 90 ? [0, 1] : [Math.cos(degrees * Math.PI / 180), Math.sin(degrees * Math.PI / 180)];
    const at = ([x, y]: Point): Point => [start[0] + x * cos + y * sin, start[1] - x * sin + y * cos];
    return items.map((item): Item => {
        switch (item.kind) {
            case 'line': return { ...item, from: at(item.from), to: at(item.to) };
            case 'polyline': return { ...item, points: item.points.map(at) };
            case 'circle': return { ...item, center: at(item.center) };
            case 'text': return { ...item, at: at(item.at), turned: item.turned + degrees };
            case 'group': return { ...item, items: turnedBy(item.items, degrees, start) };
        }
    });
}
