import type { Direction, Rabbet } from '../job/model.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import type { Point, Prism } from './model.ts';

/** Where a piece belongs. Places along the run and across it may be half a tick off whole. */
export interface Seat {
    readonly runs: Direction;
    /** The middle of its long points, along the run. */
    readonly middle: number;
    /** Across the run: the plane that its back stands against and the way its face looks from there; or its middle. */
    readonly across: { readonly back: number; readonly looks: 1 | -1 } | { readonly middle: number };
    /** What sets its height: what it hangs under, or what its lower edge is set to. */
    readonly down: { readonly top: number } | { readonly foot: number };
}

/** A piece's form, lying along its run, with its first end to the west or north. */
export interface Form {
    /** From long point to long point, from back to face, and from top to foot. */
    readonly along: Ticks; readonly across: Ticks; readonly high: Ticks;
    /** What the miters take off the face at the first and the last end. */
    readonly off: readonly [Ticks, Ticks];
    readonly rabbet?: { readonly width: Ticks; readonly height: Ticks; readonly edge: Rabbet['edge'] };
}

/** The piece in its place: one prism, or two where a rabbet takes a corner out of it. Empty where nothing is left of it. */
export function prismsOf(form: Form, seat: Seat): Prism[] {
    const { along, across, high, rabbet } = form;
    const top = Math.round('top' in seat.down ? seat.down.top : seat.down.foot - high), foot = top + high;
    if (!rabbet) return slice(form, seat, [0, across], [top, foot]);
    const { width, height, edge } = rabbet;
    // the full thickness on one side of the rabbet's height, what the rabbet leaves on the other
    const rest: [Ticks, Ticks] = edge.endsWith('back') ? [width, across] : [0, across - width];
    const [full, beside]: [Ticks, Ticks][] = edge.startsWith('lower') ? [[top, foot - height], [foot - height, foot]] : [[top + height, foot], [top, top + height]];
    return along > 0 ? [...slice(form, seat, [0, across], full!), ...slice(form, seat, rest, beside!)] : [];
}

/** The part of it between two distances from its back and two heights. */
function slice({ along, across, off: [first, last] }: Form, seat: Seat, [from, to]: [Ticks, Ticks], [top, foot]: [Ticks, Ticks]): Prism[] {
    const start = seat.middle - along / 2, end = seat.middle + along / 2;
    const startAt = (depth: Ticks): number => start + first * depth / across, endAt = (depth: Ticks): number => end - last * depth / across;
    if (!(to > from) || !(foot > top) || endAt(from) <= startAt(from) || endAt(to) <= startAt(to)) return [];
    const { across: stands } = seat;
    const back = 'back' in stands ? stands.back : stands.middle - across / 2, looks = 'back' in stands ? stands.looks : 1;
    const at = (place: number, depth: Ticks): Point => {
        const x = Math.round(place), y = Math.round(back + looks * depth);
        return seat.runs === 'east-west' ? [x, y] : [y, x];
    };
    // along the back, then the last end, the face, the first end; the other way round where that would turn it inside out
    const outline = [at(startAt(from), from), at(endAt(from), from), at(endAt(to), to), at(startAt(to), to)];
    const turned = (looks > 0) === (seat.runs === 'east-west');
    return [{ outline: turned ? outline : [outline[1]!, outline[0]!, outline[3]!, outline[2]!], top, foot }];
}

/**
 * The form that a line of the cut list gives its piece: cut lengths, saw angles, hand, width and thickness, rabbet. The tape
 * is hooked on the long points, so the back is the length it is cut to, and the face is what the saw's angles leave.
 */
export function formOf(piece: Piece, seat: Seat): Form {
    const { part, cutBack, width, thickness } = piece;
    const lies = part === 'blocking' || part === 'bottom';
    if (part === 'spacer') return { along: thickness, across: width, high: cutBack, off: [0, 0] };
    const [across, high] = lies ? [width, thickness] : [thickness, width];
    const rabbet = rabbetOf(piece);
    const off = endsAsHung(piece, seat).map(end => end.cut === 'miter' ? Math.round(thickness * Math.tan(end.degrees * Math.PI / 180)) : 0) as [Ticks, Ticks];
    return { along: cutBack, across, high, off, ...rabbet && { rabbet } };
}

export function rabbetOf({ work }: Piece): Form['rabbet'] {
    const rabbet = work.find(one => one.kind === 'rabbet');
    return rabbet?.kind === 'rabbet' ? { width: rabbet.width, height: rabbet.height, edge: rabbet.edge } : undefined;
}

/**
 * The ends as they come to be when the piece is hung with its face to the coffer and its rabbet where it belongs. A hand
 * says which end is mitered, seen with the face towards one and the groove edge down; it cannot be turned round any more.
 */
export function endsAsHung({ ends, hand, ...piece }: Piece, { runs, across }: Seat): Piece['ends'] {
    const mitered = ends.findIndex(end => end.cut === 'miter');
    if (hand === null || mitered < 0 || ends.every(end => end.cut === 'miter') || !('looks' in across)) return ends;
    const edge = piece.work.find(one => one.kind === 'rabbet');
    const upsideDown = edge?.kind === 'rabbet' && edge.edge.startsWith('upper');
    // who stands in the coffer and looks at a face that looks south has the west, the first end, on the left
    const leftIsFirst = (across.looks > 0) === (runs === 'east-west');
    const atFirst = ((hand === 'left') === leftIsFirst) !== upsideDown;
    return atFirst === (mitered === 0) ? ends : [ends[1], ends[0]];
}
