import type { Ceiling } from '../ceiling/model.ts';
import type { BoardPlan } from '../cutting/model.ts';
import { compare, type Comparison } from '../estimate/compare.ts';
import { estimateOf, type Part } from '../estimate/estimate.ts';
import type { Estimate } from '../estimate/model.ts';
import type { Alternate } from '../job/alternate.ts';
import type { JobSettings, Room } from '../job/model.ts';
import type { PricedRoom } from '../estimate/labor.ts';
import type { Rational } from '../quantity/rational.ts';
import { sawOrder } from '../sawing/saw-order.ts';
import type { Piece } from '../takeoff/model.ts';
import type { FileContent } from '../job/file.ts';
import { alternateFindings } from './alternate-findings.ts';
import { layoutOf, takeOffOf } from './inspect.ts';
import { firstPlanInSteps, firstPricePlans, roomsWith, type PricePlans } from './price-plans.ts';
import { toldAs, uncomputed, type Standing, type Told } from './standing.ts';
import { grouped } from '../plain/groups.ts';
import type { Steps } from '../plain/steps.ts';

/** Rooms of one job with what it takes to build them and what that costs. */
export interface Priced {
    readonly ceilings: readonly Ceiling[];
    readonly pieces: readonly Piece[];
    readonly plan: BoardPlan;
    readonly estimate: Estimate;
    /** Rooms that could not be laid out, and so are in none of it. */
    readonly left: readonly string[];
}

/**
 * Rooms of one job, priced together, each by the rates that hold for it, with these boards; with a plan made at once where none is given. Kept
 * by identity of all of it.
 */
export function price(rooms: readonly Room[], job: JobSettings, plan?: BoardPlan): Priced {
    return priceKept(rooms, job, plan) ?? keep({ rooms, job, plan, priced: priceOf(rooms, job, plan ?? firstPricePlans(rooms, [], job).plan) });
}

/** The same with a plan made at once, in steps. */
export function* priceInSteps(rooms: readonly Room[], job: JobSettings): Steps<Priced> {
    const known = priceKept(rooms, job, undefined);
    if (known) return known;
    const plan = yield* firstPlanInSteps(rooms, job);
    yield;
    return keep({ rooms, job, plan: undefined, priced: priceOf(rooms, job, plan) });
}

function priceKept(rooms: readonly Room[], job: JobSettings, plan: BoardPlan | undefined): Priced | undefined {
    const known = rooms[0] && kept.get(rooms[0]);
    const isSame = (own: readonly Room[]): boolean => own.length === rooms.length && own.every((room, i) => room === rooms[i]);
    return known?.find(one => one.job === job && one.plan === plan && isSame(one.rooms))?.priced;
}

function keep(one: Kept): Priced {
    const [first] = one.rooms;
    if (!first) return one.priced;
    const known = kept.get(first) ?? [];
    kept.set(first, known);
    known.push(one);
    if (known.length > MOST_KEPT) known.shift();
    return one.priced;
}

/** What it is sold for, exact; undefined where something of it has no rate or could not be laid out, since a part is no price. */
export function wholePrice({ estimate: { sums, currency, missing }, left }: Priced): { readonly amount: Rational; readonly currency: string } | undefined {
    return missing.length === 0 && left.length === 0 ? { amount: sums.total, currency } : undefined;
}

interface Kept { readonly rooms: readonly Room[]; readonly job: JobSettings; readonly plan: BoardPlan | undefined; readonly priced: Priced }
const kept = new WeakMap<Room, Kept[]>();
/** A house with more alternates than a client is ever shown. */
const MOST_KEPT = 24;

function priceOf(rooms: readonly Room[], job: JobSettings, plan: BoardPlan): Priced {
    const ceilings = rooms.flatMap(room => layoutOf(room).ceiling ?? []);
    const priced = ceilings.map(ceiling => ({ ceiling, takeOff: takeOffOf(ceiling) }));
    const pieces = priced.flatMap(({ takeOff }) => takeOff.pieces);
    return {
        ceilings, pieces, plan,
        estimate: estimateOf({ parts: byRates(priced), plan, setUps: sawOrder(plan, job).setUps.total }, job),
        left: rooms.filter(room => !layoutOf(room).ceiling).map(room => room.name),
    };
}

/** Rooms under the same rates together. */
function byRates(rooms: readonly PricedRoom[]): Part[] {
    return [...grouped(rooms, ({ ceiling }) => ceiling.room.rates)].map(([rates, own]) => ({ rates, rooms: own }));
}

/** An alternate priced beside the rooms as they are. */
export interface PricedAlternate {
    readonly alternate: Alternate;
    readonly priced: Priced;
    readonly comparison: Comparison;
    /** What is wrong with it, or not computed, and is not so with the job itself; the errors first. */
    readonly told: readonly Told[];
}

/** How an alternate is looked at. `plans`: plans made at once where none are given. `fileOf`: for what the dry fit finds, which takes longer. */
interface Looking { readonly plans?: PricePlans; readonly nameOf: (uri: string) => string; readonly fileOf?: (uri: string) => FileContent | undefined }

export function priceWith(alternate: Alternate, rooms: readonly Room[], job: JobSettings, { plans, nameOf, fileOf }: Looking): PricedAlternate {
    const priced = price(roomsWith(rooms, alternate), job, plans?.alternates.get(alternate));
    const told = alternateFindings(alternate, fileOf).filter(({ allowed }) => !allowed).map(finding => toldAs(finding, nameOf));
    const isError = ({ severity }: Told): boolean => severity === 'error';
    return {
        alternate, priced, comparison: compare(price(rooms, job, plans?.plan), priced), told: [...told.filter(isError), ...told.filter(one => !isError(one))],
    };
}

/** What keeps an alternate from being built, beside what keeps the job from it. */
export function alternateStanding({ told }: Pick<PricedAlternate, 'told'>): Standing {
    return { errors: told.filter(({ severity }) => severity === 'error'), ...uncomputed(told), beforeCutting: [] };
}
