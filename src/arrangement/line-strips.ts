import { crossing, offset, squareThrough, type Line } from '../plane/line.ts';
import { reach } from '../plane/point.ts';
import { isBeam, type Flank, type LineCarrier } from './carriers.ts';
import type { End, Pass, Run } from './meetings.ts';
import type { Cut, Part, Piece, Term } from './model.ts';
import { heightsOf } from './offsets.ts';
import { pieceOf, type Stretch } from './piece.ts';
import type { Beam, BeamLine, BoxBeam, HalfBeam, Perimeter, Spot } from './plan.ts';
import { pointOf, type Unit } from './unit.ts';

type StripPart = 'bottom' | 'blocking' | 'beam';

/** Where a strip is cut off, and the face that its clear length counts from. */
interface CutOff {
    readonly at: Line; readonly face: Line;
    readonly cut: Cut;
    readonly meets: string;
    /** The flank of it whose face or edge that is. */
    readonly flank?: Flank['side'];
    /** Blocking stands clear of a deeper beam; and where one end does, the other stands clear of a band or a bare wall as well. */
    readonly clearOf: 'deeper' | 'wall' | null;
}

/** What runs along a line between its sides, bottom and blocking; of a solid beam the timber itself. `line`: the plan's, with its splices. */
export function stripsOfLine(run: Run, line: BeamLine, unit: Unit): Piece[] {
    const { beam } = run.carrier;
    const parts: StripPart[] = beam.kind === 'solid' ? ['beam'] : [...beam.blocking ? ['blocking' as const] : [], ...beam.bottom ? ['bottom' as const] : []];
    return parts.flatMap(part => {
        const stretches = stretchesOf(run, part, line.splices ?? [], unit);
        return stretches.flatMap(([start, end], i) => strip(run.carrier, part, line.beam, i + 1, start, end, unit) ?? []);
    });
}

/** From cut to cut, what has a length, and each divided where it is spliced. */
function stretchesOf({ carrier, passes, start, end }: Run, part: StripPart, spots: readonly Spot[], unit: Unit): (readonly [CutOff, CutOff])[] {
    const cuts = passes.flatMap(pass => cutByPass(carrier, pass, part));
    const starts = [cutByEnd(carrier, start, part), ...cuts.map(cut => cut.after)], ends = [...cuts.map(cut => cut.before), cutByEnd(carrier, end, part)];
    const place = ({ at }: CutOff): number => reach({ x: 0, y: 0 }, crossing(carrier.center, at)!, carrier.direction);
    const splices = spots.map((spot): CutOff => {
        const at = squareThrough(carrier.center, pointOf(spot, unit));
        return { at, face: at, cut: 'splice', meets: carrier.name, clearOf: null };
    }).sort((a, b) => place(a) - place(b));
    return starts.flatMap((from, i) => {
        const to = ends[i]!;
        if (place(from) >= place(to)) return [];
        const within = splices.filter(splice => place(from) < place(splice) && place(splice) < place(to));
        const stops = [from, ...within, to];
        return stops.slice(1).map((stop, k) => [stops[k]!, stop] as const);
    });
}

function edgeOf(flank: Flank, part: StripPart): Line {
    return part === 'beam' ? flank.face : flank[part];
}

/** What crosses or ends here cuts it in two where it is deeper, or its own runs through. */
function cutByPass(own: LineCarrier, { line, near, far, relation, through, stem }: Pass, part: StripPart): { before: CutOff; after: CutOff }[] {
    const cutOff = (flank: Flank): CutOff => relation === 'dies'
        ? { at: endOfDying(own.beam, flank, part), face: flank.face, cut: 'dies', meets: line.name, flank: flank.side, clearOf: 'deeper' }
        : { at: edgeOf(flank, part), face: flank.face, cut: 'between', meets: line.name, flank: flank.side, clearOf: null };
    const cuts = relation === 'dies' || relation === 'flush' && (through || part === 'blocking' && !stem && hasBlocking(own) && !hasBlocking(line));
    return cuts ? [{ before: cutOff(near), after: cutOff(far) }] : [];
}

/** The face of what it dies into; a bottom ends at the edge of the other's, where that stands out beyond the face at its height. */
export function endOfDying(beam: Beam | Perimeter, { of, face, bottom, offsets }: Flank, part: Part): Line {
    const other = of.kind === 'line' ? of.beam : of.perimeter;
    if (part !== 'bottom' || offsets.bottom <= offsets.face || !isBox(beam) || !isBox(other)) return face;
    const [mine, theirs] = [heightsOf(beam), heightsOf(other)];
    return mine.bottomFoot > theirs.bottomTop && mine.bottomTop < theirs.bottomFoot ? bottom : face;
}

function isBox(beam: Beam | Perimeter): beam is BoxBeam | HalfBeam {
    return beam.kind === 'box' || beam.kind === 'half-beam';
}

/** A beam that has something else inside has no blocking, and none runs through it. */
function hasBlocking({ beam }: LineCarrier): boolean {
    return beam.kind === 'box' && beam.blocking !== undefined;
}

function cutByEnd(own: LineCarrier, { carrier, relation, near, far, through }: End, part: StripPart): CutOff {
    const meets = carrier.name, { face } = near;
    if (carrier.kind === 'wall' && !isBeam(carrier.perimeter)) return { at: face, face, cut: 'dies', meets, clearOf: 'wall' };
    if (relation === 'dies') return { at: endOfDying(own.beam, near, part), face, cut: 'dies', meets, clearOf: 'deeper' };
    if (through && carrier.kind === 'line') return { at: edgeOf(far, part), face, cut: 'runs-through', meets, clearOf: null };
    return { at: edgeOf(near, part), face, cut: 'between', meets, flank: near.side, clearOf: null };
}

function strip(own: LineCarrier, part: StripPart, beam: Beam, nth: number, start: CutOff, end: CutOff, unit: Unit): Piece | undefined {
    const standsClear = part === 'blocking' && (start.clearOf === 'deeper' || end.clearOf === 'deeper');
    const isBetween = part === 'blocking' && (start.cut === 'between' || end.cut === 'between');
    const blocking = beam.kind === 'box' ? beam.blocking : undefined;
    const short = isBetween ? Math.round((blocking?.short ?? 0) * unit.perTick) : 0, clearance = Math.round((blocking?.clearance ?? 0) * unit.perTick);
    const [from, to] = [start, end].map(cut => standsClear && cut.clearOf ? offset(cut.at, clearance)
        : cut.cut === 'between' || cut.clearOf === 'wall' ? offset(cut.at, short) : cut.at) as [Line, Line];
    const rightEdge = edgeOf(own.right, part);
    const left = stretch(edgeOf(own.left, part), from, to), right = stretch(rightEdge, from, to), clear = stretch(rightEdge, start.face, end.face);
    if (!left || !right || !clear) return undefined;
    const why: Term[] = [
        { what: 'clear', of: own.name, ticks: reach(clear.from, clear.to, own.direction) },
        { what: 'end', of: start.meets, ticks: reach(right.from, clear.from, own.direction) },
        { what: 'end', of: end.meets, ticks: reach(clear.to, right.to, own.direction) },
    ];
    const edgeName = part === 'beam' ? 'face' : part;
    return pieceOf({
        part, of: own.name, nth, way: own.center, names: ['left', 'right'], edges: [left, right], cuts: [start.cut, end.cut], meets: [start.meets, end.meets], at: [start.flank, end.flank],
        width: own.left.offsets[edgeName] + own.right.offsets[edgeName], ...heights(own, part), why,
    }, unit);
}

function heights({ beam }: LineCarrier, part: StripPart): { top: number; foot: number } {
    if (beam.kind === 'solid') return { top: 0, foot: beam.depth };
    const { bottomTop, bottomFoot, blockingFoot } = heightsOf(beam);
    return part === 'bottom' ? { top: bottomTop, foot: bottomFoot } : { top: 0, foot: blockingFoot };
}

function stretch(line: Line, from: Line, to: Line): Stretch | undefined {
    const a = crossing(line, from), b = crossing(line, to);
    return a && b && { from: a, to: b };
}
