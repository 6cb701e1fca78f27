import type { Ceiling } from '../../ceiling/model.ts';
import type { Bottom as BottomSaid } from '../../job/model.ts';
import type { Piece, TakeOff } from '../../takeoff/model.ts';
import type { Reach } from '../biscuit-reach.ts';
import { bottomRuns, type BottomOrder } from '../closing/bottoms.ts';
import { closingPieces, type Closing } from '../closing/pieces.ts';
import { waysIn, type Way } from '../closing/ways.ts';

export type ClosingWord = NonNullable<BottomSaid['closing']>['value'];
/** The ways in by the words of the text. */
export const WAY_OF: Readonly<Record<ClosingWord, Way['kind']>> = {
    'slots-opened': 'open-slots', 'biscuits-left-out': 'leave-out', swung: 'swing', sprung: 'spring', kneed: 'knee', kerfed: 'kerfs',
};

/** What the text says of how the closing pieces of this bottom's line or wall get in; undefined: nothing. */
export function closingSaid({ line, on }: Pick<Piece, 'line' | 'on'>, { lines, around }: Ceiling): BottomSaid['closing'] {
    const half = around[on ?? ''];
    return (lines.find(({ name }) => name === line)?.section ?? (half?.kind === 'half-beam' ? half.section : undefined))?.profile.bottom?.closing;
}

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
