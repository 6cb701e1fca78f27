import { polyline, type Point, type Polyline } from '../display-list.ts';
import { chanceFrom } from '../chance.ts';
import { clipToConvex } from './clip.ts';

/** How a board was sawn from the log: where the pith lies, and how far the rings are apart. */
interface Growth { readonly pith: Point; readonly spacing: number; readonly seed: string }

/**
 * Growth rings across the end of a board: wavering arcs about the pith, which lies outside the board, clipped to its
 * shape (a board with a groove is given as two convex parts). Drawn for the look; they measure nothing.
 */
export function endGrain(parts: readonly (readonly Point[])[], growth: Growth): readonly Polyline[] {
    const chance = chanceFrom(growth.seed);
    const corners = parts.flat();
    const distances = corners.map(([x, y]) => Math.hypot(x - growth.pith[0], y - growth.pith[1]));
    const farthest = Math.max(...distances);
    const span = angleSpan(corners, growth.pith);
    const rings: Polyline[] = [];
    let radius = Math.min(...distances) * 0.6 + growth.spacing;
    while (radius < farthest) {
        const ring = wavering(growth, span, radius, chance() * 2 * Math.PI);
        for (const part of parts) rings.push(...inside(ring, part));
        radius += growth.spacing * (0.55 + 0.9 * chance());
    }
    return rings;
}

/** The angles, seen from the pith, between which the board lies. */
function angleSpan(corners: readonly Point[], [pithX, pithY]: Point): readonly [number, number] {
    const middleX = corners.reduce((sum, [x]) => sum + x, 0) / corners.length - pithX;
    const middleY = corners.reduce((sum, [, y]) => sum + y, 0) / corners.length - pithY;
    const middle = Math.atan2(middleY, middleX);
    const offsets = corners.map(([x, y]) => {
        const across = (x - pithX) * -Math.sin(middle) + (y - pithY) * Math.cos(middle);
        const along = (x - pithX) * Math.cos(middle) + (y - pithY) * Math.sin(middle);
        return Math.atan2(across, along);
    });
    return [middle + Math.min(...offsets) - 0.05, middle + Math.max(...offsets) + 0.05];
}

const STEP = 7;

function wavering({ pith, spacing }: Growth, [from, to]: readonly [number, number], radius: number, phase: number): readonly Point[] {
    const steps = Math.max(2, Math.ceil((to - from) * radius / STEP));
    return Array.from({ length: steps + 1 }, (_, i) => {
        const angle = from + (to - from) * i / steps;
        const wave = spacing * (0.35 * Math.sin(3 * angle + phase) + 0.18 * Math.sin(7 * angle + 2 * phase));
        return [pith[0] + (radius + wave) * Math.cos(angle), pith[1] + (radius + wave) * Math.sin(angle)];
    });
}

/** The stretches of a line inside a convex shape. */
function inside(points: readonly Point[], shape: readonly Point[]): readonly Polyline[] {
    const stretches: Point[][] = [];
    let open: Point[] | null = null;
    for (let i = 1; i < points.length; i++) {
        const from = points[i - 1]!;
        const clipped = clipToConvex([from, points[i]!], shape);
        if (clipped === null) { open = null; continue; }
        if (open === null || clipped[0] !== from && !same(clipped[0], from)) stretches.push(open = [clipped[0]]);
        open.push(clipped[1]);
        if (!same(clipped[1], points[i]!)) open = null;
    }
    return stretches.map(stretch => polyline(stretch, 'grain'));
}

function same(a: Point, b: Point): boolean {
    return Math.abs(a[0] - b[0]) < 1e-6 && Math.abs(a[1] - b[1]) < 1e-6;
}
