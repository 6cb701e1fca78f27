import type { Point, Prism, Solid } from '../../dryfit/model.ts';
import type { Ticks } from '../../quantity/ticks.ts';

/** A corner: x east, y south, z down, in ticks. */
export type Corner = readonly [x: Ticks, y: Ticks, z: Ticks];

/** The surface of a piece: flat faces and the edges that are seen. Indices count the corners. */
export interface Mesh {
    readonly corners: readonly Corner[];
    /** Convex, flat, each in the order that is counterclockwise to who looks at it from outside. */
    readonly faces: readonly (readonly number[])[];
    readonly edges: readonly (readonly [number, number])[];
}

/**
 * The surface of a solid, each of its prisms closed in itself. Where two prisms of one piece lie on each other there is no
 * edge along faces that run on from the one to the other: a rabbeted side is one board to the eye.
 */
export function meshOf(solid: Solid): Mesh {
    return surfaceOf(solid.prisms, solid);
}

/** The same for each prism by itself, which is convex. */
export function meshesOf(solid: Solid): readonly Mesh[] {
    return solid.prisms.map(prism => surfaceOf([prism], solid));
}

function surfaceOf(prisms: readonly Prism[], solid: Solid): Mesh {
    const corners: Corner[] = [];
    const numbers = new Map<string, number>();
    const number = (x: Ticks, y: Ticks, z: Ticks): number => {
        const key = `${x},${y},${z}`;
        let found = numbers.get(key);
        if (found === undefined) {
            numbers.set(key, found = corners.length);
            corners.push([x, y, z]);
        }
        return found;
    };
    const faces = prisms.flatMap(prism => facesOf(prism, number));
    const edges = prisms.flatMap(prism => edgesOf(prism, solid.prisms.filter(other => other !== prism), number));
    return { corners, faces, edges };
}

type Numbering = (x: Ticks, y: Ticks, z: Ticks) => number;

function facesOf({ outline, top, foot }: Prism, number: Numbering): readonly (readonly number[])[] {
    const ring = (z: Ticks) => outline.map(([x, y]) => number(x, y, z));
    const [above, below] = [ring(top), ring(foot)];
    const sides = outline.map((_, i) => {
        const next = (i + 1) % outline.length;
        return [above[i]!, above[next]!, below[next]!, below[i]!];
    });
    // z points down, so the foot is seen in the order of the outline and the top against it
    return [[...above].reverse(), below, ...sides];
}

function edgesOf({ outline, top, foot }: Prism, others: readonly Prism[], number: Numbering): readonly (readonly [number, number])[] {
    const sides = sidesOf(outline);
    const level = (z: Ticks) => {
        const against = others.filter(other => other.top === z && top < z || other.foot === z && foot > z).flatMap(other => sidesOf(other.outline));
        return sides.flatMap(side => apart(side, against)).map(([[ax, ay], [bx, by]]): readonly [number, number] => [number(ax, ay, z), number(bx, by, z)]);
    };
    const upright = outline.map(([x, y]): readonly [number, number] => [number(x, y, top), number(x, y, foot)]);
    return [...level(top), ...level(foot), ...upright];
}

type Side = readonly [Point, Point];

function sidesOf(outline: readonly Point[]): readonly Side[] {
    return outline.map((point, i) => [point, outline[(i + 1) % outline.length]!] as const);
}

/** The stretches of a side along which no face of another prism runs on in the same plane. */
function apart([from, to]: Side, others: readonly Side[]): readonly Side[] {
    const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
    const length = dx * dx + dy * dy;
    const along = ([x, y]: Point) => ((x - from[0]) * dx + (y - from[1]) * dy) / length;
    const aside = ([x, y]: Point) => (x - from[0]) * dy - (y - from[1]) * dx;
    let open: readonly (readonly [number, number])[] = [[0, 1]];
    for (const [a, b] of others) {
        // corners of miters are rounded to whole ticks: a line that is off by less runs on
        const level = [a, b].every(point => Math.abs(aside(point)) <= 2 * Math.sqrt(length));
        if (!level || along(b) <= along(a)) continue;
        open = open.flatMap(([begin, end]) => [[begin, Math.min(end, along(a))] as const, [Math.max(begin, along(b)), end] as const].filter(([p, q]) => q > p));
    }
    const at = (t: number): Point => [Math.round(from[0] + t * dx), Math.round(from[1] + t * dy)];
    return open.map(([begin, end]) => [at(begin), at(end)] as const).filter(([a, b]) => a[0] !== b[0] || a[1] !== b[1]);
}
