import type { Ticks } from '../quantity/ticks.ts';
import { comparePieces } from '../takeoff/piece-order.ts';
import type { Blank } from './blank.ts';

/** A board being filled: as many strips as come out of its width, each with its blanks. */
export interface Filled { readonly length: Ticks; readonly strips: readonly Blank[][] }

export interface Saw {
    /** What one cut takes along the board. */
    readonly cut: Ticks;
    /** What is cut off both ends of a board together. */
    readonly endTrim: Ticks;
}

/** The least board that blanks of these lengths come out of: n pieces take n - 1 cuts, besides the end trim. */
export function lengthFor(blanks: readonly Blank[], saw: Saw): Ticks {
    if (blanks.length === 0) return 0;
    return blanks.reduce((sum, b) => sum + b.length + saw.cut, saw.endTrim - saw.cut);
}

export function leastLength(board: Filled, saw: Saw): Ticks {
    return Math.max(...board.strips.map(strip => lengthFor(strip, saw)));
}

/** The longest first; equal ones by part and name, so that the order is always the same. */
export function longestFirst(blanks: readonly Blank[]): Blank[] {
    return [...blanks].sort((a, b) => b.length - a.length || comparePieces(a.piece, b.piece));
}

/**
 * Fills the given boards, in their order, with whatever fits, the longest first. Returns the boards that got something
 * and the blanks that are left.
 */
export function fillBoards(boards: readonly Ticks[], blanks: readonly Blank[], saw: Saw): { filled: Filled[]; left: Blank[] } {
    const filled: Filled[] = [];
    let left = longestFirst(blanks);
    for (const length of boards) {
        if (left.length === 0) break;
        const strips = Array.from({ length: left[0]!.abreast }, (): Blank[] => []);
        const room = strips.map(() => length - saw.endTrim + saw.cut);
        left = left.filter(blank => {
            const i = room.findIndex(free => blank.length + saw.cut <= free);
            if (i < 0) return true;
            strips[i]!.push(blank);
            room[i]! -= blank.length + saw.cut;
            return false;
        });
        if (strips.some(strip => strip.length > 0)) filled.push({ length, strips });
    }
    return { filled, left };
}

/**
 * Opens as many boards as it takes: each blank, the longest first, goes where it leaves the least; where it fits nowhere
 * `open` says the length of a new board for it, or undefined where there is none. Returns the blanks that fit no board too.
 */
export function openBoards(blanks: readonly Blank[], saw: Saw, open: (blank: Blank) => Ticks | undefined): { filled: Filled[]; left: Blank[] } {
    const filled: Filled[] = [];
    const left: Blank[] = [];
    const free: { readonly strip: Blank[]; room: Ticks }[] = [];
    for (const blank of longestFirst(blanks)) {
        let best: { readonly strip: Blank[]; room: Ticks } | undefined;
        for (const lane of free)
            if (blank.length + saw.cut <= lane.room && (!best || lane.room < best.room)) best = lane;
        if (!best) {
            const length = open(blank);
            if (length === undefined) { left.push(blank); continue; }
            const board: Filled = { length, strips: Array.from({ length: blank.abreast }, (): Blank[] => []) };
            filled.push(board);
            const lanes = board.strips.map(strip => ({ strip, room: length - saw.endTrim + saw.cut }));
            free.push(...lanes);
            best = lanes[0]!;
        }
        best.strip.push(blank);
        best.room -= blank.length + saw.cut;
    }
    return { filled, left };
}
