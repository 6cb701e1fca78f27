import { creditOf } from '../cutting/as-cut.ts';
import { rabbetOff, spoiledAtBench, wrongFor, type Wrong } from '../cutting/at-bench.ts';
import { planBoards } from '../cutting/first-plan.ts';
import { leftoversOf } from '../cutting/leftovers.ts';
import { restToCut } from '../cutting/rest.ts';
import type { JobSettings, MeasuredBoard, Room, Stock } from '../job/model.ts';
import { compareEach } from '../plain/order.ts';
import { atKey } from '../plain/at-key.ts';
import { grouped } from '../plain/groups.ts';
import type { Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import type { Piece } from '../takeoff/model.ts';

/** A measured board beside its stock: what it is spoiled for, and where it may still go. */
export interface BoardAtBench {
    readonly board: MeasuredBoard & { readonly stock: NonNullable<MeasuredBoard['stock']> };
    /** By how much it is off, more than nothing where there is too much; not said of what is as it should be. */
    readonly off: { readonly width?: Ticks; readonly thickness?: Ticks; readonly rabbet?: Ticks };
    /** The pieces of its stock that it will not do for, by what is first in the way. */
    readonly spoils: ReadonlyMap<Wrong, readonly Piece[]>;
    /** Those that it will do for and that are still to be cut, the longest first; and what of them can come out of its length, where that was measured. */
    readonly mayGo: readonly Piece[];
    readonly takes: readonly Piece[];
    /** Pieces that were cut from it and are spoiled by it, and what is left that each can be cut from again. */
    readonly recut: readonly { readonly piece: Piece; readonly wrong: Wrong; readonly from: Leftover | null }[];
}

/** Wood to cut from again: a board on hand, what is left of one that is cut, or what will be left of one by the plan at once for all else. */
export interface Leftover { readonly length: Ticks; readonly what: 'on hand' | 'left' | 'offcut'; readonly at: Source }

/** Every measured board of a room whose stock is known. */
export function boardsAtBench(room: Room, pieces: readonly Piece[], job: JobSettings): BoardAtBench[] {
    const credit = creditOf(room, pieces), again = spoiledAtBench(room, pieces), left = new Map<string, Stick[]>();
    return room.measuredBoards.flatMap((board): BoardAtBench[] => {
        const { stock } = board;
        if (!stock) return [];
        const own = pieces.filter(piece => piece.stock.key === stock.value.key), rabbet = rabbetOff(board, pieces);
        const off = offOf(board, stock.value), atHand = { board, stock: stock.value, rabbet, endTrim: job.endTrim.value };
        const wrongs = new Map(own.map(piece => [piece, wrongFor(piece, atHand)])), into = new Set(board.into.map(({ value }) => value));
        const spoils = grouped(own.filter(piece => wrongs.get(piece)), piece => wrongs.get(piece)!);
        const mayGo = own.filter(piece => !wrongs.get(piece) && credit.wanted(nameInRoom(piece)) > 0).sort((a, b) => b.cutOverall - a.cutOverall);
        const recut = own.flatMap(piece => {
            const why = into.has(nameInRoom(piece)) ? wrongs.get(piece) : undefined;
            if (!why) return [];
            const sticks = atKey(left, stock.value.key, () => sticksOf(stock.value, { room, pieces, job }, again));
            return [{ piece, wrong: why, from: takeStick(sticks, piece, job.kerf.value) }];
        });
        const offs = { ...off, ...rabbet && { rabbet: rabbet.off } };
        return [{ board: { ...board, stock }, off: offs, spoils, mayGo, takes: takenFrom(board, mayGo, job), recut }];
    });
}

function offOf({ width, thickness }: MeasuredBoard, stock: Stock): BoardAtBench['off'] {
    const off = (found: Ticks | undefined, meant: Ticks | undefined): Ticks | undefined =>
        (found === undefined || meant === undefined || found === meant ? undefined : found - meant);
    const [wide, thick] = [off(width?.value, stock.width?.value.ticks), off(thickness?.value, stock.thickness?.value.ticks)];
    return { ...wide !== undefined && { width: wide }, ...thick !== undefined && { thickness: thick } };
}

/** As many of them as come out of a board of which the length is known, the longest first. */
function takenFrom({ length }: MeasuredBoard, pieces: readonly Piece[], { endTrim, kerf }: JobSettings): Piece[] {
    if (!length) return [];
    let left = length.value - endTrim.value;
    return pieces.filter(piece => {
        const fits = piece.cutOverall <= left;
        if (fits) left -= piece.cutOverall + kerf.value;
        return fits;
    });
}

/** Wood that is left to be taken from, each stick once. `width`: of a strip. */
interface Stick {
    /** As one measures it, and what is not to be used of it at its ends. */
    length: Ticks; readonly trim: Ticks; readonly width?: Ticks; readonly what: Leftover['what']; readonly at: Source;
    /** Something else is planned on it, for which there is wood elsewhere then, or another board to be bought. */
    readonly isPlannedOn: boolean;
}

interface Cut { readonly room: Room; readonly pieces: readonly Piece[]; readonly job: JobSettings }

/**
 * What there is to cut again from: what lies there, and what a plan at once for all else that this room wants leaves of the boards it cuts.
 */
function sticksOf(stock: Stock, { room, pieces, job }: Cut, again: ReadonlySet<string>): Stick[] {
    const rest = restToCut([{ room, pieces }]), now = rest.now(stock);
    const others = rest.pieces(room).filter(piece => piece.stock.key === stock.key && !again.has(nameInRoom(piece)));
    const plan = planBoards(others, job), cut = new Set(room.cutBoards.map(({ at }) => at));
    const used = plan.stocks.flatMap(({ boards }) => boards).filter(({ from }) => from === 'on hand').map(({ length, measured, width }) => ({ length, measured, width }));
    const there = now.onHand.flatMap(({ value: { count, length, measured, width }, at }) => Array.from({ length: Math.min(count, MOST_ON_HAND) }, (): Stick => {
        const taken = used.findIndex(one => one.length === length && one.measured === measured && one.width === width);
        if (taken >= 0) used.splice(taken, 1);
        const what = cut.has(at) ? 'left' : 'on hand';
        return { length, trim: job.endTrim.value, ...width !== undefined && { width }, what, at, isPlannedOn: taken >= 0 };
    }));
    const offcuts = leftoversOf([{ plan: { ...plan, stocks: plan.stocks.map(one => ({ ...one, stock: { ...one.stock, onHand: [] } })) }, job }]);
    const left = offcuts.flatMap(({ pieces: whole, strips }) => [...whole.map(one => ({ ...one, width: undefined })), ...strips]);
    return [...there, ...left.flatMap(({ count, length, width }) => Array.from({ length: count }, (): Stick => (
        { length, trim: 0, ...width !== undefined && { width }, what: 'offcut', at: stock.at, isPlannedOn: false }
    )))];
}
/** More alike make no difference to the few pieces that a board spoils. */
const MOST_ON_HAND = 100;

/** What nothing else is planned on, then the narrowest, then the shortest that it can be cut from, which is then so much shorter. */
function takeStick(sticks: readonly Stick[], piece: Piece, kerf: Ticks): Leftover | null {
    const fits = sticks.filter(one => one.length - one.trim >= piece.cutOverall && (one.width === undefined || piece.ripped && one.width >= piece.width));
    const [best] = fits.sort((a, b) => compareEach(figuresOf(a), figuresOf(b)));
    if (!best) return null;
    const { length, what, at } = best;
    best.length -= piece.cutOverall + kerf;
    return { length, what, at };
}

function figuresOf({ isPlannedOn, width, length }: Stick): number[] {
    return [isPlannedOn ? 1 : 0, width ?? Number.MAX_SAFE_INTEGER, length];
}
