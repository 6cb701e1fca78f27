import { grouped } from '../../plain/groups.ts';
import { atOnce, type Steps } from '../../plain/steps.ts';
import { plannedAnew } from './anew.ts';
import { coarsened } from './coarse.ts';
import { Settled } from './dive.ts';
import type { Effort } from './effort.ts';
import { cheapestFor, gathered, tidied } from './layouts.ts';
import { partsAtOnce, type Parts } from './parts.ts';
import { costOfLayouts, widthShares, type CuttingProblem, type Item, type Layout } from './problem.ts';
import { onScarceBoards } from './scarce.ts';
import { sequentialPlan } from './sequential.ts';

/**
 * A good plan at once: a solution in parts tells what the pieces are worth; what of it is whole is cut so, the rest is planned board after board by
 * that worth, then some of the boards anew. Undefined where some piece fits no board that is left.
 */
export function quickPlan(problem: CuttingProblem, effort: Effort): Layout[] | undefined {
    return atOnce(quickPlanInSteps(problem, effort));
}

/** The same, each step some tens of milliseconds at most. */
export function* quickPlanInSteps(problem: CuttingProblem, effort: Effort): Steps<Layout[] | undefined> {
    if (problem.items.length === 0) return [];
    const isMany = problem.items.length > MOST_LENGTHS;
    const first = simplePlan(problem, effort, isMany ? 1 : 2) ?? scarceFirst(problem, effort);
    yield;
    const parts = isMany ? partsInGroups(problem, effort) : partsAtOnce(problem, first ?? [], effort, PARTS);
    yield;
    // what is worth nothing there is worth a trifle, so that it is planned too
    const values = parts.values.map((value, i) => Math.max(value, problem.items[i]!.size * 1e-6));
    const plan = cheaperOf(problem, first, byParts(problem, { ...parts, values }, first, effort, isMany));
    if (!plan || costOfLayouts(problem, plan) <= parts.cost * NEAR) return plan;
    yield;
    return plannedAnew(problem, plan, values, effort, ANEW);
}
/** More lengths than this are taken in groups to find out what they are worth: the program grows with their square. */
const MOST_LENGTHS = 100;
const GROUPS = 40;
/** Steps for the solution in parts, and to plan some boards anew: some milliseconds each. */
const PARTS = 60_000;
const ANEW = 60_000;
/** A plan this near to the solution in parts is good enough at once. */
const NEAR = 1.002;

/** Board after board, by worth that goes by the length alone. */
export function simplePlan(problem: CuttingProblem, effort: Effort, rounds: number): Layout[] | undefined {
    const { items, boards } = problem;
    const longest = Math.max(...boards.map(kind => kind.capacity)), shares = widthShares(problem);
    // long pieces are worth a little more than their length, so that they are not what is left at the end
    const values = items.map((item, i) => item.size * shares[i]! * (1 + 0.1 * item.size / longest));
    const demand = items.map(({ count }) => count), how = { rounds, budget: rounds > 1 ? 200 : FEW_NODES };
    // where the boards that are long enough for some pieces are few, those pieces go first, whatever else would fill these better
    return sequentialPlan(problem, demand, freeOf(problem), values, effort, how)
        ?? sequentialPlan(problem, demand, freeOf(problem), values.map((value, i) => value * (items[i]!.size / longest) ** LONGEST_FIRST), effort, how);
}

/** Where such pieces find no place even so, every way to place them is tried, and the rest is planned then. */
function scarceFirst(problem: CuttingProblem, effort: Effort): Layout[] | undefined {
    const scarce = onScarceBoards(problem, effort);
    if (!scarce) return undefined;
    const rest = sequentialPlan(problem, scarce.left, scarce.free, problem.items.map(({ size }) => size), effort, { rounds: 1, budget: 200 });
    return rest && gathered(problem, [...scarce.layouts, ...rest]);
}

const LONGEST_FIRST = 12;

/** Boards of the solution in parts that are there in whole, then the rest board after board; of many lengths all of it board after board. */
function byParts(
    problem: CuttingProblem, { used, values }: Parts, first: readonly Layout[] | undefined, effort: Effort, isMany: boolean,
): Layout[] | undefined {
    const below = first ? costOfLayouts(problem, first) : Infinity, settled = new Settled(problem, freeOf(problem), effort);
    settled.settleWhole(used);
    if (settled.isDone) return gathered(problem, settled.layouts);
    const rest = sequentialPlan(problem, settled.left, settled.free, values, effort,
        { rounds: isMany ? 1 : 4, budget: isMany ? FEW_NODES : 500, below: below - settled.cost });
    return rest && gathered(problem, [...settled.layouts, ...rest]);
}
/** Of the search for the content of one board: of many lengths some nearly always fill it. */
const FEW_NODES = 50;

/** What pieces are worth by a solution in parts in which lengths are taken together; between two lengths by how far it is from the one to the other. */
function partsInGroups(problem: CuttingProblem, effort: Effort): Parts {
    const coarse = coarsened(problem, GROUPS).problem;
    const { values, cost } = partsAtOnce(coarse, simplePlan(coarse, effort, 1) ?? [], effort, PARTS);
    const key = ({ lanes }: Item): string => lanes.join(' ');
    const known = grouped(coarse.items.keys(), i => key(coarse.items[i]!));
    for (const own of known.values()) own.sort((a, b) => coarse.items[a]!.size - coarse.items[b]!.size);
    return {
        used: [], columns: [], cost, values: problem.items.map(item => {
            const own = known.get(key(item))!, above = own.findIndex(i => coarse.items[i]!.size >= item.size), high = own[above]!, low = own[above - 1];
            const to = coarse.items[high]!.size;
            if (low === undefined) return values[high]! * item.size / to;
            const from = coarse.items[low]!.size;
            return values[low]! + (values[high]! - values[low]!) * (item.size - from) / (to - from);
        }),
    };
}

function cheaperOf(problem: CuttingProblem, a: Layout[] | undefined, b: Layout[] | undefined): Layout[] | undefined {
    return a && b ? costOfLayouts(problem, b) < costOfLayouts(problem, a) ? b : a : a ?? b;
}

function freeOf({ boards }: CuttingProblem): number[] {
    return boards.map(kind => kind.available ?? Infinity);
}

/** Each board exchanged for the cheapest that holds its pieces: they are a little shorter than they were planned. */
export function shrunk(problem: CuttingProblem, layouts: readonly Layout[]): Layout[] {
    const free = problem.boards.map(kind => kind.available ?? Infinity);
    for (const { board } of layouts) free[board]! -= 1;
    return layouts.map(each => {
        const layout = tidied(problem, each);
        const board = cheapestFor(problem, layout, free);
        free[layout.board]! += 1;
        free[board]! -= 1;
        return { ...layout, board };
    });
}
