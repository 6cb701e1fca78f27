import { endsNamed, inwards, isForward, type ShapedWall } from '../ceiling/shape.ts';
import type { Band, Ceiling, HalfBeam } from '../ceiling/model.ts';
import type { WallBow } from '../job/model.ts';
import { knownOf, knownWords } from '../job/status.ts';
import { stretchesOver, type DeepStretch } from '../plane/stretches.ts';
import type { Point } from '../plane/point.ts';
import { inches } from '../quantity/rational.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';

export type { DeepStretch } from '../plane/stretches.ts';

/** Less of a bow is closed by the nails. Common practice, no source. */
export const TELLS: Ticks = TICKS_PER_INCH / 32;
/** What a band keeps at the least where its back is scribed: as the lip beside a groove. Common practice, no source. */
export const LEAST_LEFT: Ticks = inches('3/8');
/** A wider gap between a band and the wall is not caulked. Common practice, no source. */
export const CAULKED: Ticks = inches('1/8');

/** A wall that is not straight or not plumb, and what that does to what runs along it and what ends at it. Places from the wall's west or north end. */
export interface BowedWall {
    readonly wall: ShapedWall;
    readonly bow: WallBow;
    readonly runs: Band | HalfBeam | null;
    /** How far it stands into the room at band height, from corner to corner; straight between. With what was read there, where anything was. */
    readonly profile: readonly { readonly along: number; readonly into: number; readonly reading?: WallBow['readings'][number] }[];
    /** How much farther into the room all of it stands, and what runs along it too; less than nothing farther back, 0 where some of it stands as measured. */
    readonly moved: Ticks;
    /** What is left on the edge of a half beam's bottom to be scribed away. */
    readonly allowance: Ticks;
    /** How deep what runs along it is scribed, over which stretch; of a half beam's bottom with what is left on it for that. */
    readonly scribes: readonly DeepStretch[];
    /** What stays open behind it, kept straight. */
    readonly gaps: readonly DeepStretch[];
    /**
     * Pieces that end at the wall, or at what runs along it and stands farther in, and by how much they are cut shorter there, along themselves; less than
     * nothing: longer. With them, `at` a wall that nothing is said of, what runs along this one and is moved with it.
     */
    readonly ends: readonly { readonly piece: Piece; readonly along: Ticks; readonly by: Ticks; readonly at?: string }[];
    /** Lines that end at what runs along it, and what they lose or gain, in all, if that is bent to the wall and not kept straight; where that is otherwise. */
    readonly bent: readonly { readonly line: string; readonly by: Ticks }[];
    /** Readings that are beyond its ends, or counted from an end that it has not. */
    readonly astray: WallBow['readings'];
}

/** Every wall that something is said of, in the order of the walls. */
export function bowedWalls(ceiling: Ceiling, pieces: readonly Piece[]): BowedWall[] {
    const { walls, room: { bows = {} }, around } = ceiling;
    const found = walls.map((wall): StandingWall => {
        const bow = bows[wall.name], said = bow && profileOf(wall, bow), intos = (said?.profile ?? []).map(({ into }) => into);
        return { wall, ...said, moved: said ? Math.round(Math.max(0, Math.min(...intos)) + Math.min(0, Math.max(...intos))) : 0 };
    });
    const along = new Map(found.flatMap(one => (around[one.wall.name] ? [[one.wall.name, one]] : [])));
    return found.flatMap((one): BowedWall[] => {
        const { wall, moved, profile, astray } = one, bow = bows[wall.name];
        if (!bow || !profile || !astray) return [];
        const runs = around[wall.name] ?? null;
        const allowance = runs?.kind === 'half-beam' ? runs.perimeter.scribe?.value ?? 0 : 0;
        const deep = (sign: 1 | -1): DeepStretch[] =>
            (runs ? stretchesOver(profile.map(({ along, into }) => ({ along, depth: sign * (into - moved + allowance) })), TELLS) : []);
        // what runs along it ends elsewhere, too, where the next wall does not stand square to it
        const beside = moved === 0 ? [] : found.filter(other => other !== one && !other.profile)
            .flatMap(other => endsAt(other, pieces.filter(piece => isAlong(piece, wall)), along).map(end => ({ ...end, at: other.wall.name })));
        return [{
            wall, bow, runs, profile, moved, allowance, scribes: deep(1), gaps: deep(-1), ends: [...endsAt(one, pieces, along), ...beside], astray,
            bent: runs?.kind === 'band' ? bentOf(ceiling, wall, profile, moved) : [],
        }];
    });
}

/** A wall as it stands, by what is said of it where anything is; how far all of it is moved. */
interface StandingWall extends Partial<Pick<BowedWall, 'profile' | 'astray'>> { readonly wall: ShapedWall; readonly moved: Ticks }

/**
 * The readings in their order along the wall, with the corners, where the string is, each by as much farther in as all of it leans. Of two at one place
 * the later is believed.
 */
export function profileOf(wall: ShapedWall, { readings, lean }: WallBow): Pick<BowedWall, 'profile' | 'astray'> {
    const [first, last] = endsNamed(wall), at = new Map<number, WallBow['readings'][number] | undefined>([[0, undefined], [wall.length, undefined]]), astray: WallBow['readings'][number][] = [];
    for (const reading of readings) {
        const { place, from = first } = reading, along = from === last ? wall.length - place : place;
        if (from !== first && from !== last || along < 0 || along > wall.length) astray.push(reading);
        else at.set(along, reading);
    }
    const sorted = [...at].sort(([a], [b]) => a - b), leans = lean?.value ?? 0;
    return { profile: sorted.map(([along, reading]) => ({ along, into: (reading?.value ?? 0) + leans, ...reading && { reading } })), astray };
}

/** How what is said of a wall is known: each way in which one of its readings is, once. */
export function bowsKnown({ readings, lean }: WallBow): ReturnType<typeof knownOf>[] {
    return [...new Map([...readings, ...lean ? [lean] : []].map(knownOf).map(known => [knownWords(known), known])).values()];
}

/** How far it stands into the room at a place. */
export function intoAt(profile: BowedWall['profile'], along: number): number {
    const next = Math.max(1, profile.findIndex(spot => spot.along >= along)), a = profile[next - 1]!, b = profile[next] ?? a;
    return b.along === a.along ? b.into : a.into + (b.into - a.into) * Math.min(1, Math.max(0, (along - a.along) / (b.along - a.along)));
}

/** A corner that is nearer to a wall stands against it. */
const TOUCHES = 8;

/** Whether a piece runs along a wall, as part of the band or the half beam there. */
function isAlong({ line, on }: Piece, { name }: ShapedWall): boolean {
    return line === null && on === name;
}

/** What pieces lose that end at a wall; `along`: the walls along which something runs, by their names, which moves with them. */
function endsAt({ wall, profile, moved }: StandingWall, pieces: readonly Piece[], along: ReadonlyMap<string, StandingWall>): BowedWall['ends'] {
    return pieces.flatMap(piece => {
        const [a, b, c, d] = piece.corners, own = piece.line === null && piece.on !== null ? along.get(piece.on) : undefined;
        return ([[a, d], [b, c]] as const).flatMap((end, i) => {
            if (piece.meets[i] !== wall.name) return [];
            const [one, other] = end.map(corner => onWall(wall, corner)) as [Point, Point], touches = [one, other].every(({ y }) => Math.abs(y) <= TOUCHES);
            const [from, to] = [Math.min(one.x, other.x), Math.max(one.x, other.x)];
            const spots = [from, to, ...(profile ?? []).flatMap(({ along }) => (along > from && along < to ? [along] : []))];
            const into = touches && profile ? Math.max(...spots.map(along => intoAt(profile, along))) : moved;
            const by = lostBy(i === 0 ? { x: a.x - b.x, y: a.y - b.y } : { x: b.x - a.x, y: b.y - a.y }, { wall, into }, own);
            return Math.abs(by) > TELLS ? [{ piece, along: Math.round((from + to) / 2), by }] : [];
        });
    });
}

/**
 * What a piece that runs this way to a wall loses of its length where that stands so far in, and where it is itself moved with the wall that it runs along:
 * of plane geometry, the way from one line to another that is parallel to it, along a third. Square to the wall it is just as much as the wall stands in.
 */
function lostBy(way: Point, { wall, into }: { readonly wall: ShapedWall; readonly into: number }, own: StandingWall | undefined): Ticks {
    const n = inwards(wall), long = Math.hypot(way.x, way.y) || 1, toward = Math.abs(way.x * n.x + way.y * n.y) / long, m = own ? inwards(own.wall) : n;
    return toward < NEARLY_ALONG ? 0 : Math.round((into - (own ? own.moved * (m.x * n.x + m.y * n.y) : 0)) / toward);
}
/** Sine of an angle at which nothing ends at a wall. */
const NEARLY_ALONG = 1e-3;

function bentOf({ lines }: Ceiling, wall: ShapedWall, profile: BowedWall['profile'], moved: Ticks): BowedWall['bent'] {
    return lines.flatMap(line => {
        if (line.from !== wall.name && line.to !== wall.name) return [];
        const { heading, spot } = line, cross = (p: Point, q: Point): number => p.x * q.y - p.y * q.x;
        const way = { x: wall.to.x - wall.from.x, y: wall.to.y - wall.from.y }, under = cross(heading, way);
        if (under === 0) return [];
        const t = cross({ x: wall.from.x - spot.x, y: wall.from.y - spot.y }, way) / under;
        const { x } = onWall(wall, { x: spot.x + heading.x * t, y: spot.y + heading.y * t }), into = intoAt(profile, x);
        const by = lostBy(heading, { wall, into }, undefined);
        return Math.abs(by) > TELLS && Math.abs(into - moved) > TELLS ? [{ line: line.name, by }] : [];
    });
}

/** Along the wall from its west or north end, and off it. */
function onWall(wall: ShapedWall, { x, y }: Point): Point {
    const [from, to] = isForward(wall) ? [wall.from, wall.to] : [wall.to, wall.from], dx = (to.x - from.x) / wall.length, dy = (to.y - from.y) / wall.length;
    return { x: (x - from.x) * dx + (y - from.y) * dy, y: (y - from.y) * dx - (x - from.x) * dy };
}
