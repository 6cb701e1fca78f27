import { planBoards } from '../../cutting/first-plan.ts';
import type { BoardPlan } from '../../cutting/model.ts';
import { restToCut, withCutBoards } from '../../cutting/rest.ts';
import { atOnce, type Steps } from '../../plain/steps.ts';
import { sawOrder, type SawOrder } from '../../sawing/index.ts';
import { shopOf } from '../../pipeline/shop.ts';
import type { Proving, RoomOnPage } from '../page.ts';

/** The boards of a whole house: what is cut already, and a plan of the rest. */
export interface HouseBoards {
    readonly plan: BoardPlan;
    readonly order: SawOrder;
    /** Undefined where nobody looks. */
    readonly proving?: Proving;
    readonly stopped?: true;
}

/** As the room's host knows it, which may have looked for a cheaper plan; else a good plan at once. */
export function boardsOfHouse(room: RoomOnPage): HouseBoards {
    return atOnce(boardsInSteps(room));
}

/** The same step by step. */
export function* boardsInSteps(room: RoomOnPage): Steps<HouseBoards> {
    const { job } = room.layout.room;
    const known = room.boards;
    const plan = known?.plan ?? firstPlan(room.house);
    yield;
    return { plan, order: sawOrder(plan, job), ...known?.proving && { proving: known.proving }, ...known?.stopped && { stopped: known.stopped } };
}

function firstPlan(house: readonly RoomOnPage[]): BoardPlan {
    const rooms = house.map(each => each.layout.room);
    const rest = restToCut(house.map(each => ({ room: each.layout.room, pieces: each.takeOff.pieces })));
    const job = rooms[0]?.job;
    const pieces = rooms.flatMap(room => [...rest.pieces(room)]);
    const plan = job ? planBoards(pieces, job, [], shopOf(rooms, job)) : { stocks: [], costs: [], unpriced: [], unplaced: [] };
    return withCutBoards(plan, rest, rooms);
}
