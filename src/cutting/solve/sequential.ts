import type { Effort } from './effort.ts';
import { Knapsack } from './knapsack.ts';
import { cheapestFor, gathered, picksOf, tidied } from './layouts.ts';
import { canCut, WHOLE, type Cut, type CuttingProblem, type Layout, type Picks, type StripCut } from './problem.ts';

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
    return best && gathered(problem, best);
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
        const counts = new Map(picksOf(layout));
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
function correct({ items, boards }: CuttingProblem, { board }: Cut, counts: ReadonlyMap<number, number>, times: number,
    demand: readonly number[], left: readonly number[], values: number[]): void {
    let used = 0;
    for (const [item, count] of counts) used += items[item]!.size * count;
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

    bestBoard(free: readonly number[]): Cut | undefined {
        const { boards, strips: widths, shortestSection = Infinity } = this.problem;
        let best: Cut | undefined;
        let bestScore = 0;
        const take = (cut: Cut, value: number): void => {
            const { cost, capacity } = boards[cut.board]!;
            // what costs nothing goes first, and of that what is used best
            const score = cost > 0 ? value / cost : FREE * value / capacity;
            if (score > bestScore * (1 + 1e-9)) { best = tidied(this.problem, cut); bestScore = score; }
        };
        const whole = this.itemsOf(WHOLE, this.left);
        boards.forEach((kind, board) => {
            if (!(free[board]! > 0)) return;
            if (widths.length > 0) {
                const { strips, value } = this.rip(kind.capacity, kind.across, this.left);
                if (strips.length > 0) take({ board, strips }, value);
            }
            if (!canCut(kind, WHOLE) || whole.length === 0) return;
            this.knapsack.worth(this.worth, whole);
            const { value, picks: [picks] } = this.knapsack.fill(kind.capacity, this.left, 0, this.budget);
            if (!picks) return;
            const cut = { board, strips: [{ lane: WHOLE, picks }] };
            const rest = picks.reduce((room, [item, count]) => room - count * this.problem.items[item]!.size, kind.capacity);
            const section = rest >= shortestSection ? this.rip(rest, kind.across, without(this.left, picks)) : undefined;
            if (!section || section.strips.length === 0) take(cut, value);
            else take({ board, sections: [rest], strips: [...cut.strips, ...section.strips.map(strip => ({ ...strip, section: 0 }))] }, value + section.value);
        });
        return best;
    }

    /** The strips of a section or board: chosen by what one of each is worth, then filled one after the other with what is still left. */
    private rip(length: number, across: number, left: readonly number[]): { strips: StripCut[]; value: number } {
        const lanes = this.problem.strips.map((_, i) => i);
        const worth = lanes.map(i => {
            const among = this.itemsOf(i + 1, left);
            if (among.length === 0) return 0;
            this.knapsack.worth(this.worth, among);
            return this.knapsack.fill(length, left, 0, this.budget).value;
        });
        this.ripping.worth(worth, lanes);
        const chosen = this.ripping.fill(across, lanes.map(() => Infinity), 0, this.budget).picks.at(-1) ?? [];
        let rest = left;
        let value = 0;
        const strips = chosen.flatMap(([i, count]) => Array.from({ length: count }, (): StripCut => {
            this.knapsack.worth(this.worth, this.itemsOf(i + 1, rest));
            const picks: Picks = this.knapsack.fill(length, rest, 0, this.budget).picks[0] ?? [];
            rest = without(rest, picks);
            for (const [item, n] of picks) value += this.worth[item]! * n;
            return { lane: i + 1, picks };
        }));
        return { strips: strips.filter(({ picks }) => picks.length > 0), value };
    }

    private itemsOf(lane: number, left: readonly number[]): number[] {
        return this.problem.items.flatMap(({ lanes }, i) => (left[i]! > 0 && lanes.includes(lane) ? [i] : []));
    }
}

function without(left: readonly number[], picks: Picks): number[] {
    const rest = [...left];
    for (const [item, count] of picks) rest[item]! -= count;
    return rest;
}
const FREE = 1e12;
