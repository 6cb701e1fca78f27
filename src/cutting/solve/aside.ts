import type { Counts } from './bound.ts';
import type { DiveStart } from './dive.ts';
import type { Prices } from './pricing.ts';

/** Boards in whole numbers, but what is cut from them still in parts. */
export interface WholeBoards {
    /** So many of each kind. */
    readonly boards: readonly number[];
    /** The same, with the limits to sections that the search has come to. */
    readonly counts: Counts;
    readonly cost: number;
    readonly start: DiveStart;
    readonly prices: Prices;
}

export interface BranchWatch {
    /** The cost of the best plan so far. */
    best(): number;
    /** Looks quickly for a plan with just these boards; says whether one was found. */
    onWholeBoards(found: WholeBoards): boolean;
    /** Looks for one with more effort, the more it was tried before; says whether all such plans are done with: one was found, or that there is none. */
    onStubborn(found: WholeBoards, tries: number): boolean;
    /** No plan is cheaper than this. */
    onBound(bound: number): void;
}

interface Stubborn { readonly found: WholeBoards; readonly bound: number; readonly tries: number }

/** Numbers of boards that no plan was found for, nor that there is none: each is looked at closer when its turn comes. */
export class PutAside {
    private now: readonly Stubborn[] = [];
    private later: readonly Stubborn[] = [];
    private unsettled = Infinity;

    constructor(private readonly watch: BranchWatch) {}

    put(found: WholeBoards, bound: number): void {
        this.now = [...this.now, { found, bound, tries: 0 }];
    }

    /** What is not looked at again: a plan may be as cheap as this. */
    leave(bound: number): void {
        this.unsettled = Math.min(this.unsettled, bound);
    }

    /** None of the plans among these is cheaper than this. */
    get bound(): number {
        return Math.min(this.unsettled, ...[...this.now, ...this.later].map(each => each.bound));
    }

    get isFull(): boolean {
        return this.now.length >= MOST;
    }

    /** Forgets what could not be cheaper than the best plan; once all others had their turn, those that were tried before come again. */
    sift(isLast: boolean): void {
        const cheap = (all: readonly Stubborn[]): Stubborn[] => all.filter(({ bound }) => bound < this.watch.best()).sort((a, b) => a.bound - b.bound);
        this.now = cheap(this.now);
        if (!isLast || this.now.length > 0) return;
        this.now = cheap(this.later);
        this.later = [];
    }

    get isEmpty(): boolean {
        return this.now.length === 0;
    }

    /** Looks closer at the cheapest. */
    look(): void {
        const [{ found, bound, tries }, ...others] = this.now as [Stubborn];
        this.now = others;
        if (this.watch.onStubborn(found, tries)) return;
        if (tries + 1 < MOST_TRIES) this.later = [...this.later, { found, bound, tries: tries + 1 }];
        else this.leave(bound);
    }
}
/** As many are put aside before one is looked at closer: a cheap plan may yet make that needless. */
const MOST = 4;
/** So often one is tried, each time with more effort, after all others had their turn. */
const MOST_TRIES = 3;
