import { diesByChoice, unitOf } from '../../ceiling/along.ts';
import type { Band, Ceiling, Crossing, HalfBeam, Line } from '../../ceiling/model.ts';
import { relationOfBeams } from '../../ceiling/meeting.ts';
import type { Point, Vector } from '../../plane/point.ts';
import { atKey } from '../../plain/at-key.ts';
import { listed } from '../../plain/words.ts';

/** A spot where lines or what runs along walls meet, as a kind: all that meet so are drawn once. */
export interface Meeting {
    readonly kind: 'crossing' | 'tee' | 'ring' | 'wall' | 'corner';
    readonly title: string;
    /** Where else it is so: `A1`, `line 2 at the north wall`. The first is the one that is drawn. */
    readonly places: readonly string[];
    readonly at: Point;
    /** Along this the section is cut, and what stands across it is seen in section; one long. */
    readonly along: Vector;
    /** The line or wall that is cut along. */
    readonly cut: string;
    /** Lines and walls that meet. */
    readonly carriers: readonly string[];
    /** Widest and deepest of what meets, in ticks. */
    readonly wide: number; readonly deep: number;
}

interface Found extends Omit<Meeting, 'places'> { readonly key: string; readonly place: string }

/** All kinds there are in a ceiling: crossings and T's, then ends at walls, then corners of walls. */
export function meetingsOf(ceiling: Ceiling): readonly Meeting[] {
    const kinds = new Map<string, Meeting & { places: string[] }>();
    for (const { key, place, ...meeting } of [...ceiling.crossings.flatMap(atCrossing), ...ceiling.lines.flatMap(line => atWalls(line, ceiling)),
        ...cornersOf(ceiling)]) {
        atKey(kinds, key, () => ({ ...meeting, places: [] })).places.push(place);
    }
    return [...kinds.values()];
}

function atCrossing({ name, ns, ew, flush }: Crossing): readonly Found[] {
    const at = crossingOf(ns, ew);
    if (!at) return [];
    const endsAt = (line: Line, other: Line): boolean => line.from === other.name || line.to === other.name;
    const stems = [endsAt(ns, ew), endsAt(ew, ns)] as const, kind = stems[0] && stems[1] ? 'ring' : stems[0] || stems[1] ? 'tee' : 'crossing';
    // the section runs along the one that is cut, so that what runs through is seen across
    const isCut = (line: Line, other: Line): boolean => line.passes.some(pass => pass.of === other.name && pass.cuts);
    const along = stems[0] !== stems[1] ? stems[0] ? ns : ew : isCut(ns, ew) ? ns : ew, other = along === ns ? ew : ns;
    const angle = between(unitOf(along), unitOf(other)), corners = along.section.profile.sides?.corners.value ?? 'mitered';
    const isTimber = along.section.profile.solid !== undefined || other.section.profile.solid !== undefined;
    const how = flush ? isTimber ? 'timbers' : `sides ${corners}`
        : along.section.depth.ticks === other.section.depth.ticks ? `line ${along.name} dies into line ${other.name}` : 'the shallower dies into the deeper';
    const what = { crossing: 'Lines cross', tee: 'A line ends at another', ring: 'Two lines end at each other' }[kind];
    return [{
        kind, title: `${what}: ${how}${askew(angle)}`, place: name, at, along: unitOf(along), cut: along.name, carriers: [along.name, other.name],
        ...sizeOf(along, other),
        key: [kind, flush, corners, along.section.profile.key, along.otherSide, other.section.profile.key, other.otherSide, along.section.heldDown.value.ticks,
            other.section.heldDown.value.ticks, about(angle), isCut(along, other)].join('|'),
    }];
}

function atWalls(line: Line, ceiling: Ceiling): readonly Found[] {
    const { walls, around } = ceiling;
    return ([[line.from, 0], [line.to, 1]] as const).flatMap(([name, end]): readonly Found[] => {
        const wall = walls.find(each => each.name === name);
        if (!wall) return [];
        const own = around[name] ?? null, u = unitOf(line), v = unit({ x: wall.to.x - wall.from.x, y: wall.to.y - wall.from.y });
        const at = crossing(line.spot, u, wall.from, v);
        if (!at) return [];
        const angle = between(u, v), flush = own?.kind === 'half-beam' && relationOfBeams(line, own) === 'flush';
        const what = own === null ? 'bare wall' : own.kind === 'band' ? 'band' : own.section.profile.solid ? `${flush ? 'timber as deep' : 'timber'} along the wall` : !flush ? 'deeper half beam'
            : diesByChoice(line, ceiling) ? 'half beam as deep, and dies into it' : 'half beam as deep';
        return [{
            kind: 'wall', title: `A line ends at a ${what}${askew(angle)}`, place: `line ${line.name} at wall ${name}`, at,
            along: end === 0 ? u : { x: -u.x, y: -u.y }, cut: line.name, carriers: [line.name, name],
            ...sizeOf(line, own), key: ['wall', what, line.section.profile.key, line.otherSide, line.section.heldDown.value.ticks, keyOf(own), about(angle)].join('|'),
        }];
    });
}

/** Corners of two walls along which something runs. */
function cornersOf({ walls, around, beams }: Ceiling): readonly Found[] {
    return walls.flatMap((wall, i): readonly Found[] => {
        const before = walls.at(i - 1)!, own = around[wall.name] ?? null, other = around[before.name] ?? null;
        if (!own && !other) return [];
        const u = unit({ x: wall.to.x - wall.from.x, y: wall.to.y - wall.from.y }),
            v = unit({ x: before.to.x - before.from.x, y: before.to.y - before.from.y });
        const turn = v.x * u.y - v.y * u.x, angle = between(u, v), outside = turn < 0;
        if (Math.abs(turn) < 0.02) return [];
        const name = (each: Band | HalfBeam | null): string => (each === null ? 'a bare wall' : each.kind === 'band' ? 'a band' : each.section.profile.solid ? 'a timber' : 'a half beam');
        const both = [name(own), name(other)].sort(), depths = [own, other].flatMap(each => (each?.kind === 'half-beam' ? [each.section.depth.ticks] : []));
        const what = depths.length === 2 && depths[0] !== depths[1] ? 'Half beams of two depths' : both[0] === both[1] ? `Two ${both[0]!.slice(2)}s` : `${both[0]!.replace(/^a/u, 'A')} and ${both[1]}`;
        return [{
            kind: 'corner', title: `${what} in an ${outside ? 'outside' : 'inside'} corner${askew(angle)}`, place: `walls ${before.name} and ${wall.name}`,
            at: wall.from, along: own ? { x: u.x, y: u.y } : { x: -v.x, y: -v.y },
            cut: own ? wall.name : before.name, carriers: [before.name, wall.name],
            wide: 2 * Math.max(reachOf(own), reachOf(other)), deep: Math.max(deepOf(own), deepOf(other), beams?.depth?.ticks ?? 0),
            key: ['corner', ...[keyOf(own), keyOf(other)].sort(), outside, about(angle)].join('|'),
        }];
    });
}

function keyOf(own: Band | HalfBeam | null): string {
    return own === null ? '' : own.kind === 'band' ? `band ${own.thickness.ticks} ${own.lowerEdge.ticks}`
        : `half ${own.width.ticks} ${own.section.profile.key}`;
}
function reachOf(own: Band | HalfBeam | null): number {
    return own === null ? 0 : own.kind === 'band' ? own.thickness.ticks : Math.max(own.width.ticks + own.section.sideThickness.ticks, own.bottomWidth.ticks);
}
function deepOf(own: Band | HalfBeam | null): number {
    return own === null ? 0 : own.kind === 'band' ? own.lowerEdge.ticks : own.section.depth.ticks;
}
function sizeOf({ section }: Line, other: Line | Band | HalfBeam | null): { readonly wide: number; readonly deep: number } {
    const own = widthOf(section);
    if (other === null || !('section' in other) || 'kind' in other) return { wide: Math.max(own, 2 * reachOf(other as Band | HalfBeam | null)),
        deep: Math.max(section.depth.ticks, deepOf(other as Band | HalfBeam | null)) };
    return { wide: Math.max(own, widthOf(other.section)), deep: Math.max(section.depth.ticks, other.section.depth.ticks) };
}
function widthOf({ outerWidth, bottomWidth, profile }: Line['section']): number {
    return profile.bottom?.place.value === 'under-sides' ? Math.max(outerWidth.ticks, bottomWidth.ticks) : outerWidth.ticks;
}

/** Degrees between two directions, up to 90. */
function between(u: Vector, v: Vector): number {
    return Math.atan2(Math.abs(u.x * v.y - u.y * v.x), Math.abs(u.x * v.x + u.y * v.y)) * 180 / Math.PI;
}
/** In a room out of square no two corners are quite alike; within so many degrees they are put together alike. */
const ALIKE = 4;
const about = (angle: number): number => (angle > 90 - ALIKE ? 90 : Math.round(angle / ALIKE) * ALIKE);
function askew(angle: number): string {
    return angle > 90 - ALIKE ? '' : `, at ${Math.round(angle)} degrees`;
}

function unit({ x, y }: Vector): Vector {
    const long = Math.hypot(x, y) || 1;
    return { x: x / long, y: y / long };
}
function crossingOf(a: Line, b: Line): Point | null {
    return crossing(a.spot, unitOf(a), b.spot, unitOf(b));
}
function crossing(a: Point, u: Vector, b: Point, v: Vector): Point | null {
    const turn = u.x * v.y - u.y * v.x;
    if (Math.abs(turn) < 1e-9) return null;
    const by = ((b.x - a.x) * v.y - (b.y - a.y) * v.x) / turn;
    return { x: a.x + u.x * by, y: a.y + u.y * by };
}

/** `A1, A2 and 3 more`. */
export function placesText({ places }: Meeting): string {
    return places.length <= 5 ? listed(places) : `${places.slice(0, 4).join(', ')} and ${places.length - 4} more`;
}
