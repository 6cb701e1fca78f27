import type { Prism } from '../../dryfit/model.ts';
import { TICKS_PER_INCH, type Ticks } from '../../quantity/ticks.ts';
import type { Point } from '../display-list.ts';
import { keptBeyond } from '../fill/clip.ts';
import type { Vector } from './eye.ts';

/** What is seen of a prism, where it stands: faces that look towards the eye, and edges. */
export interface Shape {
    readonly prism: Prism;
    readonly faces: readonly Face[];
    readonly edges: readonly (readonly [Vector, Vector])[];
}
/** Convex and flat. `light`: 0 for what is turned away from it, 1 for what faces it. */
export interface Face { readonly corners: readonly Vector[]; readonly light: number }

/** Nothing is cut into parts shorter than that: things in each other would be cut for ever. */
const SHORTEST: Ticks = TICKS_PER_INCH / 2;

/** Both halves of a shape, cut square through the middle of its longest side in plan; none where they would be too short. */
export function inTwo({ prism, faces, edges }: Shape): readonly [Shape, Shape] | undefined {
    const { outline } = prism, long = outline.map((from, i) => ({ from, to: outline[(i + 1) % outline.length]! }))
        .reduce((a, b) => (squareOf(b) > squareOf(a) ? b : a));
    if (squareOf(long) < (2 * SHORTEST) ** 2) return undefined;
    const { from: [x, y], to: [toX, toY] } = long, [dx, dy] = [toX - x, toY - y], middle = (toX + x) / 2 * dx + (toY + y) / 2 * dy;
    const half = (way: 1 | -1): Shape => {
        const beyond = ([a, b]: readonly number[]): number => way * (a! * dx + b! * dy - middle);
        return {
            prism: { ...prism, outline: keptBeyond(outline, beyond) },
            faces: faces.map(({ corners, light }) => ({ corners: keptBeyond(corners, beyond), light })).filter(({ corners }) => corners.length > 2),
            edges: edges.flatMap(([a, b]) => {
                const [begin, end] = keptBeyond([a, b], beyond, { open: true });
                return begin && end ? [[begin, end] as const] : [];
            }),
        };
    };
    return [half(-1), half(1)];
}

function squareOf({ from, to }: { readonly from: Point; readonly to: Point }): number {
    return (to[0] - from[0]) ** 2 + (to[1] - from[1]) ** 2;
}
