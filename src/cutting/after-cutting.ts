import type { Room } from '../job/model.ts';
import type { BoardPlan, Money } from './model.ts';
import { sumMoney } from './money.ts';
import { boardsTaken, type RoomToCut } from './rest.ts';

/** What is bought for a house of which something is cut or spoiled, beside what would be bought if nothing were. One sum a currency each. */
export interface AfterCutting {
    /** Boards that are cut, and pieces that are spoiled. */
    readonly boards: number;
    readonly spoiled: number;
    /** What the boards that are cut were bought for; those that were on hand, or left of another, were not. */
    readonly bought: readonly Money[];
    /** Of how many nobody says the price. */
    readonly unpriced: number;
    /** What the rest still costs. */
    readonly toBuy: readonly Money[];
    /** Both together, and what a plan of all of it buys, from the first board on. */
    readonly together: readonly Money[];
    readonly planned: readonly Money[];
}

/**
 * Undefined where nothing is cut and nothing spoiled.
 * @param shop the rooms of all houses that share the boards on hand
 * @param rest the plan of what is still to be cut
 * @param planned the plan of all of it, as if nothing were cut
 */
export function afterCutting(rooms: readonly Room[], shop: readonly RoomToCut[], rest: BoardPlan, planned: BoardPlan): AfterCutting | undefined {
    const boards = rooms.reduce((sum, room) => sum + room.cutBoards.length, 0), spoiled = rooms.reduce((sum, room) => sum + room.spoiled.length, 0);
    if (boards + spoiled === 0) return undefined;
    const taken = boardsTaken(shop).filter(({ room, from }) => rooms.includes(room) && from === 'bought');
    const bought = sumMoney(taken.flatMap(({ price }) => price ?? []));
    return {
        boards, spoiled, bought, unpriced: taken.filter(({ price }) => !price).length, toBuy: rest.costs,
        together: sumMoney([...bought, ...rest.costs]), planned: planned.costs,
    };
}
