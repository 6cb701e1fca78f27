import type { Line, Point, Polyline } from '../display-list.ts';

/**
 * The `d` of a path, in hundredths of a point, each step counted from the one before: short, and without drift, since
 * it is the rounded places that are subtracted.
 */
export function pathData(strokes: readonly (Line | Polyline)[]): string {
    return strokes.map(strokeData).join('');
}

/** Strokes that share a path keep their own ends and corners. */
function strokeData(stroke: Line | Polyline): string {
    const points = (stroke.kind === 'line' ? [stroke.from, stroke.to] : stroke.points).map(hundredths);
    const [first, ...rest] = points;
    if (first === undefined) return '';
    const steps = rest.map((point, i) => stepData(point[0] - points[i]![0], point[1] - points[i]![1])).join('');
    return `M${pair(first)}${steps}${stroke.kind === 'polyline' && stroke.closed ? 'z' : ''}`;
}

function stepData(right: number, down: number): string {
    if (right === 0 && down === 0) return '';
    if (down === 0) return `h${hundredthsText(right)}`;
    if (right === 0) return `v${hundredthsText(down)}`;
    return `l${pair([right, down])}`;
}

function hundredths([x, y]: Point): Point {
    return [Math.round(x * 100), Math.round(y * 100)];
}

function pair([x, y]: Point): string {
    return y < 0 ? `${hundredthsText(x)}${hundredthsText(y)}` : `${hundredthsText(x)} ${hundredthsText(y)}`;
}

/** A number of points with at most two decimals: `12.5`, `-.25`. */
export function coordinate(points: number): string {
    return hundredthsText(Math.round(points * 100));
}

function hundredthsText(hundredths: number): string {
    return String(hundredths / 100 + 0).replace(/^(-?)0\./, '$1.');
}
