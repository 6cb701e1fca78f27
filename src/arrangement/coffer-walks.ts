import { walkFaces } from '../plane/faces.ts';
import { crossing, directionOf, distanceFrom, turn, type Line } from '../plane/line.ts';
import { reach, type Point } from '../plane/point.ts';
import type { Flank } from './carriers.ts';
import { cornerOf, faceOf, keyOf, ROUNDING } from './faceless.ts';
import { stretchesOf, type FlankWalk } from './flank-walks.ts';
import type { Faceless } from './model.ts';
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
/** The line that it is a face of, where it is one. */
export function nameOfLine({ flanks }: WalkedEdge): string | undefined {
    return flanks.find(({ of }) => of.kind === 'line')?.of.name;
}
/** Whether a place lies between its ends, however far aside. */
export function isBeside({ line, from, to }: WalkedEdge, point: Point): boolean {
    const way = directionOf(line), at = reach(from, point, way);
    return at > 0 && at < reach(from, to, way);
}
export type CofferLoop = readonly WalkedEdge[];
/** `round`: every flank that the loop goes by, also where that has no face. */
export interface WalkedLoop { readonly edges: CofferLoop; readonly round: readonly Flank[] }

interface RawEdge {
    readonly flank: Flank; readonly before: Flank; readonly after: Flank;
    readonly from: Point; readonly to: Point;
    readonly isFaceless: boolean;
}

export function cofferLoops(walks: readonly FlankWalk[], faceless: Faceless, unit: Unit, troubles: Trouble[]): WalkedLoop[] {
    const edges = walks.flatMap(walk => rawEdges(walk, faceless, unit, troubles));
    const starting = new Map(edges.map(edge => [cornerKey(edge.before, edge.flank), edge]));
    const { loops } = walkFaces(edges, edge => starting.get(cornerKey(edge.flank, edge.after)));
    return loops.map(loop => ({ edges: straightened(loop, ROUNDING * unit.perTick), round: loop.map(({ flank }) => flank) }))
        .filter(({ edges: { length } }) => length >= 3);
}

/** Two flanks follow one another in one corner at most. */
function cornerKey(before: Flank, after: Flank): string {
    return `${before.id} ${after.id}`;
}

function rawEdges(walk: FlankWalk, faceless: Faceless, unit: Unit, troubles: Trouble[]): RawEdge[] {
    return stretchesOf(walk, () => true).map((stretch): RawEdge => {
        const { flank, start: { other: before }, end: { other: after } } = stretch, isFaceless = faceless.has(keyOf(stretch));
        const length = isFaceless ? 0 : faceOf(stretch);
        if (length < 0 - ROUNDING * unit.perTick) {
            troubles.push({ kind: 'in-the-way', on: flank.of.name, between: [before.of.name, after.of.name], by: Math.round(-length / unit.perTick) });
        }
        return { flank, before, after, from: cornerOf(before, flank), to: cornerOf(flank, after), isFaceless };
    });
}

/** Without edges of no length, without what goes back over itself, and with edges that lie in line joined into one. */
function straightened(loop: readonly RawEdge[], tolerance: number): CofferLoop {
    let edges: WalkedEdge[] = loop.map(({ flank, from, to }) => ({ flanks: [flank], line: flank.face, from, to }));
    const kept = edges.filter(({ from, to, line }, i) => !loop[i]!.isFaceless && reach(from, to, directionOf(line)) > tolerance);
    if (kept.length < edges.length) edges = kept.map((edge, i) => rejoined(kept.at(i - 1)!, edge, kept[(i + 1) % kept.length]!));
    for (;;) {
        const joined = inOne(edges, tolerance), back = joined.findIndex((edge, i) => goesBack(joined.at(i - 1)!, edge, tolerance));
        if (back < 0 || joined.length < 3) return joined;
        edges = withoutSpike(joined, back, tolerance);
    }
}

function inOne(edges: WalkedEdge[], tolerance: number): WalkedEdge[] {
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

/** Two faces against each other: the coffer ends where the shorter one does. */
function withoutSpike(edges: readonly WalkedEdge[], back: number, tolerance: number): WalkedEdge[] {
    const before = edges.at(back - 1)!, edge = edges[back]!;
    const over = reach(before.from, before.to, directionOf(before.line)) - reach(edge.from, edge.to, directionOf(edge.line));
    return edges.flatMap((each): WalkedEdge[] => {
        if (each === before) return over > tolerance ? [{ ...before, to: edge.to }] : [];
        if (each === edge) return over < 0 - tolerance ? [{ ...edge, from: before.from }] : [];
        return [each];
    });
}

/** An edge whose neighbor was dropped runs to the corner with the next one. */
function rejoined(before: WalkedEdge, edge: WalkedEdge, after: WalkedEdge): WalkedEdge {
    return { ...edge, from: crossing(before.line, edge.line) ?? edge.from, to: crossing(edge.line, after.line) ?? edge.to };
}

/** It comes back along the edge before it. */
function goesBack(before: WalkedEdge, { line, to }: WalkedEdge, tolerance: number): boolean {
    const { line: { a, b }, from } = before;
    if (a * line.a + b * line.b >= 0 || turn(before.line, line) !== 0) return false;
    return Math.abs(distanceFrom(before.line, to)) <= tolerance && Math.abs(distanceFrom(line, from)) <= tolerance;
}

function inLine(before: WalkedEdge, after: WalkedEdge, tolerance: number): boolean {
    const [a, b] = [before.line, after.line];
    if (a.a === b.a && a.b === b.b) return Math.abs(distanceFrom(a, after.from)) <= tolerance;
    // lines that were rounded at their own places: the far ends of both lie in line
    const sameWay = a.a * b.a + a.b * b.b > 0 && turn(a, b) !== 0;
    return sameWay && Math.abs(distanceFrom(a, after.to)) <= tolerance && Math.abs(distanceFrom(b, before.from)) <= tolerance;
}
