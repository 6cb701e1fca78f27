import createModule, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import type { Solid } from '../../src/dryfit/model.ts';
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

/** The piece where it stands, `shrunk` inches at every corner towards its middle, so that what only touches is not in each other. */
export function standing({ prisms }: Solid, shrunk: number): Mesh {
    return mesh(prisms.map(({ outline, top, foot }) => {
        const middleOf = (all: readonly number[]): number => (Math.min(...all) + Math.max(...all)) / 2;
        const cx = middleOf(outline.map(([x]) => inch(x))), cy = middleOf(outline.map(([, y]) => inch(y))), cz = inch(top + foot) / 2;
        const by = (value: number, middle: number): number => value - Math.sign(value - middle) * Math.min(shrunk, Math.abs(value - middle));
        const corners = outline.flatMap(([x, y]) => [top, foot].map((z): [number, number, number] => [by(inch(x), cx), by(inch(y), cy), by(inch(z), cz)]));
        return module!.Manifold.hull(corners);
    }));
}

/** All that it passes through from `from` to `to`, moves from its place. */
export function swept(parts: Mesh, from: Move, to: Move): Mesh {
    return mesh(parts.map(({ is }) => module!.Manifold.hull([is.translate(from), is.translate(to)])));
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
