import { expect } from 'vitest';
import type { BoardPlan } from '../../src/cutting/model.ts';
import type { JobSettings } from '../../src/job/model.ts';
import { Rational } from '../../src/quantity/rational.ts';
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
            let width = 0;
            for (const strip of board.strips) {
                for (const piece of strip.pieces) expect(piece.stock.key).toBe(stock.key);
                expect(stripLength(strip.pieces, job)).toBeLessThanOrEqual(along - job.endTrim.value);
                if (strip.rippedTo === undefined) expect(board.strips).toHaveLength(1);
                for (const piece of strip.pieces)
                    if (strip.rippedTo !== undefined) expect([piece.width, piece.thickness]).toContain(strip.rippedTo);
                    else expect(Math.min(piece.width, piece.thickness)).toBeLessThanOrEqual(stock.width?.value.ticks ?? Infinity);
                width += (strip.rippedTo ?? 0) + (width > 0 ? job.kerf.value : 0);
                expect(strip.offcut).toBeGreaterThanOrEqual(0);
                expect(strip.offcut + stripLength(strip.pieces, job)).toBeLessThanOrEqual(along - job.endTrim.value + 1e-9);
                expect(strip.kept).toBe(strip.offcut >= job.shortestOffcut.value);
            }
            if (stock.width && board.strips.length > 1) expect(width).toBeLessThanOrEqual(board.crosswise ? board.length : stock.width.value.ticks);
        }
        const ripped = boards.filter(b => b.strips.some(strip => strip.rippedTo !== undefined)).map(b => b.number);
        expect(rips.flatMap(rip => rip.boards).sort((a, b) => a - b), 'every board that is ripped first is in one rip').toEqual(ripped);
        for (const { value } of stock.onHand)
            expect(boards.filter(b => b.from === 'on hand' && b.length === value.length).length)
                .toBeLessThanOrEqual(stock.onHand.filter(o => o.value.length === value.length).reduce((n, o) => n + o.value.count, 0));
        expect(boards.filter(b => b.from === 'on hand').every(b => stock.onHand.some(o => o.value.length === b.length))).toBe(true);
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

/** What the pieces take one after the other: their long points, and a kerf between two (longer where a miter is cut). */
function stripLength(pieces: readonly Piece[], job: JobSettings): Ticks {
    let length = 0;
    pieces.forEach((piece, i) => {
        length += Math.max(piece.cutFace, piece.cutBack);
        if (i === 0) return;
        const angles = [...pieces[i - 1]!.ends, ...piece.ends].map(end => (end.cut === 'miter' ? end.degrees! : 0));
        length += job.kerf.value / Math.cos(Math.max(...angles) * Math.PI / 180);
    });
    return length;
}

function add(sums: Map<string, Rational>, currency: string, amount: Rational): void {
    sums.set(currency, (sums.get(currency) ?? new Rational(0)).add(amount));
}
const figures = (sums: Map<string, Rational>): [string, string][] =>
    [...sums].sort(([a], [b]) => (a < b ? -1 : 1)).map(([currency, amount]) => [currency, amount.toFraction()]);
