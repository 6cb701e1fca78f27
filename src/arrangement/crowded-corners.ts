import { crossing, directionOf, distanceFrom, offset, turn } from '../plane/line.ts';
import { reach } from '../plane/point.ts';
import type { WalkedEdge } from './coffer-walks.ts';
import type { WalkedCoffer } from './coffers.ts';
import { ROUNDING } from './faceless.ts';
import type { Trim } from './plan.ts';
import type { Trouble } from './troubles.ts';
import type { Unit } from './unit.ts';

/**
 * Outside corners, of a chimney breast or the mouth of a bay, that a beam passes so near in its coffer that the trim round the corner and the
 * trim along the beam are in each other. What stands there without a beam, the walls do among themselves: no other place of a line mends that.
 */
export function crowdedCorners(coffers: readonly WalkedCoffer[], trims: readonly Trim[], unit: Unit, troubles: Trouble[]): void {
    const thick = Math.max(0, ...trims.map(({ thickness }) => thickness)) * unit.perTick;
    if (thick === 0) return;
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

function isBeside({ line, from, to }: WalkedEdge, point: WalkedEdge['from']): boolean {
    const way = directionOf(line), at = reach(from, point, way);
    return at > 0 && at < reach(from, to, way);
}

function nameOfLine({ flanks }: WalkedEdge): string | undefined {
    return flanks.find(({ of }) => of.kind === 'line')?.of.name;
}
