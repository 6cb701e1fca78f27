import type { Effort } from './effort.ts';
import { Knapsack } from './knapsack.ts';
import { cheapestFor, gathered } from './layouts.ts';
import { canCut, laneCount, WHOLE, type CuttingProblem, type Layout, type Picks, type StripCut } from './problem.ts';

export interface SequentialOptions {
    /** How often the whole plan is made anew, each time with corrected worth. */
    readonly rounds: number;
    /** Of the search for the content of one board. */
    readonly budget: number;
    /** A plan this cheap ends it. */
    readonly target?: number;
    /** Plans this dear are given up on the way. */
    readonly below?: number;
}

/**
 * Plans board after board: always the board whose content is worth most for its price comes next. What a piece is worth is
 * then corrected by how dear the board was that it ended on, and the whole plan is made again; the cheapest plan stands
 * (sequential value correction). Undefined where some piece fits no board that is left.
 * @param values what the pieces are worth to begin with
 */
export function sequentialPlan(problem: CuttingProblem, demand: readonly number[], free: readonly number[], values: readonly number[],
    effort: Effort, { rounds, budget, target = 0, below = Infinity }: SequentialOptions): Layout[] | undefined {
    const next = [...values];
    let best: Layout[] | undefined;
    let bestCost = below;
    for (let round = 0; round < rounds && !(round > 0 && effort.isSpent); round++) {
        const made = onePlan(problem, demand, free, next, effort, budget, bestCost);
        if (made === 'stuck') break;
        if (made && made.cost < bestCost) ({ layouts: best, cost: bestCost } = made);
        if (bestCost <= target) break;
    }
    return best && gathered(best);
}

/** One plan; corrects `values` on the way. Undefined where it gets too dear, `stuck` where a piece fits nowhere. */
function onePlan(problem: CuttingProblem, demand: readonly number[], free: readonly number[], values: number[],
    effort: Effort, budget: number, below: number): { layouts: Layout[]; cost: number } | 'stuck' | undefined {
    const left = [...demand];
    const boards = [...free];
    const worth = [...values];
    const filler = new Filler(problem, left, worth, effort, budget);
    const layouts: Layout[] = [];
    let pieces = left.reduce((a, b) => a + b, 0);
    let cost = 0;
    while (pieces > 0) {
        const found = filler.bestBoard(boards);
        if (!found) return 'stuck';
        const layout = { ...found, board: cheapestFor(problem, found, boards) };
        const counts = new Map<number, number>();
        for (const { picks } of layout.strips) for (const [item, count] of picks) counts.set(item, (counts.get(item) ?? 0) + count);
        let times = boards[layout.board]!;
        for (const [item, count] of counts) times = Math.min(times, Math.floor(left[item]! / count));
        correct(problem, layout, counts, times, demand, left, values);
        for (const [item, count] of counts) { left[item]! -= count * times; pieces -= count * times; }
        boards[layout.board]! -= times;
        layouts.push({ ...layout, times });
        cost += problem.boards[layout.board]!.cost * times;
        if (cost >= below) return undefined;
    }
    return { layouts, cost };
}

/** A piece on a board that is badly used becomes worth more, so that the next plan places it earlier. */
function correct({ items, boards }: CuttingProblem, { board, strips }: Layout, counts: ReadonlyMap<number, number>, times: number,
    demand: readonly number[], left: readonly number[], values: number[]): void {
    const used = strips.reduce((sum, { picks }) => sum + picks.reduce((s, [item, count]) => s + items[item]!.size * count, 0), 0);
    const rate = boards[board]!.cost / Math.max(1, used);
    for (const [item, count] of counts) {
        const weight = Math.min(1, count * times / (demand[item]! + left[item]!));
        values[item] = (1 - weight) * values[item]! + weight * rate * items[item]!.size;
    }
}

/** Finds the board that is next best to cut, and what to cut it into. */
class Filler {
    private readonly problem: CuttingProblem;
    private readonly left: readonly number[];
    private readonly worth: readonly number[];
    private readonly budget: number;
    private readonly knapsack: Knapsack;
    private readonly ripping: Knapsack;

    constructor(problem: CuttingProblem, left: readonly number[], worth: readonly number[], effort: Effort, budget: number) {
        this.problem = problem;
        this.left = left;
        this.worth = worth;
        this.budget = budget;
        this.knapsack = new Knapsack(problem.items.map(item => item.size), effort);
        this.ripping = new Knapsack(problem.strips, effort, 0);
    }

    bestBoard(free: readonly number[]): Layout | undefined {
        const { boards } = this.problem;
        let best: { board: number; strips: readonly StripCut[] } | undefined;
        let bestScore = 0;
        const take = (board: number, strips: readonly StripCut[], value: number): void => {
            const { cost, capacity } = boards[board]!;
            // what costs nothing goes first, and of that what is used best
            const score = cost > 0 ? value / cost : FREE * value / capacity;
            if (score > bestScore * (1 + 1e-9)) { best = { board, strips }; bestScore = score; }
        };
        const stripFillings = this.fillStrips(free, take);
        if (this.problem.strips.length > 0) this.rip(free, stripFillings, take);
        return best && { ...best, times: 1 };
    }

    /** What a strip of each lane and kind of board is worth; whole boards are offered at once. */
    private fillStrips(free: readonly number[], take: (board: number, strips: readonly StripCut[], value: number) => void): number[][] {
        const { items, boards } = this.problem;
        return Array.from({ length: laneCount(this.problem) }, (_, lane) => {
            const among = items.flatMap((item, i) => (this.left[i]! > 0 && item.lanes.includes(lane) ? [i] : []));
            if (among.length === 0) return [];
            this.knapsack.worth(this.worth, among);
            return boards.map((kind, board) => {
                if (!(free[board]! > 0) || !canCut(kind, lane)) return 0;
                const { value, picks } = this.knapsack.fill(kind.capacity, this.left, 0, this.budget);
                if (lane === WHOLE && picks.length > 0) take(board, [{ lane, picks: picks[0]! }], value);
                return value;
            });
        });
    }

    /** Chooses the strips by what one of each is worth, then fills them one after the other with what is still left. */
    private rip(
        free: readonly number[], worth: readonly (readonly number[])[], take: (board: number, strips: readonly StripCut[], value: number) => void,
    ): void {
        const { strips: widths, boards } = this.problem;
        const lanes = widths.map((_, i) => i);
        boards.forEach((kind, board) => {
            if (!(free[board]! > 0)) return;
            this.ripping.worth(lanes.map(i => worth[i + 1]?.[board] ?? 0), lanes);
            const chosen = this.ripping.fill(kind.across, lanes.map(() => Infinity), 0, this.budget).picks.at(-1);
            if (!chosen) return;
            const left = [...this.left];
            let value = 0;
            const strips = chosen.flatMap(([i, count]) => Array.from({ length: count }, (): StripCut => {
                const lane = i + 1;
                this.knapsack.worth(this.worth, this.problem.items.flatMap((item, j) => (left[j]! > 0 && item.lanes.includes(lane) ? [j] : [])));
                const filled = this.knapsack.fill(kind.capacity, left, 0, this.budget);
                const picks: Picks = filled.picks[0] ?? [];
                for (const [item, n] of picks) { left[item]! -= n; value += this.worth[item]! * n; }
                return { lane, picks };
            }));
            take(board, strips.filter(strip => strip.picks.length > 0), value);
        });
    }
}
const FREE = 1e12;
