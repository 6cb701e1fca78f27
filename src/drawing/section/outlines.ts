import type { Rabbet } from '../../job/model.ts';
import type { Point } from '../display-list.ts';

/** Outlines of boards as a section cuts them, in ticks from where the section counts. */
export type Stretch = readonly [number, number];

/** A board's outline on the right of the beam, from its back (inside) to its face, with the step of its rabbet. */
export function notched([back, face]: Stretch, [top, foot]: Stretch, rabbet: Rabbet | null): readonly Point[] {
    const corners: readonly Point[] = [[back, top], [face, top], [face, foot], [back, foot]];
    if (rabbet === null) return corners;
    const [x, y] = cornerOf(rabbet, [back, face], [top, foot]);
    const inX = x === back ? back + rabbet.width.ticks : face - rabbet.width.ticks;
    const inY = y === top ? top + rabbet.height.ticks : foot - rabbet.height.ticks;
    return corners.flatMap(([cornerX, cornerY]): readonly Point[] => {
        if (cornerX !== x || cornerY !== y) return [[cornerX, cornerY]];
        // the outline is walked back-top, face-top, face-foot, back-foot: it comes to face-top and back-foot along the edge
        const comesAlongEdge = (x === back) !== (y === top);
        return comesAlongEdge ? [[inX, y], [inX, inY], [x, inY]] : [[x, inY], [inX, inY], [inX, y]];
    });
}

/** The same board as two upright rectangles, for filling. */
export function convexParts([back, face]: Stretch, [top, foot]: Stretch, rabbet: Rabbet | null): readonly (readonly [Stretch, Stretch])[] {
    if (rabbet === null) return [[[back, face], [top, foot]]];
    const [x, y] = cornerOf(rabbet, [back, face], [top, foot]);
    const narrow: Stretch = x === back ? [back + rabbet.width.ticks, face] : [back, face - rabbet.width.ticks];
    const inY = y === top ? top + rabbet.height.ticks : foot - rabbet.height.ticks;
    return y === top ? [[narrow, [top, inY]], [[back, face], [inY, foot]]] : [[[back, face], [top, inY]], [narrow, [inY, foot]]];
}

function cornerOf(rabbet: Rabbet, [back, face]: Stretch, [top, foot]: Stretch): Point {
    return [rabbet.face === 'back' ? back : face, rabbet.edge === 'lower' ? foot : top];
}

/** A crown between the side and the ceiling: its face from edge to edge, its back cut off flat where it lies against them. */
export function crown({ out, down: drop, thick }: { readonly out: number; readonly down: number; readonly thick: number }): readonly Point[] {
    const width = Math.hypot(out, drop);
    return [[0, drop], [out, 0], [Math.max(0, out - thick * width / drop), 0], [0, Math.max(0, drop - thick * width / out)]];
}
