import { STEPS, type Effort } from './effort.ts';
import { Knapsack } from './knapsack.ts';
import { cheapestFor, gathered, picksOf, tidied } from './layouts.ts';
import { canCut, WHOLE, widthShares, type BoardKind, type Cut, type CuttingProblem, type Layout, type Picks, type StripCut } from './problem.ts';

interface SequentialOptions {
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
    const next = [...values], shares = widthShares(problem);
    let best: Layout[] | undefined;
    let bestCost = below;
    for (let round = 0; round < rounds && !(round > 0 && effort.isSpent); round++) {
        const made = onePlan(problem, demand, free, next, shares, effort, budget, bestCost);
        if (made === 'stuck') break;
        if (made && made.cost < bestCost) ({ layouts: best, cost: bestCost } = made);
        if (bestCost <= target) break;
    }
    return best && gathered(problem, best);
}

/** One plan; corrects `values` on the way. Undefined where it gets too dear, `stuck` where a piece fits nowhere. */
function onePlan(problem: CuttingProblem, demand: readonly number[], free: readonly number[], values: number[],
    shares: readonly number[], effort: Effort, budget: number, below: number): { layouts: Layout[]; cost: number } | 'stuck' | undefined {
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
        correct(problem, layout, counts, times, demand, left, shares, values);
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
    demand: readonly number[], left: readonly number[], shares: readonly number[], values: number[]): void {
    let used = 0;
    for (const [item, count] of counts) used += items[item]!.size * shares[item]! * count;
    const rate = boards[board]!.cost / Math.max(1, used);
    for (const [item, count] of counts) {
        const weight = Math.min(1, count * times / (demand[item]! + left[item]!));
        values[item] = (1 - weight) * values[item]! + weight * rate * items[item]!.size * shares[item]!;
    }
}

interface Content { readonly cut: Cut; readonly value: number }

/** Finds the board that is next best to cut, and what to cut it into. */
export class Filler {
    private readonly knapsack: Knapsack;
    /** The items that may be cut from each lane: they are asked for again for every strip. */
    private readonly ofLane: number[][];
    private turn = 0;
    private readonly longest: number;

    constructor(
        private readonly problem: CuttingProblem, private readonly left: readonly number[], private readonly worth: readonly number[],
        private readonly effort: Effort, private readonly budget: number,
    ) {
        this.knapsack = new Knapsack(problem.items.map(item => item.size), effort);
        this.ofLane = [WHOLE, ...problem.strips.map((_, i) => i + 1)].map(() => []);
        this.longest = Math.max(0, ...problem.boards.map(({ capacity }) => capacity));
        // by what they are worth by their length, as they are needed: what is in order is soon sorted again
        const byRate = problem.items.map(({ size }, item) => ({ item, rate: worth[item]! / size })).sort((a, b) => b.rate - a.rate);
        for (const { item } of byRate) for (const lane of new Set(problem.items[item]!.lanes)) this.ofLane[lane]!.push(item);
    }

    /** The board that is worth most for its price. */
    bestBoard(free: readonly number[]): Cut | undefined {
        const { boards } = this.problem;
        let best: Cut | undefined, bestScore = 0;
        // what costs nothing goes first, and of that what is used best
        const rateOf = ({ cost, capacity }: BoardKind): number => (cost > 0 ? 1 / cost : FREE / capacity);
        this.contents(free, kind => bestScore * (1 + 1e-9) / rateOf(kind), ({ cut, value }) => {
            const score = value * rateOf(boards[cut.board]!);
            if (score > bestScore * (1 + 1e-9)) { best = cut; bestScore = score; }
        });
        return best && tidied(this.problem, best);
    }

    /**
     * What boards of each kind that is there are best cut into, and what that is worth: across, and where they may be, ripped.
     * @param least what is worth no more is of no use
     */
    contents(free: readonly number[], least: (kind: BoardKind) => number, found: (content: Content) => void): void {
        const { boards, strips: widths, shortestSection = Infinity } = this.problem, isRipped = widths.length > 0;
        this.effort.spent += STEPS.made / 2 + this.left.length * STEPS.sorted / 10;
        this.turn++;
        const whole = this.itemsOf(WHOLE, this.left);
        if (!isRipped) this.knapsack.worth(this.worth, whole);
        boards.forEach((kind, board) => {
            if (!(free[board]! > 0)) return;
            if (isRipped) {
                const { strips, value } = this.rip(kind.capacity, kind.across, this.left);
                if (strips.length > 0) found({ cut: { board, strips }, value });
            }
            if (!canCut(kind, WHOLE) || whole.length === 0) return;
            if (isRipped) this.knapsack.worth(this.worth, whole);
            const { value, picks: [picks] } = this.knapsack.fill(kind.capacity, this.left, isRipped ? 0 : least(kind), this.budget);
            if (!picks) return;
            const cut = { board, strips: [{ lane: WHOLE, picks }] };
            const rest = picks.reduce((room, [item, count]) => room - count * this.problem.items[item]!.size, kind.capacity);
            const section = rest >= shortestSection ? this.rip(rest, kind.across, without(this.left, picks)) : undefined;
            if (!section || section.strips.length === 0) found({ cut, value });
            else found({
                cut: { board, sections: [rest], strips: [...cut.strips, ...section.strips.map(strip => ({ ...strip, section: 0 }))] },
                value: value + section.value,
            });
        });
    }

    /** The strips of a section or board: every lane filled one strip after the other with what is still left, and of these those that are worth most. */
    private rip(length: number, across: number, left: readonly number[]): { strips: StripCut[]; value: number } {
        const all = this.problem.strips.flatMap((width, i) => this.stripsOf(i + 1, length, Math.floor(across / width), left));
        this.effort.spent += STEPS.made / 20;
        const ripping = new Knapsack(all.map(({ lane }) => this.problem.strips[lane - 1]!), this.effort, 0);
        ripping.worth(all.map(({ value }) => value), all.map((_, i) => i));
        const chosen = ripping.fill(across, all.map(() => 1), 0, this.budget).picks.at(-1) ?? [];
        // of one lane no strip is worth more than the one before it; where they are worth the same, the first are taken
        const counts = new Map<number, number>();
        for (const [i] of chosen) counts.set(all[i]!.lane, (counts.get(all[i]!.lane) ?? 0) + 1);
        const taken = all.filter(({ lane, place }) => place < (counts.get(lane) ?? 0));
        return {
            strips: taken.map(({ lane, picks }) => ({ lane, picks })), value: taken.reduce((sum, strip) => sum + strip.value, 0),
        };
    }

    /** As many strips of a lane as lie abreast or there are pieces for. */
    private stripsOf(lane: number, length: number, most: number, left: readonly number[]): (StripCut & { readonly place: number; readonly value: number })[] {
        const strips: (StripCut & { place: number; value: number })[] = [];
        for (let rest = left; strips.length < most;) {
            this.knapsack.worth(this.worth, this.itemsOf(lane, rest));
            const { value, picks: [picks] } = this.knapsack.fill(length, rest, 0, this.budget);
            if (!picks) break;
            strips.push({ lane, picks, value, place: strips.length });
            rest = without(rest, picks);
        }
        return strips;
    }

    private itemsOf(lane: number, left: readonly number[]): number[] {
        const all = this.ofLane[lane]!.filter(item => left[item]! > 0);
        const every = Math.ceil(all.length / MANY);
        if (every < 2) return all;
        const some = all.filter((_, i) => (i + this.turn) % every === 0);
        return some.reduce((sum, item) => sum + this.problem.items[item]!.size * left[item]!, 0) > PLENTY * this.longest ? some : all;
    }
}

function without(left: readonly number[], picks: Picks): number[] {
    const rest = [...left];
    for (const [item, count] of picks) rest[item]! -= count;
    return rest;
}
const FREE = 1e12;
/** Of more lengths than this a board is filled from some, each time others, where they would fill several: that is enough to fill one well. */
const MANY = 60;
const PLENTY = 5;
