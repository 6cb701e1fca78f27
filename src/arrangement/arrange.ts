import { isSimple, twiceArea } from '../plane/polygon.ts';
import { carriersOf, type WallCarrier } from './carriers.ts';
import { cofferLoops } from './coffer-walks.ts';
import { cofferOf, coffersAlong, edgesByFlank, numberedCoffers, type EdgesOf } from './coffers.ts';
import { flankWalks } from './flank-walks.ts';
import { jointsOf } from './joints.ts';
import { stripsOfLine } from './line-strips.ts';
import { meetingsOf } from './meetings.ts';
import type { Arrangement, Piece } from './model.ts';
import type { Plan } from './plan.ts';
import { cleatOf, sideOf, sideRuns, type SideRun } from './sides.ts';
import { trimsOf } from './trims.ts';
import type { Trouble } from './troubles.ts';
import { unitFor, type Unit } from './unit.ts';
import { stripsOfWalls } from './wall-strips.ts';

/**
 * Works a plan out: coffers, every piece with its place, and the joints between them. Never throws. Where a plan cannot be built, or is
 * of a kind that is not worked out, troubles say so, and there is nothing else: no wrong figure. Joints are left out where nobody wants them.
 */
export function arrange(plan: Plan, withJoints = true): Arrangement {
    const troubles: Trouble[] = [];
    const unit = unitFor(plan);
    const { walls, lines } = carriersOf(plan.walls, plan.lines, unit);
    roomTroubles(plan, walls, troubles);
    if (troubles.length > 0) return nothing(troubles);
    const meetings = meetingsOf(plan, walls, lines, troubles);
    if (troubles.length > 0) return nothing(troubles);
    const walks = flankWalks(plan, walls, meetings, troubles);
    const loops = cofferLoops(walks, unit, troubles);
    if (troubles.length > 0) return nothing(troubles);

    const coffers = numberedCoffers(loops);
    const runs = walks.flatMap(sideRuns), edges = edgesByFlank(coffers);
    const sides = new Map(runs.flatMap(run => withCoffers(run, sideOf(run, unit), edges, unit)));
    const cleats = new Map(runs.flatMap(run => withCoffers(run, cleatOf(run, unit), edges, unit)));
    const trims = (plan.trims ?? []).flatMap(trim => coffers.flatMap(coffer => trimsOf(coffer, trim, unit)));
    const pieces = [
        ...sides.values(), ...cleats.values(), ...meetings.runs.flatMap(run => stripsOfLine(run, plan.clearance, unit)),
        ...stripsOfWalls(walls, unit), ...trims.flat(),
    ];
    return { coffers: coffers.map(coffer => cofferOf(coffer, unit)), pieces, joints: withJoints ? jointsOf({ pieces, sides, trims, walls }) : [], troubles };
}

function nothing(troubles: readonly Trouble[]): Arrangement {
    return { coffers: [], pieces: [], joints: [], troubles };
}

function roomTroubles(plan: Plan, walls: readonly WallCarrier[], troubles: Trouble[]): void {
    for (const wall of plan.walls) if (!walls.some(carrier => carrier.wall === wall)) troubles.push({ kind: 'wall-without-length', wall: wall.name });
    if (troubles.length > 0) return;
    const corners = walls.map(wall => wall.start);
    if (!isSimple(corners)) troubles.push({ kind: 'room-crosses-itself' });
    else if (twiceArea(corners) < 0n) troubles.push({ kind: 'room-counterclockwise' });
}

function withCoffers(run: SideRun, piece: Piece | undefined, edges: EdgesOf, unit: Unit): [SideRun, Piece][] {
    return piece ? [[run, { ...piece, coffers: coffersAlong(run.flank, run.face, edges, unit) }]] : [];
}
