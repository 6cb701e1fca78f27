import type { Room, RoomWall } from '../job/model.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import { slipOf } from './slips.ts';
import type { Suspect } from './misread.ts';

/** Walls across from each other that differ by no more are alike, and a diagonal that is off by no more is that of a rectangle. Common practice, no source. */
const ALIKE: Ticks = TICKS_PER_INCH / 4, SQUARE: Ticks = TICKS_PER_INCH / 2;
/**
 * By so much rooms are out of square, and no reading of theirs is suspected; a diagonal that is off by a usual slip is from less on. More than three feet would
 * have been seen. Common practice, no source.
 */
const LEAST: Ticks = 3 * TICKS_PER_INCH, LEAST_OF_SLIP: Ticks = TICKS_PER_INCH * 3 / 4, MOST: Ticks = 36 * TICKS_PER_INCH;

interface Four { readonly walls: readonly [RoomWall, RoomWall, RoomWall, RoomWall]; readonly reads: readonly number[] }

/**
 * Readings without which four walls and a diagonal are those of a rectangle, one at a time: five figures, of which two are enough for that. A room may
 * really be so far out of square; but where one reading makes it so, that is likelier. None where a second diagonal bears the first one out.
 */
export function readingsOffSquare(room: Pick<Room, 'walls' | 'diagonals' | 'job'>): Suspect[] {
    const four = fourOf(room), [diagonal, ...others] = room.diagonals;
    if (!four || !diagonal || others.length > 0) return [];
    const { walls } = four, reads = [...four.reads, diagonal.ticks], [n, e, s, w] = reads as [number, number, number, number];
    if (isSquare(reads)) return [];
    const long = (n + s) / 2, wide = (e + w) / 2;
    const should = [s, w, n, e, Math.hypot(long, wide)].map(Math.round);
    const names = [...walls.map(({ name }) => `wall ${name}`), `the diagonal from ${diagonal.from} to ${diagonal.to}`];
    const places = [...walls.map(({ length }) => length!.at), diagonal.at];
    return reads.flatMap((read, i): Suspect[] => {
        const off = should[i]! - read, slip = slipOf(read, should[i]!, room.job.show.value);
        const least = slip && i === 4 ? LEAST_OF_SLIP : LEAST;
        if (Math.abs(off) < least || Math.abs(off) > MOST || !isSquare(reads.with(i, should[i]!))) return [];
        return [{ name: names[i]!, at: places[i]!, reads: read, should: should[i]!, off, ...slip && { slip } }];
    });
}

/** Two walls beside each other that may have been written for each other: exchanged, walls across from each other are alike. */
export function wallsExchanged(room: Pick<Room, 'walls' | 'diagonals'>): (readonly [RoomWall, RoomWall])[] {
    const four = fourOf(room), [diagonal] = room.diagonals;
    if (!four) return [];
    const { walls, reads } = four, [n, e, s, w] = reads as [number, number, number, number];
    if (Math.abs(n - s) < LEAST || Math.abs(e - w) < LEAST) return [];
    return ([[0, 1], [2, 3], [0, 3], [1, 2]] as const).flatMap(([i, j]) => {
        const as = reads.with(i, reads[j]!).with(j, reads[i]!);
        return isSquare(diagonal ? [...as, diagonal.ticks] : as) ? [[walls[i]!, walls[j]!] as const] : [];
    });
}

function isSquare([n, e, s, w, d]: readonly number[]): boolean {
    return Math.abs(n! - s!) <= ALIKE && Math.abs(e! - w!) <= ALIKE && (d === undefined || Math.abs(d - Math.hypot((n! + s!) / 2, (e! + w!) / 2)) <= SQUARE);
}

function fourOf({ walls }: Pick<Room, 'walls'>): Four | undefined {
    const around = [90, 180, 270, 0].map(bearing => walls.find(wall => wall.bearing === bearing));
    if (walls.length !== 4 || !around.every(wall => wall?.length && !wall.assumed && !wall.lost)) return undefined;
    const four = around as unknown as Four['walls'];
    return { walls: four, reads: four.map(({ length }) => length!.value.ticks) };
}
