import type { Solid } from '../../dryfit/model.ts';
import type { Point, Vector } from '../../plane/point.ts';
import type { Piece } from '../../takeoff/model.ts';

/** What an upright plane cuts of a piece, or what of it is seen beyond: along the plane, and down from the ceiling, in ticks. */
export interface Slice { readonly piece: Piece; readonly from: number; readonly to: number; readonly top: number; readonly foot: number;
    /** The plane goes across its grain. */ readonly across: boolean }

interface Cut { readonly cut: readonly Slice[]; readonly beyond: readonly Slice[] }

/** One looks north, or west, or as near to that as the plane lets one: so `way` runs to the right of whoever looks. */
export function lookingWay({ x, y }: Vector): Vector {
    const level = Math.abs(x) >= Math.abs(y);
    return (level ? x < 0 : y > 0) ? { x: -x, y: -y } : { x, y };
}

/**
 * The pieces that the plane through `at` along `way` cuts, between two places along it, and those wholly beyond it within `depth`, the
 * farthest first. Which way is beyond: to the left of `way`, where one looks.
 */
export function cutAlong(solids: readonly Solid[], at: Point, way: Vector, [first, last]: readonly [number, number], depth: number): Cut {
    const cut: Slice[] = [], beyond: (Slice & { readonly far: number })[] = [];
    for (const { piece, prisms } of solids) {
        const across = isAcross(piece, way);
        for (const prism of prisms) {
            const spots = prism.outline.map(([x, y]) => ({ along: (x - at.x) * way.x + (y - at.y) * way.y, off: (x - at.x) * way.y - (y - at.y) * way.x }));
            const { top, foot } = prism, near = Math.min(...spots.map(({ off }) => off)), far = Math.max(...spots.map(({ off }) => off));
            if (far <= 0) continue;
            const ends = near >= 0 && near < SAME && isSplicedAt(piece, spots), touching = ends ? spots.filter(({ off }) => off < near + SAME) : spots;
            const alongs = touching.map(({ along }) => along), stretch = near < 0 ? cutOf(spots) : [Math.min(...alongs), Math.max(...alongs)] as const;
            if (!stretch || stretch[1] - stretch[0] < 2 || stretch[1] <= first || stretch[0] >= last) continue;
            const slice = { piece, from: Math.max(first, stretch[0]), to: Math.min(last, stretch[1]), top, foot, across };
            if (near < 0 || ends) cut.push(slice);
            else if (near <= depth) beyond.push({ ...slice, far });
        }
    }
    return { cut, beyond: beyond.sort((a, b) => b.far - a.far) };
}

/** In ticks: what is nearer to the plane than this lies in it. */
const SAME = 2;

/** Whether it is spliced just at the plane: its end is seen there, as if it ran on. */
function isSplicedAt({ ends }: Piece, spots: readonly { readonly off: number }[]): boolean {
    return ends.some(({ how }) => how === 'splice') && spots.filter(({ off }) => off < SAME).length > 1;
}

/** Where an outline crosses the plane. */
function cutOf(spots: readonly { readonly along: number; readonly off: number }[]): readonly [number, number] | null {
    const found = spots.flatMap((a, i) => {
        const b = spots[(i + 1) % spots.length]!;
        if ((a.off < 0) === (b.off < 0)) return [];
        return [a.along + (b.along - a.along) * a.off / (a.off - b.off)];
    });
    return found.length < 2 ? null : [Math.min(...found), Math.max(...found)];
}

/** Spacers stand across their line, so they show end grain where the line does not. */
function isAcross({ corners: [a, b], part }: Piece, way: Vector): boolean {
    const long = Math.hypot(b.x - a.x, b.y - a.y) || 1, turned = Math.abs((b.x - a.x) * way.y - (b.y - a.y) * way.x) / long > Math.SQRT1_2;
    return part === 'spacer' ? false : turned;
}

/** The stretches of the plane that lie in the room, between two places along it. */
export function inRoom(outline: readonly Point[], at: Point, way: Vector, [first, last]: readonly [number, number]): readonly (readonly [number, number])[] {
    const crossings = outline.flatMap((a, i) => {
        const b = outline[(i + 1) % outline.length]!, offA = (a.x - at.x) * way.y - (a.y - at.y) * way.x, offB = (b.x - at.x) * way.y - (b.y - at.y) * way.x;
        if ((offA < 0) === (offB < 0)) return [];
        const share = offA / (offA - offB), x = a.x + (b.x - a.x) * share, y = a.y + (b.y - a.y) * share;
        return [(x - at.x) * way.x + (y - at.y) * way.y];
    }).sort((a, b) => a - b);
    const stretches: (readonly [number, number])[] = [];
    for (let i = 0; i + 1 < crossings.length; i += 2) {
        const from = Math.max(first, crossings[i]!), to = Math.min(last, crossings[i + 1]!);
        if (to > from) stretches.push([from, to]);
    }
    return stretches;
}

