import type { Ceiling } from '../ceiling/model.ts';
import { planBoards } from '../cutting/first-plan.ts';
import type { BoardPlan } from '../cutting/model.ts';
import { estimateOf } from '../estimate/estimate.ts';
import type { Estimate } from '../estimate/model.ts';
import type { Alternate } from '../job/alternate.ts';
import type { JobSettings, Room } from '../job/model.ts';
import type { Rates } from '../job/rates.ts';
import { sawOrder } from '../sawing/saw-order.ts';
import type { Piece } from '../takeoff/model.ts';
import { layoutOf, takeOffOf } from './inspect.ts';

/** Rooms of one job with what it takes to build them and what that costs. */
export interface Priced {
    readonly ceilings: readonly Ceiling[];
    readonly pieces: readonly Piece[];
    readonly plan: BoardPlan;
    readonly estimate: Estimate;
    /** Rooms that could not be laid out, and so are in none of it. */
    readonly left: readonly string[];
}

/** Rooms of one job, priced together. `plan`: their boards, where somebody has a better plan than the first one. */
export function price(rooms: readonly Room[], rates: Rates, job: JobSettings, plan?: BoardPlan): Priced {
    const ceilings = rooms.flatMap(room => layoutOf(room).ceiling ?? []);
    const priced = ceilings.map(ceiling => ({ ceiling, takeOff: takeOffOf(ceiling) }));
    const pieces = priced.flatMap(({ takeOff }) => takeOff.pieces);
    const boards = plan ?? planBoards(pieces, job);
    return {
        ceilings, pieces, plan: boards,
        estimate: estimateOf({ rooms: priced, plan: boards, setUps: sawOrder(boards, job).setUps.total }, rates, job),
        left: rooms.filter(room => !layoutOf(room).ceiling).map(room => room.name),
    };
}

/** The rooms as an alternate has them. */
export function roomsWith(rooms: readonly Room[], alternate: Alternate): Room[] {
    return rooms.map(room => alternate.rooms.find(({ instead }) => instead.key === room.key)?.room ?? room);
}
