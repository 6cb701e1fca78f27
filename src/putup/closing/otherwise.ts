import type { Ceiling } from '../../ceiling/model.ts';
import { compareTexts } from '../../plain/order.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { takeOffOf } from '../../takeoff/take-off.ts';

/** What another choice of what runs through changes of the bottoms and the blocking: each figure before and after. */
interface Otherwise {
    /** The longest piece of the two. */
    readonly longest: Change;
    readonly splices: Change;
    /** Pieces, and all of them end to end. */
    readonly pieces: Change; readonly length: Change;
    /** Lengths to cut that were not there, and that are no more: each with how many. */
    readonly added: readonly Batch[]; readonly dropped: readonly Batch[];
}
interface Change { readonly now: number; readonly then: number }
interface Batch { readonly part: 'bottom' | 'blocking'; readonly length: Ticks; readonly count: number }

export function otherwise(now: Ceiling, then: Ceiling): Otherwise {
    const [before, after] = [measured(now), measured(then)];
    const differ = (a: ReadonlyMap<string, Batch>, b: ReadonlyMap<string, Batch>): Batch[] => [...a].flatMap(([key, batch]) => {
        const count = batch.count - (b.get(key)?.count ?? 0);
        return count > 0 ? [{ ...batch, count }] : [];
    }).sort((x, y) => compareTexts(x.part, y.part) || y.length - x.length);
    const change = (of: 'longest' | 'splices' | 'pieces' | 'length'): Change => ({ now: before[of], then: after[of] });
    return {
        longest: change('longest'), splices: change('splices'), pieces: change('pieces'), length: change('length'),
        added: differ(after.batches, before.batches), dropped: differ(before.batches, after.batches),
    };
}

interface Measured {
    readonly longest: Ticks; readonly length: Ticks;
    readonly splices: number; readonly pieces: number;
    readonly batches: ReadonlyMap<string, Batch>;
}

function measured(ceiling: Ceiling): Measured {
    const { pieces, joints } = takeOffOf(ceiling), batches = new Map<string, Batch>();
    let longest = 0, length = 0, count = 0;
    for (const { part, cutOverall } of pieces) {
        if (part !== 'bottom' && part !== 'blocking') continue;
        count++;
        longest = Math.max(longest, cutOverall);
        length += cutOverall;
        const key = `${part} ${cutOverall}`;
        batches.set(key, { part, length: cutOverall, count: (batches.get(key)?.count ?? 0) + 1 });
    }
    return { longest, splices: joints.filter(({ kind }) => kind === 'splice').length, pieces: count, length, batches };
}
