import type { Effort } from './effort.ts';
import { Pricing } from './pricing.ts';
import { pieceCount, type CuttingProblem } from './problem.ts';

/** How many boards of each kind a plan may use, at least and at most. */
export interface Counts { readonly least: readonly number[]; readonly most: readonly number[] }

/** What every plan that costs less than `below` keeps to. */
export function allCounts(problem: CuttingProblem, below: number): Counts {
    const pieces = pieceCount(problem);
    return {
        least: problem.boards.map(() => 0),
        most: problem.boards.map(({ available, cost }) => Math.min(available ?? Infinity, pieces, cost > 0 ? Math.floor(below / cost) : Infinity)),
    };
}

/**
 * A cost that no plan within `counts` is below, for any worth of the pieces: all pieces are worth together what they are
 * worth, and no board carries more than its best content is worth. What the boards cost above that has to be paid besides.
 * Reckoned in whole numbers from end to end, so nothing is lost or won by rounding; undefined where that takes too large tables.
 */
export class VerifiedBound {
    private readonly pricing: Pricing;
    private readonly scale: number;

    /** @param ceiling what any bound is below: the cost of a plan */
    constructor(private readonly problem: CuttingProblem, ceiling: number, private readonly step: number, effort: Effort) {
        this.pricing = new Pricing(problem, problem.items.map(item => item.count), effort);
        // a power of two, so that dividing by it is exact; sums stay below 2^52
        this.scale = 2 ** Math.max(0, Math.min(24, Math.floor(50 - Math.log2(Math.max(1, ceiling)))));
    }

    of(values: ArrayLike<number>, { least, most }: Counts): number | undefined {
        const { items, boards } = this.problem;
        const whole = items.map((_, i) => Math.max(0, Math.floor(values[i]! * this.scale)));
        const worth = this.pricing.worthOfBoards(whole);
        if (!worth) return undefined;
        let sum = items.reduce((total, { count }, i) => total + count * whole[i]!, 0);
        boards.forEach(({ cost }, k) => {
            const over = cost * this.scale - worth[k]!;
            sum += over * (over > 0 ? least[k]! : most[k]!);
        });
        return Math.ceil(sum / this.scale / this.step) * this.step;
    }
}
