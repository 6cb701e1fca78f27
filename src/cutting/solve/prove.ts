import { plannedAnew } from './anew.ts';
import type { BranchWatch, WholeBoards } from './aside.ts';
import { allCounts, VerifiedBound } from './bound.ts';
import { branchOnBoards } from './branch.ts';
import { coarsened } from './coarse.ts';
import { columnsOf, type Column } from './columns.ts';
import { dive, jitterOf, type DiveStart } from './dive.ts';
import { Effort } from './effort.ts';
import { columnsWithin } from './enumerate.ts';
import { planByFlow } from './flow.ts';
import { generate, type Generated } from './generate.ts';
import { faultOf, gathered } from './layouts.ts';
import { Master } from './master.ts';
import { partsAtOnce } from './parts.ts';
import { planByPatterns } from './patterns.ts';
import { pickPlan } from './pick.ts';
import { MANY_LENGTHS, Pricing } from './pricing.ts';
import { costOfLayouts, costStep, widthShares, type CuttingProblem, type Layout } from './problem.ts';
import { quickPlan, shrunk } from './quick.ts';
import { sequentialPlan } from './sequential.ts';
import type { LinearSolver } from './solver.ts';
import { chooseBoards } from './whole-boards.ts';

/** The best plan so far and how cheap any plan could be at most. */
export interface Standing {
    readonly layouts: readonly Layout[];
    readonly cost: number;
    /** No plan costs less. Reckoned in whole numbers. */
    readonly bound: number;
    /** Steps spent so far. */
    readonly spent: number;
}

/**
 * Looks for cheaper plans and for the proof that there are none, until there is nothing left to find or `limit` steps are
 * spent. Yields whenever either came nearer, so that the caller can show it, or stop. The same problem, the same standings.
 * @param start a plan to begin with
 * @param known ways to cut that may be good ones
 * @returns with the ways to cut that were found good
 */
export function* prove(
    problem: CuttingProblem, start: readonly Layout[], solver: LinearSolver, limit: number, known: readonly Column[] = [],
): Generator<Standing, Standing & { readonly columns: readonly Column[] }> {
    const search = new Search(problem, start, solver, limit, known);
    yield* search.run();
    return { ...search.standing, columns: search.columns };
}

/** The solution in parts of all of it. */
interface Root { readonly made: Generated; readonly start: DiveStart }

class Search {
    private readonly effort: Effort;
    private readonly step: number;
    private readonly bounds: VerifiedBound;
    private readonly free: readonly number[];
    private best: readonly Layout[];
    private cost: number;
    private bound = 0;
    /** Ways to cut that came with the question, or were found in the solution in parts. */
    columns: readonly Column[];

    constructor(
        private readonly problem: CuttingProblem, start: readonly Layout[], private readonly solver: LinearSolver, limit: number, known: readonly Column[] = [],
    ) {
        this.columns = known;
        this.effort = new Effort(limit);
        this.step = costStep(problem);
        this.best = start;
        this.cost = costOfLayouts(problem, start);
        this.bounds = new VerifiedBound(problem, this.cost, this.step, this.effort);
        this.free = problem.boards.map(kind => kind.available ?? Infinity);
    }

    get standing(): Standing {
        return { layouts: this.best, cost: this.cost, bound: this.bound, spent: this.effort.spent };
    }

    *run(): Generator<Standing, void> {
        this.raise(this.bounds.of(worthByArea(this.problem), allCounts(this.problem, this.cost)));
        if (this.isOver) return;
        const coarse = this.problem.items.length > MANY_LENGTHS ? this.coarsely() : [];
        if (coarse.length > 0) yield this.standing;
        const root = this.root([...this.columns, ...coarse]);
        if (!root) return;
        this.columns = root.start.columns;
        this.raise(this.bounds.of(root.made.values, allCounts(this.problem, this.cost)));
        yield this.standing;
        if (this.isOver) return;
        this.plan(root.made);
        if (this.isRipped) {
            yield this.standing;
            if (this.patterns(root.made, FEW_PATTERNS)) yield this.standing;
        }
        for (let variant = 0; variant < DIVES && !this.isOver; variant++) {
            // of many boards that are ripped a dive takes long and comes to little
            if (this.isRipped && this.boards > MANY_BOARDS) this.another(this.worthOf(root.made), variant + 1);
            else this.diveFrom(root.start, this.free, variant);
            yield this.standing;
        }
        if (this.isOver) return;
        if (this.isRipped && this.flow(root.made)) yield this.standing;
        if (this.isOver) return;
        if (this.problem.boards.length > 1 || this.isRipped) {
            if (!this.isRipped) this.pickAmongFew(root.made);
            if (!this.isOver) yield* this.branch(root);
        } else yield* this.alternate(root);
    }

    private get isRipped(): boolean {
        return this.problem.strips.length > 0;
    }

    private get isDone(): boolean {
        return this.bound >= this.cost;
    }

    private get isOver(): boolean {
        return this.isDone || this.effort.isSpent;
    }

    /**
     * Very many lengths are planned in groups first, as if all pieces of a group were as long as its longest: soon done and nearly as cheap.
     * Gives ways to cut that are like those of that plan.
     */
    private coarsely(): Column[] {
        const { problem, columns, refined } = coarsened(this.problem, MANY_LENGTHS * 2 / 3);
        const start = problem.items.length < this.problem.items.length ? quickPlan(problem, this.effort) : undefined;
        if (!start) return [];
        const search = new Search(problem, start, this.solver, this.effort.limit / 8);
        for (const _ of search.run());
        const { layouts, spent } = search.standing;
        this.effort.spent += spent;
        this.take(gathered(this.problem, shrunk(this.problem, refined(layouts))));
        return columns(layouts);
    }

    private root(known: readonly Column[]): Root | undefined {
        const demand = this.problem.items.map(item => item.count);
        const counts = allCounts(this.problem, this.cost);
        // half of the steps at the most: with what it has by then plans are found, and by the worth it knows the bound is not far
        const effort = new Effort(this.effort.limit / 2);
        // about the best solution in parts is soon there, and most of what it is made of is good
        const isKnown = this.problem.shortestSection === undefined || known.length > 0;
        const first = isKnown ? [] : partsAtOnce(this.problem, this.best, this.effort, Math.min(FIRST, this.effort.left / 4)).columns;
        const master = new Master(this.problem, demand, counts, this.solver, effort);
        try {
            for (const column of [...columnsOf(this.best), ...known, ...first]) master.add(column);
            const about = this.isRipped ? worthByArea(this.problem) : undefined;
            const made = generate(this.problem, demand, master, new Pricing(this.problem, demand, effort), counts, effort, { about });
            this.effort.spent += effort.spent;
            return made && { made, start: { used: made.answer.used, columns: master.allColumns(), values: made.answer.prices.items } };
        } finally {
            master.dispose();
        }
    }

    /** Plans board after board with the worth the pieces have in the solution in parts. */
    private plan(made: Generated): void {
        const { items } = this.problem;
        const values = this.worthOf(made);
        const large = items.length > 250;
        this.take(sequentialPlan(this.problem, items.map(item => item.count), this.free, values, this.effort,
            { rounds: large ? 1 : 4, budget: large ? 300 : 2000, target: this.bound, below: this.cost }));
        if (this.isRipped && !this.isOver) this.anew(values, this.boards * ANEW, 0);
    }

    /** Worth by the solution in parts; pieces it gives none are worth a trifle, so that they are planned too. */
    private worthOf({ answer }: Generated): number[] {
        return this.problem.items.map((item, i) => answer.prices.items[i]! || item.size * 1e-6);
    }

    private get boards(): number {
        return this.best.reduce((sum, { times }) => sum + times, 0);
    }

    private anew(values: readonly number[], steps: number, from: number): void {
        this.take(plannedAnew(this.problem, this.best, values, this.effort, Math.min(this.effort.left / 2, steps), from));
    }

    /** Another plan board after board, by worth that is a little otherwise, and some of its boards anew; then some of the best plan's. */
    private another(worth: readonly number[], variant: number): void {
        const jitter = jitterOf(variant), values = worth.map(value => value * (1 + AROUND * jitter()));
        const steps = Math.min(this.effort.left / 2, this.boards * ANEW);
        const plan = sequentialPlan(this.problem, this.problem.items.map(item => item.count), this.free, values, this.effort, { rounds: 2, budget: 1000 });
        if (plan) this.take(plannedAnew(this.problem, plan, values, this.effort, steps, variant * ANOTHER));
        this.anew(worth, steps, variant * ANOTHER);
    }

    /** The cheapest plan out of all boards, sections and strips, where these are few; says whether more is known. */
    private patterns({ values }: Generated, most: number): boolean {
        if (this.isOver) return false;
        const dearest = this.cost - this.step, limits = { most, nodes: PATTERN_NODES };
        const { layouts, finished } = planByPatterns(
            this.problem, values, allCounts(this.problem, dearest), { cheapest: this.bound, dearest }, this.step, this.solver, this.effort, limits,
        );
        this.take(layouts);
        if (finished) this.raise(this.cost);
        return finished || layouts !== undefined;
    }

    private diveFrom(start: DiveStart, free: readonly number[], variant: number): void {
        this.take(dive(this.problem, start, this.solver, this.effort, { free, below: this.cost, target: this.bound, variant }));
    }

    private *branch(root: Root): Generator<Standing, void> {
        let shown = this.standing;
        for (const _ of this.numbersOfBoards(root)) {
            if (this.cost < shown.cost && !this.isRipped) this.pickAmongFew(root.made);
            if (this.cost < shown.cost || this.bound > shown.bound) yield shown = this.standing;
            if (this.isOver) return;
        }
    }

    private *numbersOfBoards({ made, start: { columns } }: Root): Generator<void> {
        const { problem, bounds, bound, step, solver, effort } = this, watch = this.watch(known => { this.raise(known); });
        const enough = effort.spent + effort.left * CHOOSING;
        let isListed = !this.isRipped;
        for (const _ of chooseBoards(problem, columns, bounds, bound, step, solver, effort, watch)) {
            // the bound and the best plan have come closer to each other, and less is to be listed
            if (!isListed && effort.spent > enough) {
                isListed = true;
                this.patterns(made, PATTERNS);
            }
            yield;
        }
        if (!this.isRipped || this.isOver) return;
        if (!isListed) this.patterns(made, PATTERNS);
        yield;
        // some that may do were given up in time, and then all of it is looked at section by section
        if (!this.isOver) yield* branchOnBoards(problem, columns, bounds, step, solver, effort, watch);
    }

    private watch(onBound: BranchWatch['onBound']): BranchWatch {
        return { best: () => this.cost, onWholeBoards: found => this.cutFrom(found), onStubborn: (found, tries) => this.cutFromAll(found, tries), onBound };
    }

    /** A plan with just these boards by dives from where the search stands; true where there is one. */
    private cutFrom({ boards, cost, start }: WholeBoards): boolean {
        for (let variant = 0; variant < NODE_DIVES && this.cost > cost && !this.isOver; variant++) this.diveFrom(start, boards, variant);
        return this.cost <= cost;
    }

    /**
     * A plan with just these boards out of all ways to cut them; true where it is found, or that there is none. Each try looks at more.
     */
    private cutFromAll({ boards, counts, cost, prices, start }: WholeBoards, tries: number): boolean {
        const times = 2 ** tries;
        const dives = tries > 0 ? NODE_DIVES * (tries + 1) : 0; // the first were made when the boards were found
        for (let variant = NODE_DIVES * tries; variant < dives && this.cost > cost && !this.isOver; variant++) this.diveFrom(start, boards, variant);
        if (this.cost <= cost) return true;
        if (!this.isRipped) {
            const upTo = { least: boards.map(() => 0), most: boards };
            // most of what it takes was found on the way here
            const known = start.columns.filter(({ board }) => boards[board]! > 0);
            const budget = { nodes: FEW_NODES * times, step: this.step, work: KNOWN_STEPS * times };
            this.take(pickPlan(this.problem, known, upTo, cost, this.solver, this.effort, budget).layouts);
            if (this.cost <= cost) return true;
            const columns = columnsWithin(this.problem, prices, boards.map(n => n > 0), HAIR * Math.max(1, cost), FEW_COLUMNS * times, this.effort);
            if (columns) {
                const picked = pickPlan(this.problem, columns, upTo, cost, this.solver, this.effort, { nodes: NODES, step: this.step });
                this.take(picked.layouts);
                if (picked.finished || this.cost <= cost) return true;
            }
        }
        if (this.isRipped) {
            const limits = { most: PATTERNS, nodes: FLOW_NODES * times };
            const listed = planByPatterns(
                this.problem, prices.items, counts, { cheapest: cost, dearest: cost }, this.step, this.solver, this.effort, limits,
            );
            this.take(listed.layouts);
            if (listed.finished || this.cost <= cost) return true;
        }
        const limits = { arcs: ARCS, nodes: FLOW_NODES * times };
        const flow = planByFlow(this.problem, prices, counts, cost, this.step, this.solver, this.effort, limits);
        this.take(flow.layouts);
        if (flow.finished || this.cost <= cost) return true;
        return this.isRipped && !counts.sections && this.cutBySections({ counts, cost, start }, SECTION_STEPS * times);
    }

    /** The same section by section: half a section of strips that lie abreast costs half a board, and no plan has one. */
    private cutBySections({ counts, cost, start: { columns } }: Pick<WholeBoards, 'counts' | 'cost' | 'start'>, steps: number): boolean {
        const { problem, bounds, step, solver, effort } = this, end = effort.spent + steps;
        let bound = 0;
        const watch = this.watch(known => { bound = known; });
        for (const _ of branchOnBoards(problem, columns, bounds, step, solver, effort, watch, counts)) if (this.cost <= cost || effort.spent > end) break;
        return this.cost <= cost || bound >= this.cost;
    }

    /** The cheapest plan as a flow, where little is left that a cheaper one could be made of; says whether more is known. */
    private flow({ values, answer }: Generated): boolean {
        const dearest = this.cost - this.step;
        const prices = { ...answer.prices, items: values }, counts = allCounts(this.problem, dearest);
        const limits = { arcs: ARCS, nodes: FLOW_NODES };
        const { layouts, finished } = planByFlow(this.problem, prices, counts, dearest, this.step, this.solver, this.effort, limits);
        this.take(layouts);
        if (finished) this.raise(this.cost);
        return finished || layouts !== undefined;
    }

    /** One kind of board: picks from all ways to cut it that a cheaper plan could hold, and dives, by turns, each time longer. */
    private *alternate({ made, start }: Root): Generator<Standing, void> {
        let nodes = NODES;
        for (let variant = DIVES; !this.isOver; variant += DIVES, nodes *= 4) {
            if (this.pickAmongAll(made, { nodes })) yield this.standing;
            for (let more = 0; more < DIVES && !this.isOver; more++) this.diveFrom(start, this.free, variant + more);
            yield this.standing;
        }
    }

    /** The cheaper the best plan is, the fewer ways to cut could be in a cheaper one: where these are few, the cheapest is put together from them. */
    private pickAmongFew(made: Generated): void {
        for (let before = Infinity; this.cost < before && !this.isOver;) {
            before = this.cost;
            if (!this.pickAmongAll(made, { nodes: FEW_NODES, work: FEW_STEPS }, SO_FEW)) return;
        }
    }

    /** The cheapest plan out of all ways to cut that a cheaper plan than the best could hold, where those are few; says whether it was looked for. */
    private pickAmongAll({ answer, complete }: Generated, budget: { readonly nodes: number; readonly work?: number }, most = MANY_COLUMNS): boolean {
        const dearest = this.cost - this.step;
        const usable = this.problem.boards.map(() => true);
        const columns = complete ? columnsWithin(
            this.problem, answer.prices, usable, Math.max(0, dearest - answer.objective) + HAIR * Math.max(1, this.cost), most, this.effort,
        ) : undefined;
        if (!columns) return false;
        const picked = pickPlan(this.problem, columns, allCounts(this.problem, dearest), dearest, this.solver, this.effort, { ...budget, step: this.step });
        this.take(picked.layouts);
        if (picked.finished && !picked.layouts) this.raise(this.cost);
        return true;
    }

    /** Takes a plan that is cheaper and sound; a plan with a fault is a fault of the solver and goes unused. */
    private take(layouts: readonly Layout[] | undefined): void {
        if (!layouts) return;
        const cost = costOfLayouts(this.problem, layouts);
        if (cost < this.cost && faultOf(this.problem, layouts) === undefined) {
            this.best = layouts;
            this.cost = cost;
        }
    }

    private raise(bound: number | undefined): void {
        this.bound = Math.max(this.bound, Math.min(bound ?? 0, this.cost));
    }
}

/** Every piece worth the cheapest wood it is made of: what it covers of a board's length and width, and no waste. */
function worthByArea(problem: CuttingProblem): number[] {
    const { items, boards } = problem, shares = widthShares(problem);
    const rate = Math.min(...boards.filter(kind => kind.available === null && kind.capacity > 0).map(kind => kind.cost / kind.capacity));
    return items.map(({ size }, i) => (Number.isFinite(rate) ? rate * size * shares[i]! : 0));
}

/** Part of the cost by which a column may seem too dear and still be looked at: far more than floating point rounds. */
const HAIR = 1e-6;
const DIVES = 4;
/** Steps for each board of a plan to plan some of them anew. */
const ANEW = 20_000;
/** How much more a piece may be worth, by parts of what `jitterOf` draws. */
const AROUND = 0.03;
/** Turns further on. */
const ANOTHER = 101;
const MANY_BOARDS = 40;
const NODE_DIVES = 3;
const NODES = 200;
const FEW_COLUMNS = 4000;
/** Steps for about the solution in parts. */
const FIRST = 100_000;
/** A flow of more arcs takes the solver too long for what it settles: branching is sooner further. */
const ARCS = 200;
const FLOW_NODES = 20;
const MANY_COLUMNS = 20_000;
/** So few ways to cut are soon looked through, and where they are not, other ways are sooner at the end. */
const SO_FEW = 150;
const FEW_NODES = 50;
const FEW_STEPS = 250_000;
/** Of ways to cut that are known there may be many more. */
const KNOWN_STEPS = 750_000;
/** More boards, sections and strips than this take the solver longer than branching does. */
const PATTERNS = 2500;
const PATTERN_NODES = 1000;
/** So few are soon settled, or nothing else settles them sooner. */
const FEW_PATTERNS = 1200;
/** Part of the steps for numbers of boards, before more boards, sections and strips are listed. */
const CHOOSING = 0.6;
/** Steps for a look section by section. */
const SECTION_STEPS = 1_000_000;
