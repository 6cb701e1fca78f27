import { distance } from '../plane/point.ts';
import { grouped } from '../plain/groups.ts';
import type { Ceiling } from '../ceiling/model.ts';
import { joistsOf, type Joist, type LaidJoists } from '../ceiling/joists.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { carrierName, carrierOf } from './carrier.ts';
import type { Piece } from './model.ts';
import { inRow, ONE_SCREW_UP_TO } from './in-row.ts';

/** What a screw stays off the edges of a joist, and off the edges and the ends of a board. Common practice, no source. */
export const OFF_EDGE: Ticks = inches('3/8');
/** How far a joist's center may be off that of a board of this width that runs along it, for a screw to find it. */
export function reachAlong(width: Ticks, { half }: Pick<Joist, 'half'>): number {
    return Math.max(0, width / 2 - OFF_EDGE) + Math.max(0, half - OFF_EDGE);
}

/** Less of an angle than this, as its sine, and a board runs along a joist rather than across it: 20 degrees. */
const ALONG = 0.342;
/** Less than this is rounding. */
const TELLS: Ticks = 20;

/** One piece of blocking, and what of it is under wood. Places along it count from its west or north end. */
export interface Held {
    readonly piece: Piece;
    /** In the order in which they lie along the piece. */
    readonly finds: readonly Found[];
    /** Screws into joists; null where the profile says none. */
    readonly screws: number | null;
    /** Screws into backing, which a piece wants that finds no joist at all: a row of them, as far apart as the profile says. Null where it says none. */
    readonly intoBacking: number | null;
    /** The longest stretch without a screw: from a screw, or an end of the piece, to the next. */
    readonly open: { readonly from: Ticks; readonly to: Ticks };
    /** Whether that is longer than the joists are apart, and than the profile's screws are. */
    readonly isFarApart: boolean;
}
/** A joist that a screw finds, and from where to where along the piece. */
interface Found { readonly joist: Joist; readonly from: Ticks; readonly to: Ticks; readonly along: boolean; readonly screws: number | null }

/**
 * Which joists each piece of blocking finds, and how many screws go into them: one at every joist that it crosses, two side by side where it is wider than
 * 3"; along a joist a row of them, as far apart as the profile says. Undefined where nobody knows where the joists are.
 */
export function holdingOf(ceiling: Ceiling, pieces: readonly Piece[]): Holding | undefined {
    const joists = joistsOf(ceiling);
    if (!joists) return undefined;
    const blocking = pieces.filter(({ part }) => part === 'blocking');
    return { joists, held: blocking.map(piece => heldOf(piece, joists, carrierOf(piece, ceiling).section.profile.blocking!.screws?.value.every)) };
}
interface Holding { readonly joists: LaidJoists; readonly held: readonly Held[] }

function heldOf(piece: Piece, { runs, all, said }: LaidJoists, every: Ticks | undefined): Held {
    const [a, b, c, d] = piece.corners, start = { x: (a.x + d.x) / 2, y: (a.y + d.y) / 2 }, end = { x: (b.x + c.x) / 2, y: (b.y + c.y) / 2 };
    const length = distance(end, start);
    const intoBacking = every === undefined ? null : inRow(piece.back, every) * abreast(piece);
    if (length === 0) return { piece, finds: [], screws: every === undefined ? null : 0, intoBacking, open: { from: 0, to: 0 }, isFarApart: false };
    const axis = runs === 'north-south' ? 'x' : 'y', other = axis === 'x' ? 'y' : 'x';
    const slope = (end[axis] - start[axis]) / length, across = Math.abs((end[other] - start[other]) / length);
    const along = Math.abs(slope) < ALONG, sideways = across * Math.max(0, piece.width / 2 - OFF_EDGE);
    const finds = all.flatMap(joist => {
        const reach = Math.max(0, joist.half - OFF_EDGE) + sideways, off = joist.center - start[axis];
        const [from, to] = Math.abs(slope) < 1e-9 ? Math.abs(off) <= reach ? [0, length] : [1, 0]
            : slope > 0 ? [(off - reach) / slope, (off + reach) / slope] : [(off + reach) / slope, (off - reach) / slope];
        const first = Math.max(OFF_EDGE, from), last = Math.min(length - OFF_EDGE, to);
        if (first > last) return [];
        const screws = every === undefined ? null : along ? inRow(last - first, every) : abreast(piece);
        return [{ joist, from: Math.round(first), to: Math.round(last), along, screws }];
    }).sort((one, two) => one.from - two.from);
    const open = openOf(finds, Math.round(length));
    return {
        piece, finds, open, isFarApart: open.to - open.from > Math.max(said.every.value, every ?? 0) + TELLS,
        screws: every === undefined ? null : finds.reduce((sum, { screws }) => sum + screws!, 0),
        intoBacking: finds.length === 0 || every === undefined ? intoBacking : 0,
    };
}

/** Screws side by side. */
export function abreast({ width }: Pick<Piece, 'width'>): number {
    return width > ONE_SCREW_UP_TO ? 2 : 1;
}

/** A joist that is crossed holds at its middle; along one there is no more than a screw's spacing between two. */
function openOf(finds: readonly Found[], length: Ticks): Held['open'] {
    const places = finds.map(({ from, to, along }) => (along ? [from, to] as const : [(from + to) / 2, (from + to) / 2] as const));
    let reached = 0, open = { from: 0, to: 0 };
    for (const [from, to] of [...places, [length, length] as const]) {
        if (from - reached > open.to - open.from) open = { from: Math.round(reached), to: Math.round(from) };
        reached = Math.max(reached, to);
    }
    return open;
}

/** Blocking by the line it belongs to, or the wall that its half beam runs along. */
export function byBeam({ held }: Pick<Holding, 'held'>): Map<string, Held[]> {
    return grouped(held, ({ piece }) => carrierName(piece));
}
