import { crossing, directionOf, distanceFrom } from '../plane/line.ts';
import { reach, reversed, type Point, type Vector } from '../plane/point.ts';
import { touch } from '../plane/polygon.ts';
import { depthOf, flankLooking, isSolid, looks, type Carrier, type Flank, type LineCarrier, type WallCarrier } from './carriers.ts';
import type { Corners, MeetingChoice, Plan } from './plan.ts';
import type { Trouble } from './troubles.ts';
import { relationByDepth } from './relation.ts';

/**
 * Flush: equally deep, the sides of both are broken and make the corners of coffers. Dies: the other is deeper (or the wall has no
 * beam); this one ends at its face. Over: the other dies into this one.
 */
type Relation = 'flush' | 'dies' | 'over';

/** One end of a line. `at`, by own flank: the flank that it ends at. They differ where two lines end at each other: inner at inner, outer at outer. */
export interface End {
    readonly carrier: Carrier;
    readonly relation: 'flush' | 'dies';
    readonly ring: boolean;
    readonly at: { readonly left: Flank; readonly right: Flank };
    /** The flank of the other that looks at this line, and of a line the one behind it. */
    readonly near: Flank; readonly far: Flank;
    /** Its bottom runs on: at a T to the far edge of the bar, in a ring to the other's outer edge. */
    readonly through: boolean;
    readonly corners: Corners;
    readonly point: Point;
}
/** What a line crosses, or what ends at it on one side. Near and far: the flanks of the other in the order they are passed. */
export interface Pass {
    readonly line: LineCarrier;
    readonly stem: boolean;
    /** The flanks of this carrier that it touches. */
    readonly touches: readonly Flank['side'][];
    readonly near: Flank; readonly far: Flank;
    readonly relation: Relation;
    /** The passing one's bottom runs through, and this carrier's is cut. */
    readonly through: boolean;
    readonly corners: Corners;
    /** Where it stands on this carrier's center line or wall. */
    readonly along: number;
}
export interface Run { readonly carrier: LineCarrier; readonly start: End; readonly end: End; readonly passes: readonly Pass[] }
export interface Meetings {
    readonly runs: readonly Run[];
    /** By wall: the lines that end at it, in its direction. */
    readonly onWalls: ReadonlyMap<WallCarrier, readonly Pass[]>;
}

interface Span {
    readonly line: LineCarrier;
    readonly from: Carrier;
    readonly to: Carrier;
    readonly start: Point;
    readonly end: Point;
    readonly first: number;
    readonly last: number;
}

/** Who meets whom, and how. Lines that end nowhere, or outside, are told and left out. */
export function meetingsOf(plan: Plan, walls: readonly WallCarrier[], lines: readonly LineCarrier[], troubles: Trouble[]): Meetings {
    const named = new Map<string, Carrier>();
    for (const carrier of [...walls, ...lines]) {
        if (named.has(carrier.name)) troubles.push({ kind: 'name-twice', name: carrier.name });
        else named.set(carrier.name, carrier);
    }
    const spans = lines.flatMap(line => spanOf(line, named, troubles));
    for (const span of spans) inTheRoom(span, walls, troubles);
    const choices = new Choices(plan);
    const passes = new Map<Carrier, Pass[]>([...walls, ...lines].map(carrier => [carrier, []]));
    const runs = spans.map(span => ({
        carrier: span.line,
        start: endOf(span, 'start', spans, choices, passes, troubles), end: endOf(span, 'end', spans, choices, passes, troubles),
        passes: passes.get(span.line)!,
    }));
    crossings(spans, choices, passes);
    for (const list of passes.values()) list.sort((a, b) => a.along - b.along);
    return { runs, onWalls: new Map(walls.map(wall => [wall, passes.get(wall)!])) };
}

function spanOf(line: LineCarrier, named: ReadonlyMap<string, Carrier>, troubles: Trouble[]): Span[] {
    const [from, to] = [line.line.from, line.line.to].map(name => {
        const carrier = named.get(name);
        if (!carrier) troubles.push({ kind: 'unknown-carrier', line: line.name, name });
        return carrier;
    });
    if (!from || !to) return [];
    const start = crossing(line.center, baseOf(from)), end = crossing(line.center, baseOf(to));
    if (!start || !end || from === to || reach(start, end, line.direction) <= 0) {
        troubles.push({ kind: 'never-gets-there', line: line.name, to: start ? to.name : from.name });
        return [];
    }
    return [{ line, from, to, start, end, first: placeOn(line, start), last: placeOn(line, end) }];
}

function baseOf(carrier: Carrier): Flank['base'] {
    return carrier.kind === 'wall' ? carrier.right.base : carrier.center;
}
/** How far along the line, from where its direction starts to count. */
function placeOn(line: LineCarrier, point: Point): number {
    return reach({ x: 0, y: 0 }, point, line.direction);
}
function holds({ first, last }: Span, place: number): boolean {
    return first < place && place < last;
}

function inTheRoom({ line, from, to, start, end }: Span, walls: readonly WallCarrier[], troubles: Trouble[]): void {
    const met = walls.filter(wall => wall !== from && wall !== to && touch(start, end, wall.start, wall.end));
    // half of it would stand before that wall, and half run on beside it
    const along = met.find(wall => [wall.start, wall.end].every(point => distanceFrom(line.center, point) === 0));
    if (along) troubles.push({ kind: 'on-a-wall', line: line.name, wall: along.name });
    else if (met[0]) troubles.push({ kind: 'leaves-the-room', line: line.name, at: met[0].name });
}

/** One end: at a wall, at a line (a T), or at a line that ends here too (a ring). Where it stands on the other is noted there. */
function endOf(span: Span, which: 'start' | 'end', spans: readonly Span[], choices: Choices, passes: Map<Carrier, Pass[]>, troubles: Trouble[]): End {
    const { line } = span;
    const [carrier, point] = which === 'start' ? [span.from, span.start] : [span.to, span.end];
    const inward = which === 'start' ? line.direction : reversed(line.direction);
    const other = spans.find(each => each.line === carrier);
    const ring = other !== undefined && (other.from === line || other.to === line);
    const relation = relationAtEnd(line, carrier, ring, choices, troubles);
    const near = flankLooking(carrier, inward) ?? carrier.right, far = flankLooking(carrier, reversed(inward)) ?? carrier.right;
    const common = { carrier, relation, ring, near, far, corners: choices.corners(line, carrier), point };
    if (other && ring) {
        const otherInward: Vector = other.from === line ? other.line.direction : reversed(other.line.direction);
        const at = { left: looks(line.left, otherInward) > 0 ? near : far, right: looks(line.right, otherInward) > 0 ? near : far };
        return { ...common, at, through: choices.through(line, other.line) === line };
    }
    if (other && !holds(other, placeOn(other.line, point))) troubles.push({ kind: 'misses', line: line.name, to: carrier.name });
    const through = relation === 'flush' && carrier.kind === 'line' && choices.said(line, carrier)?.through === line.name;
    const way = carrier.kind === 'line' ? carrier.direction : directionOf(near.base);
    passes.get(carrier)!.push({
        line, stem: true, touches: [near.side], ...inOrder(line, way), relation: relation === 'flush' ? 'flush' : 'over', through,
        corners: common.corners, along: reach({ x: 0, y: 0 }, point, way),
    });
    return { ...common, at: { left: near, right: near }, through };
}

/** The line's flanks in the order that somebody passes them who walks this way. */
function inOrder(line: LineCarrier, way: Vector): { near: Flank; far: Flank } {
    return looks(line.right, way) < 0 ? { near: line.right, far: line.left } : { near: line.left, far: line.right };
}

function crossings(spans: readonly Span[], choices: Choices, passes: Map<Carrier, Pass[]>): void {
    spans.forEach((a, i) => {
        for (const b of spans.slice(i + 1)) {
            if ([a.from, a.to].includes(b.line) || [b.from, b.to].includes(a.line)) continue;
            const point = crossing(a.line.center, b.line.center);
            if (!point || !holds(a, placeOn(a.line, point)) || !holds(b, placeOn(b.line, point))) continue;
            const through = choices.through(a.line, b.line);
            for (const [own, other] of [[a.line, b.line], [b.line, a.line]] as const) {
                passes.get(own)!.push({
                    line: other, stem: false, touches: ['left', 'right'], ...inOrder(other, own.direction), relation: relationOf(own, other, choices),
                    through: through === other, corners: choices.corners(own, other), along: placeOn(own, point),
                });
            }
        }
    });
}

/** Two lines that cross: the shallower dies into the deeper, a box into a solid timber, and of equals the one that is said to. */
function relationOf(own: LineCarrier, other: LineCarrier, choices: Choices): Relation {
    const dies = own.beam.depth === other.beam.depth ? choices.said(own, other)?.dies : undefined;
    if (dies === own.name) return 'dies';
    if (dies === other.name) return 'over';
    return relationByDepth({ depth: own.beam.depth, isSolid: isSolid(own) }, { depth: other.beam.depth, isSolid: isSolid(other) });
}

function relationAtEnd(line: LineCarrier, carrier: Carrier, ring: boolean, choices: Choices, troubles: Trouble[]): 'flush' | 'dies' {
    const depth = depthOf(carrier);
    if (depth === undefined) return 'dies';
    if (line.beam.depth > depth || ring && line.beam.depth !== depth) {
        troubles.push({ kind: 'deeper-than-its-end', line: line.name, at: carrier.name, deep: line.beam.depth, has: depth });
    }
    if (choices.said(line, carrier)?.dies === line.name) return 'dies';
    return relationByDepth({ depth: line.beam.depth, isSolid: isSolid(line) }, { depth, isSolid: isSolid(carrier) }) === 'flush' ? 'flush' : 'dies';
}

/** What is chosen for a meeting, or holds for all. */
class Choices {
    private readonly byNames = new Map<string, MeetingChoice>();

    constructor(private readonly plan: Plan) {
        for (const choice of plan.meetings ?? []) this.byNames.set(keyOf(...choice.of), choice);
    }
    said(a: Carrier, b: Carrier): MeetingChoice | undefined {
        return this.byNames.get(keyOf(a.name, b.name));
    }
    corners(a: Carrier, b: Carrier): Corners {
        return this.said(a, b)?.corners ?? this.plan.corners;
    }
    /** The one whose bottom runs through where both are equally deep. */
    through(a: LineCarrier, b: LineCarrier): LineCarrier {
        const named = this.said(a, b)?.through;
        if (named === a.name) return a;
        if (named === b.name) return b;
        const [isA, isB] = [a.family === this.plan.through, b.family === this.plan.through];
        if (isA !== isB) return isA ? a : b;
        return a.index < b.index ? a : b;
    }
}
function keyOf(a: string, b: string): string {
    return a < b ? JSON.stringify([a, b]) : JSON.stringify([b, a]);
}
