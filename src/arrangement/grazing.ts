import { crossing, type Line } from '../plane/line.ts';
import { reach, type Point } from '../plane/point.ts';
import type { LineCarrier, WallCarrier } from './carriers.ts';
import { ROUNDING } from './faceless.ts';
import type { Run } from './meetings.ts';
import type { Trouble } from './troubles.ts';
import type { Unit } from './unit.ts';

/**
 * Lines whose center runs free, and which lie over the corner of a wall beside them: of a chimney breast, of the mouth of a bay. A wall that
 * does not cross the center can come into the beam from its side only, and then it has a corner there.
 */
export function grazingTroubles(runs: readonly Run[], walls: readonly WallCarrier[], unit: Unit, troubles: Trouble[]): void {
    const corners = walls.flatMap((wall, i) => {
        const before = walls[(i + walls.length - 1) % walls.length]!, face = crossing(before.right.face, wall.right.face);
        return [{ wall, at: wall.start }, ...face ? [{ wall, at: face }] : []];
    });
    for (const { carrier, start, end } of runs) {
        const along = reach(start.point, end.point, carrier.direction);
        for (const { wall, at } of corners) {
            const place = reach(start.point, at, carrier.direction);
            const by = Math.floor(within(carrier, at) / unit.perTick);
            if (place <= 0 || place >= along || by <= ROUNDING) continue;
            troubles.push({ kind: 'grazes', line: carrier.name, wall: wall.name, by });
            break;
        }
    }
}

/** How far a point lies between the faces of a line, from the nearer one. */
function within({ left, right }: LineCarrier, at: Point): number {
    return Math.min(beside(left.face, at), beside(right.face, at));
}

/** How far a point lies to the left of a line. */
function beside({ a, b, c }: Line, { x, y }: Point): number {
    return (c - a * x - b * y) / Math.hypot(a, b);
}
