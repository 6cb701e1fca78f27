import type { JobSettings, Stock } from '../job/model.ts';
import { printLength } from '../quantity/print-length.ts';
import { inches, Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { compareNames, comparePieces } from '../takeoff/piece-order.ts';
import { blankOf, cutAlong, type Blank } from './blank.ts';
import { fillBoards, type Filled, type Saw } from './fill.ts';
import { firstPlan } from './known.ts';
import type { Board, BoardFrom, BoardPlan, Money, StockPlan, Unplaced, Unpriced } from './model.ts';
import { ripsOf } from './rips.ts';
import { buyBoards, offersOf, purchasesOf, type Offer } from './purchase.ts';

/**
 * A first plan of the boards that the pieces come out of: what is on hand is used first, then boards are bought, by
 * cost where prices are known. Kerfs, end trim and the longest board are the job's. It is a plan that can be cut, not a
 * proof that none is cheaper. The same pieces always give the same plan.
 * @param before plans already made from the same stocks: the boards on hand that they use are gone.
 */
export function planBoards(pieces: readonly Piece[], job: JobSettings, before: readonly BoardPlan[] = []): BoardPlan {
    const unplaced: Unplaced[] = [];
    const stocks = byStock(pieces).map(own => planStock(own, job, before, unplaced)).filter(plan => plan.boards.length > 0);
    return {
        stocks,
        costs: sumMoney(stocks.flatMap(plan => plan.costs)),
        unpriced: stocks.flatMap((plan): Unpriced[] =>
            plan.buy.filter(p => !p.each).map(p => ({ stock: plan.stock, length: p.length, count: p.count }))),
        unplaced: unplaced.sort((a, b) => comparePieces(a.piece, b.piece)),
    };
}

/** Adds up money without converting it: one sum a currency, by its code. */
export function sumMoney(amounts: readonly Money[]): Money[] {
    const sums = new Map<string, Rational>();
    for (const { amount, currency } of amounts) sums.set(currency, (sums.get(currency) ?? new Rational(0)).add(amount));
    return [...sums].sort(([a], [b]) => (a < b ? -1 : 1)).map(([currency, amount]) => ({ amount, currency }));
}

function planStock(pieces: readonly Piece[], job: JobSettings, before: readonly BoardPlan[], unplaced: Unplaced[]): StockPlan {
    const stock = pieces[0]!.stock;
    const saw: Saw = { cut: cutAlong(pieces, job.kerf.value), endTrim: job.endTrim.value };
    const offers = offersOf(stock, job);
    let onHand = onHandOf(stock, before);
    const had: Filled[] = [];
    const bought: Filled[] = [];
    for (const blanks of byRip(pieces, job, unplaced)) {
        const fromHand = fillBoards(onHand, blanks, saw);
        onHand = without(onHand, fromHand.filled.map(b => b.length));
        const fromYard = buyBoards(fromHand.left, offers, saw);
        had.push(...fromHand.filled);
        bought.push(...fromYard.filled);
        unplaced.push(...fromYard.left.map(blank => ({ piece: blank.piece, reason: reasonFor(blank, offers, saw, job) })));
    }
    bought.sort((a, b) => b.length - a.length);
    const buy = purchasesOf(bought.map(b => b.length), offers);
    const boards = [...had.map(b => ({ ...b, from: 'on hand' as const })), ...bought.map(b => ({ ...b, from: 'bought' as const }))]
        .map((b, i) => boardOf(b, i + 1, saw));
    return {
        stock, boards, buy,
        costs: sumMoney(buy.flatMap(p => p.cost ?? [])),
        rips: ripsOf(boards, stock, job),
        known: firstPlan(offers.some(o => o.price) ? 'money' : 'length'),
    };
}

/** Pieces that need no ripping before they are cut to length, then one group for each width that is ripped, the widest first. */
function byRip(pieces: readonly Piece[], job: JobSettings, unplaced: Unplaced[]): Blank[][] {
    const groups = new Map<Ticks, Blank[]>();
    for (const piece of pieces) {
        const blank = blankOf(piece, job);
        if (typeof blank === 'string') { unplaced.push({ piece, reason: blank }); continue; }
        const width = blank.rippedTo ?? Infinity;
        const group = groups.get(width);
        if (group) group.push(blank); else groups.set(width, [blank]);
    }
    return [...groups].sort(([a], [b]) => b - a).map(([, blanks]) => blanks);
}

function boardOf(board: Filled & { from: BoardFrom }, number: number, saw: Saw): Board {
    return {
        number, length: board.length, from: board.from, cut: saw.cut,
        strips: board.strips.map(blanks => {
            const used = blanks.reduce((sum, b) => sum + b.length + saw.cut, saw.endTrim);
            const rippedTo = (blanks[0] ?? board.strips.flat()[0])?.rippedTo;
            return { ...(rippedTo === undefined ? {} : { rippedTo }), pieces: blanks.map(b => b.piece), offcut: Math.max(0, board.length - used), kept: board.length - used >= SHORTEST_KEPT };
        }),
    };
}

/** An offcut this long is worth keeping where the job does not say. Common practice, no source. */
const SHORTEST_KEPT = inches(24);

function reasonFor(blank: Blank, offers: readonly Offer[], saw: Saw, job: JobSettings): string {
    const name = blank.piece.stock.name;
    const show = (ticks: Ticks): string => printLength(ticks, job.show.value);
    const longest = offers.at(-1)?.length;
    if (longest !== undefined) return `it is ${show(blank.length)}, and the longest ${name} is ${show(longest)}, ${show(Math.max(0, longest - saw.endTrim))} without its ends`;
    return blank.piece.stock.lengths.length === 0
        ? `nobody has said in which lengths ${name} is sold`
        : `no ${name} is sold that is at most ${show(job.longestBoard?.value ?? 0)} long`;
}

/** Boards and offcuts that are there and that no earlier plan uses, the shortest first, so that offcuts go before boards. */
function onHandOf(stock: Stock, before: readonly BoardPlan[]): Ticks[] {
    const all = stock.onHand.flatMap(({ value }) => Array.from({ length: Math.min(value.count, MOST_ON_HAND) }, () => value.length));
    const gone = before.flatMap(plan => plan.stocks).filter(plan => plan.stock.key === stock.key)
        .flatMap(plan => plan.boards).filter(b => b.from === 'on hand').map(b => b.length);
    return without(all.filter(length => length > 0), gone).sort((a, b) => a - b);
}
/** More boards than anybody has: a mistyped count must not stop the program. */
const MOST_ON_HAND = 10_000;

function without(lengths: readonly Ticks[], gone: readonly Ticks[]): Ticks[] {
    const left = [...lengths];
    for (const length of gone) {
        const i = left.indexOf(length);
        if (i >= 0) left.splice(i, 1);
    }
    return left;
}

function byStock(pieces: readonly Piece[]): Piece[][] {
    const groups = new Map<string, Piece[]>();
    for (const piece of pieces) {
        const own = groups.get(piece.stock.key);
        if (own) own.push(piece); else groups.set(piece.stock.key, [piece]);
    }
    const stocks = [...groups.values()].map(own => ({ own, stock: own[0]!.stock }));
    return stocks.sort((a, b) => compareNames(a.stock.name, b.stock.name) || compareNames(a.stock.key, b.stock.key)).map(({ own }) => own);
}
