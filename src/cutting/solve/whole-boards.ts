import { PutAside, type BranchWatch } from './aside.ts';
import { allCounts, halves, othersThan, type Counts, type VerifiedBound } from './bound.ts';
import type { Column } from './columns.ts';
import type { Effort } from './effort.ts';
import { areTooFew, Enough } from './enough.ts';
import { generate, type Generated } from './generate.ts';
import { Master } from './master.ts';
import { Pricing } from './pricing.ts';
import type { CuttingProblem } from './problem.ts';
import type { LinearSolver } from './solver.ts';

/**
 * Looks for the cheapest numbers of boards that the pieces can be cut from: cost depends on them alone. What is known of
 * how many are enough tells which numbers come next; of these a solution in parts is made, which says that they are too few, and why, which holds
 * for others too, or that they may do. So a dozen solutions in parts settle what one for each branch would take hundreds for. It goes by
 * rounds, the cheap ones first: after each it is known that no plan is as cheap. Ends when there is none left or the effort is spent.
 */
export function* chooseBoards(
    problem: CuttingProblem, columns: readonly Column[], bounds: VerifiedBound, bound: number, step: number, solver: LinearSolver, effort: Effort,
    watch: BranchWatch,
): Generator<void> {
    const search = new BoardSearch(problem, columns, bounds, bound, step, solver, effort, watch);
    try {
        yield* search.run();
    } finally {
        search.dispose();
    }
}

class BoardSearch {
    private readonly demand: readonly number[];
    private readonly pricing: Pricing;
    private readonly master: Master;
    private readonly enough: Enough;
    private readonly aside: PutAside;
    /** All numbers of boards but those that are done with, each in one of these. */
    private open: Counts[];
    /** Those that were found to be too few. */
    private readonly few = new Set<string>();

    constructor(
        private readonly problem: CuttingProblem, columns: readonly Column[], private readonly bounds: VerifiedBound, private bound: number,
        private readonly step: number, solver: LinearSolver, private readonly effort: Effort, private readonly watch: BranchWatch,
    ) {
        this.demand = problem.items.map(item => item.count);
        this.pricing = new Pricing(problem, this.demand, effort);
        const every = allCounts(problem, watch.best());
        this.master = new Master(problem, this.demand, every, solver, effort);
        for (const column of columns) this.master.add(column);
        this.enough = new Enough(problem, effort);
        this.aside = new PutAside(watch);
        this.open = [every];
    }

    dispose(): void {
        this.master.dispose();
    }

    *run(): Generator<void> {
        const apart = Math.ceil((this.watch.best() - this.bound) / ROUNDS / this.step) * this.step;
        while (this.bound < this.watch.best() && !this.effort.isSpent) {
            const dearest = this.bound + apart - this.step;
            yield* this.round(dearest);
            if (this.effort.isSpent) break;
            this.bound = dearest + this.step;
            this.report();
            yield;
        }
        for (;;) {
            this.aside.sift(true);
            this.report();
            if (this.aside.isEmpty || this.effort.isSpent) return;
            this.aside.look();
            yield;
        }
    }

    private report(): void {
        this.watch.onBound(Math.min(this.watch.best(), this.bound, this.aside.bound));
    }

    /** Looks at all numbers of boards that cost at most this, and puts aside those that may do and that no plan was found for. */
    private *round(dearest: number): Generator<void> {
        const boxes = this.open.toReversed();
        for (let counts = boxes.pop(); counts && !this.effort.isSpent; counts = boxes.pop()) {
            const parts = this.enough.cheapest(counts, Math.min(dearest, this.watch.best() - this.step));
            if (!parts) continue;
            const isSound = isWithin(counts, parts), parted = isSound ? this.dearestParted(parts) : widest(counts);
            if (parted !== undefined) {
                // what the small program loses in rounding is looked for in both halves
                const floor = isSound ? Math.floor(parts[parted]!) : (counts.least[parted]! + counts.most[parted]!) >> 1;
                const [fewer, more] = halves(counts, parted, floor);
                boxes.push(...parts[parted]! - floor > 0.5 ? [fewer, more] : [more, fewer]);
                continue;
            }
            const whole = isSound ? parts.map(Math.round) : counts.least, name = whole.join(' ');
            // what was found to be too few and comes again is so by a hair, which the small program does not see
            if (!this.few.has(name) && this.tooFew(whole)) {
                this.few.add(name);
                boxes.push(counts);
            } else {
                boxes.push(...othersThan(counts, whole).reverse());
                this.open = this.open.flatMap(each => (isWithin(each, whole) ? othersThan(each, whole) : [each]));
            }
            if (this.aside.isFull) {
                this.aside.sift(false);
                if (this.aside.isFull) this.aside.look();
            }
            yield;
        }
    }

    /** A solution in parts of just these boards: either it shows that they are too few, or they may do and are looked at at once. */
    private tooFew(boards: readonly number[]): boolean {
        const counts = { least: boards, most: boards }, { problem, watch, step } = this;
        const cost = boards.reduce((sum, n, k) => sum + n * problem.boards[k]!.cost, 0);
        this.master.limit(counts);
        const made = generate(problem, this.demand, this.master, this.pricing, counts, this.effort, { cutoff: watch.best() - (1 - HAIR) * step });
        const worth = made && this.bounds.worthOf(made.values);
        if (worth) this.enough.add(worth);
        if (worth && areTooFew(worth, boards)) return true;
        if (!made || made.answer.lacking || !made.complete && this.effort.isSpent) this.aside.leave(cost);
        else this.look(made, counts, cost);
        return false;
    }

    private look({ answer: { used, prices } }: Generated, counts: Counts, cost: number): void {
        const start = { used, columns: this.master.allColumns(), values: prices.items };
        const found = { boards: counts.least, counts, cost, prices, start };
        if (!this.watch.onWholeBoards(found)) this.aside.put(found, cost);
    }

    /** The kind that is not there in whole numbers, of several the dearest: it has the fewest numbers to it. */
    private dearestParted(parts: readonly number[]): number | undefined {
        let parted: number | undefined;
        parts.forEach((n, k) => {
            const isDearer = parted === undefined || this.problem.boards[k]!.cost > this.problem.boards[parted]!.cost;
            if (Math.abs(n - Math.round(n)) > WHOLE_ENOUGH && isDearer) parted = k;
        });
        return parted;
    }
}

function isWithin({ least, most }: Counts, boards: readonly number[]): boolean {
    return boards.every((n, k) => n >= least[k]! - WHOLE_ENOUGH && n <= most[k]! + WHOLE_ENOUGH);
}

/** The kind of which there may be the most different numbers; undefined where there is one number of each. */
function widest({ least, most }: Counts): number | undefined {
    const wide = most.map((n, k) => n - least[k]!), far = Math.max(...wide);
    return far > 0 ? wide.indexOf(far) : undefined;
}

/** Into so many parts what lies between the bound and the best plan is divided. */
const ROUNDS = 4;
const HAIR = 0.001;
const WHOLE_ENOUGH = 1e-6;
