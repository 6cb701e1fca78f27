import { SHORTEST_OF_SPLICED } from '../arrangement/sides.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import { roundTo } from '../quantity/round.ts';
import type { Splice } from './model.ts';

/** A run that is longer than the board, and where it may be spliced. */
interface LongRun {
    readonly from: Ticks; readonly to: Ticks;
    /** Longest piece to be had. */
    readonly most: Ticks;
    /** Centers of the crossings, in order. */
    readonly crossings: readonly Splice[];
    /** Splices of the neighboring line, to keep away from. */
    readonly neighbor: readonly Splice[];
    /** The job's resolution of cut lengths. */
    readonly step: Ticks;
}

/** Splices of neighboring lines this far apart are as good as any farther apart. Common practice, no source. */
const STAGGERED: Ticks = 48 * TICKS_PER_INCH;

/**
 * Splices on the crossings, as few as the boards allow; of these the ones that leave the longest piece shortest (to a
 * step of the tape), so that a run in two pieces breaks in the middle; and where several are as good, those farthest
 * from the neighboring line's, up to 4'. Common practice, no source.
 *
 * A splice stands on the center of its crossing, moved to the tape's resolution from the start of the run: then only the
 * last piece is rounded when it is cut, and the run does not grow.
 * Empty where the run needs none; undefined where no choice of crossings will do.
 */
export function spliceOnCrossings(run: LongRun): readonly Splice[] | undefined {
    if (run.to - run.from <= run.most) return [];
    const spots = run.crossings.map(splice => ({ ...splice, at: run.from + roundTo(splice.at - run.from, run.step) }))
        .filter(({ at }) => at > run.from && at < run.to);
    const positions = [run.from, ...spots.map(({ at }) => at), run.to];
    const count = fewest(positions, run.most);
    if (count === undefined) return undefined;
    const shortest = bestChain(positions, count, (a, b) => a - b, run.most)!;
    const bound = Math.min(run.most, -shortest.score + run.step);
    const apart = (at: Ticks): Ticks => run.neighbor.reduce((least, other) => Math.min(least, Math.abs(other.at - at)), STAGGERED);
    const chosen = bestChain(positions, count, (_, b) => (b === run.to ? STAGGERED : apart(b)), bound)!;
    return chosen.stops.map(stop => spots[stop - 1]!);
}

/** Whether no stretch from one stop to the next is longer than that. */
export function areWithin(stops: readonly Ticks[], most: Ticks): boolean {
    return stops.every((stop, i) => i === 0 || stop - stops[i - 1]! <= most);
}

/** Near enough for nobody to see two joints as one. Common practice, no source. */
const WELL_APART: Ticks = 24 * TICKS_PER_INCH;
/** Places that are tried along a run: as near to each other as matters. */
const TRIED = 60, LEAST_STEP: Ticks = 6 * TICKS_PER_INCH;

interface FreeRun extends Omit<LongRun, 'crossings'> {
    /** Whether a joint may be there. */
    isClear(at: Ticks): boolean;
    place(at: Ticks): string;
}

/**
 * Splices anywhere, of what is nailed to something all along: as few as the boards allow; of these the ones that are 24" away from the neighbors', or as far as
 * can be, and of these the ones that leave the longest piece shortest. Empty where the run needs none; undefined where nothing will do. Common practice, no
 * source.
 */
export function spliceAnywhere({ from, to, most, neighbor, step, isClear, place }: FreeRun): readonly Splice[] | undefined {
    if (to - from <= most) return [];
    if (most < SHORTEST_OF_SPLICED) return undefined;
    const every = Math.max(LEAST_STEP, (to - from) / TRIED), equal = Math.ceil((to - from) / most);
    const tried = [...sequence(Math.floor((to - from) / every), i => i * every), ...sequence(Math.min(equal, TRIED), i => (to - from) * i / equal)];
    const spots = [...new Set(tried.map(at => from + roundTo(at, step)))].filter(at => at > from && at < to && isClear(at)).sort((a, b) => a - b);
    const positions = [from, ...spots, to], count = fewest(positions, most);
    if (count === undefined) return undefined;
    const apart = (at: Ticks): Ticks => (at === to ? STAGGERED : neighbor.reduce((least, other) => Math.min(least, Math.abs(other.at - at)), STAGGERED));
    const enough = Math.min(WELL_APART, bestChain(positions, count, (_, b) => apart(b), most)!.score);
    const chosen = bestChain(positions, count, (a, b) => (apart(b) < enough ? -Infinity : a - b), most)!;
    return chosen.stops.map(stop => ({ at: spots[stop - 1]!, place: place(spots[stop - 1]!) }));
}

function sequence(count: number, at: (i: number) => number): number[] {
    return Array.from({ length: count }, (_, i) => at(i + 1));
}

/** How many pieces at least: always on to the farthest splice that a board reaches. */
function fewest(positions: readonly Ticks[], most: Ticks): number | undefined {
    let pieces = 0, at = 0;
    while (at < positions.length - 1) {
        let next = at;
        while (next + 1 < positions.length && positions[next + 1]! - positions[at]! <= most) next++;
        if (next === at) return undefined;
        at = next;
        pieces++;
    }
    return pieces;
}

interface Chain { readonly score: number; readonly stops: readonly number[] }

/**
 * Of all chains of `pieces` pieces from the first position to the last, none longer than `most`, the one whose worst
 * piece scores best; the first from the west or north where several do. `score(from, to)` judges one piece.
 */
function bestChain(positions: readonly Ticks[], pieces: number, score: (from: Ticks, to: Ticks) => number, most: Ticks): Chain | undefined {
    let reached: (Chain | undefined)[] = positions.map((_, i) => i === 0 ? { score: Infinity, stops: [] } : undefined);
    for (let piece = 1; piece <= pieces; piece++) {
        reached = positions.map((to, i) => {
            let best: Chain | undefined;
            for (let j = 0; j < i; j++) {
                const before = reached[j];
                if (!before || to - positions[j]! > most) continue;
                const worst = Math.min(before.score, score(positions[j]!, to));
                if (!best || worst > best.score) best = { score: worst, stops: i === positions.length - 1 ? before.stops : [...before.stops, i] };
            }
            return best;
        });
    }
    return reached.at(-1);
}
