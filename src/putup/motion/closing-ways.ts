import type { Ceiling } from '../../ceiling/model.ts';
import type { Piece, TakeOff } from '../../takeoff/model.ts';
import type { Reach } from '../biscuit-reach.ts';
import { bottomRuns, type BottomOrder } from '../../takeoff/closing/bottoms.ts';
import { closingPieces } from '../closing/pieces.ts';
import type { Closing } from '../../takeoff/closing/pieces.ts';
import { closingSaid, WAY_OF } from '../../takeoff/closing/said.ts';
import { waysIn, type Way } from '../../takeoff/closing/ways.ts';

/** `ways` come into question, `instead` where none of them goes. */
export interface ClosingWays { readonly closing: Closing; readonly ways: readonly Way[]; readonly instead: readonly Way[] }

/**
 * Of each bottom that biscuits keep from going up, the ways in that come into question: those that are said (what bends too far is a rule of its own), else all
 * that work and those of which nobody can say. A run that can be joined first is, whatever is said of closing pieces: then it is none.
 */
export function waysOfClosing(ceiling: Ceiling, takeOff: TakeOff, order: BottomOrder): (piece: Piece, reaches: readonly Reach[]) => ClosingWays | undefined {
    const byRule = new Map(closingPieces(ceiling, order, takeOff).map(closing => [closing.piece.id, closing]));
    const bottoms = new Map(bottomRuns(ceiling, takeOff, order).flatMap(run => run.map(bottom => [bottom.piece.id, { bottom, run }] as const)));
    return ({ id }, reaches) => {
        const own = bottoms.get(id);
        if (!own) return undefined;
        const { bottom, run } = own, out = reaches.reduce((sum, { by }) => sum + by, 0);
        const closing = byRule.get(id) ?? { ...bottom, wanted: out - bottom.play, onlySplice: false, run };
        const all = waysIn(closing, ceiling), said = closingSaid(closing.piece, ceiling)?.value;
        const able = all.filter(({ works }) => works !== false);
        if (said === undefined) return { closing, ways: able, instead: [] };
        const kind = WAY_OF[said], joined = able.filter(way => way.kind === 'join-first'), others = able.filter(way => way.kind !== kind && way.works);
        return { closing, ways: [...joined, ...(kind === 'spring' ? all : able).filter(way => way.kind === kind)], instead: others };
    };
}
