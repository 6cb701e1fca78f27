import { STEPS, type Effort } from './effort.ts';
import { Pricing } from './pricing.ts';
import type { SectionWorth } from './sections.ts';
import { pieceCount, type CuttingProblem } from './problem.ts';

/** How many boards of each kind a plan may use, at least and at most, and how many sections of some lengths. */
export interface Counts { readonly least: readonly number[]; readonly most: readonly number[]; readonly sections?: readonly SectionCount[] }
/** How many sections a plan may have that are at least as long as `from`. */
export interface SectionCount { readonly from: number; readonly least: number; readonly most: number }

/** At most so many of a kind, and more: no number of boards is in both, and none is lost. */
export function halves(counts: Counts, kind: number, floor: number): [fewer: Counts, more: Counts] {
    return [
        { ...counts, most: counts.most.map((n, k) => (k === kind ? floor : n)) },
        { ...counts, least: counts.least.map((n, k) => (k === kind ? floor + 1 : n)) },
    ];
}

/** All other numbers of boards: fewer or more of the first kind, or as many of it and fewer or more of the second ... */
export function othersThan(counts: Counts, boards: readonly number[]): Counts[] {
    const least = [...counts.least], most = [...counts.most];
    return boards.flatMap((n, kind) => {
        const others: Counts[] = [];
        if (least[kind]! <= n - 1) others.push({ ...counts, least: [...least], most: most.map((m, k) => (k === kind ? n - 1 : m)) });
        if (most[kind]! >= n + 1) others.push({ ...counts, least: least.map((m, k) => (k === kind ? n + 1 : m)), most: [...most] });
        least[kind] = n;
        most[kind] = n;
        return others;
    });
}

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

    /**
     * The limit that these values of the pieces make: undefined where that takes too large tables.
     * @param counted what sections are worth by themselves, to the same scale
     */
    worthOf(values: ArrayLike<number>, counted: readonly SectionWorth[] = []): Worth | undefined {
        const { items } = this.problem;
        this.effort.spent += 3 * STEPS.pass + 8 * items.length * STEPS.sorted;
        const whole = items.map((_, i) => Math.max(0, Math.floor(values[i]! * this.scale)));
        const boards = this.pricing.worthOfBoards(whole, counted);
        return boards && { pieces: items.reduce((total, { count }, i) => total + count * whole[i]!, 0), boards, scale: this.scale };
    }

    /** @param worthOfSections what sections of the lengths in `counts` are worth by themselves; less than nothing where only so many may be cut */
    of(values: ArrayLike<number>, { least, most, sections = [] }: Counts, worthOfSections: readonly SectionWorth[] = []): number | undefined {
        const counted = sections.map((count, s) => ({ ...count, worth: Math.floor((worthOfSections[s]?.worth ?? 0) * this.scale) }))
            .filter(({ worth, most }) => worth > 0 || (worth < 0 && most < Infinity));
        const worth = this.worthOf(values, counted);
        if (!worth) return undefined;
        let sum = worth.pieces;
        for (const { worth, least, most } of counted) sum += worth * (worth > 0 ? least : most);
        this.problem.boards.forEach(({ cost }, k) => {
            const over = cost * this.scale - worth.boards[k]!;
            sum += over * (over > 0 ? least[k]! : most[k]!);
        });
        return Math.ceil(sum / this.scale / this.step) * this.step;
    }
}
