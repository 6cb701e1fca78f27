import type { Arrangement, Cut, Piece as Strip } from '../arrangement/model.ts';
import type { Point } from '../plane/point.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Box, Corners, EndCut } from './model.ts';

/**
 * How a piece of the arrangement lies in the ceiling, as cut lists tell it: the end to the west or north first, and the long edge
 * that its length is told by (`back`: of a side its back, of a band its wall edge, of what lies in a beam that to the west or north) before the other.
 */
export interface Lie {
    readonly strip: Strip;
    /** Along the back, then back along the face. */
    readonly corners: Corners;
    /** From end to end along an axis, in whole ticks. */
    readonly from: Ticks; readonly to: Ticks;
    /** Exact lengths of both long edges, with the fraction of a tick that a division left. */
    readonly back: number; readonly face: number;
    readonly ends: readonly [EndCut, EndCut];
    readonly cuts: readonly [Cut, Cut];
    readonly meets: readonly [string, string];
}

export function lieOf(strip: Strip): Lie {
    const { way, corners: [a, b, c, d], edges, ends } = strip;
    const turned = way.x < 0 || way.x === 0 && way.y < 0;
    const along = ([start, end]: readonly [Point, Point]): readonly [Point, Point] => (turned ? [end, start] : [start, end]);
    const firstIsBack = strip.part === 'band' || isWestOrNorth(strip);
    const [back, face] = firstIsBack ? [along([a, b]), along([d, c])] : [along([d, c]), along([a, b])];
    const [first, last] = turned ? [ends[1], ends[0]] : ends;
    const level = Math.abs(way.x) >= Math.abs(way.y);
    const places = [a, b, c, d].map(point => (level ? point.x : point.y));
    return {
        strip, corners: [back[0], back[1], face[1], face[0]], from: Math.min(...places), to: Math.max(...places),
        back: edges[firstIsBack ? 0 : 1].length, face: edges[firstIsBack ? 1 : 0].length,
        ends: [endCut(first), endCut(last)], cuts: [first.cut, last.cut], meets: [first.meets, last.meets],
    };
}

/** Whether, of what lies in a beam, the first edge is the one to the west or north. */
function isWestOrNorth({ edges, corners: [a, , , d] }: Strip): boolean {
    return edges[0].name === 'left' && a.x + a.y < d.x + d.y;
}

function endCut({ cut, angle }: Strip['ends'][number]): EndCut {
    return cut === 'miter' || cut === 'outside-miter' ? { cut: 'miter', degrees: Math.abs(angle) } : { cut: 'square' };
}

/** The box around it, from `top` down to `foot`. */
export function boxAround(corners: readonly Point[], [top, foot]: readonly [Ticks, Ticks]): Box {
    const xs = corners.map(({ x }) => x), ys = corners.map(({ y }) => y);
    return { west: Math.min(...xs), east: Math.max(...xs), north: Math.min(...ys), south: Math.max(...ys), top, foot };
}

/** A piece as it is drawn, and the same one with the coffers at the sizes they are cut to. */
export interface Pair { readonly exact: Lie; readonly cut: Lie }

/** The pieces of one part, by what they belong to: a line, a wall, a trim. */
export class Pairs {
    private readonly byPlace = new Map<string, Pair[]>();

    constructor({ exact, asCut }: { readonly exact: Arrangement; readonly asCut: Arrangement }) {
        const cut = exact === asCut ? undefined : new Map(asCut.pieces.map(piece => [keyOf(piece), piece]));
        for (const piece of exact.pieces) {
            const other = cut?.get(keyOf(piece)), lie = lieOf(piece);
            const key = `${piece.part} ${piece.of}`, pair = { exact: lie, cut: other ? lieOf(other) : lie };
            const there = this.byPlace.get(key);
            if (there) there.push(pair);
            else this.byPlace.set(key, [pair]);
        }
    }
    of(part: Strip['part'], owner: string): readonly Pair[] {
        return this.byPlace.get(`${part} ${owner}`) ?? [];
    }
}

function keyOf({ part, of, on, nth, coffers }: Strip): string {
    return `${part} ${of} ${on} ${nth} ${part === 'trim' ? coffers[0] : ''}`;
}
