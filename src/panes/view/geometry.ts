import { BufferAttribute, BufferGeometry } from 'three';
import type { ViewContent, ViewPiece } from '../../pages/view/content.ts';
import { TICKS_PER_INCH } from '../../quantity/ticks.ts';

/**
 * Pieces as the numbers a graphics card takes: one list for all pieces of a part, so that a room is drawn in a few strokes.
 * Inches; x east, y up, z south: as one stands in the room and looks north.
 */
export interface Buffers {
    readonly positions: Float32Array; readonly normals: Float32Array;
    /** Three numbers a corner: how light its piece is beside others of its part, and where along and across its grain it lies. */
    readonly grain: Float32Array;
    /** Of every triangle, the piece it belongs to, as its number among those that were given. */
    readonly pieceOf: Uint32Array;
    readonly edges: Float32Array;
    /** At which corner of the triangles, and of the edges, each piece begins; and where the last one ends. */
    readonly starts: readonly number[]; readonly edgeStarts: readonly number[];
}

export function buffersOf(pieces: readonly ViewPiece[], { shapes }: Pick<ViewContent, 'shapes'>): Buffers {
    const positions: number[] = [], normals: number[] = [], grain: number[] = [], pieceOf: number[] = [], edges: number[] = [], starts = [0], edgeStarts = [0];
    for (const [number, piece] of pieces.entries()) {
        const corners = cornersOf(piece);
        const { faces, edges: lines } = shapes[piece.shape]!;
        const tone = toneOf(piece.key), { along, across, rise } = grainOf(corners);
        for (const face of faces) {
            const points = face.map(i => corners[i]!);
            const normal = normalOf(points);
            for (let i = 2; i < points.length; i++) {
                pieceOf.push(number);
                for (const point of [points[0]!, points[i - 1]!, points[i]!]) {
                    positions.push(...point);
                    normals.push(...normal);
                    grain.push(tone, point[along] + tone * 900, Math.abs(normal[across]) > 0.5 ? point[rise] : point[across]);
                }
            }
        }
        for (const [from, to] of lines) edges.push(...corners[from]!, ...corners[to]!);
        starts.push(positions.length / 3);
        edgeStarts.push(edges.length / 3);
    }
    return {
        positions: new Float32Array(positions), normals: new Float32Array(normals), grain: new Float32Array(grain), pieceOf: new Uint32Array(pieceOf),
        edges: new Float32Array(edges), starts, edgeStarts,
    };
}

export function geometryOf(buffers: Buffers): { readonly geometry: BufferGeometry; readonly lines: BufferGeometry } {
    const geometry = new BufferGeometry(), lines = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(buffers.positions, 3));
    geometry.setAttribute('normal', new BufferAttribute(buffers.normals, 3));
    geometry.setAttribute('grain', new BufferAttribute(buffers.grain, 3));
    lines.setAttribute('position', new BufferAttribute(buffers.edges, 3));
    return { geometry, lines };
}

/** In inches; y up, z south. */
export type Spot = readonly [x: number, y: number, z: number];

/** From z down to y up: a quarter turn about the east. */
export function cornersOf({ corners }: ViewPiece): readonly Spot[] {
    return Array.from({
        length: corners.length / 3,
    }, (_, i): Spot => [corners[3 * i]! / TICKS_PER_INCH, 0 - corners[3 * i + 2]! / TICKS_PER_INCH, corners[3 * i + 1]! / TICKS_PER_INCH]);
}

/** Of length one, by Newell's formula. */
function normalOf(points: readonly Spot[]): Spot {
    let [x, y, z] = [0, 0, 0];
    for (const [i, [ax, ay, az]] of points.entries()) {
        const [bx, by, bz] = points[(i + 1) % points.length]!;
        x += (ay - by) * (az + bz);
        y += (az - bz) * (ax + bx);
        z += (ax - bx) * (ay + by);
    }
    const length = Math.hypot(x, y, z) || 1;
    return [x / length, y / length, z / length];
}

/** The grain runs the long way: along is the axis of that, across the next longest, rise the last. */
function grainOf(corners: readonly Spot[]): { readonly along: 0 | 1 | 2; readonly across: 0 | 1 | 2; readonly rise: 0 | 1 | 2 } {
    const size = (axis: 0 | 1 | 2) => Math.max(...corners.map(corner => corner[axis])) - Math.min(...corners.map(corner => corner[axis]));
    const [along, across, rise] = ([0, 1, 2] as const).map(axis => ({ axis, size: size(axis) })).sort((a, b) => b.size - a.size).map(({ axis }) => axis);
    return { along: along!, across: rise!, rise: across! };
}

/** 0 to 1 from a name, the same every time: no two boards of a lumber yard look quite alike (FNV-1a). */
function toneOf(name: string): number {
    let h = 0x811c9dc5;
    for (let i = 0; i < name.length; i++) h = Math.imul(h ^ name.charCodeAt(i), 0x01000193);
    return ((h ^ (h >>> 15)) >>> 0) % 1000 / 1000;
}
