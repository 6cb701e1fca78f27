import type { Ceiling } from '../ceiling/model.ts';
import { atOnce, type Steps } from '../plain/steps.ts';
import type { Piece, TakeOff } from '../takeoff/model.ts';
import { pairsWithin, roomBodies, type Body } from './body.ts';
import { handless, misfits } from './gather.ts';
import { meetingOf, REACH, type Wrong } from './meetings.ts';
import { miscounts } from './miscounts.ts';
import type { DryFit, Fault, Solid } from './model.ts';
import { openings, undersides } from './openings.ts';
import type { Plan } from './places.ts';
import { bodiesOf, standingOf, type Standing } from './solids.ts';

/**
 * Puts the cut list of one room together and looks at it:
 *
 * - no two pieces are in each other, nor in the ceiling or a wall;
 * - where faces have to touch they touch, over all of the area they should; where a gap or a press is planned it is as planned;
 * - what the joints of the take-off name does meet; undersides are flush; every coffer opens to the size promised;
 * - every place has its piece, once.
 *
 * The form of each solid is that of its line of the list; its place, and what it should stand to, come from the layout.
 */
export function dryFit(ceiling: Ceiling, takeOff: TakeOff): DryFit {
    return atOnce(dryFitting(ceiling, takeOff));
}

/** The same step by step. */
export function* dryFitting(ceiling: Ceiling, takeOff: TakeOff): Steps<DryFit> {
    const standing = yield* standingOf.inSteps(takeOff, ceiling);
    yield;
    return yield* lookedAt(standing, takeOff);
}

/** The same, of solids that may have been moved: for tests of what is seen. */
export function examined(plan: Plan, takeOff: TakeOff, solids: readonly Solid[]): DryFit {
    return atOnce(lookedAt({ plan, solids, bodies: atOnce(bodiesOf(plan, solids)) }, takeOff));
}

/** Pairs that are looked at in one step: some tenths of a second on a busy machine. */
const PAIRS_AT_ONCE = 10_000;

function* lookedAt({ plan, solids, bodies }: Standing, takeOff: TakeOff): Steps<DryFit> {
    const { ceiling } = plan;
    const pairs = pairsWithin([...bodies, ...roomBodies(ceiling)], REACH);
    const wrongs: Wrong[] = [];
    const joined = new Map<Piece | string, Set<Piece | string>>();
    let joints = 0, gaps = 0;
    for (const [i, [a, b]] of pairs.entries()) {
        if (i % PAIRS_AT_ONCE === 0) yield;
        const { joint, gap, wrong } = meetingOf(a, b);
        if (joint) { joints++; (joined.get(a.is) ?? joined.set(a.is, new Set()).get(a.is)!).add(b.is); }
        if (gap) gaps++;
        wrongs.push(...wrong);
    }
    yield;
    wrongs.push(...unmet(takeOff, bodies, joined));
    const under = undersides(bodies, ceiling), open = openings(bodies, ceiling);
    const misfit = misfits(wrongs, ceiling.room.job.cutTo.value);
    // a coffer that is off because a piece round it is off is said by the piece
    const blamed = new Set(misfit.flatMap(({ piece, causes, alike }) => causes.length > 0 ? [piece, ...alike] : []));
    const faults: Fault[] = [
        ...miscounts(plan, takeOff), ...misfit, ...handless(bodies, misfit), ...under.faults,
        ...open.faults.filter(({ pieces }) => !pieces.some(piece => blamed.has(piece))),
    ];
    return {
        room: takeOff.room, solids, faults,
        looked: {
            pieces: solids.length, pairs: pairs.length, joints, gaps, undersides: under.looked, coffers: open.looked, allCoffers: ceiling.coffers.length,
        },
    };
}

/** Joints of the take-off whose pieces have nothing to do with each other where they stand. */
function unmet({ joints }: TakeOff, bodies: readonly Body[], joined: ReadonlyMap<Piece | string, ReadonlySet<Piece | string>>): Wrong[] {
    const byId = new Map(bodies.map(body => [(body.is as Piece).id, body]));
    return joints.flatMap(({ pieces }): Wrong[] => {
        const [a, b] = pieces.map(id => byId.get(id));
        if (!a || !b || joined.get(a.is)?.has(b.is) || joined.get(b.is)?.has(a.is)) return [];
        return [{ a, b, kind: 'area', ticks: 0 }];
    });
}
