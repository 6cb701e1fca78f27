import { crossing, directionOf, distanceFrom, offset, turn } from '../plane/line.ts';
import { lengthOf, reach } from '../plane/point.ts';
import { isBeside, nameOfLine, type WalkedEdge } from './coffer-walks.ts';
import type { WalkedCoffer } from './coffers.ts';
import { ROUNDING } from './faceless.ts';
import type { Trim } from './plan.ts';
import type { Trouble } from './troubles.ts';
import type { Unit } from './unit.ts';

/**
 * Where a beam leaves too little for the trim: at outside corners, and at edges of its coffer that the miters of their own trim use up.
 */
export function crowdedCorners(coffers: readonly WalkedCoffer[], trims: readonly Trim[], unit: Unit, troubles: Trouble[]): void {
    const thick = Math.max(0, ...trims.map(({ thickness }) => thickness)) * unit.perTick;
    if (thick === 0) return;
    outsideCorners(coffers, thick, unit, troubles);
    shortEdges(coffers, thick, unit, troubles);
}

/**
 * Outside corners, of a chimney breast or the mouth of a bay, that a beam passes so near in its coffer that the trim round the corner and the
 * trim along the beam are in each other. What stands there without a beam, the walls do among themselves: no other place of a line mends that.
 */
function outsideCorners(coffers: readonly WalkedCoffer[], thick: number, unit: Unit, troubles: Trouble[]): void {
    for (const { outer, holes } of coffers) {
        const loops = [outer, ...holes], edges = loops.flat();
        for (const loop of loops) loop.forEach((after, i) => {
            const before = loop.at(i - 1)!;
            if (turn(before.line, after.line) >= 0) return;
            const tip = crossing(offset(before.line, thick), offset(after.line, thick));
            for (const edge of tip ? edges : []) {
                if (edge === before || edge === after) continue;
                const leaves = distanceFrom(edge.line, after.from), lacks = thick - distanceFrom(edge.line, tip!);
                if (lacks <= ROUNDING * unit.perTick || leaves < 0 || !isBeside(edge, tip!)) continue;
                const line = [edge, after, before].map(nameOfLine).find(name => name !== undefined);
                if (line === undefined) continue;
                const wall = [before, after, edge].flatMap(({ flanks }) => flanks).find(({ of }) => of.name !== line)?.of.name ?? line;
                troubles.push({ kind: 'crowds', line, wall, leaves: Math.round(leaves / unit.perTick), wants: Math.ceil((leaves + lacks) / unit.perTick) });
            }
        });
    }
}

/**
 * Edges between two inside corners, one of them off square, that are shorter than what the miters at their ends take off the face: a line that ends
 * beside the corner of two walls. Nothing could stand there, and the trims beside it would run into each other. Between square
 * corners the coffer itself is too narrow, which the dry fit tells.
 */
function shortEdges(coffers: readonly WalkedCoffer[], thick: number, unit: Unit, troubles: Trouble[]): void {
    for (const { outer, holes } of coffers) for (const loop of [outer, ...holes]) loop.forEach((edge, i) => {
        const before = loop.at(i - 1)!, after = loop[(i + 1) % loop.length]!, face = offset(edge.line, thick);
        if (turn(before.line, edge.line) <= 0 || turn(edge.line, after.line) <= 0 || isSquare(before, edge) && isSquare(edge, after)) return;
        const from = crossing(offset(before.line, thick), face), to = crossing(face, offset(after.line, thick));
        const lacks = from && to ? 0 - reach(from, to, directionOf(edge.line)) : 0;
        const line = [before, after, edge].map(nameOfLine).find(name => name !== undefined);
        if (lacks <= ROUNDING * unit.perTick || line === undefined) return;
        const leaves = reach(edge.from, edge.to, directionOf(edge.line)), along = edge.flanks[0]!.of.name;
        troubles.push({ kind: 'shortens', line, along, leaves: Math.round(leaves / unit.perTick), wants: Math.ceil((leaves + lacks) / unit.perTick) });
    });
}

/** Within a thousandth of a degree. */
function isSquare({ line: { a, b } }: WalkedEdge, { line }: WalkedEdge): boolean {
    return Math.abs(a * line.a + b * line.b) <= 2e-5 * lengthOf({ x: a, y: b }) * lengthOf({ x: line.a, y: line.b });
}
