import { grouped } from '../../plain/groups.ts';
import type { Steps } from '../../plain/steps.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { Before } from '../model.ts';
import type { Batch } from '../schedule.ts';
import { leastWay } from './least-way.ts';
import { stretchOf } from './stretch.ts';

/** Batches in the order in which the ladder is moved least; and what no order of them, kind after kind as they are, is shorter than. */
interface LeastOrder { readonly batches: readonly Batch[]; readonly atLeast: Ticks }

/**
 * What is done kind after kind stays so, and so does what is held up until later; of what follows each other otherwise everything comes after what it waits
 * for, and the ladder is moved as little as can be found.
 */
export function* inLeastOrder(batches: readonly Batch[], before: readonly Before[]): Steps<LeastOrder> {
    const waits = waitsAmong(batches, before), stretches = stretchesOf(batches);
    const { orders, atLeast } = yield* leastWay(stretches.map(({ from, to }) => stretchOf(
        batches.slice(from, to).map(({ at }) => at),
        batches.slice(from, to).map((_, i) => new Set([...waits[from + i]!].filter(other => other >= from).map(other => other - from))),
    )));
    return { batches: orders.flatMap((order, i) => order.map(one => batches[stretches[i]!.from + one]!)), atLeast };
}

/** From which batch to which one kind of work follows the other, held up alike. */
function stretchesOf(batches: readonly Batch[]): { readonly from: number; readonly to: number }[] {
    const goesOn = ({ group, late }: Batch, before: Batch | undefined): boolean => before?.group.kind === group.kind && before.late === late;
    const starts = batches.flatMap((batch, i) => (goesOn(batch, batches[i - 1]) ? [] : [i]));
    return starts.map((from, i) => ({ from, to: starts[i + 1] ?? batches.length }));
}

/** The numbers of the batches that each waits for. What stands for many pieces waits for all of theirs. */
function waitsAmong(batches: readonly Batch[], before: readonly Before[]): readonly ReadonlySet<number>[] {
    const batchOf = new Map(batches.flatMap(({ pieces }, i) => pieces.map(({ piece: { id } }) => [id, i] as const)));
    const waits = batches.map(() => new Set<number>());
    const knots = grouped(before.filter(({ then }) => !batchOf.has(then)), ({ then }) => then);
    for (const { first, then } of before) {
        const to = batchOf.get(then);
        if (to === undefined) continue;
        for (const id of batchOf.has(first) ? [first] : (knots.get(first) ?? []).map(one => one.first)) {
            const from = batchOf.get(id);
            if (from !== undefined && from !== to) waits[to]!.add(from);
        }
    }
    return waits;
}
