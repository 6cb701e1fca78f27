import { roundTo } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Trouble } from './model.ts';
import { freeOf, wallOf, type Division, type Feature } from './division.ts';

/**
 * Sizes of the coffers of a run in which one of them is centered on a feature, such as a lamp.
 *
 * The inner coffers keep the size that equal coffers would have, to the job's cut-to; the whole grid is shifted until a
 * coffer stands centered on the feature, and the two end coffers take the shift. Which coffer it is: the one that leaves
 * the two end coffers most alike (the western or northern one where two are as good). Near a wall that is the end coffer
 * itself; it is then twice as wide as the feature stands from the band. The center is kept to half a tick.
 * Common practice, no source.
 */
export function centeredSizes(
    run: Pick<Division, 'along' | 'start' | 'end' | 'step'>, widths: readonly Ticks[],
    feature: Feature, troubles: Trouble[],
): number[] | undefined {
    const n = widths.length + 1;
    const free = freeOf(run, widths);
    const at = feature.by.at, name = feature.by.value.name;
    const fail = (what: string, because: string, instead: string): undefined => { troubles.push({ kind: 'not-supported', what, because, instead, at }); return undefined; };
    const from = feature.position - run.start, to = run.end - feature.position;
    if (from <= 0 || to <= 0) return fail(`a coffer centered on ${name}, which stands outside the coffers`, 'no coffer is there', 'a feature inside the room and the band');
    if (n === 1 && Math.abs(from - to) > 1) {
        return fail(`one coffer from wall to wall, centered on ${name}`, 'its middle is that of the room', `two coffers or more along the ${wallOf(run)} wall`);
    }
    if (n === 1) return [free];

    const inner = roundTo(free / n, run.step) || Math.round(free / n);
    let best: { first: Ticks; last: Ticks; apart: number } | undefined;
    for (let k = 0; k < n; k++) {
        const ends = endsAround(k, inner, widths, from, to);
        if (ends.first < 1 || ends.last < 1) continue;
        const apart = Math.abs(ends.first - ends.last);
        if (!best || apart < best.apart) best = { ...ends, apart };
    }
    if (!best) return fail(`${n} coffers along the ${wallOf(run)} wall, one of them centered on ${name}`, 'nothing would be left of a coffer at the end', 'fewer coffers, or the feature elsewhere');
    const { first, last } = best;
    return widths.map((_, i) => i === 0 ? first : inner).concat(last);
}

/** The two end coffers where coffer `k` is centered on the feature, so far from the band at either end. */
function endsAround(k: number, inner: Ticks, widths: readonly Ticks[], from: Ticks, to: Ticks): { first: Ticks; last: Ticks } {
    const n = widths.length + 1;
    const sum = (some: readonly Ticks[]): Ticks => some.reduce((total, width) => total + width, 0);
    const all = from + to - sum(widths) - (n - 2) * inner;
    if (k === 0) return { first: 2 * from, last: all - 2 * from };
    if (k === n - 1) return { first: all - 2 * to, last: 2 * to };
    const first = from - Math.floor(inner / 2) - sum(widths.slice(0, k)) - (k - 1) * inner;
    return { first, last: all - first };
}
