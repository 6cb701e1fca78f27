import { placeAlong, unitOf } from '../../ceiling/along.ts';
import type { Ceiling } from '../../ceiling/model.ts';
import type { Solid } from '../../dryfit/model.ts';
import { grouped } from '../../plain/groups.ts';
import type { Point as Spot, Vector } from '../../plane/point.ts';
import { TICKS_PER_INCH } from '../../quantity/ticks.ts';
import type { Part, Piece } from '../../takeoff/model.ts';
import { group, line, polygon, rectangle, text, type Group, type Item, type Point } from '../display-list.ts';
import type { Extent } from '../extent.ts';
import { clipToConvex, keptInside } from '../fill/clip.ts';
import { endGrain } from '../fill/end-grain.ts';
import { hatch } from '../fill/hatch.ts';
import { patched } from '../patch.ts';
import type { PenName } from '../pens.ts';
import { crown } from '../section/outlines.ts';
import { SHEET_SPACING } from '../section/wood.ts';
import type { Tone } from '../themes.ts';
import type { Meeting } from './kinds.ts';
import { cutAlong, inRoom, lookingWay, type Slice } from './slice.ts';

/** What is shown of a meeting, in ticks: a square of the plan, and as wide a piece of the plane that it is cut by. */
export interface Window {
    /** Middle of the square. */
    readonly center: Spot;
    readonly half: number;
    /** A spot of the plane, the way along it to the right of who looks at it, and how far is seen beyond it. */
    readonly plane: Spot; readonly way: Vector; readonly sight: number;
    /** Down from the ceiling. */
    readonly deep: number;
}

const AROUND = 2.75 * TICKS_PER_INCH, LEAST = 5 * TICKS_PER_INCH;
/** In front of a wall's corner the plane stands so far off what runs along the wall. */
const BEFORE = 3 * TICKS_PER_INCH;

export function windowOf({ kind, at, along, wide, deep }: Meeting): Window {
    const half = Math.max(LEAST, wide / 2 + AROUND), low = deep + TICKS_PER_INCH;
    if (kind === 'corner') {
        // the room lies to the right of a wall
        const off = wide / 2 + BEFORE, plane = { x: at.x - along.y * off, y: at.y + along.x * off };
        const into = half * 0.5, center = { x: at.x + (along.x - along.y) * into, y: at.y + (along.y + along.x) * into };
        return { center, half, plane, way: along, sight: off, deep: low };
    }
    const by = kind === 'wall' ? half * 0.6 : 0, center = { x: at.x + along.x * by, y: at.y + along.y * by };
    return { center, half, plane: at, way: lookingWay(along), sight: wide / 2, deep: low };
}

/** From the ceiling down to the eye: what comes later covers what came before. */
const ORDER: readonly Part[] = ['blocking', 'cleat', 'bottom', 'timber', 'trim', 'side', 'band', 'molding'];
const UNDER: readonly Part[] = ['blocking', 'cleat', 'trim', 'side', 'band', 'bottom', 'timber', 'molding'];
const LOOK: Readonly<Record<Part, { readonly fill: Tone | null; readonly pen: PenName } | null>> = {
    blocking: { fill: null, pen: 'hidden' }, cleat: { fill: null, pen: 'hidden' }, bottom: { fill: 'wash', pen: 'edge' },
    trim: { fill: 'paper', pen: 'thin' }, side: { fill: 'paper', pen: 'edge' }, band: { fill: 'paper', pen: 'edge' }, molding: { fill: 'paper', pen: 'thin' }, timber: { fill: 'wash', pen: 'edge' }, spacer: null, panel: null,
};

/** The meeting on the plan, within a frame; hidden lines tell of what the bottoms cover. */
export function planPicture(id: string, meeting: Meeting, { center, half }: Window, ceiling: Ceiling, pieces: readonly Piece[], frame: Extent): Group {
    const k = (frame.right - frame.left) / (2 * half), middle: Point = [(frame.left + frame.right) / 2, (frame.top + frame.foot) / 2];
    const place = ({ x, y }: Spot): Point => [middle[0] + (x - center.x) * k, middle[1] + (y - center.y) * k];
    const corners: readonly Point[] = [[frame.left, frame.top], [frame.right, frame.top], [frame.right, frame.foot], [frame.left, frame.foot]];
    const outlined = (points: readonly Point[], pen: PenName): readonly Item[] => points.flatMap((point, i) => {
        const stretch = clipToConvex([point, points[(i + 1) % points.length]!], corners);
        return stretch ? [line(stretch[0], stretch[1], pen)] : [];
    });
    const room = ceiling.walls.map(({ from }) => place(from)), inside = keptInside(room, corners);
    const shown = pieces.map(piece => ({ piece, points: piece.corners.map(place) }))
        .filter(({ points }) => points.some(([x]) => x > frame.left) && points.some(([x]) => x < frame.right) && points.some(([, y]) => y > frame.top)
        && points.some(([, y]) => y < frame.foot));
    const under = pieces.some(({ part, box }) => part === 'bottom' && pieces.some(other => other.part === 'side' && box.top >= other.box.foot));
    const draw = (part: Part): readonly Item[] => shown.filter(each => each.piece.part === part).flatMap(({ points }) => {
        const look = LOOK[part], kept = look?.fill ? keptInside(points, corners) : [];
        return look === null ? [] : [...kept.length > 2 ? [polygon(kept, null, look.fill)] : [], ...outlined(points, look.pen)];
    });
    const order = under ? UNDER : ORDER, visible = order.filter(part => LOOK[part]?.pen !== 'hidden'),
        hidden = order.filter(part => LOOK[part]?.pen === 'hidden');
    return group(id, { title: `${meeting.title}, on the plan` }, [
        ...inside.length < room.length || inside.length > 2 ? [polygon(corners, null, 'tint'), ...hatch(corners, 4.6, false)] : [],
        ...inside.length > 2 ? [polygon(inside, null, 'paper')] : [], ...visible.flatMap(draw), ...hidden.flatMap(draw), ...outlined(room, 'cut'),
        rectangle(frame.left, frame.top, frame.right, frame.foot, 'thin'),
        ...meeting.carriers.flatMap(name => lineName(name, meeting, ceiling, place, frame)),
    ]);
}

const NAME = 9;

/** A line's name on its bottom, where the frame cuts it off. */
function lineName(name: string, { at }: Meeting, ceiling: Ceiling, place: (spot: Spot) => Point, frame: Extent): readonly Item[] {
    const own = ceiling.lines.find(each => each.name === name);
    if (!own) return [];
    const u = unitOf(own), here = placeAlong(own, at), sign = here - own.start > own.end - here ? -1 : 1, [x, y] = place(at),
        [dx, dy] = [u.x * sign, u.y * sign], pad = NAME + 3;
    const far = Math.min(
        dx > 1e-6 ? (frame.right - pad - x) / dx : dx < -1e-6 ? (frame.left + pad - x) / dx : Infinity,
        dy > 1e-6 ? (frame.foot - pad - y) / dy : dy < -1e-6 ? (frame.top + pad - y) / dy : Infinity,
    );
    return patched(text([x + dx * far, y + dy * far + NAME * 0.35], name, { size: NAME, weight: 600, anchor: 'middle' }), 'wash');
}

/** The same cut by the plane, within a frame as wide. */
export function cutPicture(id: string, meeting: Meeting, { center, half, plane, way, sight, deep }: Window, ceiling: Ceiling, solids: readonly Solid[],
    frame: Extent): Group {
    const k = (frame.right - frame.left) / (2 * half), middle = (center.x - plane.x) * way.x + (center.y - plane.y) * way.y,
        span = [middle - half, middle + half] as const;
    const x = (along: number): number => (frame.left + frame.right) / 2 + (along - middle) * k, top = frame.top + ABOVE,
        y = (down: number): number => top + down * k;
    const { cut, beyond } = cutAlong(solids, plane, way, span, sight), room = inRoom(ceiling.walls.map(({ from }) => from), plane, way, span);
    const foot = Math.min(frame.foot, y(deep));
    return group(id, { title: `${meeting.title}, in section` }, [
        ...beyond.map(({ from, to, top: high, foot: low }) => rectangle(x(from), y(high), x(to), y(low), 'beyond', 'wash')),
        ...wallsBeside(room, span).flatMap(([from, to]) => {
            const corners: readonly Point[] = [[x(from), frame.top], [x(to), frame.top], [x(to), foot], [x(from), foot]];
            return [polygon(corners, null, 'tint'), ...hatch(corners, 4.6, false)];
        }),
        ...room.flatMap(([from, to]) =>
            [...hatch([[x(from), frame.top], [x(to), frame.top], [x(to), top], [x(from), top]], 3.4, true), line([x(from), top], [x(to), top], 'cut')]),
        ...room.flatMap(([from, to]) => [from, to].filter(end => end > span[0] + 1 && end < span[1] - 1)
            .map(end => line([x(end), top], [x(end), foot], 'cut'))),
        ...byPiece(cut).flatMap(slices => cutPiece(slices, { x, y }, way)),
    ]);
}
const ABOVE = 7;

function wallsBeside(room: readonly (readonly [number, number])[], [first, last]: readonly [number, number]): readonly (readonly [number, number])[] {
    const ends = [first, ...room.flat(), last];
    return ends.flatMap((end, i): readonly (readonly [number, number])[] => (i % 2 === 0 && ends[i + 1]! - end > 1 ? [[end, ends[i + 1]!]] : []));
}

function byPiece(cut: readonly Slice[]): readonly (readonly Slice[])[] {
    const pieces = grouped(cut, ({ piece }) => piece);
    // what is cut along the grain lies behind what is cut across it
    return [...pieces.values()].sort((a, b) => Number(a[0]!.across) - Number(b[0]!.across));
}

interface Place { readonly x: (along: number) => number; readonly y: (down: number) => number }

function cutPiece(slices: readonly Slice[], { x, y }: Place, way: Vector): readonly Item[] {
    const { piece, across } = slices[0]!,
        boxes = slices.map(({ from, to, top, foot }): readonly Point[] => [[x(from), y(top)], [x(to), y(top)], [x(to), y(foot)], [x(from), y(foot)]]);
    const outline = piece.stands && across ? leaning(slices[0]!, { x, y }, way) : outlineOf(boxes), convex = piece.stands && across ? [outline] : boxes;
    if (piece.part === 'blocking' && across) {
        const [a, b, c, d] = outline as [Point, Point, Point, Point];
        return [polygon(outline, 'cut', 'paper'), line(a, c, 'thin'), line(b, d, 'thin')];
    }
    if (!across) return [polygon(outline, 'edge', 'paper'), ...boxes.flatMap(box => longGrain(box))];
    const [left, top] = boxes[0]![0]!, [right, foot] = boxes[0]![2]!;
    return [
        polygon(outline, null, 'paper'),
        ...endGrain(convex, { pith: [(left + right) / 2 + (right - left) * 0.2, foot + (foot - top) * 0.6 + 8], spacing: SHEET_SPACING + 1,
            seed: piece.id }), polygon(outline, 'cut'),
    ];
}

/** Two stretches of one board over each other, where a rabbet takes a corner out of it, as one outline. */
function outlineOf(boxes: readonly (readonly Point[])[]): readonly Point[] {
    const [upper, lower] = [...boxes].sort((a, b) => a[0]![1] - b[0]![1]);
    return lower ? [upper![0]!, upper![1]!, upper![2]!, lower[1]!, lower[2]!, lower[3]!, lower[0]!, upper![3]!] : upper!;
}

/** A crown leans from the side, at which its back is, to the ceiling. */
function leaning({ piece, from, to }: Slice, { x, y }: Place, way: Vector): readonly Point[] {
    const { out, down } = piece.stands!, [a, b, c, d] = piece.corners, along = (p: Spot, q: Spot): number => (p.x + q.x) * way.x + (p.y + q.y) * way.y;
    const right = along(c, d) > along(a, b);
    return crown({ out, down, thick: piece.thickness }).map(([aside, drop]) => [right ? x(from + aside) : x(to - aside), y(drop)]);
}

/** A board that is cut along: a few lines of its grain. */
function longGrain(box: readonly Point[]): readonly Item[] {
    const [left, top] = box[0]!, [right, foot] = box[2]!;
    const lines = Math.min(3, Math.floor((foot - top) / 4));
    return Array.from({ length: lines }, (_, i) => { const at = top + (foot - top) * (i + 1) / (lines + 1); return line([left, at], [right, at], 'grain'); });
}
