import { crossing, directionOf, offset, squareThrough, type Line } from '../plane/line.ts';
import { cornerAngles } from '../plane/polygon.ts';
import { grouped } from '../plain/groups.ts';
import { reach, type Point } from '../plane/point.ts';
import type { CofferLoop, WalkedEdge } from './coffer-walks.ts';
import type { WalkedCoffer } from './coffers.ts';
import { compassOf } from './compass.ts';
import { sawFlat } from './crown.ts';
import type { Cut, End, Piece } from './model.ts';
import { pieceOf } from './piece.ts';
import type { Trim } from './plan.ts';
import { ahead } from './sides.ts';
import type { Unit } from './unit.ts';

/**
 * A trim round a coffer, loop by loop: round it, and round what stands free in it. Its back against the faces. Mitered, its back is the
 * coffer's edge and its face the same strip farther in:
 * long points at the back in an inside corner, at the face round an outside one. Coped, in inside corners the piece that lies
 * nearer east-west is square and as long as the edge, and the other is cut to its back first and then coped; where the corner is less than square, that
 * one is cut along what the other stands against, or it would run into it. What is longer than its boards is scarfed. Common practice, no source.
 */
export function trimsOf({ number, outer, holes }: WalkedCoffer, trim: Trim, unit: Unit): Piece[][] {
    const splices = grouped((trim.splices ?? []).filter(({ coffer }) => coffer === number), ({ edge }) => edge), count: Count = { pieces: 0, edges: 0 };
    return [outer, ...holes].map(loop => trimRound(loop, { ...trim, splicesOn: edge => splices.get(edge) ?? [] }, [number], unit, count));
}

/** Pieces, and edges that they lie on, so far. */
interface Count { pieces: number; edges: number }
type SplicedTrim = Trim & { splicesOn(edge: number): readonly { readonly at: number }[] };
interface Corner { readonly back: Point; readonly miter: Point; readonly angle: number }

function trimRound(loop: CofferLoop, trim: SplicedTrim, coffers: readonly number[], unit: Unit, count: Count): Piece[] {
    const n = loop.length, faces = loop.map(edge => offset(edge.line, trim.thickness * unit.perTick));
    const angles = cornerAngles(loop.map(edge => edge.from));
    const corners = loop.map((edge, i): Corner => ({ back: edge.from, miter: crossing(faces.at(i - 1)!, faces[i]!) ?? edge.from, angle: angles[i]! }));
    return loop.flatMap((edge, i) => {
        const start = corners[i]!, end = corners[(i + 1) % n]!;
        const cuts = [cutAt(trim, start, edge, loop.at(i - 1)!), cutAt(trim, end, edge, loop[(i + 1) % n]!)] as const;
        const face = [faceAt(start, cuts[0], edge, loop.at(i - 1)!, faces[i]!), faceAt(end, cuts[1], edge, loop[(i + 1) % n]!, faces[i]!)] as const;
        const way = directionOf(edge.line), meets = [nameOf(loop.at(i - 1)!), nameOf(loop[(i + 1) % n]!)] as const;
        const whole = { face: { from: face[0], to: face[1] }, back: { from: start.back, to: end.back } }, thick = trim.thickness * unit.perTick;
        const scarfs = trim.splicesOn(++count.edges).map(({ at }) => scarfAt(ahead(start.back, edge.line, at * unit.perTick), edge.line, faces[i]!, thick));
        const stops = [{ face: whole.face.from, back: whole.back.from }, ...scarfs, { face: whole.face.to, back: whole.back.to }], last = stops.length - 2;
        const saws = trim.spring === undefined ? undefined : [saw(trim.spring, cuts[0], start.angle), saw(trim.spring, cuts[1], end.angle)] as const;
        const scarf = trim.spring === undefined ? undefined : sawFlat(trim.spring, 90);
        return stops.slice(1).flatMap((to, k) => {
            const from = stops[k]!, own = nameOf(edge);
            return pieceOf({
                part: 'trim', of: trim.name, coffers, on: compassOf({ x: 0 - edge.line.a, y: 0 - edge.line.b }), nth: ++count.pieces, way: edge.line,
                names: ['face', 'back'], edges: [{ from: from.face, to: to.face }, { from: from.back, to: to.back }],
                cuts: [k === 0 ? cuts[0] : 'splice', k === last ? cuts[1] : 'splice'], meets: [k === 0 ? meets[0] : own, k === last ? meets[1] : own],
                width: trim.thickness, top: trim.top, foot: trim.foot,
                why: [{ what: 'clear', of: own, ticks: reach(from.back, to.back, way) }],
                ...saws && { saw: [k === 0 ? saws[0] : scarf, k === last ? saws[1] : scarf] as const },
            }, unit) ?? [];
        });
    });
}

/** A scarf at 45 degrees: the piece on the left is the longer one at its back, and that on the right laps over it. */
export function scarfAt(back: Point, line: Line, face: Line, thick: number): { readonly face: Point; readonly back: Point } {
    return { back, face: crossing(face, squareThrough(line, ahead(back, line, 0 - thick)))! };
}

function nameOf({ flanks }: WalkedEdge): string {
    return flanks[0]!.of.name;
}

/** But for what plain numbers lose. */
const SQUARE = 90 - 1e-6;

function cutAt({ corners }: Trim, { angle }: Corner, own: WalkedEdge, other: WalkedEdge): Cut {
    if (angle > 180) return 'outside-miter';
    if (corners === 'mitered') return 'miter';
    return !liesNearerEastWest(own.line, other.line) ? 'coped' : angle < SQUARE ? 'dies' : 'square';
}

/** Of two that lie alike, as in a room that stands on its corner, the one that rises. */
function liesNearerEastWest(own: Line, other: Line): boolean {
    const [mine, theirs] = [own, other].map(({ a, b }) => Math.abs(a) * 1e-9 < Math.abs(b) ? Math.abs(a) / Math.abs(b) : Infinity) as [number, number];
    return mine === theirs ? own.a * own.b > 0 : mine < theirs;
}

function faceAt(corner: Corner, cut: Cut, own: WalkedEdge, other: WalkedEdge, face: Line): Point {
    switch (cut) {
        case 'square': return crossing(face, squareThrough(own.line, corner.back)) ?? corner.miter;
        case 'dies': return crossing(face, other.line) ?? corner.miter;
        default: return corner.miter;
    }
}

/** One that is cut along what the other stands against leans as the miter of a corner twice as wide. */
function saw(spring: number, cut: Cut, angle: number): End['saw'] {
    return cut === 'square' ? undefined : sawFlat(spring, cut === 'dies' ? 2 * angle : angle);
}
