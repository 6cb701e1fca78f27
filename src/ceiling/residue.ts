import { roundTo } from '../quantity/round.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { freeOf, type Divided } from './division.ts';
import type { Residue } from './model.ts';

/**
 * What is left over in a run when its coffers are cut to the resolution of the tape (`step`), and who takes it:
 *
 * - outer-coffers: all are cut to their nearest size and the two outer coffers take what is left, in whole steps, half
 *   each, the odd step at the west or north end;
 * - band: all are cut to their nearest size, and what is left opens or closes at the band;
 * - spread: each face stands at its nearest place, so that sizes differ by a step here and there and the run closes.
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
        case 'band': return { ticks: left, place, cutCoffers: nearest, rest: left };
        case 'spread': {
            const cutCoffers = spread(sizes, free, step);
            return { ticks: leftBy(cutCoffers), place, cutCoffers, rest: leftBy(cutCoffers) };
        }
        case 'outer-coffers': {
            const steps = Math.sign(left) * Math.ceil(Math.abs(left) / step - 1 / 2);     // at half a step nobody is moved
            const east = Math.trunc(steps / 2), west = steps - east;
            const cutCoffers = nearest.map((coffer, i) => coffer + (i === 0 ? west * step : 0) + (i === nearest.length - 1 ? east * step : 0));
            return { ticks: left, place, cutCoffers, rest: leftBy(cutCoffers) };
        }
    }
}

function spread(sizes: readonly number[], free: Ticks, step: Ticks): Ticks[] {
    const equal = sizes.every(size => size === sizes[0]);
    let exact = 0, cut = 0;
    return sizes.map((size, i) => {
        exact = equal ? (i + 1) * free / sizes.length : exact + size;
        const coffer = roundTo(exact, step) - cut;
        cut += coffer;
        return coffer;
    });
}
