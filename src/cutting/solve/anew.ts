import { STEPS, type Effort } from './effort.ts';
import { gathered, picksOf } from './layouts.ts';
import type { CuttingProblem, Layout } from './problem.ts';
import { sequentialPlan } from './sequential.ts';

interface OneBoard { readonly layout: Layout; readonly cost: number; readonly rate: number }

/**
 * The plan with a handful of its boards planned anew, again and again: some that cost most for what is on them, with others by turns. What comes out
 * cheaper stays. The same plan, the same result.
 * @param values what the pieces are worth
 * @param steps how many are spent at the most, besides the last try
 * @param from the turn to begin with: another one, another course
 */
export function plannedAnew(
    problem: CuttingProblem, layouts: readonly Layout[], values: readonly number[], effort: Effort, steps: number, from = 0,
): Layout[] {
    const { boards: kinds, items } = problem;
    const free = kinds.map(kind => kind.available ?? Infinity);
    for (const { board, times } of layouts) free[board]! -= times;
    const singly = (plan: readonly Layout[]): OneBoard[] => plan.flatMap(layout => {
        const { cost } = kinds[layout.board]!, worth = picksOf(layout).reduce((sum, [item, count]) => sum + values[item]! * count, 0);
        // what costs nothing is used best where it is
        return Array.from({ length: layout.times }, () => ({ layout: { ...layout, times: 1 }, cost, rate: cost > 0 ? worth / cost : Infinity }));
    });
    let isCheaper = false;
    let boards = singly(layouts).sort((a, b) => a.rate - b.rate);
    const last = effort.spent + steps;
    for (let turn = from; boards.length > 1 && effort.spent < last && turn < from + MOST_TURNS; turn++) {
        const chosen = choose(boards.length, turn), own = boards.filter((_, i) => chosen.has(i));
        const demand = items.map(() => 0), there = [...free];
        for (const { layout } of own) {
            there[layout.board]! += 1;
            for (const [item, count] of picksOf(layout)) demand[item]! += count;
        }
        effort.spent += boards.length * STEPS.look + own.length * STEPS.cut + items.length * STEPS.sorted;
        const below = own.reduce((sum, { cost }) => sum + cost, 0);
        const cheaper = sequentialPlan(problem, demand, there, values, effort, { rounds: 4, budget: 300, below });
        if (!cheaper) continue;
        isCheaper = true;
        for (const { layout } of own) free[layout.board]! += 1;
        for (const { board, times } of cheaper) free[board]! -= times;
        boards = [...boards.filter((_, i) => !chosen.has(i)), ...singly(cheaper)].sort((a, b) => a.rate - b.rate);
    }
    return isCheaper ? gathered(problem, boards.map(({ layout }) => layout)) : [...layouts];
}
const MOST_TURNS = 1000;
const HANDFUL = 8;

/** By turns the worst, or a few further on among them, with some from all over the plan. */
function choose(of: number, turn: number): Set<number> {
    const chosen = new Set<number>(), most = Math.min(HANDFUL, of);
    const from = turn % 2 === 0 ? 0 : turn >> 2;
    for (let i = 0; i < most / 2; i++) chosen.add((from + i) % of);
    for (let j = 0; chosen.size < most && j < 4 * HANDFUL; j++) chosen.add((turn * 7 + j * (5 + turn % 3)) % of);
    return chosen;
}
