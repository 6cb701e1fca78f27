import { STEPS, type Effort } from './effort.ts';
import { Pricing } from './pricing.ts';
import type { SectionWorth } from './sections.ts';
import { pieceCount, type CuttingProblem } from './problem.ts';

/** How many boards of each kind a plan may use, at least and at most, and how many sections of some lengths. */
export interface Counts { readonly least: readonly number[]; readonly most: readonly number[]; readonly sections?: readonly SectionCount[] }
/** How many sections a plan may have that are at least as long as `from`. */
export interface SectionCount { readonly from: number; readonly least: number; readonly most: number }

/** What every plan that costs less than `below` keeps to. */
export function allCounts(problem: CuttingProblem, below: number): Counts {
    const pieces = pieceCount(problem);
    return {
        least: problem.boards.map(() => 0),
        most: problem.boards.map(({ available, cost }) => Math.min(available ?? Infinity, pieces, cost > 0 ? Math.floor(below / cost) : Infinity)),
    };
}

/** What all pieces are worth together, and what a board of each kind carries at most, in whole numbers: so many to one of cost. */
export interface Worth { readonly pieces: number; readonly boards: readonly number[]; readonly scale: number }

/**
 * A cost that no plan within `counts` is below, for any worth of the pieces: all pieces are worth together what they are
 * worth, and no board carries more than its best content is worth. What the boards cost above that has to be paid besides.
 * Reckoned in whole numbers from end to end, so nothing is lost or won by rounding; undefined where that takes too large tables.
 */
export class VerifiedBound {
    private readonly pricing: Pricing;
    private readonly scale: number;

    /** @param ceiling what any bound is below: the cost of a plan */
    constructor(private readonly problem: CuttingProblem, ceiling: number, private readonly step: number, private readonly effort: Effort) {
        this.pricing = new Pricing(problem, problem.items.map(item => item.count), effort);
        // a power of two, so that dividing by it is exact; sums stay below 2^52
        this.scale = 2 ** Math.max(0, Math.min(24, Math.floor(50 - Math.log2(Math.max(1, ceiling)))));
    }

    /** The limit that these values of the pieces make: undefined where that takes too large tables. */
    worthOf(values: ArrayLike<number>): Worth | undefined {
        const { items } = this.problem;
        this.effort.spent += STEPS.pass / 2 + items.length * STEPS.sorted;
        const whole = items.map((_, i) => Math.max(0, Math.floor(values[i]! * this.scale)));
        const boards = this.pricing.worthOfBoards(whole, []);
        return boards && { pieces: items.reduce((total, { count }, i) => total + count * whole[i]!, 0), boards: Array.from(boards), scale: this.scale };
    }

    /** @param worthOfSections what sections of the lengths in `counts` are worth by themselves; less than nothing where only so many may be cut */
    of(values: ArrayLike<number>, { least, most, sections = [] }: Counts, worthOfSections: readonly SectionWorth[] = []): number | undefined {
        const { items, boards } = this.problem;
        this.effort.spent += STEPS.pass / 2 + items.length * STEPS.sorted;
        const whole = items.map((_, i) => Math.max(0, Math.floor(values[i]! * this.scale)));
        const counted = sections.map((count, s) => ({ ...count, worth: Math.floor((worthOfSections[s]?.worth ?? 0) * this.scale) }))
            .filter(({ worth, most }) => worth > 0 || (worth < 0 && most < Infinity));
        const worth = this.pricing.worthOfBoards(whole, counted);
        if (!worth) return undefined;
        let sum = items.reduce((total, { count }, i) => total + count * whole[i]!, 0);
        for (const { worth, least, most } of counted) sum += worth * (worth > 0 ? least : most);
        boards.forEach(({ cost }, k) => {
            const over = cost * this.scale - worth[k]!;
            sum += over * (over > 0 ? least[k]! : most[k]!);
        });
        return Math.ceil(sum / this.scale / this.step) * this.step;
    }
}
