import { crossing, distanceFrom, turn } from '../plane/line.ts';
import { isBeside, nameOfLine, type WalkedEdge } from './coffer-walks.ts';
import type { WalkedCoffer } from './coffers.ts';
import { ROUNDING } from './faceless.ts';
import type { Trouble } from './troubles.ts';
import type { Unit } from './unit.ts';

/**
 * Corners of two lines that end at each other, as of a ring, which stick out through a wall or through what runs along it: their centers meet within the
 * room, and their faces outside of it. Square to a wall the coffer between is too narrow before that; at a slant nothing else tells.
 */
export function cornersOutside(coffers: readonly WalkedCoffer[], unit: Unit, troubles: Trouble[]): void {
    const near = ROUNDING * unit.perTick;
    for (const { outer, holes } of coffers) {
        const loops = [outer, ...holes], edges = loops.flat();
        for (const loop of loops) loop.forEach((after, i) => {
            const before = loop.at(i - 1)!, [line, other] = [before, after].map(nameOfLine);
            if (line === undefined || other === undefined || turn(before.line, after.line) >= 0) return;
            for (const edge of edges) {
                const beyond = 0 - distanceFrom(edge.line, after.from);
                if (edge === before || edge === after || beyond <= near) continue;
                if (!isThrough(before, before.from, edge) && !isThrough(after, after.to, edge)) continue;
                troubles.push({ kind: 'sticks-out', line, other, through: edge.flanks[0]!.of.name, by: Math.ceil(beyond / unit.perTick) });
            }
        });
    }
}

/** Whether an edge of the corner, which begins on this side of another edge, leaves through it. */
function isThrough({ line }: WalkedEdge, begins: WalkedEdge['from'], edge: WalkedEdge): boolean {
    const at = distanceFrom(edge.line, begins) >= 0 ? crossing(line, edge.line) : undefined;
    return at !== undefined && isBeside(edge, at);
}
