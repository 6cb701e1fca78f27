import type { Ceiling } from '../../ceiling/model.ts';
import type { Biscuits } from '../../job/model.ts';
import { grouped } from '../../plain/groups.ts';
import { placeIn } from '../../plane/polygon.ts';
import { distance, type Point } from '../../plane/point.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { carrierName, carrierOf } from '../carrier.ts';
import { isSlanted } from '../ends.ts';
import type { Piece, TakeOff } from '../model.ts';
import { stickOut } from './stick-out.ts';

/** What the order of the work decides for the bottoms. */
export interface BottomOrder {
    /**
     * Whether the band is up before the bottoms; until it is, there is room behind an end that dies into it. Undefined: it goes up last,
     * common practice, no source.
     */
    readonly band?: 'first' | 'last';
}

/**
 * A bottom, and what is at its ends once its neighbors are up. It moves only up into its channel and along it, so a biscuit that sticks
 * out of a neighbor blocks it unless it can be pushed back by as much.
 */
export interface Bottom {
    readonly piece: Piece;
    /** Its west or north end first. */
    readonly ends: readonly [BottomEnd, BottomEnd];
    /** Opening less length: less than nothing where it is cut long to press its joints. Rounding, which leaves up to a step of the tape, is not counted on. */
    readonly play: Ticks;
    /** Biscuits of its own line: those in its ends. */
    readonly biscuits: Biscuits | null;
}
export interface BottomEnd {
    /**
     * `butt`: against the edge of one that runs through; `splice`: against the next piece of its own run. `free`: nothing is there yet that
     * stops it; `tight`: something is.
     */
    readonly kind: 'butt' | 'splice' | 'free' | 'tight';
    /** The line or wall that it meets; null at a splice. */
    readonly meets: string | null;
    /** The bottoms that it butts against, or is spliced to. */
    readonly against: readonly Piece[];
    /** What a biscuit there sticks out, along the piece; 0 where there is none. At an end that is not square more than out of the edge. */
    readonly sticksOut: Ticks;
    /** How far it can be pushed on beyond its place at this end, along the piece. */
    readonly room: Ticks;
}

/** Bottoms that are spliced to each other, in the order in which they lie; mostly one. */
export type BottomRun = readonly Bottom[];

/** All bottoms of a ceiling, run by run. */
export function bottomRuns(ceiling: Ceiling, { pieces }: Pick<TakeOff, 'pieces'>, { band = 'last' }: BottomOrder = {}): BottomRun[] {
    const bottoms = pieces.filter(({ part }) => part === 'bottom'), byCarrier = grouped(bottoms, carrierName);
    return [...byCarrier.values()].flatMap(own => {
        const { biscuits: { value: biscuits } = { value: null }, press } = carrierOf(own[0]!, ceiling).section.profile.bottom!;
        const made = own.map((piece, i): Bottom => {
            const out = biscuits && biscuits.count > 0 ? stickOut(biscuits.size) : 0;
            const end = (which: 0 | 1): BottomEnd => endOf(piece, which, out, { next: own[i + (which === 0 ? -1 : 1)], byCarrier, ceiling, band });
            return { piece, ends: [end(0), end(1)], play: 0 - (press?.value ?? 0), biscuits };
        });
        return inRuns(made);
    });
}

function inRuns(bottoms: readonly Bottom[]): BottomRun[] {
    const runs: Bottom[][] = [];
    for (const bottom of bottoms) {
        if (runs.length > 0 && bottom.ends[0].kind === 'splice') runs.at(-1)!.push(bottom); else runs.push([bottom]);
    }
    return runs;
}

interface Around { readonly next: Piece | undefined; readonly byCarrier: ReadonlyMap<string, readonly Piece[]>; readonly ceiling: Ceiling; readonly band: 'first' | 'last' }

function endOf(piece: Piece, which: 0 | 1, out: Ticks, { next, byCarrier, ceiling, band }: Around): BottomEnd {
    const end = piece.ends[which], meets = piece.meets[which];
    if (end.how === 'splice') return { kind: 'splice', meets: null, against: next ? [next] : [], sticksOut: out, room: 0 };
    if (end.how === 'between' && meets !== null) {
        return { kind: 'butt', meets, against: metBy(piece, which, byCarrier.get(meets) ?? []), sticksOut: alongIt(out, end), room: 0 };
    }
    const own = meets === null || band === 'first' || end.how !== 'dies' ? undefined : ceiling.around[meets];
    const room = own?.kind === 'band' ? alongIt(own.thickness.ticks, end) : 0;
    return { kind: room > 0 ? 'free' : 'tight', meets, against: [], sticksOut: 0, room };
}

/** A distance square to an end, along the piece: more where the end is not square. */
function alongIt(ticks: Ticks, end: Piece['ends'][number]): Ticks {
    return isSlanted(end) ? Math.round(ticks / Math.cos((end.degrees ?? 0) * Math.PI / 180)) : ticks;
}

/** Those that the end touches: two where they are spliced on the crossing. */
function metBy({ corners: [a, b, c, d] }: Piece, which: 0 | 1, others: readonly Piece[]): Piece[] {
    const [back, face, way] = which === 0 ? [a, d, b] : [b, c, a], long = distance(back, way) || 1;
    // three points of the end, a hair in front of it and off its corners
    const ahead = { x: (back.x - way.x) * HAIR / long, y: (back.y - way.y) * HAIR / long };
    const points = [1 / 16, 1 / 2, 15 / 16].map((share): Point => ({
        x: Math.round(back.x + (face.x - back.x) * share + ahead.x), y: Math.round(back.y + (face.y - back.y) * share + ahead.y),
    }));
    return others.filter(({ corners }) => points.some(point => placeIn(corners, point) !== 'outside'));
}
/** Ticks; a play is wider. */
const HAIR = 16;
