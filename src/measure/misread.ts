import type { Diagonal, Room, RoomWall } from '../job/model.ts';
import { fourCorners, outlineOf, TELLS } from '../job/outline.ts';
import type { Source } from '../provenance/source.ts';
import { TICKS_PER_FOOT, type Ticks } from '../quantity/ticks.ts';
import { slipOf, type Slip } from './slips.ts';

/** A reading of the tape that would explain alone why a room does not close, were it another. */
export interface Suspect {
    /** `wall east`, `the diagonal from north-west to south-east`. */
    readonly name: string;
    readonly at: Source;
    readonly reads: Ticks;
    /** What it would have to be, and how much more than it reads; whole ticks. */
    readonly should: Ticks; readonly off: Ticks;
    /** How such a misreading comes about, where it is one of the usual ones. */
    readonly slip?: Slip;
}

/** No single slip is larger: it would have been seen. Common practice, no source. */
const MOST_OFF: Ticks = 3 * TICKS_PER_FOOT;

/**
 * Which single readings would explain what does not close, the likeliest first: usual slips before others, then by how much each would have to be off. None
 * where everything closes as well as a tape tells, or no single reading explains it.
 */
export function suspectsOf(room: Pick<Room, 'walls' | 'diagonals' | 'job'>): Suspect[] {
    const found = [...ofFourWalls(room), ...ofHeadings(room)].map(({ should, ...rest }): Suspect => {
        const whole = Math.round(should), slip = slipOf(rest.reads, whole, room.job.show.value);
        return { ...rest, should: whole, off: whole - rest.reads, ...slip && { slip } };
    });
    return found.filter(({ off, should }) => Math.abs(off) <= MOST_OFF && should > 0)
        .sort((a, b) => Number(!a.slip) - Number(!b.slip) || Math.abs(a.off) - Math.abs(b.off));
}

type Found = Pick<Suspect, 'name' | 'at' | 'reads'> & { readonly should: number };

/** Four walls and two diagonals are six distances between four places, one more than it takes: each of them follows from the other five. */
function ofFourWalls({ walls, diagonals }: Pick<Room, 'walls' | 'diagonals'>): Found[] {
    const around = [90, 180, 270, 0].map(bearing => walls.find(wall => wall.bearing === bearing));
    if (walls.length !== 4 || !around.every(wall => wall?.length && !wall.assumed)) return [];
    const falling = diagonals.find(isFalling), rising = diagonals.find(diagonal => isRising(diagonal));
    if (!falling || !rising) return [];
    const readings = [...(around as RoomWall[]).map(ofWall), ofDiagonal(falling), ofDiagonal(rising)], reads = readings.map(each => each.reads);
    if (Math.abs(misses(reads) ?? Infinity) <= TELLS) return [];
    return readings.flatMap((reading, i) => {
        const should = solved(value => misses(reads.with(i, value)), reading.reads);
        return should === undefined ? [] : [{ ...reading, should }];
    });
}

function isFalling({ from, to }: Diagonal): boolean {
    return [from, to].sort().join() === 'north-west,south-east';
}
function isRising({ from, to }: Diagonal): boolean {
    return [from, to].sort().join() === 'north-east,south-west';
}

/** By how much the rising diagonal reads more than it would be by the walls and the falling one; undefined where they make no room. */
function misses([n, e, s, w, falling, rising]: readonly number[]): number | undefined {
    const corners = fourCorners([n!, e!, s!, w!], falling!, true);
    if (typeof corners === 'string') return undefined;
    const [, ne, , sw] = corners;
    return rising! - Math.hypot(ne!.x - sw!.x, ne!.y - sw!.y);
}

const STEPS = 40;

/** Where a function is 0, looked for from a place on by secants; undefined where that leads nowhere. */
function solved(miss: (value: number) => number | undefined, from: number): number | undefined {
    let [a, b] = [from, from + 1], [ma, mb] = [miss(a), miss(b)];
    for (let i = 0; i < STEPS && ma !== undefined && mb !== undefined; i++) {
        if (Math.abs(mb) < 0.25) return b;
        if (ma === mb) return undefined;
        const next = b - mb * (b - a) / (mb - ma);
        [a, ma, b] = [b, mb, next];
        mb = miss(b);
    }
    return undefined;
}

/** Round a room by lengths and headings: a wall explains it that runs just the way of what is missing. */
function ofHeadings(room: Pick<Room, 'walls' | 'diagonals'>): Found[] {
    const outline = outlineOf(room);
    if (!outline || !('gap' in outline)) return [];
    const { gap } = outline;
    if (Math.hypot(gap.x, gap.y) <= TELLS) return [];
    return room.walls.filter(({ length }) => length).flatMap((wall): Found[] => {
        const way = wall.bearing * Math.PI / 180, unit = { x: Math.sin(way), y: -Math.cos(way) };
        const off = -(gap.x * unit.x + gap.y * unit.y), reading = ofWall(wall);
        return Math.hypot(gap.x + off * unit.x, gap.y + off * unit.y) <= TELLS ? [{ ...reading, should: reading.reads + off }] : [];
    });
}

function ofWall({ name, length }: RoomWall): Omit<Found, 'should'> {
    return { name: `wall ${name}`, at: length!.at, reads: length!.value.ticks };
}

function ofDiagonal({ from, to, at, ticks }: Diagonal): Omit<Found, 'should'> {
    return { name: `the diagonal from ${from} to ${to}`, at, reads: ticks };
}
