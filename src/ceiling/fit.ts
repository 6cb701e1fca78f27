import type { JobSettings } from '../job/model.ts';
import { rootSumSquare, worstCase } from '../quantity/tolerance.ts';
import type { Derived } from './model.ts';

/** The play of the bottom between the sides, in all: as drawn, and where what may be off and the paint can bring it. In ticks. */
interface FitAsBuilt {
    /** Paint on the bottom's two edges, least and most. */
    readonly paint: { readonly least: number; readonly most: number };
    /** Paint counts where a tolerance is said, or the job says `paint-film`: see the rule bottom-wont-fit. */
    readonly paintCounts: boolean;
    /** Least and most play: everything at its worst at once, and as root-sum-square. */
    readonly worst: Reach; readonly usual: Reach;
}
interface Reach { readonly least: number; readonly most: number }

export function fitAsBuilt(fit: Derived, { paintFilm: { value: film, said } }: Pick<JobSettings, 'paintFilm'>): FitAsBuilt {
    const paintCounts = fit.tolerance.length > 0 || said;
    const paint = { least: 2 * film.least, most: 2 * film.most };
    const off = worstCase(fit.tolerance);
    const [less, more] = paintCounts ? [paint.most, paint.least] : [0, 0];
    // both edges get the same coats, so their paint errs together, by half of its range a film either way
    const middle = fit.ticks - (less + more) / 2;
    const usual = Math.hypot(rootSumSquare(fit.tolerance), (less - more) / 2);
    return {
        paint, paintCounts,
        worst: { least: fit.ticks - off - less, most: fit.ticks + off - more },
        usual: { least: middle - usual, most: middle + usual },
    };
}
