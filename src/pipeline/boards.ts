import type { BoardPlan } from '../cutting/model.ts';
import { questionsOf, type Questions } from '../cutting/questions.ts';
import { restToCut, withCutBoards, type RoomToCut } from '../cutting/rest.ts';
import type { JobSettings } from '../job/model.ts';
import { shopOf } from './shop.ts';

/** The rooms under one job, with what there is to cut in each. */
export interface HouseToCut { readonly job: JobSettings; readonly rooms: readonly RoomToCut[] }

/** The boards of one house: a plan at once, and what is to be asked to know how good it is and to find a better one. */
interface HouseBoards {
    readonly questions: Questions;
    /** The plan as it is told: boards that are cut already stand before those that any plan of the rest cuts. */
    whole(plan: BoardPlan): BoardPlan;
}

/**
 * The boards of houses that share a shop, one house after the other: what was cut for one is gone for all, and what the plan of
 * one takes from the boards on hand is gone for those after it.
 */
export class Boards {
    private readonly rest: ReturnType<typeof restToCut>;

    /** @param all every house of the shop, also those that no boards are wanted for now */
    constructor(all: readonly HouseToCut[]) {
        this.rest = restToCut(all.flatMap(house => house.rooms));
    }

    /** @param before the plans of the houses before this one, without the boards that were cut already */
    of({ job, rooms }: HouseToCut, before: readonly BoardPlan[]): HouseBoards {
        return {
            questions: questionsOf(rooms.flatMap(({ room }) => this.rest.pieces(room)), job, before, shopOf(rooms.map(({ room }) => room), job)),
            whole: plan => withCutBoards(plan, this.rest, rooms.map(({ room }) => room)),
        };
    }
}
