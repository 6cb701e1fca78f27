import type { Grid, Perimeter } from '../job/model.ts';
import { fromGiven, summed } from './derived.ts';
import type { Band, Derived, Trouble } from './model.ts';
import { thicknessOf, widthOf } from './part-sizes.ts';

/** The board round the walls as far as it is known before the beams are: its section. */
export interface BandBoard { readonly perimeter: Perimeter; readonly thickness: Derived; readonly height: Derived }

/** Null: nothing runs round the walls. Undefined: not enough is known, or what is said is not computed (then with a trouble). */
export function bandBoardOf(grid: Grid, troubles: Trouble[]): BandBoard | null | undefined {
    const perimeter = grid.perimeter;
    if (!perimeter || perimeter.kind.value === 'none') return null;
    if (perimeter.kind.value === 'half-beam') {
        troubles.push({ kind: 'not-supported', what: 'a half beam round the walls', instead: 'a band, or nothing', at: perimeter.kind.at });
        return undefined;
    }
    const thickness = thicknessOf(perimeter, 'band'), height = widthOf(perimeter, 'band');
    if (!thickness || !height) return undefined;
    const stock = perimeter.stock?.value;
    const sizes = [
        ['the thickness of the band', thickness, stock?.thickness],
        ['the width of the band', height, perimeter.rip ?? stock?.width],
    ] as const;
    const wrong = sizes.filter(([, { ticks }]) => !(ticks > 0));
    for (const [what, { ticks }, given] of wrong) troubles.push({ kind: 'not-positive', what, ticks, at: (given ?? perimeter).at });
    return wrong.length > 0 ? undefined : { perimeter, thickness, height };
}

/** The band hangs by its lower edge, which stands below the undersides of the beams by what the job says. */
export function hung({ perimeter, thickness, height }: BandBoard, depth: Derived, splices: Band['splices'], troubles: Trouble[]): Band {
    const lowerEdge = summed([depth, 1], [fromGiven('below the beams', perimeter.belowBeams), 1])!;
    const saidBy = perimeter.rip ?? perimeter.stock ?? perimeter;
    if (height.ticks > lowerEdge.ticks) troubles.push({ kind: 'band-too-high', height: height.ticks, room: lowerEdge.ticks, at: saidBy.at });
    return { kind: 'band', thickness, height, lowerEdge, splices };
}
