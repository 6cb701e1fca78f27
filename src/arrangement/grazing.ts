import { crossing, offset, type Line } from '../plane/line.ts';
import { lengthOf, reach, type Point } from '../plane/point.ts';
import { isBeam, type Flank, type LineCarrier, type WallCarrier } from './carriers.ts';
import { ROUNDING } from './faceless.ts';
import type { Run } from './meetings.ts';
import { heightsOf } from './offsets.ts';
import type { Trouble } from './troubles.ts';
import type { Unit } from './unit.ts';

/**
 * Lines whose center runs free, and which lie over the corner of a wall beside them, or over what runs round it: of a chimney breast, of the mouth
 * of a bay. A wall that does not cross the center can come into the beam from its side only, and then it has a corner there. A bottom under
 * the sides stands out beyond the faces, and so do those of half beams, as far down as they hang; and a molding does.
 */
export function grazingTroubles(runs: readonly Run[], walls: readonly WallCarrier[], unit: Unit, troubles: Trouble[]): void {
    const corners = walls.map((wall, i) => {
        const before = walls[(i + walls.length - 1) % walls.length]!;
        const at = (edge: 'face' | 'bottom'): readonly Point[] => [before.right[edge]].flatMap(line => crossing(line, wall.right[edge]) ?? []);
        return {
            wall, faces: [wall.start, ...at('face')], bottoms: [wall.start, ...at('bottom')],
            top: Math.min(topOfBottom(before), topOfBottom(wall)), foot: Math.max(footOf(before), footOf(wall)),
        };
    });
    for (const { carrier, start, end } of runs) {
        const along = reach(start.point, end.point, carrier.direction), { top, foot } = bottomOf(carrier);
        const between = (points: readonly Point[]): Point[] => points.filter(at => {
            const place = reach(start.point, at, carrier.direction);
            return place > 0 && place < along;
        });
        for (const corner of corners) {
            const faces = between(corner.faces), bottoms = corner.top < foot && top < corner.foot ? between(corner.bottoms) : [];
            const by = Math.floor(Math.max(
                within(carrier, faces, ({ face }) => face),
                corner.foot > top ? within(carrier, faces, outermost) : 0,
                within(carrier, bottoms, ({ bottom }) => bottom),
                corner.foot > topOfMolding(carrier) ? within(carrier, faces, flank => edgeOfMolding(flank, unit)) : 0,
            ) / unit.perTick);
            if (by <= ROUNDING) continue;
            troubles.push({ kind: 'grazes', line: carrier.name, wall: corner.wall.name, by });
            break;
        }
    }
}

/** From the ceiling down, in ticks: how far what stands at the wall reaches. A wall and its band reach below all beams. */
function footOf({ perimeter }: WallCarrier): number {
    return isBeam(perimeter) ? perimeter.depth : Infinity;
}

function topOfBottom({ perimeter }: WallCarrier): number {
    return perimeter.kind === 'half-beam' ? heightsOf(perimeter).bottomTop : perimeter.kind === 'half-timber' ? 0 : Infinity;
}

/** Where its bottom hangs; a timber is all of it. */
function bottomOf({ beam }: LineCarrier): { top: number; foot: number } {
    return beam.kind === 'box' ? { top: heightsOf(beam).bottomTop, foot: beam.depth } : { top: 0, foot: beam.depth };
}

/** A molding stands out beyond the face as well, along the lower edge or under it. */
function topOfMolding({ beam }: LineCarrier): number {
    return beam.kind === 'box' ? beam.molding?.top ?? Infinity : Infinity;
}

function edgeOfMolding({ of, face }: Flank, { perTick }: Unit): Line {
    const molding = of.kind === 'line' && of.beam.kind === 'box' ? of.beam.molding : undefined;
    return molding ? offset(face, Math.round(molding.beyond * perTick)) : face;
}

function outermost({ face, bottom, offsets }: Flank): Line {
    return offsets.bottom > offsets.face ? bottom : face;
}

/** How far what lies between these points reaches in between the two edges of a line, from the nearer one. */
function within({ left, right }: LineCarrier, points: readonly Point[], edgeOf: (flank: Flank) => Line): number {
    if (points.length === 0) return 0;
    return Math.min(Math.max(...points.map(at => beside(edgeOf(left), at))), Math.max(...points.map(at => beside(edgeOf(right), at))));
}

/** How far a point lies to the left of a line. */
function beside({ a, b, c }: Line, { x, y }: Point): number {
    return (c - a * x - b * y) / lengthOf({ x: a, y: b });
}
