import { expect } from 'vitest';
import type { Board, BoardPlan } from '../../src/cutting/model.ts';
import type { JobSettings, Stock } from '../../src/job/model.ts';
import { inches, Rational } from '../../src/quantity/rational.ts';
import type { Ticks } from '../../src/quantity/ticks.ts';
import type { Piece } from '../../src/takeoff/model.ts';

/**
 * Goes over a plan with the job and the pieces in hand and nothing of the planner: every piece once or refused, every
 * board one that is sold or on hand, no strip over its board, no width over its board, every sum what its lines say.
 */
export function checkPlan(plan: BoardPlan, pieces: readonly Piece[], job: JobSettings): void {
    const placed = plan.stocks.flatMap(s => s.boards).flatMap(b => b.strips).flatMap(strip => strip.pieces);
    const accounted = [...placed, ...plan.unplaced.map(u => u.piece)];
    expect(accounted.map(p => p.id).sort()).toEqual(pieces.map(p => p.id).sort());
    for (const { reason } of plan.unplaced) expect(reason.length).toBeGreaterThan(10);

    const sums = new Map<string, Rational>();
    const unpriced = new Map<string, number>();
    for (const { stock, boards, buy, spare, costs, rips } of plan.stocks) {
        const longest = job.longestBoard?.value ?? Infinity;
        for (const board of boards) {
            expect(board.strips.flatMap(s => s.pieces).length, 'no board without a piece').toBeGreaterThan(0);
            if (board.from === 'bought') {
                expect(stock.lengths.map(l => l.value)).toContain(board.length);
                expect(board.length).toBeLessThanOrEqual(longest);
            }
            const along = board.crosswise ? stock.width!.value.ticks : board.length;
            if (board.crosswise) expect(stock.sheet!.value.grain).toBe('none');
            checkCuts(board, stock, along, job);
        }
        // a strip on hand that is as wide as its pieces is in no rip
        const ripped = boards.filter(b => b.strips.some(({ rippedTo }) => rippedTo !== undefined && rippedTo !== b.width)).map(b => b.number);
        expect([...new Set(rips.flatMap(rip => rip.boards))].sort((a, b) => a - b), 'every board that is ripped is in a rip').toEqual(ripped);
        const parts = boards.reduce((sum, b) => sum + (b.sections?.length ?? (ripped.includes(b.number) ? 1 : 0)), 0);
        expect(rips.reduce((sum, rip) => sum + rip.boards.length, 0)).toBe(parts);
        const isLike = (a: { readonly length: Ticks; readonly width?: Ticks }, b: typeof a): boolean => a.length === b.length && a.width === b.width;
        for (const { value } of stock.onHand)
            expect(boards.filter(b => b.from === 'on hand' && isLike(b, value)).length)
                .toBeLessThanOrEqual(stock.onHand.filter(o => isLike(o.value, value)).reduce((n, o) => n + o.value.count, 0));
        expect(boards.filter(b => b.from === 'on hand').every(b => stock.onHand.some(o => isLike(o.value, b)))).toBe(true);
        expect(boards.every(b => b.from === 'on hand' || b.width === undefined), 'only strips on hand are narrower').toBe(true);
        expect(boards.map(b => b.number)).toEqual(boards.map((_, i) => i + 1));

        const bought = boards.filter(b => b.from === 'bought');
        expect(buy.reduce((n, p) => n + p.count, 0)).toBe(bought.length + (spare?.count ?? 0));
        if (spare) expect(spare.length).toBe(Math.max(...bought.map(b => b.length)));
        const own = new Map<string, Rational>();
        for (const purchase of buy) {
            expect(purchase.count).toBe(bought.filter(b => b.length === purchase.length).length + (spare?.length === purchase.length ? spare.count : 0));
            const price = stock.prices.find(p => p.for?.value === purchase.length) ?? stock.prices.find(p => p.for === undefined);
            if (!price) {
                expect(purchase.each).toBeUndefined();
                unpriced.set(`${stock.key} ${purchase.length}`, purchase.count);
                continue;
            }
            const cost = price.perTick.mul(purchase.length).mul(purchase.count);
            expect(purchase.cost!.amount.equals(cost)).toBe(true);
            add(own, price.currency, cost);
            add(sums, price.currency, cost);
        }
        expect(costs.map(c => [c.currency, c.amount.toFraction()])).toEqual(figures(own));
    }
    expect(plan.costs.map(c => [c.currency, c.amount.toFraction()])).toEqual(figures(sums));
    expect(new Map(plan.unpriced.map(u => [`${u.stock.key} ${u.length}`, u.count]))).toEqual(unpriced);
}

/** One board cut across first, and its sections or the whole of it then ripped: everything beside and behind each other fits, kerfs and trim with it. */
function checkCuts(board: Board, stock: Stock, along: Ticks, job: JobSettings): void {
    const kerf = job.kerf.value;
    const whole = board.strips.filter(strip => strip.rippedTo === undefined);
    const over = board.strips.filter(strip => strip.rippedTo !== undefined && strip.section === undefined);
    expect(whole.length).toBeLessThanOrEqual(1);
    if (over.length > 0) expect(whole.length + (board.sections?.length ?? 0), 'ripped over its whole length and cut across').toBe(0);
    for (const strip of board.strips) {
        for (const piece of strip.pieces) {
            expect(piece.stock.key).toBe(stock.key);
            if (strip.rippedTo !== undefined) expect([piece.width, piece.thickness]).toContain(strip.rippedTo);
            else expect(Math.min(piece.width, piece.thickness)).toBeLessThanOrEqual(stock.width?.value.ticks ?? Infinity);
        }
        const room = strip.section !== undefined ? board.sections![strip.section - 1]! : along - job.endTrim.value;
        const sections = strip.rippedTo === undefined ? board.sections ?? [] : [];
        const used = inARow([...strip.pieces.map(piece => blank(piece, job)), ...sections], kerf);
        expect(used).toBeLessThanOrEqual(room);
        expect(strip.offcut).toBeGreaterThanOrEqual(0);
        if (strip.offcut > 0) expect(strip.offcut + used).toBeLessThanOrEqual(room);
        expect(strip.kept).toBe(strip.offcut >= job.shortestOffcut.value);
    }
    const across = board.crosswise ? board.length : board.width ?? stock.width?.value.ticks;
    if (board.width !== undefined) expect(whole.flatMap(strip => strip.pieces), 'nothing is cut from the whole width of a strip').toEqual([]);
    const abreast = board.sections ? board.sections.map((_, i) => board.strips.filter(strip => strip.section === i + 1)) : [over];
    for (const strips of abreast) {
        if (board.sections) expect(strips.length, 'a section without strips').toBeGreaterThan(0);
        if (across !== undefined) expect(inARow(strips.map(strip => strip.rippedTo!), kerf)).toBeLessThanOrEqual(across);
    }
    // shorter ones are not fed along a fence: common practice, no source
    for (const section of board.sections ?? []) expect(section).toBeGreaterThanOrEqual(inches(12));
}

const inARow = (sizes: readonly Ticks[], kerf: Ticks): Ticks => sizes.reduce((sum, size) => sum + size, Math.max(0, sizes.length - 1) * kerf);

/** Boards are crosscut square: a piece with a miter has a blank that is longer by what the slanted slot is over the square one, in marks of the tape. */
function blank(piece: Piece, job: JobSettings): Ticks {
    const miters = piece.ends.flatMap(end => (end.cut === 'miter' ? [Math.abs(end.degrees!)] : []));
    const over = miters.length === 0 ? 0 : job.kerf.value / Math.cos(Math.max(...miters) * Math.PI / 180) - job.kerf.value;
    return piece.cutOverall + Math.floor(over / job.cutTo.value) * job.cutTo.value;
}

function add(sums: Map<string, Rational>, currency: string, amount: Rational): void {
    sums.set(currency, (sums.get(currency) ?? new Rational(0)).add(amount));
}
const figures = (sums: Map<string, Rational>): [string, string][] =>
    [...sums].sort(([a], [b]) => (a < b ? -1 : 1)).map(([currency, amount]) => [currency, amount.toFraction()]);
