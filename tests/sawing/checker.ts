import { expect } from 'vitest';
import type { BoardPlan } from '../../src/cutting/model.ts';
import type { JobSettings } from '../../src/job/model.ts';
import type { LaidBoard, SawOrder } from '../../src/sawing/model.ts';
import type { Piece } from '../../src/takeoff/model.ts';

/**
 * Goes over an order with the plan and the job in hand and nothing of the sawing: every piece at one stop and on one
 * board, marks that rise, sums that are the board, every stop finding its pieces at the ends, every miter cut once; what is cut straight to its
 * miters behind all that is cut square, beyond the whole slot of the cut before it.
 */
export function checkSawOrder(order: SawOrder, plan: BoardPlan, job: JobSettings): void {
    const kerf = job.kerf.value;
    const planned = plan.stocks.flatMap(s => s.boards.map(board => ({ board, stock: s.stock })));
    expect(order.boards.map(b => [b.stock.key, b.number, b.length])).toEqual(planned.map(({ board, stock }) => [stock.key, board.number, board.length]));

    for (const [i, { strips, sections, along: length, besideStrips, stock }] of order.boards.entries()) {
        const { board } = planned[i]!;
        const [boardAlong, boardAcross] = board.crosswise ? [stock.width!.value.ticks, board.length] : [board.length, board.width ?? stock.width?.value.ticks];
        expect(length).toBe(boardAlong);
        for (const [j, strip] of strips.entries()) {
            const own = board.strips[j]!;
            expect(strip.pieces.map(p => p.piece.id).sort()).toEqual(own.pieces.map(p => p.id).sort());
            expect(strip.along).toBe(own.section === undefined ? length : board.sections![own.section - 1]!);
            const off = own.rippedTo === undefined ? sections : [];
            let at = strip.trim;
            for (const { from, to } of [...strip.pieces, ...off].sort((a, b) => a.from - b.from)) {
                expect(from, 'the next piece begins after the kerf').toBe(at);
                at = to + kerf;
            }
            for (const { piece, from, to } of strip.pieces) {
                const long = piece.cutOverall;
                const degrees = piece.ends.flatMap(end => (end.cut === 'miter' ? [Math.abs(end.degrees!)] : []));
                expect(to - from).toBeGreaterThanOrEqual(long);
                if (degrees.length === 0) expect(to - from).toBe(long);
                // no more over than a slanted kerf is longer than a square one, on the finest mark above it
                else {
                    const slanted = Math.ceil((kerf / Math.cos(Math.max(...degrees) * Math.PI / 180) - kerf) / 127) * 127;
                    expect(to - from - long).toBeLessThanOrEqual(slanted + (job.miterStop ? job.cutTo.value : 0));
                }
            }
            expect(strip.rest, 'trim, blanks, sections, kerfs and rest are the board').toBe(strip.along - at);
            const farTrim = strip.section === undefined ? job.endTrim.value - strip.trim : 0;
            if (at > strip.trim) expect(at - kerf).toBeLessThanOrEqual(strip.along - farTrim);
            expect(strip.offcut, 'what is promised is there').toBeLessThanOrEqual(Math.max(0, strip.rest - farTrim));
        }
        expect(sections.map(({ from, to }) => to - from)).toEqual(board.sections ?? []);
        const over = strips.filter(strip => strip.rippedTo !== undefined);
        const abreast = board.sections ? board.sections.map((_, n) => strips.filter(strip => strip.section === n + 1)) : [over];
        const widths = abreast.map(own => own.reduce((sum, strip) => sum + strip.rippedTo!, 0) + (own.length - 1) * kerf);
        const widest = Math.max(0, ...widths);
        if (widest > 0) expect(widest).toBeLessThanOrEqual(boardAcross!);
        expect(besideStrips).toBe(widest > 0 ? Math.max(0, boardAcross! - widest - kerf) : 0);
    }
    checkOnce(order, job);
    checkSteps(order);
}

/** Both ends of what is cut once are mitered alike, a stop reaches it, and the slots of two cuts in line do not touch the pieces. */
function checkOnce({ boards, steps }: SawOrder, { kerf, miterStop }: JobSettings): void {
    for (const { strips } of boards) for (const { pieces } of strips) {
        const first = pieces.findIndex(p => p.once);
        expect(pieces.slice(Math.max(0, first)).every(p => p.once === pieces[Math.max(0, first)]?.once), 'behind all that is cut square').toBe(true);
        for (const [i, { piece, from, to, once }] of pieces.entries()) {
            if (!once) continue;
            const [a, b] = piece.ends.map(end => end.degrees!), slot = kerf.value / Math.cos(Math.abs(a!) * Math.PI / 180);
            expect(a).toBe(b);
            expect(piece.cutOverall).toBeLessThanOrEqual(miterStop!.value);
            // its long points begin at `from`; the slot beyond them ends before the next piece
            if (pieces[i + 1]) expect(from + piece.cutOverall + slot).toBeLessThanOrEqual(pieces[i + 1]!.from + 1);
            expect(to + kerf.value, 'so much is reckoned for it').toBeGreaterThanOrEqual(from + piece.cutOverall + slot - 1);
        }
    }
    const taken = steps.flatMap(step => (step.do === 'miter' ? step.cuts.flatMap(({ takes = [], pieces }) => {
        expect(takes.length === 0 || takes.reduce((sum, take) => sum + take.pieces.length, 0) === pieces.length).toBe(true);
        return takes.flatMap(take => take.pieces);
    }) : []));
    expect(new Set(taken)).toEqual(new Set(boards.filter(b => b.from !== 'already cut').flatMap(b => b.strips.flatMap(s => s.pieces.filter(p => p.once)))));
    expect(taken).toHaveLength(new Set(taken).size);
}

function checkSteps({ boards, steps, setUps }: SawOrder): void {
    expect(steps.map(s => s.number)).toEqual(steps.map((_, i) => i + 1));
    const open = boards.filter(b => b.from !== 'already cut');
    const all = open.flatMap(b => b.strips).flatMap(s => s.pieces).map(p => p.piece);

    // Saw the boards as the steps say, in their order: what is cut must be next at the near end of its board, and no section is ripped before it is cut off.
    const acrossOf = (b: LaidBoard) => [...b.strips.flatMap(s => (s.rippedTo === undefined ? s.pieces : [])), ...b.sections].sort((a, c) => a.from - c.from);
    const next = new Map(open.map(b => [b, acrossOf(b)]));
    const along = new Map(open.flatMap(b => b.strips).filter(s => s.rippedTo !== undefined).map(s => [s, [...s.pieces]]));
    const off = new Set<string>(), ripped = new Set<string>();
    const stops: { of: string; stop: number }[] = [];
    const cut: Piece[] = [];
    for (const step of steps) {
        // straight from a board: what is next at its near end, too
        if (step.do === 'miter') for (const { takes = [] } of step.cuts) for (const { board, strip, pieces } of takes) for (const laid of pieces) {
            cut.push(laid.piece);
            expect(strip.rippedTo === undefined ? next.get(board)!.shift() : along.get(strip)!.shift()).toBe(laid);
            if (strip.rippedTo !== undefined) expect(ripped.has(`${board.name}/${strip.number}`), 'its strip is ripped by then').toBe(true);
        }
        if (step.do === 'rip' && (step.what === 'boards' || step.what === 'sections')) for (const { board, strips } of step.boards) for (const number of strips) {
            const { section } = board.strips.find(s => s.number === number)!;
            expect(section === undefined || off.has(`${board.name}/${section}`), 'ripped once it is cut off').toBe(true);
            ripped.add(`${board.name}/${number}`);
        }
        if (step.do !== 'crosscut') continue;
        stops.push(step);
        for (const { board, section } of step.sections) {
            expect(section.to - section.from).toBe(step.stop);
            off.add(`${board.name}/${section.number}`);
        }
        for (const { board, strip, pieces } of step.takes) for (const laid of pieces) {
            expect(laid.to - laid.from).toBe(step.stop);
            cut.push(laid.piece);
            if (strip.rippedTo === undefined) continue;
            expect(along.get(strip)!.shift()).toBe(laid);
            if (strip.section === undefined || step.of === 'strips') expect(strip.rippedTo === board.across || ripped.has(`${board.name}/${strip.number}`), 'its strip is ripped by then').toBe(true);
            else expect(laid.to - laid.from, 'as long as its section').toBe(strip.along);
        }
        for (const board of open) {
            const whole = step.takes.filter(t => t.board === board && t.strip.rippedTo === undefined).flatMap(t => t.pieces);
            const here = [...whole, ...step.sections.filter(s => s.board === board).map(s => s.section)];
            const near = next.get(board)!.splice(0, here.length);
            expect(new Set(near)).toEqual(new Set(here));
        }
    }
    expect(ids(cut), 'each piece at one stop').toEqual(ids(all));
    expect([...off].sort()).toEqual(open.flatMap(b => b.sections.map(s => `${b.name}/${s.number}`)).sort());
    for (const of of ['boards', 'strips']) {
        const own = stops.filter(s => s.of === of).map(s => s.stop);
        expect(own, 'each stop once, long to short').toEqual([...new Set(own)].sort((a, b) => b - a));
    }

    // every mitered end once, at its own angle; the last cut of a piece makes its length
    const ends = new Map<string, { degrees: number; end: string; stop: number | undefined }[]>();
    for (const step of steps) if (step.do === 'miter') for (const { pieces, stop, end, hand, takes } of step.cuts) for (const piece of pieces) {
        if (takes) ends.set(piece.id, [...ends.get(piece.id) ?? [], { degrees: step.degrees, end: end === 'right' ? 'left' : 'right', stop: undefined }]);
        ends.set(piece.id, [...ends.get(piece.id) ?? [], { degrees: step.degrees, end, stop }]);
        const miters = piece.ends.filter(isMitered).length;
        expect(hand).toBe(miters === 2 ? 'both ends' : piece.hand ?? 'either');
        if (piece.hand && miters === 1) expect(end, 'a left is mitered at its left as it lies').toBe(piece.hand);
    }
    for (const piece of new Set(all)) {
        const again = all.filter(p => p === piece).length;
        const wanted = piece.ends.flatMap(e => (isMitered(e) ? [Math.abs(e.degrees!)] : [])).sort(byNumber);
        const done = (ends.get(piece.id) ?? []).filter((_, i) => i % again === 0);
        expect(ends.get(piece.id) ?? []).toHaveLength(again * wanted.length);
        expect(done.map(e => e.degrees).sort(byNumber)).toEqual(wanted);
        expect(done.map(e => e.stop)).toEqual(wanted.length === 2 ? [undefined, piece.cutOverall] : wanted.length === 1 ? [piece.cutOverall] : []);
        if (done.length === 2) expect(new Set(done.map(e => e.end)).size, 'two ends, not one twice').toBe(2);
    }

    // a strip on hand that is as wide as its pieces is not ripped
    const strips = open.flatMap(b => b.strips.filter(s => s.rippedTo !== undefined && s.rippedTo !== b.across).map(s => `${b.name}/${s.number}`));
    const first = steps.flatMap(s => (s.do === 'rip' && (s.what === 'boards' || s.what === 'sections') ? s.boards.flatMap(b => b.strips.map(n => `${b.board.name}/${n}`)) : []));
    expect(first.sort()).toEqual(strips.sort());

    for (const kind of ['rabbet', 'ease', 'kerfs', 'slots', 'halve', 'pocket holes'] as const) {
        const own = steps.flatMap(s => (s.do === kind ? s.pieces : []));
        const named = kind === 'pocket holes' ? 'pocket-holes' : kind;
        expect(ids(own)).toEqual(ids(all.filter(p => p.work.some(w => w.kind === named))));
    }
    const last = (kind: string): number => steps.findLastIndex(s => s.do === kind);
    const firstOf = (kind: string): number => { const i = steps.findIndex(s => s.do === kind); return i < 0 ? Infinity : i; };
    for (const [before, after] of [['crosscut', 'rabbet'], ['rabbet', 'miter'], ['crosscut', 'miter'], ['miter', 'slots']] as const) expect(last(before)).toBeLessThan(firstOf(after));

    const perBoard = open.map(b => steps.reduce((sum, s) => sum + (s.do === 'miter' ? s.cuts.reduce((many, { takes = [] }) => many
        + new Set(takes.filter(t => t.board === b).map(t => t.strip.section)).size, 0) : s.do !== 'crosscut' ? 0 : new Set([
        ...s.takes.filter(t => t.board === b).map(t => (s.of === 'strips' ? t.strip.section : undefined)), ...s.sections.filter(t => t.board === b).map(() => undefined),
    ]).size), 0));
    expect(setUps.pickUps).toBe(perBoard.reduce((a, b) => a + b, 0));
    expect(setUps.stops).toBe(stops.length);
}

const ids = (pieces: readonly Piece[]): string[] => pieces.map(p => p.id).sort();
const byNumber = (a: number, b: number): number => a - b;

/** A scarf is cut like a miter. */
function isMitered({ cut, how }: Piece['ends'][number]): boolean {
    return cut === 'miter' || cut === 'angled' && how === 'splice';
}
