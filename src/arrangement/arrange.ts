import { isSimple, twiceArea } from '../plane/polygon.ts';
import { carriersOf, type WallCarrier } from './carriers.ts';
import { cofferLoops } from './coffer-walks.ts';
import { cofferOf, coffersAlong, edgesByFlank, numberedCoffers } from './coffers.ts';
import { flankWalks } from './flank-walks.ts';
import { grazingTroubles } from './grazing.ts';
import { jointsOf } from './joints.ts';
import { lineRuns } from './line-runs.ts';
import { stripsOfLine } from './line-strips.ts';
import { meetingsOf } from './meetings.ts';
import type { Arrangement, Joint, LineRun, Piece } from './model.ts';
import type { Plan } from './plan.ts';
import { cleatOf, sideOf, sideRuns, type SideRun } from './sides.ts';
import { trimsOf } from './trims.ts';
import type { Trouble } from './troubles.ts';
import { unitFor } from './unit.ts';
import { stripsOfWalls } from './wall-strips.ts';

/**
 * Works a plan out: coffers, every piece with its place, and the joints between them. Never throws. Where a plan cannot be built, or is
 * of a kind that is not worked out, troubles say so, and there is nothing else: no wrong figure. Joints are looked for when somebody asks
 * for them: at a keystroke nobody does.
 */
export function arrange(plan: Plan): Arrangement {
    const troubles: Trouble[] = [];
    const unit = unitFor(plan);
    const { walls, lines } = carriersOf(plan.walls, plan.lines, unit);
    roomTroubles(plan, walls, troubles);
    if (troubles.length > 0) return nothing(troubles);
    const meetings = meetingsOf(plan, walls, lines, troubles);
    if (troubles.length > 0) return nothing(troubles);
    const walks = flankWalks(plan, walls, meetings, troubles);
    const loops = cofferLoops(walks, unit, troubles);
    if (troubles.length === 0) grazingTroubles(meetings.runs, walls, unit, troubles);
    if (troubles.length > 0) return nothing(troubles);

    const coffers = numberedCoffers(loops);
    const runs = walks.flatMap(sideRuns), edges = edgesByFlank(coffers);
    const sides = new Map<SideRun, Piece>(), cleats: Piece[] = [];
    for (const run of runs) {
        const along = coffersAlong(run.flank, run.face, edges, unit), side = sideOf(run, along, unit), cleat = cleatOf(run, along, unit);
        if (side) sides.set(run, side);
        if (cleat) cleats.push(cleat);
    }
    const trims = (plan.trims ?? []).flatMap(trim => coffers.flatMap(coffer => trimsOf(coffer, trim, unit)));
    const pieces = [
        ...sides.values(), ...cleats, ...meetings.runs.flatMap(run => stripsOfLine(run, plan.clearance, unit)),
        ...stripsOfWalls(walls, unit), ...trims.flat(),
    ];
    let joints: Joint[] | undefined;
    return {
        coffers: coffers.map(coffer => cofferOf(coffer, unit)), pieces, troubles,
        get joints() { return joints ??= jointsOf({ pieces, sides, trims, walls }); },
    };
}

/** What every line meets on its way, in the order of the plan, and nothing of its pieces. None where there are troubles. */
export function runsOf(plan: Plan): { readonly runs: readonly LineRun[]; readonly troubles: readonly Trouble[] } {
    const troubles: Trouble[] = [];
    const unit = unitFor(plan);
    const { walls, lines } = carriersOf(plan.walls, plan.lines, unit);
    roomTroubles(plan, walls, troubles);
    if (troubles.length > 0) return { runs: [], troubles };
    const meetings = meetingsOf(plan, walls, lines, troubles);
    return { runs: troubles.length > 0 ? [] : lineRuns(meetings, unit), troubles };
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
