import type { Ticks } from '../../src/quantity/ticks.ts';
import type { Piece } from '../../src/takeoff/model.ts';

/** Pieces and coffers as polygons in plan, and what a straight line across the room meets of them. */
type Point = readonly [x: number, y: number];
export interface Shape { readonly id: string; readonly points: readonly Point[] }

export function rectangle(id: string, box: { west: Ticks; east: Ticks; north: Ticks; south: Ticks }): Shape {
    return { id, points: [[box.west, box.north], [box.east, box.north], [box.east, box.south], [box.west, box.south]] };
}

/**
 * A board on edge as it was cut: its long points at the back, its short points at the face, which looks north, east, south
 * or west (`looks`). Built from its lengths and angles, not from what it is meant to meet.
 */
export function board(piece: Piece, looks: string): Shape {
    const { box, ends, thickness } = piece;
    const [first, last] = ends.map(end => end.cut === 'miter' ? Math.round(thickness * Math.tan(end.degrees! * Math.PI / 180)) : 0) as [number, number];
    const { west, east, north, south } = box;
    const points: Record<string, Point[]> = {
        north: [[west + first, north], [east - last, north], [east, south], [west, south]],
        south: [[west, north], [east, north], [east - last, south], [west + first, south]],
        west: [[west, north + first], [east, north], [east, south], [west, south - last]],
        east: [[west, north], [east, north + first], [east, south - last], [west, south]],
    };
    return { id: piece.id, points: points[looks]! };
}

export function areaOf({ points }: Shape): number {
    let twice = 0;
    points.forEach(([x, y], i) => {
        const [nextX, nextY] = points[(i + 1) % points.length]!;
        twice += x * nextY - nextX * y;
    });
    return Math.abs(twice) / 2;
}

interface Met { readonly id: string; readonly from: number; readonly to: number }

/** What the line y = `y` meets, from the west. Shapes are convex, and the line goes through no corner. */
export function metAt(shapes: readonly Shape[], y: number): Met[] {
    const met: Met[] = [];
    for (const { id, points } of shapes) {
        const xs: number[] = [];
        points.forEach(([x, py], i) => {
            const [nextX, nextY] = points[(i + 1) % points.length]!;
            if ((py < y) !== (nextY < y)) xs.push(x + (nextX - x) * (y - py) / (nextY - py));
        });
        if (xs.length > 1) met.push({ id, from: Math.min(...xs), to: Math.max(...xs) });
    }
    return met.sort((a, b) => a.from - b.from);
}

/** Lines across the room through every strip in which what is met stays the same: two in each, so that slanted edges are held too. */
export function scanLines(shapes: readonly Shape[]): number[] {
    const heights = [...new Set(shapes.flatMap(shape => shape.points.map(([, y]) => y)))].sort((a, b) => a - b);
    return heights.slice(1).flatMap((y, i) => [heights[i]! + (y - heights[i]!) / 3, heights[i]! + (y - heights[i]!) * 2 / 3]);
}

/** The same seen with north to the west: a line from north to south becomes one from west to east. */
export function turned(shape: Shape): Shape {
    return { id: shape.id, points: shape.points.map(([x, y]) => [y, x]) };
}
