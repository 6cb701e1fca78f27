import type { JobSettings, Stock } from '../job/model.ts';
import { printLength } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { compareNames, comparePieces } from '../takeoff/piece-order.ts';
import { blankOf, type Blank } from './blank.ts';
import { firstPlan, knownBy } from './known.ts';
import type { BoardPlan, CuttingModel, Known, StockPlan, Unplaced, Unpriced } from './model.ts';
import { sumMoney } from './money.ts';
import { offersOf, type Offer } from './offers.ts';
import { pose, type Posed } from './pose.ts';
import { stockPlanOf } from './stock-plan.ts';
import { Effort } from './solve/effort.ts';
import { costOfLayouts, type CuttingProblem, type Layout } from './solve/problem.ts';
import { withLongerOffcuts } from './solve/offcuts.ts';
import { quickPlan } from './solve/quick.ts';
import { grouped } from '../plain/groups.ts';

/** A first plan, and for each stock the question whether there is a cheaper one. */
export interface Questions {
    readonly first: BoardPlan;
    /** Plain data, one a stock that anything is cut from: to be sent to whoever looks for the answer. */
    readonly asked: readonly Asked[];
    /** The plan as it is with the answers found so far, by the index of the question. `atOnce`: offcuts are made longer only as far as that takes no time. */
    answered(answers: ReadonlyMap<number, Answer>, how?: { readonly atOnce: boolean }): BoardPlan;
}
export interface Asked { readonly problem: CuttingProblem; readonly layouts: readonly Layout[] }
/** A plan for the problem, and what no plan costs less than, in the problem's units. */
export interface Answer { readonly layouts: readonly Layout[]; readonly bound: number }

export function questionsOf(pieces: readonly Piece[], job: JobSettings, before: readonly BoardPlan[] = []): Questions {
    const unplaced: Unplaced[] = [];
    const drafts = byStock(pieces).flatMap(own => draftOf(own, job, before, unplaced) ?? []);
    unplaced.sort((a, b) => comparePieces(a.piece, b.piece));
    const first = drafts.map(draft => stockPlan(draft, job));
    return {
        first: planOf(first, unplaced),
        asked: drafts.map(({ posed, layouts }) => ({ problem: posed.problem, layouts })),
        answered: (answers, { atOnce } = { atOnce: false }) =>
            planOf(drafts.map((draft, i) => (answers.has(i) ? stockPlan(draft, job, answers.get(i), atOnce ? QUICK_LOOKS : LOOKS) : first[i]!)), unplaced),
    };
}

function planOf(stocks: readonly StockPlan[], unplaced: readonly Unplaced[]): BoardPlan {
    return {
        stocks,
        costs: sumMoney(stocks.flatMap(plan => plan.costs)),
        unpriced: stocks.flatMap((plan): Unpriced[] =>
            plan.buy.filter(p => !p.each).map(p => ({ stock: plan.stock, length: p.length, count: p.count }))),
        unplaced,
    };
}

interface Draft { readonly posed: Posed; readonly offers: readonly Offer[]; readonly layouts: readonly Layout[] }

/** The first plan of one stock. Pieces that come out of no board go to `unplaced`, with the reason. */
function draftOf(pieces: readonly Piece[], job: JobSettings, before: readonly BoardPlan[], unplaced: Unplaced[]): Draft | undefined {
    const { stock } = pieces[0]!;
    const offers = offersOf(stock, job);
    let blanks = pieces.flatMap(piece => {
        const blank = blankOf(piece, job);
        if (typeof blank !== 'string') return blank;
        unplaced.push({ piece, reason: blank });
        return [];
    });
    while (blanks.length > 0) {
        const posed = pose(stock, blanks, offers, job, before);
        let out = withoutBoard(posed);
        if (out.size === 0) {
            const layouts = planAsFarAsBoardsGo(posed.problem);
            out = piecesOn(layouts, posed.problem.boards.length, posed);
            if (out.size === 0) return { posed, offers, layouts };
        }
        unplaced.push(...blanks.filter(b => out.has(b.piece)).map(blank => ({ piece: blank.piece, reason: reasonFor(blank, offers, job) })));
        blanks = blanks.filter(b => !out.has(b.piece));
    }
    return undefined;
}

/** Pieces that are longer than every board there is for them. */
function withoutBoard({ problem, pieces }: Posed): Set<Piece> {
    const fits = ({ size, lanes }: CuttingProblem['items'][number]): boolean => problem.boards.some(kind =>
        size <= kind.capacity && lanes.some(lane => (lane === 0 ? !kind.ripOnly : problem.strips[lane - 1]! <= kind.across)));
    return new Set(pieces.flatMap((alike, i) => (fits(problem.items[i]!) ? [] : alike)));
}

/**
 * A plan for all pieces. Where only boards on hand are long enough for some and there are too few of those, the rest of them is
 * on boards of a kind that does not exist, after the last one of the problem.
 */
function planAsFarAsBoardsGo(problem: CuttingProblem): Layout[] {
    const { boards } = problem;
    const plan = quickPlan(problem, new Effort(Infinity));
    if (plan) return plan;
    const wanting = {
        capacity: Math.max(...boards.map(kind => kind.capacity)), across: Math.max(...boards.map(kind => kind.across)),
        cost: 1000 * Math.max(1, ...boards.map(kind => kind.cost)), available: null,
    };
    const withMore = quickPlan({ ...problem, boards: [...boards, wanting] }, new Effort(Infinity));
    if (!withMore) throw new Error('a piece fits a board and was planned on none');
    return withMore;
}

function piecesOn(layouts: readonly Layout[], kind: number, { pieces }: Posed): Set<Piece> {
    const out = new Set<Piece>();
    for (const { board, strips, times } of layouts)
        if (board === kind)
            for (const [item, count] of strips.flatMap(strip => strip.picks))
                for (let n = count * times; n > 0; n--) out.add(pieces[item]!.findLast(piece => !out.has(piece))!);
    return out;
}

function reasonFor({ piece, length }: Blank, offers: readonly Offer[], job: JobSettings): string {
    const { stock } = piece;
    const show = (ticks: Ticks): string => printLength(ticks, job.show.value);
    const longest = offers.at(-1)?.length;
    if (longest !== undefined) return `it is ${show(length)}, and the longest ${stock.name} is ${show(longest)}, ${show(Math.max(0, longest - job.endTrim.value))} without its ends`;
    return stock.lengths.length === 0
        ? `nobody has said in which lengths ${stock.name} is sold`
        : `no ${stock.name} is sold that is at most ${show(job.longestBoard?.value ?? 0)} long`;
}

function stockPlan({ posed, offers, layouts: first }: Draft, job: JobSettings, answer?: Answer, looks = QUICK_LOOKS): StockPlan {
    // an offcut is what is left after the last cut
    const shortest = Math.ceil((job.shortestOffcut.value + posed.saw.cut) / posed.lengthUnit);
    const layouts = withLongerOffcuts(posed.problem, answer?.layouts ?? first, shortest, looks);
    return stockPlanOf(posed, layouts, offers, job, answer ? knownOf(posed, { ...answer, layouts }) : firstPlan(posed.kinds.least));
}

const QUICK_LOOKS = 50_000;
const LOOKS = 1_000_000;

/** Nothing is claimed where the problem is not exactly the job, nor where costs cannot be compared. */
function knownOf({ stock, problem, costUnit, exact, kinds: { least, comparable } }: Posed, { layouts, bound }: Answer): Known {
    if (!exact || !comparable) return firstPlan(least);
    return knownBy(costUnit.mul(costOfLayouts(problem, layouts)), costUnit.mul(bound), least, modelOf(stock, problem));
}

function modelOf({ sheet }: Stock, { strips }: CuttingProblem): CuttingModel {
    if (sheet && strips.length > 0) return sheet.value.grain === 'none' ? 'sheets either way' : 'sheets along';
    return strips.length > 0 ? 'ripped' : 'across';
}

function byStock(pieces: readonly Piece[]): Piece[][] {
    const stocks = [...grouped(pieces, ({ stock }) => stock.key).values()].map(own => ({ own, stock: own[0]!.stock }));
    return stocks.sort((a, b) => compareNames(a.stock.name, b.stock.name) || compareNames(a.stock.key, b.stock.key)).map(({ own }) => own);
}
