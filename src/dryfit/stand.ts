import type { Rabbet } from '../job/model.ts';
import { convexParts } from '../plane/convex-parts.ts';
import { lengthOf, type Point, type Vector } from '../plane/point.ts';
import { twiceArea } from '../plane/polygon.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { copedOff, type Lie } from '../takeoff/lie.ts';
import { leanOf, liesFlat } from '../takeoff/ends.ts';
import type { EndCut, Piece } from '../takeoff/model.ts';
import type { Point as Corner, Prism } from './model.ts';

/** Where a piece belongs. Places need not be whole ticks. */
export interface Seat {
    /** The middle of its back, between the long points; of what stands in the middle of its place, its own middle. */
    readonly at: Point;
    /** From its first end to its last. */
    readonly way: Vector;
    /** Whether its face lies to the right of that, or to the left. */
    readonly looks: 1 | -1;
    readonly centered: boolean;
    /** What sets its height: what it hangs under, or what its lower edge is set to. */
    readonly down: { readonly top: number } | { readonly foot: number };
}

/** The seat of a piece that lies so: its back along the first two corners. */
export function seatOf({ corners: [a, b, , d], way }: Pick<Lie, 'corners' | 'way'>, centered: boolean, down: Seat['down']): Seat {
    const back = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }, long = lengthOf(way);
    // how far its face lies to the right of its back
    const aside = (way.x * (d.y - a.y) - way.y * (d.x - a.x)) / long, half = centered ? aside / 2 : 0;
    return { at: { x: back.x - way.y / long * half, y: back.y + way.x / long * half }, way, looks: aside > 0 ? 1 : -1, centered, down };
}

/** A piece's form, lying along its way. */
export interface Form {
    /** Its back from end to end, from back to face, and from top to foot. */
    readonly along: Ticks; readonly across: Ticks; readonly high: Ticks;
    /** What the ends take off the face at the first and the last end; negative where the face is longer. */
    readonly off: readonly [Ticks, Ticks];
    readonly rabbet?: { readonly width: Ticks; readonly height: Ticks; readonly edge: Rabbet['edge']; readonly face: Rabbet['face'] };
    /** Of what is cut to a shape: its corners, from its first end and from its back. */
    readonly shape?: readonly (readonly [along: Ticks, across: Ticks])[];
}

/** The piece in its place: one prism, or two where a rabbet takes a corner out of it. Empty where nothing is left of it. */
export function prismsOf(form: Form, seat: Seat): Prism[] {
    const { along, across, high, rabbet } = form;
    const top = Math.round('top' in seat.down ? seat.down.top : seat.down.foot - high), foot = top + high;
    if (form.shape) return shaped(form, seat, form.shape, [top, foot]);
    if (!rabbet) return slice(form, seat, [0, across], [top, foot]);
    const { width, height, edge, face } = rabbet;
    // the full thickness on one side of the rabbet's height, what the rabbet leaves on the other
    const rest: [Ticks, Ticks] = face === 'back' ? [width, across] : [0, across - width];
    const [full, beside]: [Ticks, Ticks][] = edge === 'lower' ? [[top, foot - height], [foot - height, foot]] : [[top + height, foot], [top, top + height]];
    return along > 0 ? [...slice(form, seat, [0, across], full!), ...slice(form, seat, rest, beside!)] : [];
}

/** A prism for each of the convex parts of its shape. */
function shaped({ along, across }: Form, { at: { x, y }, way, looks, centered }: Seat, corners: NonNullable<Form['shape']>, [top, foot]: [Ticks, Ticks]): Prism[] {
    const long = lengthOf(way), u = { x: way.x / long, y: way.y / long }, back = centered ? 0 - across / 2 : 0;
    const outline = corners.map(([place, depth]): Point => {
        const ahead = place - along / 2, aside = looks * (back + depth);
        return { x: Math.round(x + u.x * ahead - u.y * aside), y: Math.round(y + u.y * ahead + u.x * aside) };
    });
    return convexParts(twiceArea(outline) > 0n ? outline : outline.reverse()).map(part => ({ outline: part.map(({ x, y }): Corner => [x, y]), top, foot }));
}

/** The part of it between two distances from its back and two heights. */
function slice(
    { along, across, off: [first, last] }: Form, { at: { x, y }, way, looks, centered }: Seat, [from, to]: [Ticks, Ticks],
    [top, foot]: [Ticks, Ticks],
): Prism[] {
    const startAt = (depth: Ticks): number => first * depth / across - along / 2, endAt = (depth: Ticks): number => along / 2 - last * depth / across;
    if (!(to > from) || !(foot > top) || endAt(from) <= startAt(from) || endAt(to) <= startAt(to)) return [];
    const length = lengthOf(way), u = { x: way.x / length, y: way.y / length }, back = centered ? 0 - across / 2 : 0;
    const at = (place: number, depth: Ticks): Corner => {
        const aside = looks * (back + depth);
        return [Math.round(x + u.x * place - u.y * aside), Math.round(y + u.y * place + u.x * aside)];
    };
    // along the back, then the last end, the face, the first end; the other way round where that would turn it inside out
    const outline = [at(startAt(from), from), at(endAt(from), from), at(endAt(to), to), at(startAt(to), to)];
    return [{ outline: looks > 0 ? outline : [outline[1]!, outline[0]!, outline[3]!, outline[2]!], top, foot }];
}

/**
 * The form that a line of the cut list gives its piece: cut lengths, saw angles, hand, width and thickness, rabbet. The tape
 * is hooked on the long points, so the back is the length it is cut to, and the face is what the saw's angles leave.
 */
export function formOf(piece: Piece, seat: Seat): Form {
    const { part, cutBack, width, thickness, stands } = piece;
    const lies = liesFlat(piece);
    if (part === 'spacer') return { along: thickness, across: width, high: cutBack, off: [0, 0] };
    const [across, high] = stands ? [stands.out, stands.down] : lies ? [width, thickness] : [thickness, width];
    const rabbet = rabbetOf(piece), shape = piece.work.find(({ kind }) => kind === 'shape');
    if (shape?.kind === 'shape') return { along: cutBack, across, high, off: [0, 0], shape: shape.corners };
    const ends = endsAsHung(piece, seat), nips = piece.work.find(({ kind }) => kind === 'nip');
    // coped, it ends along the face of what it is coped to: its profile is not drawn
    const copes = ends.map(end => (end.cut === 'coped' ? Math.round(copedOff(leanOf(end, piece), across)) : 0));
    const off = nips?.kind === 'nip' ? nips.by : ends.map((end, i) => Math.round(leanOf(end, piece) - copes[i]!)) as [Ticks, Ticks];
    const coped = copes[0]! + copes[1]!;
    return { along: cutBack - coped, across, high, off, ...rabbet && { rabbet } };
}

export function rabbetOf({ work }: Piece): Form['rabbet'] {
    const rabbet = work.find(one => one.kind === 'rabbet');
    return rabbet?.kind === 'rabbet' ? { width: rabbet.width, height: rabbet.height, edge: rabbet.edge, face: rabbet.face } : undefined;
}

const isMiter = ({ cut }: EndCut): boolean => cut === 'miter';

/**
 * The ends as they come to be when the piece is hung with its face to the coffer and its rabbet where it belongs. A hand
 * says which end is mitered, seen with the face towards one and the groove edge down; it cannot be turned round any more.
 */
export function endsAsHung({ ends, hand, ...piece }: Piece, { looks, centered }: Seat): Piece['ends'] {
    const mitered = ends.findIndex(isMiter);
    if (hand === null || mitered < 0 || ends.every(isMiter) || centered) return ends;
    const edge = piece.work.find(one => one.kind === 'rabbet');
    const upsideDown = edge?.kind === 'rabbet' && edge.edge === 'upper';
    // who stands to the right of the way, and looks at the face, has the first end on the left
    const leftIsFirst = looks > 0;
    const atFirst = ((hand === 'left') === leftIsFirst) !== upsideDown;
    return atFirst === (mitered === 0) ? ends : [ends[1], ends[0]];
}
