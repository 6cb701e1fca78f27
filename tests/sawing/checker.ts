import { expect } from 'vitest';
import type { BoardPlan } from '../../src/cutting/model.ts';
import type { JobSettings } from '../../src/job/model.ts';
import type { SawOrder } from '../../src/sawing/model.ts';
import type { Piece } from '../../src/takeoff/model.ts';

/**
 * Goes over an order with the plan and the job in hand and nothing of the sawing: every piece at one stop and on one
 * board, marks that rise, sums that are the board, every stop finding its pieces at the ends, every miter cut once.
 */
export function checkSawOrder(order: SawOrder, plan: BoardPlan, job: JobSettings): void {
    const kerf = job.kerf.value;
    const planned = plan.stocks.flatMap(s => s.boards.map(board => ({ board, stock: s.stock })));
    expect(order.boards.map(b => [b.stock.key, b.number, b.length])).toEqual(planned.map(({ board, stock }) => [stock.key, board.number, board.length]));

    for (const [i, { strips, along: length, besideStrips, stock }] of order.boards.entries()) {
        const { board } = planned[i]!;
        const [boardAlong, boardAcross] = board.crosswise ? [stock.width!.value.ticks, board.length] : [board.length, stock.width?.value.ticks];
        expect(length).toBe(boardAlong);
        for (const [j, strip] of strips.entries()) {
            const own = board.strips[j]!;
            expect(strip.pieces.map(p => p.piece.id).sort()).toEqual(own.pieces.map(p => p.id).sort());
            let at = strip.trim;
            for (const { piece, from, to } of strip.pieces) {
                expect(from, 'the next piece begins after the kerf').toBe(at);
                const miters = piece.ends.filter(end => end.cut === 'miter').length;
                expect(to - from).toBeGreaterThanOrEqual(piece.cutBack);
                if (miters === 0) expect(to - from).toBe(Math.max(piece.cutBack, piece.cutFace));
                // no more over than what the plan reckons for a slanted kerf
                expect(to - from - Math.max(piece.cutBack, piece.cutFace)).toBeLessThanOrEqual(board.cut - kerf);
                at = to + kerf;
            }
            const cut = strip.pieces.reduce((sum, p) => sum + p.to - p.from + kerf, 0);
            expect(strip.trim + cut + strip.rest, 'trim, blanks, kerfs and rest are the board').toBe(length);
            const farTrim = job.endTrim.value - strip.trim;
            // what a blank is longer than its piece is cut away again, so it may reach into the end that is trimmed
            const last = strip.pieces.at(-1);
            if (last) expect(last.from + Math.max(last.piece.cutBack, last.piece.cutFace)).toBeLessThanOrEqual(length - farTrim);
            expect(strip.offcut, 'what is promised is there').toBeLessThanOrEqual(Math.max(0, strip.rest - farTrim));
        }
        const ripped = strips.flatMap(s => s.rippedTo ?? []);
        if (ripped.length > 0) {
            const across = ripped.reduce((sum, w) => sum + w, 0) + (ripped.length - 1) * kerf;
            expect(across).toBeLessThanOrEqual(boardAcross!);
            expect(besideStrips).toBe(Math.max(0, boardAcross! - across - kerf));
        }
    }
    checkSteps(order);
}

function checkSteps({ boards, steps, setUps }: SawOrder): void {
    expect(steps.map(s => s.number)).toEqual(steps.map((_, i) => i + 1));
    const open = boards.filter(b => b.from !== 'already cut');
    const all = open.flatMap(b => b.strips).flatMap(s => s.pieces).map(p => p.piece);

    // Saw the boards as the steps say, in their order: what is cut must be the next piece at the near end of its strip.
    const next = new Map(open.flatMap(b => b.strips).map(s => [s, 0]));
    const stops: number[] = [];
    const cut: Piece[] = [];
    for (const step of steps) if (step.do === 'crosscut') {
        stops.push(step.stop);
        for (const { strip, pieces } of step.takes) for (const laid of pieces) {
            expect(strip.pieces[next.get(strip)!]).toBe(laid);
            expect(laid.to - laid.from).toBe(step.stop);
            next.set(strip, next.get(strip)! + 1);
            cut.push(laid.piece);
        }
    }
    expect(ids(cut), 'each piece at one stop').toEqual(ids(all));
    expect(stops, 'each stop once, long to short').toEqual([...new Set(stops)].sort((a, b) => b - a));

    // every mitered end once, at its own angle; the last cut of a piece makes its length
    const ends = new Map<string, { degrees: number; end: string; stop: number | undefined }[]>();
    for (const step of steps) if (step.do === 'miter') for (const { pieces, stop, end, hand } of step.cuts) for (const piece of pieces) {
        ends.set(piece.id, [...ends.get(piece.id) ?? [], { degrees: step.degrees, end, stop }]);
        const miters = piece.ends.filter(e => e.cut === 'miter').length;
        expect(hand).toBe(miters === 2 ? 'both ends' : piece.hand ?? 'either');
        if (piece.hand && miters === 1) expect(end, 'a left is mitered at its left as it lies').toBe(piece.hand);
    }
    for (const piece of new Set(all)) {
        const again = all.filter(p => p === piece).length;
        const wanted = piece.ends.flatMap(e => (e.cut === 'miter' ? [e.degrees!] : [])).sort(byNumber);
        const done = (ends.get(piece.id) ?? []).filter((_, i) => i % again === 0);
        expect(ends.get(piece.id) ?? []).toHaveLength(again * wanted.length);
        expect(done.map(e => e.degrees).sort(byNumber)).toEqual(wanted);
        expect(done.map(e => e.stop)).toEqual(wanted.length === 2 ? [undefined, piece.cutBack] : wanted.length === 1 ? [piece.cutBack] : []);
        if (done.length === 2) expect(new Set(done.map(e => e.end)).size, 'two ends, not one twice').toBe(2);
    }

    const ripped = steps.flatMap(s => (s.do === 'rip' ? [s] : []));
    const strips = open.flatMap(b => b.strips.filter(s => s.rippedTo !== undefined).map(s => `${b.name}/${s.number}`));
    const first = ripped.filter(s => s.what === 'boards').flatMap(s => s.boards.flatMap(b => b.strips.map(n => `${b.board.name}/${n}`)));
    expect(first.sort()).toEqual(strips.sort());

    for (const kind of ['rabbet', 'ease', 'slots', 'pocket holes'] as const) {
        const own = steps.flatMap(s => (s.do === kind ? s.pieces : []));
        const named = kind === 'pocket holes' ? 'pocket-holes' : kind;
        expect(ids(own)).toEqual(ids(all.filter(p => p.work.some(w => w.kind === named))));
    }
    const last = (kind: string): number => steps.findLastIndex(s => s.do === kind);
    const firstOf = (kind: string): number => { const i = steps.findIndex(s => s.do === kind); return i < 0 ? Infinity : i; };
    for (const [before, after] of [['crosscut', 'rabbet'], ['rabbet', 'miter'], ['crosscut', 'miter'], ['miter', 'slots']] as const) expect(last(before)).toBeLessThan(firstOf(after));

    const perBoard = open.map(b => new Set(b.strips.flatMap(s => s.pieces).map(p => p.to - p.from)).size);
    expect(setUps.pickUps).toBe(perBoard.reduce((a, b) => a + b, 0));
    expect(setUps.stops).toBe(stops.length);
}

const ids = (pieces: readonly Piece[]): string[] => pieces.map(p => p.id).sort();
const byNumber = (a: number, b: number): number => a - b;
