import { isSimple, twiceArea } from '../plane/polygon.ts';
import { carriersOf, type WallCarrier } from './carriers.ts';
import { cofferLoops } from './coffer-walks.ts';
import { cofferOf, coffersAlong, edgesByFlank, numberedCoffers } from './coffers.ts';
import { cornersOutside } from './corners-outside.ts';
import { crowdedCorners } from './crowded-corners.ts';
import { brokenStretches, facelessIn, turnedIn, withTurned } from './faceless.ts';
import { flankWalks } from './flank-walks.ts';
import { grazingTroubles } from './grazing.ts';
import { jointsOf } from './joints.ts';
import { lineRuns } from './line-runs.ts';
import { stripsOfLine } from './line-strips.ts';
import { meetingsOf, type Meetings } from './meetings.ts';
import { moldingOf } from './moldings.ts';
import type { Arrangement, Joint, LineRun, Piece } from './model.ts';
import { panelsOf } from './panels.ts';
import type { Plan } from './plan.ts';
import { cleatsOf, countedAlong, sideOf, sideRunOf, splicedStretches, type SideRun } from './sides.ts';
import { trimsOf } from './trims.ts';
import type { Trouble } from './troubles.ts';
import { unitFor, type Unit } from './unit.ts';
import { closeEnds } from './wall-ends.ts';
import { stripsOfWalls } from './wall-strips.ts';

/** Walls and lines as they meet, before a piece is cut. Where there are troubles, nothing of it is to be used. */
export interface Met {
    readonly unit: Unit; readonly walls: readonly WallCarrier[]; readonly meetings: Meetings;
    readonly troubles: readonly Trouble[];
}

/** What meets what, and where, of all that a plan says but how its pieces are spliced, and what blocking is shorter. */
export function meet(plan: Plan): Met {
    const troubles: Trouble[] = [], unit = unitFor(plan);
    const { walls, lines } = carriersOf(plan.walls, plan.lines, unit);
    closeEnds(walls, walls.length + 2 * lines.length);
    roomTroubles(plan, walls, troubles);
    const meetings = troubles.length > 0 ? NO_MEETINGS : meetingsOf(plan, walls, lines, troubles);
    return { unit, walls, meetings, troubles };
}
const NO_MEETINGS: Meetings = { runs: [], onWalls: new Map() };

/** What every line meets on its way, in the order of the plan, and nothing of its pieces. None where there are troubles. */
export function runsOf({ meetings, unit, troubles }: Met): LineRun[] {
    return troubles.length > 0 ? [] : lineRuns(meetings, unit);
}

/**
 * Works a plan out: coffers, every piece with its place, and the joints between them. Never throws. Where a plan cannot be built, or is
 * of a kind that is not worked out, troubles say so, and there is nothing else: no wrong figure. Joints are looked for when somebody asks
 * for them: at a keystroke nobody does. `like`: the same plan with its lines elsewhere by a hair, whose pieces it is to have; `met`: what meets what,
 * where that is known already.
 */
export function arrange(plan: Plan, { like, met = meet(plan) }: { readonly like?: Arrangement; readonly met?: Met | undefined } = {}): Arrangement {
    const { unit, walls, meetings } = met, troubles = [...met.troubles];
    if (troubles.length > 0) return nothing(troubles);
    const walks = flankWalks(plan, walls, meetings);
    const faceless = like?.faceless ?? facelessIn(walks, unit), loops = cofferLoops(walks, faceless, unit, troubles);
    if (troubles.length === 0) grazingTroubles(meetings.runs, walls, unit, troubles);
    if (troubles.length > 0) return nothing(troubles);

    const coffers = numberedCoffers(loops, troubles);
    if (!like && troubles.length === 0) cornersOutside(coffers, unit, troubles);
    if (!like && troubles.length === 0) crowdedCorners(coffers, plan.trims ?? [], unit, troubles);
    if (troubles.length > 0) return nothing(troubles);
    const stretches = brokenStretches(walks, faceless), turned = like?.turned ?? turnedIn(stretches, unit);
    const runs = splicedStretches(withTurned(stretches, turned), plan, unit).flatMap(sideRunOf), edges = edgesByFlank(coffers);
    const sides = new Map<SideRun, Piece>(), cleats: Piece[] = [], moldings: Piece[] = [];
    for (const run of runs) {
        const along = coffersAlong(run.flank, run.face, edges, unit), side = sideOf(run, along, unit);
        const molding = moldingOf(run, along, unit);
        if (side) sides.set(run, side);
        cleats.push(...cleatsOf(run, along, unit));
        if (molding) moldings.push(molding);
    }
    const trims = (plan.trims ?? []).flatMap(trim => coffers.flatMap(coffer => trimsOf(coffer, trim, unit)));
    const panels = plan.panel && panelsOf(plan.panel, coffers, unit, like?.panelCuts);
    const pieces = [
        ...sides.values(), ...countedAlong(cleats), ...meetings.runs.flatMap((run, i) => stripsOfLine(run, plan.lines[i]!, unit)),
        ...stripsOfWalls(walls, plan.walls, unit), ...moldings, ...trims.flat(), ...panels?.pieces ?? [],
    ];
    let joints: Joint[] | undefined;
    return {
        coffers: coffers.map(coffer => cofferOf(coffer, unit)), pieces, troubles, faceless, turned, panelCuts: panels?.cuts ?? new Map(),
        get joints() { return joints ??= jointsOf({ pieces, sides, trims, walls }); },
    };
}

function nothing(troubles: readonly Trouble[]): Arrangement {
    return { coffers: [], pieces: [], joints: [], troubles, faceless: new Map(), turned: new Set(), panelCuts: new Map() };
}

function roomTroubles(plan: Plan, walls: readonly WallCarrier[], troubles: Trouble[]): void {
    for (const wall of plan.walls) if (!walls.some(carrier => carrier.wall === wall)) troubles.push({ kind: 'wall-without-length', wall: wall.name });
    if (troubles.length > 0) return;
    const corners = walls.map(wall => wall.start);
    if (!isSimple(corners)) troubles.push({ kind: 'room-crosses-itself' });
    else if (twiceArea(corners) < 0n) troubles.push({ kind: 'room-counterclockwise' });
}
