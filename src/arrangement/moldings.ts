import { crossing, directionOf, offset, type Line } from '../plane/line.ts';
import { reach, type Point } from '../plane/point.ts';
import type { Flank } from './carriers.ts';
import { cornerOf } from './faceless.ts';
import type { Border } from './flank-walks.ts';
import type { Cut, Piece } from './model.ts';
import { heightsOf } from './offsets.ts';
import { pieceOf } from './piece.ts';
import type { Molding } from './plan.ts';
import { beamOf, looking, type SideRun } from './sides.ts';
import { scarfAt } from './trims.ts';
import type { Unit } from './unit.ts';

/**
 * The molding along the lower edge of a side: a strip from `inside` behind its face to `beyond` it. In the corners of coffers it is mitered with the
 * molding round the corner, also where sides butt. Where its beam dies, or what it meets has none, it ends along the face there; or along the molding or
 * the bottom that stands out beyond that face at its height. Common practice, no source.
 */
export function moldingOf({ flank, start, end, nth }: SideRun, coffers: readonly number[], unit: Unit): Piece | undefined {
    const own = moldingAt(flank);
    if (!own) return undefined;
    const first = endAt(flank, own, start, unit), last = endAt(flank, own, end, unit), way = directionOf(flank.base);
    if (!first || !last) return undefined;
    const corner = (border: Border, walked: Point): Point => (border.splice ? crossing(flank.face, border.splice)! : walked);
    const from = corner(start, cornerOf(start.other, flank)), to = corner(end, cornerOf(flank, end.other));
    return pieceOf({
        part: 'molding', of: flank.of.name, coffers, on: looking(flank), flank: flank.side, closes: flank.closes, nth, way: flank.base, names: ['face', 'back'],
        edges: [{ from: first.face, to: last.face }, { from: first.back, to: last.back }], cuts: [first.cut, last.cut],
        meets: [start.other.of.name, end.other.of.name],
        width: own.inside + own.beyond, top: own.top, foot: own.foot,
        why: [
            { what: 'clear', of: flank.of.name, ticks: reach(from, to, way) },
            { what: 'end', of: start.other.of.name, ticks: reach(first.back, from, way) },
            { what: 'end', of: end.other.of.name, ticks: reach(to, last.back, way) },
        ],
    }, unit);
}

function moldingAt(flank: Flank): Molding | undefined {
    return beamOf(flank)?.molding;
}

function endAt(
    flank: Flank, own: Molding, { other, cut, outside, endsSquare, splice, behind }: Border, unit: Unit,
): { face: Point; back: Point; cut: Cut } | undefined {
    const edge = ({ face }: Flank, beyond: number): Line => offset(face, Math.round(beyond * unit.perTick));
    const [face, back] = [edge(flank, own.beyond), edge(flank, 0 - own.inside)], theirs = moldingAt(other);
    const along = (line: Line, as: Cut): { face: Point; back: Point; cut: Cut } | undefined => {
        const [onFace, onBack] = [crossing(face, line), crossing(back, line)];
        return onFace && onBack && { face: onFace, back: onBack, cut: as };
    };
    if (splice) {
        const own45 = scarfAt(crossing(back, splice)!, flank.base, face, Math.round((own.inside + own.beyond) * unit.perTick));
        return { ...own45, cut: 'splice' };
    }
    if (behind) return along(behind, 'dies');
    // no corner: what it would turn round is not there
    if (endsSquare) return along(other.back, 'past');
    if (cut === 'dies' || !theirs) return along(edge(other, standsOut(other, own)), 'dies');
    const [onFace, onBack] = [crossing(face, edge(other, theirs.beyond)), crossing(back, edge(other, 0 - theirs.inside))];
    return onFace && onBack && { face: onFace, back: onBack, cut: outside ? 'outside-miter' : 'miter' };
}

/** How far what hangs as high stands out beyond the face: a molding, or a bottom under the sides. */
function standsOut(other: Flank, own: Molding): number {
    const beam = beamOf(other);
    if (!beam) return 0;
    const { bottomTop, bottomFoot } = heightsOf(beam), { molding } = beam;
    const beside = (top: number, foot: number): boolean => own.top < foot && top < own.foot;
    const ofMolding = molding && beside(molding.top, molding.foot) ? molding.beyond : 0;
    return Math.max(0, ofMolding, beam.bottom && beside(bottomTop, bottomFoot) ? other.offsets.bottom - other.offsets.face : 0);
}
