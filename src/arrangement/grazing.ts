import { crossing, type Line } from '../plane/line.ts';
import { reach, type Point } from '../plane/point.ts';
import type { LineCarrier, WallCarrier } from './carriers.ts';
import { ROUNDING } from './faceless.ts';
import type { Run } from './meetings.ts';
import type { Trouble } from './troubles.ts';
import type { Unit } from './unit.ts';

/**
 * Lines whose center runs free, and which lie over the corner of a wall beside them, or over what runs round it: of a chimney breast, of the mouth
 * of a bay. A wall that does not cross the center can come into the beam from its side only, and then it has a corner there.
 */
export function grazingTroubles(runs: readonly Run[], walls: readonly WallCarrier[], unit: Unit, troubles: Trouble[]): void {
    const corners = walls.map((wall, i) => {
        const before = walls[(i + walls.length - 1) % walls.length]!, face = crossing(before.right.face, wall.right.face);
        return { wall, reaches: [wall.start, ...face ? [face] : []] };
    });
    for (const { carrier, start, end } of runs) {
        const along = reach(start.point, end.point, carrier.direction);
        for (const { wall, reaches } of corners) {
            const beside = reaches.filter(at => { const place = reach(start.point, at, carrier.direction); return place > 0 && place < along; });
            const by = Math.floor(within(carrier, beside) / unit.perTick);
            if (beside.length === 0 || by <= ROUNDING) continue;
            troubles.push({ kind: 'grazes', line: carrier.name, wall: wall.name, by });
            break;
        }
    }
}

/** How far what lies between these points reaches in between the faces of a line, from the nearer one. */
function within({ left, right }: LineCarrier, points: readonly Point[]): number {
    return Math.min(Math.max(...points.map(at => beside(left.face, at))), Math.max(...points.map(at => beside(right.face, at))));
}

/** How far a point lies to the left of a line. */
function beside({ a, b, c }: Line, { x, y }: Point): number {
    return (c - a * x - b * y) / Math.hypot(a, b);
}
