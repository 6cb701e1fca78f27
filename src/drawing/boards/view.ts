import type { Show } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { cutOff } from '../../sawing/cut-off.ts';
import type { LaidPiece, SawOrder } from '../../sawing/model.ts';
import { nameInRoom } from '../../takeoff/ids.ts';
import type { Piece } from '../../takeoff/model.ts';
import { kept } from '../../plain/kept.ts';

/** How boards lie on a sheet: the hooked end at `left`, lengths to scale, widths only about. */
export interface BoardView {
    readonly left: number;
    readonly pointsPerTick: number;
    /** Points that words have at least; what there is no room for then is left out. */
    readonly least: number;
    readonly show: Show;
    /** The tape's divisions. */
    readonly step: Ticks;
    nameOf(piece: Piece): string;
    /** Number of the step at whose stop a piece is cut; undefined on a board that is cut already. */
    stepOf(piece: LaidPiece): number | undefined;
}

/** The same for each board of an order, of which there may be very many. */
const known = kept((order: SawOrder) => {
    const steps = new Map<LaidPiece, number>();
    for (const { number, takes } of order.steps.flatMap(cutOff)) for (const { pieces } of takes) for (const piece of pieces) steps.set(piece, number);
    const rooms = new Set(order.boards.flatMap(b => b.strips).flatMap(s => s.pieces).map(p => p.piece.room));
    return { steps, rooms: rooms.size, longest: Math.max(1, ...order.boards.map(b => b.along)) };
});

/** What the longest board reads at its end; never nothing, since drawings are scaled by it. */
export function longestOf(order: SawOrder): Ticks {
    return known(order).longest;
}

export function boardView(order: SawOrder, left: number, pointsPerTick: number, least = 0): BoardView {
    const { steps, rooms } = known(order);
    return {
        left, pointsPerTick, least, show: order.job.show.value, step: order.job.cutTo.value,
        nameOf: piece => (rooms > 1 ? `${piece.room} ${nameInRoom(piece)}` : nameInRoom(piece)),
        stepOf: piece => steps.get(piece),
    };
}

export function xAt(view: BoardView, reading: Ticks): number {
    return view.left + reading * view.pointsPerTick;
}

/** Wide enough for two lines of words, and not so wide that a few boards fill the sheet. */
export function heightOf(width: Ticks | undefined, view: BoardView): number {
    return Math.min(36, Math.max(21, (width ?? 0) * view.pointsPerTick));
}
export const STRIP_HEIGHT = 14;
