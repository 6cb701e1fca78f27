import { line, type Line, type Point } from '../display-list.ts';
import { clipToConvex } from './clip.ts';

/** Parallel lines at 45 degrees over a convex shape, `gap` points apart; lines of neighboring shapes run on into each other. */
export function hatch(shape: readonly Point[], gap: number, rising: boolean): readonly Line[] {
    const slope = rising ? -1 : 1;
    const offsets = shape.map(([x, y]) => y - slope * x);
    const left = Math.min(...shape.map(([x]) => x));
    const right = Math.max(...shape.map(([x]) => x));
    const step = gap * Math.SQRT2;
    const lines: Line[] = [];
    for (let n = Math.ceil(Math.min(...offsets) / step); n * step < Math.max(...offsets); n++) {
        const clipped = clipToConvex([[left, slope * left + n * step], [right, slope * right + n * step]], shape);
        if (clipped) lines.push(line(clipped[0], clipped[1], 'hatch'));
    }
    return lines;
}
