import type { JobSettings } from '../job/model.ts';
import type { Piece } from '../takeoff/model.ts';
import type { BoardPlan } from './model.ts';
import { questionsOf } from './questions.ts';
import type { Shop } from './shop.ts';

/**
 * A good plan of the boards that the pieces come out of, at once: what is on hand is used first unless it is worth more than it
 * saves, then boards are bought, by cost where prices are known. Kerfs, end trim and the longest board are the job's. It can be
 * cut as it stands; nothing proves that none is cheaper. The same pieces always give the same plan.
 * @param before plans already made from the same stocks: the boards on hand that they use are gone.
 */
export function planBoards(pieces: readonly Piece[], job: JobSettings, before: readonly BoardPlan[] = [], shop?: Shop): BoardPlan {
    return questionsOf(pieces, job, before, shop).first;
}
