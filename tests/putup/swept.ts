import createModule, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import type { Solid } from '../../src/dryfit/model.ts';
import type { Path, Pose } from '../../src/putup/model.ts';
import { frameOf, placeIn, poseAt, type Frame } from '../../src/putup/motion/pose.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';

/**
 * What pieces pass through on their way, by another library: hulls of their prisms at both ends of a straight move, as meshes. Inches; x east,
 * y south, z down, as the dry fit has it (a mirror image, which changes no volume).
 */
let module: ManifoldToplevel | undefined;
export async function ready(): Promise<void> {
    if (module) return;
    module = await createModule();
    module.setup();
}
const inch = (ticks: number): number => ticks / TICKS_PER_INCH;
export type Move = readonly [x: number, y: number, z: number];

/** Of one piece, in parts, each with the box round it. */
export type Mesh = readonly { readonly is: Manifold; readonly box: ReturnType<Manifold['boundingBox']> }[];
const mesh = (parts: readonly Manifold[]): Mesh => parts.map(is => ({ is, box: is.boundingBox() }));

/** The piece where it stands, `shrunk` inches smaller on every side, so that what only touches is not in each other. */
export function standing({ prisms }: Solid, shrunk: number): Mesh {
    const inches = ({ x, y, z }: At): [number, number, number] => [inch(x), inch(y), inch(z)];
    return mesh(prisms.map(prism => module!.Manifold.hull(cornersOf(prism, shrunk).map(inches))));
}

function cornersOf({ outline, top, foot }: Solid['prisms'][number], shrunk: number): At[] {
    const most = shrunk * TICKS_PER_INCH, thin = Math.min(most, (foot - top) / 2);
    return inwards(outline, most).flatMap(([x, y]) => [top + thin, foot - thin].map((z): At => ({ x, y, z })));
}

/** Every edge so far towards the inside, along its own normal: a long piece that lies askew is as much thinner as it is shorter. To the middle at the most. */
function inwards(outline: Solid['prisms'][number]['outline'], most: number): readonly (readonly [x: number, y: number])[] {
    const next = <T>(all: readonly T[], i: number, by: number): T => all[(i + by + all.length) % all.length]!;
    const turned = Math.sign(outline.reduce((sum, [x, y], i) => { const [u, v] = next(outline, i, 1); return sum + x * v - u * y; }, 0));
    // by edge from each corner to the next: its normal to the inside, and how far it goes
    const edges = outline.map(([x, y], i) => {
        const [u, v] = next(outline, i, 1), long = Math.hypot(u - x, v - y) || 1, nx = -(v - y) / long * turned, ny = (u - x) / long * turned;
        const across = Math.max(...outline.map(([a, b]) => (a - x) * nx + (b - y) * ny));
        return { nx, ny, by: Math.min(most, across / 2) };
    });
    return outline.map(([x, y], i) => {
        const before = next(edges, i, -1), after = edges[i]!, det = before.nx * after.ny - before.ny * after.nx;
        if (Math.abs(det) < 1e-6) return [x + after.nx * after.by, y + after.ny * after.by];
        return [x + (before.by * after.ny - after.by * before.ny) / det, y + (before.nx * after.by - after.nx * before.by) / det];
    });
}

/** All that it passes through from `from` to `to`, moves from its place. */
export function swept(parts: Mesh, from: Move, to: Move): Mesh {
    return mesh(parts.map(({ is }) => module!.Manifold.hull([is.translate(from), is.translate(to)])));
}

/**
 * All that it passes through on a way on which it is turned, leans or is bent: each of its prisms, in short lengths where it is bent, at places of the way that
 * are near each other, and of every two that follow each other the hull. Lifted from `deep` inches below at first.
 */
export function bentWay(solid: Solid, { moves }: Path, shrunk: number, deep: number): Mesh {
    const { piece, prisms } = solid, outline = prisms.flatMap(prism => prism.outline.map(([x, y]) => ({ x, y })));
    const frame = frameOf(piece, outline, Math.min(...prisms.map(({ top }) => top)), Math.max(...prisms.map(({ foot }) => foot)));
    const isStiff = moves.every(({ from: { shape } }) => STIFF.includes(shape));
    const parts = prisms.flatMap(prism => (isStiff ? [cornersOf(prism, shrunk)] : lengthsOf(prism, frame, shrunk))), found: Manifold[] = [];
    const at = (part: readonly At[], pose: Pose, below = 0): [number, number, number][] => part.map(place => {
        const { x, y, z } = placeIn(place, pose, frame);
        return [inch(x), inch(y), inch(z) + below];
    });
    for (const [n, move] of moves.entries()) for (const part of parts) {
        if (move.kind === 'lift') { found.push(module!.Manifold.hull([...at(part, move.to), ...at(part, move.to, n === 0 ? deep : inch(move.from.below - move.to.below))])); continue; }
        for (let i = 0; i < STEPS; i++) found.push(module!.Manifold.hull([...at(part, poseAt(move, i / STEPS)), ...at(part, poseAt(move, (i + 1) / STEPS))]));
    }
    return mesh(found);
}
const STIFF: readonly Pose['shape'][] = ['straight', 'turned', 'tipped'];
interface At { readonly x: number; readonly y: number; readonly z: number }
/** Poses of a move, and lengths of a piece; both halves of a knee have their own. */
const STEPS = 40, LENGTHS = 12;

function lengthsOf({ outline, top, foot }: Solid['prisms'][number], { way, start, length }: Frame, shrunk: number): At[][] {
    const along = outline.map(([x, y]) => x * way.x + y * way.y - start), off = outline.map(([x, y]) => y * way.x - x * way.y), by = shrunk * TICKS_PER_INCH;
    const [from, to] = [Math.min(...along) + by, Math.max(...along) - by], [low, high] = [Math.min(...off) + by, Math.max(...off) - by];
    const place = (u: number, v: number, z: number): At => ({ x: (u + start) * way.x - v * way.y, y: (u + start) * way.y + v * way.x, z });
    return Array.from({ length: LENGTHS }, (_, i) => {
        // a hair of its own on either side of the middle, where a knee is cut
        const ends = [i, i + 1].map((n, k) => from + (to - from) * n / LENGTHS + (n === LENGTHS / 2 ? (k === 0 ? 1 : -1) * Math.max(1, length * 1e-6) : 0));
        return ends.flatMap(u => [low, high].flatMap(v => [top + by, foot - by].map(z => place(u, v, z))));
    });
}

/** Cubic inches that two have in common. */
export function inEachOther(some: Mesh, others: Mesh): number {
    let volume = 0;
    for (const one of some) for (const other of others) if (near(one, other)) volume += one.is.intersect(other.is).volume();
    return volume;
}

function near({ box: a }: Mesh[number], { box: b }: Mesh[number]): boolean {
    return [0, 1, 2].every(axis => a.min[axis]! < b.max[axis]! && b.min[axis]! < a.max[axis]!);
}
