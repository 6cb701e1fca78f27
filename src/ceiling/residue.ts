import { roundDown, roundTo } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { freeOf, type Divided } from './division.ts';
import type { Residue } from './model.ts';

/**
 * What is left over in a run when its coffers are cut to the resolution of the tape (`step`), and who takes it. A run is never
 * longer than the room, not by a hair: what is short can be shimmed or filled, what is long does not go in.
 *
 * - outer-coffers: all are cut to their nearest size and the two outer coffers take what is left, in whole steps, half
 *   each, the odd step at the west or north end;
 * - band: all are cut to their nearest size, or, where these come to too much, to the step below it: the band can be furred off
 *   the wall to close a gap, and cannot give way to an excess;
 * - spread: each face stands at its nearest place, and the last one at the last mark inside the run, so that sizes differ by a
 *   step here and there and the run closes.
 *
 * Equal coffers are cut equal (but for the outer ones), so they stay one setting of the stop. Where the run itself is no
 * whole number of steps, less than a step is left that no coffer can take: `rest`.
 */
export function residueOf(run: { readonly start: Ticks; readonly end: Ticks }, { widths, sizes }: Divided, place: Residue['place'], step: Ticks): Residue {
    const free = freeOf(run, widths);
    const nearest = sizes.map(size => roundTo(size, step));
    const leftBy = (coffers: readonly Ticks[]): Ticks => coffers.reduce((left, coffer) => left - coffer, free);
    const left = leftBy(nearest);
    switch (place) {
        case 'band': {
            const cutCoffers = left < 0 ? sizes.map(size => roundDown(size, step)) : nearest;
            return { ticks: leftBy(cutCoffers), place, cutCoffers, rest: leftBy(cutCoffers) };
        }
        case 'spread': {
            const cutCoffers = spread(sizes, free, step);
            return { ticks: leftBy(cutCoffers), place, cutCoffers, rest: leftBy(cutCoffers) };
        }
        case 'outer-coffers': {
            const steps = Math.floor(left / step);
            const east = Math.trunc(steps / 2), west = steps - east;
            const cutCoffers = nearest.map((coffer, i) => coffer + (i === 0 ? west * step : 0) + (i === nearest.length - 1 ? east * step : 0));
            return { ticks: left, place, cutCoffers, rest: leftBy(cutCoffers) };
        }
    }
}

function spread(sizes: readonly number[], free: Ticks, step: Ticks): Ticks[] {
    const equal = sizes.every(size => size === sizes[0]);
    const whole = roundDown(free, step);
    let exact = 0, cut = 0;
    return sizes.map((size, i) => {
        exact = i === sizes.length - 1 ? whole : equal ? (i + 1) * whole / sizes.length : exact + size;
        const coffer = roundTo(exact, step) - cut;
        cut += coffer;
        return coffer;
    });
}
