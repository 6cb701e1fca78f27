import type { Ceiling } from '../ceiling/model.ts';
import { planBoards } from '../cutting/first-plan.ts';
import type { BoardPlan } from '../cutting/model.ts';
import { compare, type Comparison } from '../estimate/compare.ts';
import { estimateOf, type Part } from '../estimate/estimate.ts';
import type { Estimate } from '../estimate/model.ts';
import type { Alternate } from '../job/alternate.ts';
import type { JobSettings, Room } from '../job/model.ts';
import type { Rates } from '../job/rates.ts';
import type { PricedRoom } from '../estimate/labor.ts';
import { sawOrder } from '../sawing/saw-order.ts';
import type { Piece } from '../takeoff/model.ts';
import { newFindings } from './alternates.ts';
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

/** Rooms of one job, priced together, each by the rates that hold for it. Kept by identity of the rooms, as everything here. */
export function price(rooms: readonly Room[], job: JobSettings): Priced {
    const [first] = rooms;
    if (!first) return priceOf(rooms, job);
    const known = kept.get(first) ?? [];
    kept.set(first, known);
    let found = known.find(one => one.job === job && one.rooms.length === rooms.length && one.rooms.every((room, i) => room === rooms[i]));
    if (!found) {
        found = { rooms, job, priced: priceOf(rooms, job) };
        known.push(found);
        if (known.length > MOST_KEPT) known.shift();
    }
    return found.priced;
}
const kept = new WeakMap<Room, { readonly rooms: readonly Room[]; readonly job: JobSettings; readonly priced: Priced }[]>();
/** A house with more alternates than a client is ever shown. */
const MOST_KEPT = 24;

function priceOf(rooms: readonly Room[], job: JobSettings): Priced {
    const ceilings = rooms.flatMap(room => layoutOf(room).ceiling ?? []);
    const priced = ceilings.map(ceiling => ({ ceiling, takeOff: takeOffOf(ceiling) }));
    const pieces = priced.flatMap(({ takeOff }) => takeOff.pieces);
    const plan = planBoards(pieces, job);
    return {
        ceilings, pieces, plan,
        estimate: estimateOf({ parts: byRates(priced), plan, setUps: sawOrder(plan, job).setUps.total }, job),
        left: rooms.filter(room => !layoutOf(room).ceiling).map(room => room.name),
    };
}

/** Rooms under the same rates together. */
function byRates(rooms: readonly PricedRoom[]): Part[] {
    const parts = new Map<Rates, PricedRoom[]>();
    for (const priced of rooms) {
        const { rates } = priced.ceiling.room;
        parts.set(rates, [...parts.get(rates) ?? [], priced]);
    }
    return [...parts].map(([rates, own]) => ({ rates, rooms: own }));
}

/** An alternate priced beside the rooms as they are. */
export interface PricedAlternate {
    readonly alternate: Alternate;
    readonly priced: Priced;
    readonly comparison: Comparison;
    /** Errors that the job itself has not. */
    readonly errors: number;
}

export function priceWith(alternate: Alternate, rooms: readonly Room[], job: JobSettings): PricedAlternate {
    const priced = price(roomsWith(rooms, alternate), job);
    const errors = alternate.rooms.flatMap(changed => newFindings(changed, alternate.at.uri, layoutOf)).filter(({ severity }) => severity === 'error').length;
    return { alternate, priced, comparison: compare(price(rooms, job), priced), errors };
}

/** The rooms as an alternate has them. */
export function roomsWith(rooms: readonly Room[], alternate: Alternate): Room[] {
    return rooms.map(room => alternate.rooms.find(({ instead }) => instead.key === room.key)?.room ?? room);
}
