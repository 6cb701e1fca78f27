import { expect } from 'vitest';
import type { Ceiling } from '../../src/ceiling/model.ts';
import type { Solid } from '../../src/dryfit/model.ts';
import { dryFitOf } from '../../src/pipeline/inspect-closely.ts';
import type { Path } from '../../src/putup/model.ts';
import { putUp } from '../../src/putup/put-up.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { takeOffOf } from '../../src/takeoff/take-off.ts';
import { bentWay, inEachOther, standing, swept, type Mesh, type Move } from './swept.ts';

/** More than the tape rounds, presses push and spacers are tight. */
export const SHRUNK = 0.05, HAIR = 0.02, DEEP = 60;

/**
 * The order once more, by meshes: every piece of the list is put up once, after all that it waits for, on the way that is said; what it passes
 * through is free of all that is up. Gives how many were put up. `looked`: the ways that are looked at.
 */
export function replayed(ceiling: Ceiling, looked: (path: Path) => boolean = () => true): number {
    const { steps, stuck, before, cycle } = putUp(ceiling), solids = new Map(dryFitOf(ceiling).solids.map(solid => [solid.piece.id, solid]));
    expect([stuck, cycle]).toEqual([[], null]);
    const placings = steps.flatMap(step => step.placings), at = new Map(placings.map(({ piece }, i) => [piece.id, i]));
    expect([...at.keys()].sort()).toEqual(takeOffOf(ceiling).pieces.map(({ id }) => id).filter(id => solids.has(id)).sort());
    expect(placings.length).toBe(at.size);
    // the first bay is tried in one go, and of what is cut for the others nothing is up before it
    const kinds = steps.map(({ kind }) => kind), bay = kinds.indexOf('first-bay');
    expect(kinds.lastIndexOf('first-bay')).toBe(bay);
    if (bay >= 0) expect(kinds.slice(0, bay).filter(kind => kind !== 'blocking' && kind !== 'panel')).toEqual([]);
    // what stands for many pieces comes after all of theirs
    const last = new Map(at);
    for (const { first, then } of before) if (!at.has(then)) last.set(then, Math.max(last.get(then) ?? -1, at.get(first)!));
    for (const { first, then } of before) if (at.has(then)) expect(last.get(first)!, `${first} before ${then}`).toBeLessThan(at.get(then)!);
    const up: Mesh[] = [];
    for (const { piece, path } of placings) {
        const solid = solids.get(piece.id)!, own = standing(solid, SHRUNK);
        expect(path, piece.id).not.toBeNull();
        const way = looked(path!) ? wayOf(solid, path!) : [];
        for (const other of up) expect(inEachOther(way, other), piece.id).toBeLessThan(HAIR);
        up.push(own);
    }
    return placings.length;
}

/** All that a piece passes through on its way, as a mesh. */
export function wayOf(solid: Solid, path: Path): Mesh {
    const isBeside = path.moves.length <= 2 && path.moves.every(({ from: { shape } }) => shape === 'straight');
    return isBeside ? straightWay(standing(solid, SHRUNK), path) : bentWay(solid, path, SHRUNK, DEEP);
}

function straightWay(own: Mesh, { aside }: Path): Mesh {
    const beside: Move = [aside.x / TICKS_PER_INCH, aside.y / TICKS_PER_INCH, 0], below: Move = [beside[0], beside[1], DEEP];
    return [...swept(own, below, beside), ...swept(own, beside, [0, 0, 0])];
}
