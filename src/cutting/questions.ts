import type { JobSettings } from '../job/model.ts';
import { onHandKey } from '../job/on-hand.ts';
import { printLength } from '../quantity/print-length.ts';
import { Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { compareNames, comparePieces } from '../takeoff/piece-order.ts';
import { blankOf, type Blank } from './blank.ts';
import { firstPlan, knownBy } from './known.ts';
import type { BoardPlan, CuttingModel, CuttingTerm, StockPlan, Unplaced, Unpriced } from './model.ts';
import { sumMoney } from './money.ts';
import { offersOf, type Offer } from './offers.ts';
import { pose, type Posed } from './pose.ts';
import { ANY_SHOP, type Shop } from './shop.ts';
import { stockPlanOf, type Solved } from './stock-plan.ts';
import { Effort } from './solve/effort.ts';
import { costOfLayouts, type CuttingProblem, type Layout } from './solve/problem.ts';
import { faultOf, trimmed } from './solve/layouts.ts';
import { withLongerOffcuts } from './solve/offcuts.ts';
import { quickPlanInSteps, simplePlan } from './solve/quick.ts';
import { grouped } from '../plain/groups.ts';
import { atOnce, type Steps } from '../plain/steps.ts';

/** A first plan, and for each stock the question whether there is a cheaper one. */
export interface Questions {
    readonly first: BoardPlan;
    /** Plain data, one a stock that anything is cut from: to be sent to whoever looks for the answer. */
    readonly asked: readonly Asked[];
    /** The plan as it is with the answers found so far, by the index of the question. `atOnce`: offcuts are made longer only as far as that takes no time. */
    answered(answers: ReadonlyMap<number, Answer>, how?: { readonly atOnce: boolean }): BoardPlan;
}
export interface Asked {
    readonly problem: CuttingProblem;
    readonly layouts: readonly Layout[];
    /** The index of the question about the same boards where sections may be cut too. */
    readonly withSections?: number;
    /** Asked of an alternate, to be compared with the job. */
    readonly isBeside?: true;
}
/** Makes a plan of what is asked of a job, and one of each that is compared with it. */
export type Solve = (job: Questions, beside?: readonly Questions[]) => Promise<readonly [BoardPlan, ...BoardPlan[]]>;
/** A plan for the problem, and what no plan costs less than, in the problem's units. */
export interface Answer { readonly layouts: readonly Layout[]; readonly bound: number }

/**
 * Where a set-up at the saw is worth something, a stock that may be cut in sections is asked about twice, with sections and without, and of the two
 * plans that is taken which costs less with its set-ups.
 */
export function questionsOf(pieces: readonly Piece[], job: JobSettings, before: readonly BoardPlan[] = [], shop = ANY_SHOP): Questions {
    return atOnce(questionsInSteps(pieces, job, before, shop));
}

/** The same in steps, for whoever has others waiting meanwhile. */
export function* questionsInSteps(pieces: readonly Piece[], job: JobSettings, before: readonly BoardPlan[], shop: Shop): Steps<Questions> {
    const unplaced: Unplaced[] = [], drafts: Draft[] = [];
    for (const own of byStock(pieces)) {
        const draft = yield* draftOf(own, job, before, shop, unplaced);
        if (draft) drafts.push(draft);
    }
    unplaced.sort((a, b) => comparePieces(a.piece, b.piece));
    const parts = drafts.flatMap(({ ways }) => ways.flat()), first: Reckoned[][] = [];
    for (const { offers, ways } of drafts) {
        const both: Reckoned[] = [];
        for (const way of ways) {
            both.push(reckoned(way, offers, job, [], QUICK_LOOKS));
            yield;
        }
        first.push(both);
    }
    return {
        first: yield* chosenInSteps(first, unplaced, shop),
        asked: parts.map((part): Asked => {
            const [sections, whole] = drafts.find(({ ways }) => ways.some(way => way.includes(part)))!.ways;
            const { posed: { problem }, layouts } = part, same = sections![whole?.indexOf(part) ?? -1];
            const isSame = same?.posed.problem.boards.every(({ available }, k) => available === problem.boards[k]!.available);
            return { problem, layouts, ...isSame && { withSections: parts.indexOf(same!) } };
        }),
        answered(answers, { atOnce } = { atOnce: false }) {
            const plans = drafts.map(({ offers, ways }, d) => ways.map((way, w) => {
                const found = (of: readonly Solved[] | undefined): (Answer | undefined)[] => of?.map(part => answers.get(parts.indexOf(part))) ?? [];
                const others = w === 0 ? found(ways[1]) : [];
                const own = found(way).map((answer, p) => answer && { ...answer, layouts: cheaper(way[p]!, answer.layouts, others[p]?.layouts) });
                return own.some(each => each) ? reckoned(way, offers, job, own, atOnce ? QUICK_LOOKS : LOOKS) : first[d]![w]!;
            }));
            return chosen(plans, unplaced, shop);
        },
    };
}

/** Of each stock the plan that costs less together with its set-ups, where it is planned in two ways. */
function chosen(drafts: readonly (readonly Reckoned[])[], unplaced: readonly Unplaced[], shop: Shop): BoardPlan {
    return atOnce(chosenInSteps(drafts, unplaced, shop));
}

function* chosenInSteps(drafts: readonly (readonly Reckoned[])[], unplaced: readonly Unplaced[], { setUps }: Shop): Steps<BoardPlan> {
    const stocks = drafts.map(([one]) => one!.plan);
    for (const [d, [sections, whole]] of drafts.entries()) {
        if (!setUps || !sections || !whole || !sections.cost || !whole.cost) continue;
        const others = [...stocks], setUpsWith = (plan: StockPlan): number => setUps.count(planOf(others.with(d, plan), []));
        const saved = whole.cost.sub(sections.cost), more = setUpsWith(sections.plan) - setUpsWith(whole.plan);
        yield;
        if (saved.equals(0) && more === 0) continue;
        const takes = saved.gte(setUps.each.amount.mul(more)) ? 'sections' : 'whole boards';
        const { plan } = takes === 'sections' ? sections : whole;
        stocks[d] = { ...plan, choice: { takes, boardsSaved: { ...setUps.each, amount: saved }, setUps: more, each: setUps.each } };
    }
    return planOf(stocks, unplaced);
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

/** What is cut from one stock. Each way is all of it, in as many parts as share no board. */
interface Draft { readonly offers: readonly Offer[]; readonly ways: readonly (readonly Solved[])[] }

/** The first plans of one stock. Pieces that come out of no board go to `unplaced`, with the reason. */
function* draftOf(
    pieces: readonly Piece[], job: JobSettings, before: readonly BoardPlan[], { apart, setUps, isRough = false }: Shop, unplaced: Unplaced[],
): Steps<Draft | undefined> {
    const { stock } = pieces[0]!;
    const offers = offersOf(stock, job);
    const groups = [...grouped(pieces, ({ room }) => (apart.has(room) ? room : undefined)).values()];
    const way = function* (withSections: boolean, out: Unplaced[]): Steps<Solved[]> {
        const parts: Solved[] = [];
        for (const own of groups) {
            const gone = parts.length === 0 ? before : [...before, planOf([stockPlanOf(parts, offers, job, firstPlan('money'))], [])];
            const part = yield* partOf(own, offers, job, gone, { withSections, isRough }, out);
            if (part) parts.push(part);
        }
        return givenOut(parts);
    };
    const sections = yield* way(stock.sheet?.value.stages !== 2, unplaced);
    if (sections.length === 0) return undefined;
    const isChoice = setUps && setUps.each.currency === stock.prices[0]?.currency && sections.some(({ posed }) => posed.problem.shortestSection !== undefined);
    if (!isChoice) return { offers, ways: [sections] };
    const whole = yield* way(false, []);
    return { offers, ways: [sections.map((part, p) => ({ ...part, layouts: cheaper(part, part.layouts, whole[p]?.layouts) })), whole] };
}

/** A plan without sections is one of those with sections too: the cheaper of the two, where there are the boards on hand for it. */
function cheaper({ posed: { problem } }: Solved, own: readonly Layout[], withoutSections: readonly Layout[] | undefined): readonly Layout[] {
    const isCheaper = withoutSections && costOfLayouts(problem, withoutSections) < costOfLayouts(problem, own);
    return isCheaper && faultOf(problem, withoutSections) === undefined ? withoutSections : own;
}

/**
 * Boards on hand belong to the part whose first plan uses them, those that none uses to the first part: the parts are looked at each by itself, and
 * none may take what another has.
 */
function givenOut(parts: readonly Solved[]): Solved[] {
    if (parts.length < 2) return [...parts];
    const usedBy = ({ posed, layouts }: Solved, key: string): number => layouts.reduce((sum, { board, times }) => {
        const kind = posed.kinds.all[board]!;
        return kind.from === 'on hand' && onHandKey(kind) === key ? sum + times : sum;
    }, 0);
    return parts.map((part, p) => {
        const all = part.posed.kinds.all.map(kind => (kind.from !== 'on hand' ? kind : {
            ...kind,
            available: p > 0 ? usedBy(part, onHandKey(kind)) : parts.slice(1).reduce((left, other) => left - usedBy(other, onHandKey(kind)), kind.available!),
        }));
        const boards = part.posed.problem.boards.map((kind, k) => ({ ...kind, available: all[k]!.available ?? null }));
        return { ...part, posed: { ...part.posed, kinds: { ...part.posed.kinds, all }, problem: { ...part.posed.problem, boards } } };
    });
}

interface HowPlanned { readonly withSections: boolean; readonly isRough: boolean }

function* partOf(
    pieces: readonly Piece[], offers: readonly Offer[], job: JobSettings, before: readonly BoardPlan[], { withSections, isRough }: HowPlanned,
    unplaced: Unplaced[],
): Steps<Solved | undefined> {
    const { stock } = pieces[0]!;
    let blanks = pieces.flatMap(piece => {
        const blank = blankOf(piece, job);
        if (typeof blank !== 'string') return blank;
        unplaced.push({ piece, reason: blank });
        return [];
    });
    while (blanks.length > 0) {
        const posed = pose(stock, blanks, offers, job, before, withSections);
        let out = withoutBoard(posed);
        if (out.size === 0) {
            const layouts = yield* planAsFarAsBoardsGo(posed.problem, isRough);
            out = piecesOn(layouts, posed.problem.boards.length, posed);
            if (out.size === 0) return { posed, layouts };
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
function* planAsFarAsBoardsGo(problem: CuttingProblem, isRough: boolean): Steps<Layout[]> {
    const { boards } = problem;
    const plan = yield* quickPlanKept(problem, isRough);
    if (plan) return plan;
    const wanting = {
        capacity: Math.max(...boards.map(kind => kind.capacity)), across: Math.max(...boards.map(kind => kind.across)),
        cost: 1000 * Math.max(1, ...boards.map(kind => kind.cost)), available: null,
    };
    const withMore = yield* quickPlanInSteps({ ...problem, boards: [...boards, wanting] }, new Effort(Infinity));
    if (!withMore) throw new Error('a piece fits a board and was planned on none');
    return withMore;
}

/** An alternate leaves most stocks as they are, and a command that is rehearsed asks everything again. */
function* quickPlanKept(problem: CuttingProblem, isRough: boolean): Steps<Layout[] | undefined> {
    if (isRough) return simplePlan(problem, new Effort(Infinity), 1);
    const key = JSON.stringify(problem), known = plansAtOnce.get(key);
    if (known) return known;
    const plan = yield* quickPlanInSteps(problem, new Effort(Infinity));
    yield;
    if (plan) plansAtOnce.set(key, plan);
    if (plansAtOnce.size > MOST_KEPT) plansAtOnce.delete(plansAtOnce.keys().next().value!);
    return plan;
}
const plansAtOnce = new Map<string, Layout[]>();
const MOST_KEPT = 200;

function piecesOn(layouts: readonly Layout[], kind: number, { pieces }: Posed): Set<Piece> {
    const out = new Set<Piece>();
    for (const { board, strips, times } of layouts)
        if (board === kind)
            for (const [item, count] of strips.flatMap(strip => strip.picks))
                for (let n = count * times; n > 0; n--) out.add(pieces[item]!.findLast(piece => !out.has(piece))!);
    return out;
}

function reasonFor(blank: Blank, offers: readonly Offer[], job: JobSettings): string {
    return `${withoutBoughtBoard(blank, offers, job)}${goneOnHand(blank, job)}`;
}

/** Boards on hand that would be long enough: other pieces have them, else it came out of one. Nothing where there is none. */
function goneOnHand({ piece: { stock }, length, width }: Blank, job: JobSettings): string {
    const long = stock.onHand.filter(({ value }) => value.length - job.endTrim.value >= length && (value.width ?? width) >= width);
    const count = long.reduce((sum, { value }) => sum + Math.floor(value.count), 0), longest = Math.max(...long.map(({ value }) => value.length));
    if (count === 0) return '';
    const told = printLength(longest, job.show.value);
    return count === 1 ? `; the one on hand that is long enough, ${told}, goes to other pieces` : `; the ${count} on hand that are long enough, ${told} at the longest, go to other pieces`;
}

function withoutBoughtBoard({ piece, length }: Blank, offers: readonly Offer[], job: JobSettings): string {
    const { stock } = piece;
    const show = (ticks: Ticks): string => printLength(ticks, job.show.value);
    const longest = offers.at(-1)?.length;
    if (longest !== undefined) return `it is ${show(length)}, and the longest ${stock.name} is ${show(longest)}, ${show(Math.max(0, longest - job.endTrim.value))} without its ends`;
    return stock.lengths.length === 0
        ? `${stock.name} has no \`lengths\` that it is sold in`
        : `no ${stock.name} is sold that is at most ${show(job.longestBoard?.value ?? 0)} long`;
}

/** A plan of one stock, and what it costs as far as that can be compared with another. */
interface Reckoned { readonly plan: StockPlan; readonly cost?: Rational }

/** @param answers one a part, as far as there are any */
function reckoned(parts: readonly Solved[], offers: readonly Offer[], job: JobSettings, answers: readonly (Answer | undefined)[], looks: number): Reckoned {
    const solved = parts.map(({ posed, layouts: first }, p): Solved => {
        const { problem } = posed;
        // an offcut is what is left after the last cut
        const shortest = Math.ceil((job.shortestOffcut.value + posed.saw.cut) / posed.lengthUnit);
        const layouts = withLongerOffcuts(problem, answers[p]?.layouts ?? first, shortest, looks);
        // where pieces were moved, an offcut may have become worth more
        return { posed, layouts: posed.kinds.all.some(({ keeps }) => keeps) ? trimmed(problem, layouts, problem.items.map(({ count }) => count)) : layouts };
    });
    const { kinds: { least } } = parts[0]!.posed;
    const isComparable = parts.every(({ posed: { exact, kinds } }) => exact && kinds.comparable && kinds.least === least);
    const sum = (of: (one: Solved, p: number) => Rational): Rational => solved.reduce((all, one, p) => all.add(of(one, p)), new Rational(0));
    const cost = sum(({ posed, layouts }) => posed.costUnit.mul(costOfLayouts(posed.problem, layouts)));
    // nothing is claimed where the problem is not exactly the job, nor where costs cannot be compared
    const known = !isComparable || answers.length === 0 ? firstPlan(least)
        : knownBy(cost, sum(({ posed }, p) => posed.costUnit.mul(answers[p]?.bound ?? 0)), least, modelOf(parts), termsOf(parts));
    return { plan: stockPlanOf(solved, offers, job, known), ...isComparable && least === 'money' && { cost } };
}

const QUICK_LOOKS = 50_000;
const LOOKS = 1_000_000;

function modelOf(parts: readonly Solved[]): CuttingModel {
    const ripped = parts.filter(({ posed: { problem } }) => problem.strips.length > 0), sheet = parts[0]!.posed.stock.sheet?.value;
    if (ripped.length === 0) return 'across';
    const inSections = ripped.some(({ posed: { problem } }) => problem.shortestSection !== undefined);
    if (sheet) {
        const laid = sheet.grain === 'none' ? 'sheets either way' : 'sheets along';
        return inSections ? laid : `${laid} in two`;
    }
    return inSections ? 'ripped' : 'ripped whole';
}

function termsOf(parts: readonly Solved[]): CuttingTerm[] {
    const isWorth = parts.some(({ posed: { kinds } }) => kinds.all.some(({ keeps }) => keeps));
    return [...parts.length > 1 ? ['rooms apart' as const] : [], ...isWorth ? ['offcuts worth' as const] : []];
}

function byStock(pieces: readonly Piece[]): Piece[][] {
    const stocks = [...grouped(pieces, ({ stock }) => stock.key).values()].map(own => ({ own, stock: own[0]!.stock }));
    return stocks.sort((a, b) => compareNames(a.stock.name, b.stock.name) || compareNames(a.stock.key, b.stock.key)).map(({ own }) => own);
}
