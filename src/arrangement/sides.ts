import { crossing, directionOf, offset, squareThrough, type Line } from '../plane/line.ts';
import { lengthOf, plus, reach, type Point } from '../plane/point.ts';
import type { Flank } from './carriers.ts';
import { compassOf } from './compass.ts';
import type { Border, Stretch as FlankStretch } from './flank-walks.ts';
import type { Piece, Term } from './model.ts';
import { heightsOf } from './offsets.ts';
import { pieceOf, type Stretch } from './piece.ts';
import type { BoxBeam, HalfBeam, Plan, Spot } from './plan.ts';
import { grouped } from '../plain/groups.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import { pointOf, type Unit } from './unit.ts';

/** Nothing is pieced together of scraps: where no board holds more, it stays in one piece, and is told. Common practice, no source. */
export const SHORTEST_OF_SPLICED: Ticks = 12 * TICKS_PER_INCH;

/** A side of a beam between two ends that break it, and where its four corners lie. */
export interface SideRun extends FlankStretch {
    readonly face: Stretch; readonly back: Stretch;
    /** What of its face is clear between the corners of the coffers. */
    readonly clear: Stretch;
}

/** The stretches of all flanks, with those cut in several in which a side is spliced. */
export function splicedStretches(stretches: readonly FlankStretch[], { walls, lines }: Pick<Plan, 'walls' | 'lines'>, unit: Unit): readonly FlankStretch[] {
    if (![...walls, ...lines].some(({ sideSplices }) => sideSplices)) return stretches;
    const spotsOn = ({ of, side }: Flank): readonly Spot[] | undefined =>
        (of.kind === 'wall' ? walls[of.index]?.sideSplices : lines[of.index - walls.length]?.sideSplices?.[side]);
    return [...grouped(stretches, ({ flank }) => flank)].flatMap(([flank, own]) => {
        const spots = spotsOn(flank);
        if (!spots || spots.length === 0) return own;
        const divided = own.flatMap(stretch => dividedAt(stretch, spots, unit));
        // counted along the line, which its left flank is walked against
        return divided.map((stretch, i) => ({ ...stretch, nth: flank.side === 'right' ? i + 1 : divided.length - i }));
    });
}

function dividedAt(stretch: FlankStretch, spots: readonly Spot[], unit: Unit): FlankStretch[] {
    const { flank, start, end, nth } = stretch, [whole] = sideRunOf(stretch);
    if (!whole) return [stretch];
    const way = directionOf(flank.base), length = reach(whole.back.from, whole.back.to, way);
    const lines = spots.map(spot => squareThrough(flank.base, pointOf(spot, unit)));
    const along = lines.map(line => ({ line, at: reach(whole.back.from, crossing(flank.back, line)!, way) }))
        .filter(({ at }) => at > 0 && at < length).sort((a, b) => a.at - b.at);
    const borders = along.map(({ line }): Border => ({ other: flank, outside: false, cut: 'splice', splice: line }));
    return [start, ...borders].map((from, i) => ({ flank, start: from, end: borders[i] ?? end, nth }));
}

/** Where a side lies that is cut for a stretch of a flank. */
export function sideRunOf({ flank, start, end, nth }: FlankStretch): SideRun[] {
    const [a, b] = [endPoints(flank, start), endPoints(flank, end)];
    if (!a || !b) return [];
    const clear = (border: Border, face: Point): Point => (border.behind ? crossing(flank.face, border.other.face) ?? face : face);
    return [{
        flank, start, end, nth, face: { from: a.face, to: b.face }, back: { from: a.back, to: b.back },
        clear: { from: clear(start, a.face), to: clear(end, b.face) },
    }];
}

/**
 * The four-point rule: own face f and back k, the other's face F and back K. Mitered: f x F and k x K. Running past: f x K, k x K.
 * Butted against it, or dying into it: f x F, k x F; over what dies into it, as far as the wall. One that runs past where the other has no side ends at its
 * bottom, where that is wider than the channel: it would be let into the side that is not there.
 */
function endPoints({ face, back }: Flank, { other, cut, endsSquare, splice, behind: wall }: Border): { face: Point; back: Point } | undefined {
    const stop = splice ?? wall, [stopsFace, stopsBack] = stop ? [crossing(face, stop), crossing(back, stop)] : [];
    if (stop) return stopsFace && stopsBack && { face: stopsFace, back: stopsBack };
    const behindIt = endsSquare && isLetIn(other) ? other.bottom : other.back;
    const far = cut === 'past' ? behindIt : other.face;
    const behind = cut === 'butt' || cut === 'dies' ? other.face : behindIt;
    const [onFace, onBack] = [crossing(face, far), crossing(back, behind)];
    return onFace && onBack && { face: onFace, back: onBack };
}

function isLetIn({ offsets }: Flank): boolean {
    return offsets.back < offsets.bottom && offsets.bottom < offsets.face;
}

/** `coffers`: the numbers of those that it looks into. */
export function sideOf(run: SideRun, coffers: readonly number[], unit: Unit): Piece | undefined {
    const { flank, start, end, face, back, clear, nth } = run;
    const beam = beamOf(flank)!, side = beam.kind === 'box' ? beam[flank.side] : beam.side;
    const way = directionOf(flank.base);
    return pieceOf({
        part: 'side', of: flank.of.name, coffers, on: looking(flank), flank: flank.side, closes: flank.closes, nth, way: flank.base, names: ['face', 'back'], edges: [face, back],
        cuts: [start.cut ?? 'dies', end.cut ?? 'dies'], meets: [start.other.of.name, end.other.of.name], at: [start.other.side, end.other.side],
        width: flank.offsets.face - flank.offsets.back, top: side.heldDown, foot: heightsOf(beam).sideFoot,
        why: [
            { what: 'clear', of: flank.of.name, ticks: reach(clear.from, clear.to, way) },
            { what: 'end', of: start.other.of.name, ticks: reach(back.from, clear.from, way) },
            { what: 'end', of: end.other.of.name, ticks: reach(clear.to, back.to, way) },
        ],
    }, unit);
}

/**
 * A cleat on the back of a side: square, shorter at each end, and by a cleat more where the neighbor's stands in its way, at an outside corner. Longer than its
 * boards it is nailed on in pieces of one length, which nobody sees.
 */
export function cleatsOf(run: SideRun, coffers: readonly number[], unit: Unit): Piece[] {
    const { flank, start, end, back, nth } = run;
    const beam = beamOf(flank)!, { cleats } = beam;
    if (!cleats) return [];
    const way = directionOf(flank.base);
    // round an outside corner the neighbor's is in the way, and at the wall that on the wall
    const beside = (border: Border): number => (border.cut === 'outside-miter' || flank.closes && border.behind ? cleats.width : 0);
    const off = (border: Border): number => (cleats.short + beside(border)) * unit.perTick;
    const near: Stretch = { from: ahead(back.from, flank.base, off(start)), to: ahead(back.to, flank.base, 0 - off(end)) };
    const length = reach(near.from, near.to, way);
    if (length <= 0) return [];
    const inner = offset(flank.back, 0 - cleats.width * unit.perTick);
    const { cleatTop, cleatFoot } = heightsOf(beam);
    const across = (point: Point): Point => crossing(inner, squareThrough(inner, point))!;
    const shared = {
        part: 'cleat' as const, of: flank.of.name, coffers, on: looking(flank), flank: flank.side, closes: flank.closes, nth, way: flank.base, names: ['channel', 'back'] as const,
        width: cleats.width, top: cleatTop, foot: cleatFoot,
    };
    const { longest = 0 } = cleats, isSpliced = longest >= SHORTEST_OF_SPLICED;
    const count = isSpliced ? Math.min(MOST_PIECES, Math.ceil(length / unit.perTick / longest)) : 1;
    if (count > 1) {
        const stops = Array.from({ length: count + 1 }, (_, i) => (i === count ? near.to : ahead(near.from, flank.base, length * i / count)));
        return stops.slice(1).flatMap((to, i) => {
            const from = stops[i]!, cuts = [i === 0 ? 'square' : 'splice', i === count - 1 ? 'square' : 'splice'] as const;
            const meets = [i === 0 ? start.other.of.name : flank.of.name, i === count - 1 ? end.other.of.name : flank.of.name] as const;
            return pieceOf({
                ...shared, edges: [{ from: across(from), to: across(to) }, { from, to }], cuts, meets,
                why: [{ what: 'clear', of: flank.of.name, ticks: reach(from, to, way) }],
            }, unit) ?? [];
        });
    }
    return [pieceOf({
        ...shared, edges: [{ from: across(near.from), to: across(near.to) }, near], cuts: ['square', 'square'], meets: [start.other.of.name, end.other.of.name],
        why: [
            { what: 'clear', of: flank.of.name, ticks: reach(back.from, back.to, way) },
            ...[start, end].flatMap((border): Term[] => [
                { what: 'short', of: border.other.of.name, ticks: 0 - cleats.short * unit.perTick },
                { what: 'cleat', of: border.other.of.name, ticks: 0 - beside(border) * unit.perTick },
            ]),
        ],
    }, unit) ?? []].flat();
}
/** A board of a length that is mistyped must not stop the program. */
const MOST_PIECES = 60;

/** Counted along their line, flank by flank, where one comes in several; its left flank is walked against it. */
export function countedAlong(cleats: readonly Piece[]): Piece[] {
    if (!cleats.some(({ ends }) => ends[1].cut === 'splice')) return [...cleats];
    return [...grouped(cleats, ({ of, flank }) => `${flank} ${of}`).values()]
        .flatMap(own => own.map((cleat, i) => ({ ...cleat, nth: cleat.flank === 'left' ? own.length - i : i + 1 })));
}

/** So far on along a line from a point, to the nearest unit; exact along the axes. */
export function ahead(point: Point, line: Line, units: number): Point {
    const { x, y } = directionOf(line), length = lengthOf({ x, y });
    return plus(point, { x: Math.round(x * units / length), y: Math.round(y * units / length) });
}

export function looking({ base }: Flank): Piece['on'] {
    return compassOf({ x: base.a, y: base.b });
}

/** Whether there is a board on the flank. */
export function hasSide(flank: Flank): boolean {
    return beamOf(flank) !== undefined;
}

/** The beam that the flank is the side of; none where there is no board. */
export function beamOf({ of }: Flank): BoxBeam | HalfBeam | undefined {
    if (of.kind === 'line') return of.beam.kind === 'box' ? of.beam : undefined;
    return of.perimeter.kind === 'half-beam' ? of.perimeter : undefined;
}
