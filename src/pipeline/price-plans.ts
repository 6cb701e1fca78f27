import type { BoardPlan } from '../cutting/model.ts';
import { questionsInSteps, questionsOf, type Questions, type Solve } from '../cutting/questions.ts';
import { apartOf, ROUGHLY } from '../cutting/shop.ts';
import type { Alternate } from '../job/alternate.ts';
import type { JobSettings, Room } from '../job/model.ts';
import type { Steps } from '../plain/steps.ts';
import type { Piece } from '../takeoff/model.ts';
import { layoutOf, takeOffOf } from './inspect.ts';
import { shopOf } from './shop.ts';

/** The boards that prices are reckoned by: of the job as if nothing were cut yet, and of each alternate. */
export interface PricePlans { readonly plan: BoardPlan; readonly alternates: ReadonlyMap<Alternate, BoardPlan> }

/**
 * @param before the plans of the houses before this one: what they take from the boards on hand is gone
 * @param solve the same that the boards of the house are looked for with: then the boards of the price are those that are bought
 */
export async function pricePlans(
    rooms: readonly Room[], alternates: readonly Alternate[], job: JobSettings, before: readonly BoardPlan[],
    solve: Solve,
): Promise<PricePlans> {
    const questions = (of: readonly Room[]): Questions => questionsFor(of, job, before);
    const [plan, ...beside] = await solve(questions(rooms), alternates.map(alternate => questions(roomsWith(rooms, alternate))));
    return { plan, alternates: new Map(alternates.map((alternate, i) => [alternate, beside[i]!])) };
}

/** Plans at once. */
export function firstPricePlans(rooms: readonly Room[], alternates: readonly Alternate[], job: JobSettings): PricePlans {
    const planOf = (of: readonly Room[]): BoardPlan => questionsFor(of, job, []).first;
    return { plan: planOf(rooms), alternates: new Map(alternates.map(alternate => [alternate, planOf(roomsWith(rooms, alternate))])) };
}

/** A plan at once, in steps. */
export function* firstPlanInSteps(rooms: readonly Room[], job: JobSettings): Steps<BoardPlan> {
    return (yield* questionsInSteps(piecesOf(rooms), job, [], shopOf(rooms, job))).first;
}

/** Board after board and no more: for whoever wants to know about how much it comes to, in a tenth of the time. */
export function roughPlan(rooms: readonly Room[], job: JobSettings): BoardPlan {
    return questionsOf(piecesOf(rooms), job, [], { ...ROUGHLY, apart: apartOf(rooms) }).first;
}

function questionsFor(rooms: readonly Room[], job: JobSettings, before: readonly BoardPlan[]): Questions {
    return questionsOf(piecesOf(rooms), job, before, shopOf(rooms, job));
}

function piecesOf(rooms: readonly Room[]): Piece[] {
    return rooms.flatMap(room => layoutOf(room).ceiling ?? []).flatMap(ceiling => takeOffOf(ceiling).pieces);
}

/** The rooms as an alternate has them. */
export function roomsWith(rooms: readonly Room[], alternate: Alternate): Room[] {
    return rooms.map(room => alternate.rooms.find(({ instead }) => instead.key === room.key)?.room ?? room);
}
