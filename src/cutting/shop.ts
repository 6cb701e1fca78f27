import type { JobSettings, Room } from '../job/model.ts';
import type { BoardPlan, Money } from './model.ts';

/** What a house says of how its boards are cut, beside its job. */
export interface Shop {
    /** Rooms that share no board with another. */
    readonly apart: ReadonlySet<string>;
    /** Where a set-up at the saw is worth something: how much, and how many a plan takes. */
    readonly setUps?: { readonly each: Money; count(plan: BoardPlan): number };
    /** Board after board and no more, where very many plans are held against each other. */
    readonly isRough?: boolean;
}

export const ANY_SHOP: Shop = { apart: new Set() };
/** For plans that are only held against each other. */
export const ROUGHLY: Shop = { ...ANY_SHOP, isRough: true };

/** Rooms whose boards are their own, as they say, or else the job. */
export function apartOf(rooms: readonly { readonly name: string; readonly boards?: Room['boards']; readonly job: Pick<JobSettings, 'boards'> }[]): ReadonlySet<string> {
    return new Set(rooms.filter(({ boards, job }) => (boards ?? job.boards)?.value === 'own').map(({ name }) => name));
}
