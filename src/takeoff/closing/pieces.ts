import type { Ceiling } from '../../ceiling/model.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { Piece } from '../model.ts';
import { bottomRuns, type Bottom, type BottomEnd, type BottomOrder, type BottomRun } from './bottoms.ts';

/**
 * A bottom that cannot go straight up, nor up and along: what biscuits stick out at its ends is more than it can be moved.
 * That is so in every order in which a bottom that runs through is up before those that butt against it, and another order there is not: its edges have
 * the biscuits of those.
 */
export interface Closing extends Bottom {
    /** By how much it would have to be shorter for a while: both biscuits, less its play and the room behind its ends. */
    readonly wanted: Ticks;
    /** The biscuits are those of a splice: joined on the floor and lifted in one, its run is no closing piece. */
    readonly onlySplice: boolean;
    /** The run it is spliced into, where it is; then it is the one of it that goes up last. */
    readonly run: BottomRun;
}

/** What a bottom lacks: more than nothing where it is a closing piece. */
function wantedBy(ends: readonly [Pick<BottomEnd, 'sticksOut' | 'room'>, Pick<BottomEnd, 'sticksOut' | 'room'>], play: Ticks): Ticks {
    const [a, b] = ends, out = a.sticksOut + b.sticksOut;
    return out === 0 ? 0 : Math.max(0, out - play - a.room - b.room);
}

/** Run by run, with the piece of each that goes up last, and whether it closes. */
interface RunInOrder { readonly run: BottomRun; readonly last: Bottom; readonly closing: Closing | null }

/**
 * The bottoms of a ceiling by their runs. Of a run that is spliced the last to go up is the one at an end with room behind it; where neither has,
 * one with biscuits at one end only, which can be swung; else the longest, which bends most easily.
 */
export function runsInOrder(ceiling: Ceiling, pieces: readonly Piece[], order: BottomOrder): RunInOrder[] {
    return bottomRuns(ceiling, { pieces }, order).map(run => {
        const [first, end] = [run[0]!, run.at(-1)!], whole = wantedBy([first.ends[0], end.ends[1]], first.play);
        const last = lastOf(run), wanted = run.length === 1 ? whole : wantedBy(last.ends, last.play);
        return { run, last, closing: wanted > 0 ? { ...last, wanted, onlySplice: whole === 0, run } : null };
    });
}

function lastOf(run: BottomRun): Bottom {
    const biscuitsAt = ({ ends }: Bottom): number => ends.filter(({ sticksOut }) => sticksOut > 0).length;
    const lacks = run.map(bottom => ({ bottom, wanted: wantedBy(bottom.ends, bottom.play), at: biscuitsAt(bottom) }));
    const least = (a: typeof lacks[number], b: typeof lacks[number]): number =>
        Number(a.wanted > 0) - Number(b.wanted > 0) || (a.wanted > 0 ? a.at - b.at || b.bottom.piece.overall - a.bottom.piece.overall : 0);
    // of several that are as good the one farthest on, so that a run goes up from its west or north end
    return [...lacks].reverse().sort(least)[0]!.bottom;
}

/** The closing pieces among all pieces of a ceiling. */
export function closingAmong(ceiling: Ceiling, pieces: readonly Piece[], order: BottomOrder): Closing[] {
    return runsInOrder(ceiling, pieces, order).flatMap(({ closing }) => closing ?? []);
}
