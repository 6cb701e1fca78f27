import type { ViewContent, ViewPiece } from '../../pages/view/content.ts';
import { cornersOf, type Spot } from './geometry.ts';

/** Where the pieces are cut through: rectangles, as triangles, and their outlines. */
interface Caps { readonly positions: Float32Array; readonly edges: Float32Array }

/**
 * What an upright plane cuts out of the pieces. Each prism of a piece lies between a top and a foot of one outline, so its cut
 * is a rectangle: as wide as the plane runs through the outline.
 * @param axis that the plane stands across: 0 east, 2 south. @param at where, in inches.
 */
export function capsOf(pieces: readonly ViewPiece[], { shapes }: Pick<ViewContent, 'shapes'>, axis: 0 | 2, at: number): Caps {
    const positions: number[] = [], edges: number[] = [];
    const along = axis === 0 ? 2 : 0;
    for (const piece of pieces) {
        const corners = cornersOf(piece);
        const level = shapes[piece.shape]!.faces.map(face => face.map(i => corners[i]!)).filter(face => face.every(([, y]) => y === face[0]![1]));
        // a prism's top comes before its foot
        for (let i = 0; i + 1 < level.length; i += 2) {
            const [top, foot] = [level[i]!, level[i + 1]!];
            const stretch = throughOutline(top, axis, along, at);
            if (!stretch) continue;
            const spot = (across: number, y: number): Spot => (axis === 0 ? [at, y, across] : [across, y, at]);
            const [a, b, c, d] = [spot(stretch[0], top[0]![1]), spot(stretch[1], top[0]![1]), spot(stretch[1], foot[0]![1]), spot(stretch[0], foot[0]![1])];
            positions.push(...a, ...b, ...c, ...a, ...c, ...d);
            edges.push(...a, ...b, ...b, ...c, ...c, ...d, ...d, ...a);
        }
    }
    return { positions: new Float32Array(positions), edges: new Float32Array(edges) };
}

/** From where to where a convex outline is cut; nothing where the plane only touches it. */
function throughOutline(outline: readonly Spot[], axis: 0 | 2, along: 0 | 2, at: number): readonly [number, number] | undefined {
    const met = outline.flatMap((from, i) => {
        const to = outline[(i + 1) % outline.length]!;
        if ((from[axis] < at) === (to[axis] < at)) return [];
        return [from[along] + (to[along] - from[along]) * (at - from[axis]) / (to[axis] - from[axis])];
    });
    return met.length < 2 ? undefined : [Math.min(...met), Math.max(...met)];
}
