import { joistsOf, type LaidJoists } from '../../ceiling/joists.ts';
import type { Ceiling, Line } from '../../ceiling/model.ts';
import type { Fix, RelatedPlace } from '../../findings/finding.ts';
import type { Source } from '../../provenance/source.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { byBeam, holdingOf, type Held } from '../../takeoff/holding.ts';
import type { Piece } from '../../takeoff/model.ts';
import { replacing, spelled } from './fixes.ts';
import { placeSaidOf } from './line-places.ts';
import { wordsOf } from './places.ts';

export const WAYS = 'cross-block between the joists, or have backing put in before the ceiling is closed';

/** Across joists that run so: towards the side that places are counted from, and away from it. */
export const WAY = { 'north-south': ['west', 'east'], 'east-west': ['north', 'south'] } as const;

/** The blocking of one line or half beam, and what it finds. */
export interface HeldBeam {
    /** `line 2`, `the half beam along the north wall`. */
    readonly name: string; readonly line: Line | undefined;
    readonly held: readonly Held[];
    readonly joists: LaidJoists;
    /** What says where it stands, or that there is such a beam, and where the joists are said. */
    readonly words: { readonly at: Source; readonly via?: readonly Source[]; readonly related: readonly RelatedPlace[] };
    /** What moves it so far to the east or south, or back where that is less than nothing, as far as its place is said in words of its own. */
    moved(by: Ticks, title: string): Fix[];
}

/** None where nobody knows where the joists are: then no piece has to be made, which counts at a keystroke. */
export function heldBeams(ceiling: Ceiling | undefined, pieces: () => readonly Piece[]): HeldBeam[] {
    const joists = ceiling && joistsOf(ceiling);
    if (!joists || joists.all.length === 0) return [];
    const related = [{ at: joists.said.at, message: 'the joists are set here' }];
    return [...byBeam(holdingOf(ceiling, pieces())!)].map(([of, held]): HeldBeam => {
        const line = ceiling.lines.find(({ name }) => name === of), place = line && placeSaidOf(line, ceiling);
        return {
            line, held, joists, name: line ? `line ${of}` : `the half beam along the ${of} wall`,
            words: { ...place ? wordsOf(place.given) : { at: line?.at ?? ceiling.around[of]!.perimeter.at }, related },
            moved: (by, title) => {
                const given = place?.given, to = place ? given!.value + place.sign * by : 0;
                return to > 0 ? replacing(given, spelled(to, ceiling.room.job), title) : [];
            },
        };
    });
}
