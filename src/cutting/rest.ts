import type { CutBoard, JobSettings, Room, Stock } from '../job/model.ts';
import type { OnHand } from '../job/on-hand.ts';
import { grouped } from '../plain/groups.ts';
import type { Given } from '../provenance/source.ts';
import { roundDown } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import { compareNames } from '../takeoff/piece-order.ts';
import { asMeasured } from './at-bench.ts';
import { creditOf, lengthsUnlisted, piecesAsCut } from './as-cut.ts';
import { blankLength, blankOf } from './blank.ts';
import { firstPlan } from './known.ts';
import type { Board, BoardPlan, Money, StockPlan, Strip } from './model.ts';
import { priceOf } from './offers.ts';

/** A room and its cut list. */
export interface RoomToCut { readonly room: Room; readonly pieces: readonly Piece[] }

/**
 * What is still to be cut and what there is to cut it from, once the rooms have said which boards are cut and which pieces are
 * spoiled. Boards are planned from `pieces`; `withCutBoards` then puts those that are cut before them.
 */
interface Rest {
    /** The pieces of a room that are still to be cut, one that is spoiled again. Their stocks have on hand what is there now. */
    pieces(room: Room): readonly Piece[];
    /** The boards cut in a room, in the order of the text, by the key of their stock. */
    cut(room: Room): ReadonlyMap<string, readonly Board[]>;
    /** A stock with what is on hand of it now. */
    now(stock: Stock): Stock;
}

/**
 * Takes the rooms of all houses that share a shop. A board that was cut comes from those on hand where one has just its length,
 * else it was brought; what is left of it is on hand from then on, and may itself have been cut on another line.
 *
 * Of every piece so many are to be cut: one, less those cut that still fit, and one more for each spoiled. One that fits no more is
 * not offered as an offcut either: it may be rabbeted, ripped or mitered, and no plan knows that. Trimmed, its record says so.
 */
export function restToCut(rooms: readonly RoomToCut[]): Rest {
    const lists = new Map(rooms.map(one => [one.room, one.pieces])), listOf = (room: Room): readonly Piece[] => lists.get(room) ?? [];
    const untouched = rooms.every(({ room }) => room.cutBoards.length === 0 && room.spoiled.length === 0 && room.measuredBoards.length === 0);
    if (untouched) return { pieces: listOf, cut: () => new Map(), now: stock => stock };
    const stocks = spent(rooms);
    const now = (stock: Stock): Stock => stocks.get(stock.key) ?? stock;
    return {
        pieces: room => demandOf(room, listOf(room)).map(piece => (stocks.has(piece.stock.key) ? { ...piece, stock: now(piece.stock) } : piece)),
        cut: room => cutIn(room, listOf(room)),
        now,
    };
}

function demandOf(room: Room, pieces: readonly Piece[]): Piece[] {
    const credit = creditOf(room, pieces);
    return pieces.flatMap(piece => Array.from({ length: credit.wanted(nameInRoom(piece)) }, (_, i) => (i === 0 ? piece : { ...piece })));
}

/** A board that was cut: whether it was there, and where not, at what the yard sells such a one. */
interface Taken { readonly room: Room; readonly from: 'on hand' | 'bought'; readonly price?: Money }
export function boardsTaken(rooms: readonly RoomToCut[]): readonly Taken[] {
    return cutFrom(rooms).taken;
}

/** Every stock that was cut from, with what is on hand of it now. */
function spent(rooms: readonly RoomToCut[]): Map<string, Stock> {
    return cutFrom(rooms).stocks;
}

function cutFrom(rooms: readonly RoomToCut[]): { stocks: Map<string, Stock>; taken: Taken[] } {
    const all = rooms.flatMap(({ room, pieces }) => room.cutBoards.map(board => ({ board, pieces, room, job: room.job })));
    const stocks = new Map<string, Stock>(), taken: Taken[] = [];
    // the longest first: what is left of a board is shorter than it, so it is there by the time it is cut itself
    for (const { board, pieces, room, job } of [...all].sort((a, b) => b.board.length.value - a.board.length.value)) {
        const { stock: { value: stock }, length, at } = board;
        const before = stocks.get(stock.key)?.onHand ?? stock.onHand;
        const one = oneOf(before, length.value), width = one?.value.width;
        const left = leftOf(board, pieces, job).map((ticks): Given<OnHand> => (
            { value: { count: 1, length: ticks, ...width !== undefined && { width } }, at, said: true }));
        stocks.set(stock.key, { ...stock, onHand: [...withoutOne(before, one), ...left] });
        const isThere = one !== undefined;
        const price = isThere ? undefined : priceOf(stock, length.value);
        taken.push({ room, from: isThere ? 'on hand' : 'bought', ...price && { price } });
    }
    for (const boards of grouped(rooms.flatMap(({ room }) => room.measuredBoards.filter(board => board.stock)), board => board.stock!.value.key).values()) {
        const { value: stock } = boards[0]!.stock!, now = stocks.get(stock.key) ?? stock;
        stocks.set(stock.key, { ...now, onHand: asMeasured(now.onHand, boards, stock) });
    }
    return { stocks, taken };
}

/** Of what a stock has on hand by its own lines, what no line of these rooms has cut; not what is left of those that were. */
export function uncutOf({ key, onHand }: Stock, rooms: readonly Room[]): readonly Given<OnHand>[] {
    return rooms.flatMap(({ cutBoards }) => cutBoards).filter(({ stock }) => stock.value.key === key)
        .reduce<readonly Given<OnHand>[]>((there, { length }) => withoutOne(there, oneOf(there, length.value)), onHand);
}

/** The one of that length that is cut: a board before a strip, of these one that costs nothing before one that is worth something. */
function oneOf(onHand: readonly Given<OnHand>[], length: Ticks): Given<OnHand> | undefined {
    const there = onHand.filter(({ value }) => value.count > 0 && value.length === length), boards = there.filter(({ value }) => value.width === undefined);
    const first = boards.length > 0 ? boards : there;
    return first.find(({ value }) => !value.worth) ?? first[0];
}

/** Less one of these. */
function withoutOne(onHand: readonly Given<OnHand>[], taken: Given<OnHand> | undefined): Given<OnHand>[] {
    return onHand.flatMap(each => each !== taken ? [each] : each.value.count > 1 ? [{ ...each, value: { ...each.value, count: each.value.count - 1 } }] : []);
}

/**
 * What is left of a board: as it was measured, else as it is reckoned, if it is worth keeping. It has one fresh end, so only the
 * trim of the other is still on it. Strips that are left of a ripped board are not reckoned: nobody knows how wide.
 */
function leftOf(board: CutBoard, pieces: readonly Piece[], job: JobSettings): Ticks[] {
    if (board.left) return board.left.map(left => left.value).filter(left => left > 0);
    const out = piecesAsCut(board, pieces);
    if (out.some(piece => rippedFirst(piece, job) !== undefined)) return [];
    const left = leftAfter(out, board.length.value - usedByUnlisted(board, pieces, job.kerf.value), job);
    return left >= job.shortestOffcut.value ? [left] : [];
}

/** What a tape finds left of a board after these pieces, to a step of the tape and never too long. */
export function leftAfter(pieces: readonly Piece[], length: Ticks, job: JobSettings): Ticks {
    return roundDown(length - Math.ceil(job.endTrim.value / 2) - usedBy(pieces, job), job.cutTo.value);
}

/** So much of a board's length these pieces take, one behind the other, each with its cut. */
function usedBy(pieces: readonly Piece[], job: JobSettings): Ticks {
    return pieces.reduce((sum, piece) => sum + blankLength(piece, job) + job.kerf.value, 0);
}

function usedByUnlisted(board: CutBoard, pieces: readonly Piece[], cut: Ticks): Ticks {
    return lengthsUnlisted(board, pieces).reduce((sum, length) => sum + length + cut, 0);
}

/** The width a piece is ripped to before it is cut to length: where two or more come out of the board's width. */
function rippedFirst(piece: Piece, job: JobSettings): Ticks | undefined {
    const blank = blankOf(piece, job);
    return typeof blank !== 'string' && blank.abreast > 1 ? blank.width : undefined;
}

function cutIn(room: Room, pieces: readonly Piece[]): Map<string, Board[]> {
    const boards = new Map<string, Board[]>();
    for (const board of room.cutBoards) {
        const { key } = board.stock.value;
        const own = boards.get(key) ?? [];
        boards.set(key, [...own, cutBoardOf(board, pieces, room.job, own.length + 1)]);
    }
    return boards;
}

function cutBoardOf(board: CutBoard, list: readonly Piece[], job: JobSettings, number: number): Board {
    const pieces = piecesAsCut(board, list);
    const length = board.length.value, cut = job.kerf.value, unlisted = usedByUnlisted(board, list, cut);
    const { value: shortest } = job.shortestOffcut;
    const said = board.left && Math.max(0, ...board.left.map(left => left.value));
    const all = stripsOf(pieces, length - (said ?? 0), cut, job), ripped = all.filter(strip => strip.rippedTo !== undefined);
    // beside pieces or a rest of the whole width only a section was ripped: nobody knows how long, it is taken to be as its longest strip
    const isSection = ripped.length > 0 && (ripped.length < all.length || (said ?? 0) > 0);
    const section = Math.max(0, ...ripped.map(strip => usedBy(strip.pieces, job) - cut));
    const whole = isSection && ripped.length === all.length ? [{ pieces: [] }] : [];
    const strips = [...all.filter(strip => strip.rippedTo === undefined), ...whole, ...ripped].map((strip): Strip => {
        const isRipped = 'rippedTo' in strip;
        const behind = length - job.endTrim.value - (isSection ? section + cut : 0) - unlisted;
        const room = isRipped ? isSection ? section : length - job.endTrim.value : behind;
        const offcut = !isRipped && said !== undefined ? said : Math.max(0, room - usedBy(strip.pieces, job));
        return { ...strip, ...isRipped && isSection && { section: 1 }, offcut, kept: offcut >= shortest };
    });
    return { number, length, from: 'already cut', strips, ...isSection && { sections: [section] } };
}

/**
 * Which strips the pieces of a board came out of, taken one after the other as they are named; one strip where none is ripped. A strip is as long as
 * the board less what is left of it and what was cut from its whole width.
 */
function stripsOf(pieces: readonly Piece[], length: Ticks, cut: Ticks, job: JobSettings): { rippedTo?: Ticks; pieces: Piece[] }[] {
    const strips: { rippedTo?: Ticks; pieces: Piece[]; room: Ticks }[] = [];
    const whole = usedBy(pieces.filter(piece => rippedFirst(piece, job) === undefined), job);
    for (const piece of pieces) {
        const rippedTo = rippedFirst(piece, job);
        const takes = blankLength(piece, job) + cut;
        let strip = strips.find(one => one.rippedTo === rippedTo && (rippedTo === undefined || one.room >= takes));
        if (!strip) strips.push(strip = { ...rippedTo !== undefined && { rippedTo }, pieces: [], room: length + cut - whole });
        strip.pieces.push(piece);
        strip.room -= takes;
    }
    if (strips.length === 0) return [{ pieces: [] }];
    return strips.sort((a, b) => (b.rippedTo ?? WIDEST) - (a.rippedTo ?? WIDEST)).map(({ room: _, ...strip }) => strip);
}

const WIDEST = Number.MAX_SAFE_INTEGER;

/** A plan of the rest, with the boards that these rooms have cut already before those that it cuts. */
export function withCutBoards(plan: BoardPlan, rest: Rest, rooms: readonly Room[]): BoardPlan {
    const cut = new Map<string, { stock: Stock; boards: Board[] }>();
    for (const room of rooms) {
        for (const [key, boards] of rest.cut(room)) {
            const own = cut.get(key) ?? { stock: rest.now(room.cutBoards.find(board => board.stock.value.key === key)!.stock.value), boards: [] };
            own.boards.push(...boards);
            cut.set(key, own);
        }
    }
    if (cut.size === 0) return plan;
    const planned = plan.stocks.map(stock => stockWith(cut.get(stock.stock.key)?.boards ?? [], stock));
    const done = [...cut].filter(([key]) => plan.stocks.every(({ stock }) => stock.key !== key))
        .map(([, { stock, boards }]) => stockWith(boards, { stock, boards: [], buy: [], costs: [], rips: [], known: { ...firstPlan('length'), as: 'none cheaper', percent: 0 } }));
    return { ...plan, stocks: [...planned, ...done].sort((a, b) => compareNames(a.stock.name, b.stock.name) || compareNames(a.stock.key, b.stock.key)) };
}

function stockWith(cut: readonly Board[], plan: StockPlan): StockPlan {
    if (cut.length === 0) return plan;
    return {
        ...plan,
        boards: [...cut.map((board, i) => ({ ...board, number: i + 1 })), ...plan.boards.map(board => ({ ...board, number: board.number + cut.length }))],
        rips: plan.rips.map(rip => ({ ...rip, boards: rip.boards.map(number => number + cut.length) })),
    };
}
