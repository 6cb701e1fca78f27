import { walkFaces } from '../plane/faces.ts';
import { crossing, directionOf, distanceFrom, squareThrough, turn, type Line } from '../plane/line.ts';
import { reach, type Point } from '../plane/point.ts';
import type { Flank } from './carriers.ts';
import type { FlankWalk } from './flank-walks.ts';
import type { Trouble } from './troubles.ts';
import type { Unit } from './unit.ts';

/**
 * Coffers are the faces of the plan that all face lines divide: edges are the stretches of flanks between what meets them, and
 * where a flank is met the coffer goes on along the other flank.
 */
export interface WalkedEdge {
    /** More than one where faces lie in line: a beam's and a band's. */
    readonly flanks: readonly Flank[];
    readonly line: Line;
    readonly from: Point; readonly to: Point;
}
export type CofferLoop = readonly WalkedEdge[];

interface RawEdge { readonly flank: Flank; readonly before: Flank; readonly after: Flank; readonly from: Point; readonly to: Point }

/** In ticks: what is shorter, or stands farther out of line, is no rounding. */
const ROUNDING = 2;

export function cofferLoops(walks: readonly FlankWalk[], unit: Unit, troubles: Trouble[]): CofferLoop[] {
    const edges = walks.flatMap(walk => rawEdges(walk, unit, troubles));
    const starting = new Map(edges.map(edge => [cornerKey(edge.before, edge.flank), edge]));
    const { loops } = walkFaces(edges, edge => starting.get(cornerKey(edge.flank, edge.after)));
    return loops.map(loop => straightened(loop, ROUNDING * unit.perTick)).filter(loop => loop.length >= 3);
}

/** Two flanks follow one another in one corner at most. */
function cornerKey(before: Flank, after: Flank): string {
    return `${before.id} ${after.id}`;
}

function rawEdges({ flank, start, end, gaps }: FlankWalk, unit: Unit, troubles: Trouble[]): RawEdge[] {
    const starts = [start, ...gaps.map(gap => gap.exit)], ends = [...gaps.map(gap => gap.entry), end];
    const way = directionOf(flank.base);
    return starts.flatMap((from, i): RawEdge[] => {
        const to = ends[i]!;
        const a = cornerOf(from.other, flank), b = cornerOf(flank, to.other);
        const length = reach(a, b, way);
        if (length < 0 - ROUNDING * unit.perTick) {
            troubles.push({ kind: 'in-the-way', on: flank.of.name, between: [from.other.of.name, to.other.of.name], by: Math.round(-length / unit.perTick) });
        }
        return [{ flank, before: from.other, after: to.other, from: a, to: b }];
    });
}

/** Where a coffer goes from one face to the next; two walls in line go on across where they join. */
function cornerOf(before: Flank, after: Flank): Point {
    const corner = crossing(before.face, after.face);
    if (corner) return corner;
    const joint = after.of.kind === 'wall' ? after.of.start : { x: 0, y: 0 };
    return crossing(after.face, squareThrough(after.base, joint))!;
}

/** Without edges of no length, and with edges that lie in line joined into one. */
function straightened(loop: readonly RawEdge[], tolerance: number): CofferLoop {
    let edges: WalkedEdge[] = loop.map(({ flank, from, to }) => ({ flanks: [flank], line: flank.face, from, to }));
    const kept = edges.filter(({ from, to, line }) => reach(from, to, directionOf(line)) > tolerance);
    if (kept.length < edges.length) edges = kept.map((edge, i) => rejoined(kept.at(i - 1)!, edge, kept[(i + 1) % kept.length]!));
    const first = edges.findIndex((edge, i) => !inLine(edges.at(i - 1)!, edge, tolerance));
    if (first < 0) return edges;
    const joined: WalkedEdge[] = [];
    for (const edge of [...edges.slice(first), ...edges.slice(0, first)]) {
        const last = joined.at(-1);
        if (last && inLine(last, edge, tolerance)) joined[joined.length - 1] = { ...last, flanks: [...last.flanks, ...edge.flanks], to: edge.to };
        else joined.push(edge);
    }
    return joined;
}

/** An edge whose neighbor was dropped runs to the corner with the next one. */
function rejoined(before: WalkedEdge, edge: WalkedEdge, after: WalkedEdge): WalkedEdge {
    return { ...edge, from: crossing(before.line, edge.line) ?? edge.from, to: crossing(edge.line, after.line) ?? edge.to };
}

function inLine(before: WalkedEdge, after: WalkedEdge, tolerance: number): boolean {
    const [a, b] = [before.line, after.line];
    if (a.a === b.a && a.b === b.b) return Math.abs(distanceFrom(a, after.from)) <= tolerance;
    // lines that were rounded at their own places: the far ends of both lie in line
    const sameWay = a.a * b.a + a.b * b.b > 0 && turn(a, b) !== 0;
    return sameWay && Math.abs(distanceFrom(a, after.to)) <= tolerance && Math.abs(distanceFrom(b, before.from)) <= tolerance;
}
