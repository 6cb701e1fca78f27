import type { Room, RoomWall } from '../job/model.ts';
import { MOST_OPEN, outlineOf, TELLS, type Outline, type Spot, type Unclear } from '../job/outline.ts';
import { isSimple, placeIn, touch, twiceArea } from '../plane/polygon.ts';
import { distance, lengthOf } from '../plane/point.ts';
import type { Source } from '../provenance/source.ts';
import { printLength } from '../quantity/print-length.ts';
import { TICKS_PER_FOOT, type Ticks } from '../quantity/ticks.ts';
import type { Trouble } from './model.ts';
import type { Shape, ShapedWall } from './shape.ts';

/** A wall longer than this is a slip of the keyboard, and its figures would no longer be exact. */
const LONGEST_WALL: Ticks = 1000 * TICKS_PER_FOOT;

/** Undefined silently where not enough is said, and with a trouble where what is said makes no room. */
export function shapeOf(room: Room): { readonly shape?: Shape; readonly troubles: readonly Trouble[] } {
    const troubles = room.walls.flatMap(wall => lengthTroubles(wall, room));
    const outline = troubles.length === 0 ? outlineOf(room) : undefined;
    if (!outline) return { troubles };
    if ('why' in outline) return { troubles: unclear(outline) };
    troubles.push(...tapeTroubles(outline, room.walls));
    const walls = room.walls.map(({ name, at, length }, i): ShapedWall => {
        const from = outline.corners[i]!, to = outline.corners[(i + 1) % outline.corners.length]!;
        return { name, at: length?.at ?? at, from, to, length: Math.round(distance(from, to)) };
    });
    const wrong = wrongWay(outline, room.walls);
    if (wrong) return { troubles: [...troubles, wrong] };
    const square = walls.every(({ from, to }) => from.x === to.x || from.y === to.y);
    return { shape: { walls, width: outline.width, length: outline.length, square }, troubles };
}

function lengthTroubles({ name, length, assumed }: RoomWall, { job }: Room): Trouble[] {
    if (!length || assumed) return [];
    const { value: { ticks }, at } = length;
    if (!(ticks > 0)) return [{ kind: 'not-positive', what: `the ${name} wall`, ticks, at }];
    if (ticks <= LONGEST_WALL) return [];
    const what = `a wall longer than ${printLength(LONGEST_WALL, job.show.value)}`;
    return [{ kind: 'not-supported', what, because: 'no room has one', instead: 'the length of one room', at }];
}

/** What was measured twice and does not agree; what a tape cannot tell is accepted. */
function tapeTroubles({ gap, stretched, checks }: Outline, walls: readonly RoomWall[]): Trouble[] {
    const open = lengthOf(gap);
    return [
        ...open > TELLS ? [{ kind: 'tape-doesnt-close' as const, gap, stretched: stretched.map(({ wall, to }) => ({ wall: wall.name, to })), at: placeOf(walls.at(-1)!) }] : [],
        ...checks.filter(({ diagonal, is }) => Math.abs(diagonal.ticks - is) > TELLS).map(({ diagonal: { from, to, ticks, at }, is }): Trouble => ({ kind: 'diagonal-differs', from, to, measured: ticks, is, at })),
    ];
}

function placeOf({ at, length, bearingAt }: RoomWall): Source {
    return length?.at ?? bearingAt ?? at;
}

function unclear(unclear: Unclear): Trouble[] {
    switch (unclear.why) {
        case 'opposite-walls-differ': return unclear.walls.map(([a, b]) => ({
            kind: 'not-rectangular', walls: [a.name, b.name], a: a.length!.value.ticks, b: b.length!.value.ticks, at: placeOf(b), other: placeOf(a),
        }));
        case 'walls-not-measured': return [{ kind: 'out-of-square', measured: unclear.diagonal.ticks, square: unclear.square, at: unclear.diagonal.at }];
        case 'no-such-triangle': {
            const { diagonal: { from, to, ticks, at }, walls: [a, b] } = unclear;
            return [{ kind: 'no-such-triangle', from, to, measured: ticks, walls: [a.name, b.name], a: a.length!.value.ticks, b: b.length!.value.ticks, at }];
        }
        case 'too-few-lengths': return [{ kind: 'no-room', why: 'too-few-lengths', walls: unclear.walls.map(({ name }) => name), at: placeOf(unclear.walls.at(-1)!) }];
        case 'runs-backwards': return [{ kind: 'no-room', why: 'runs-backwards', walls: [unclear.wall.name], at: placeOf(unclear.wall) }];
        case 'does-not-close': return [{ kind: 'tape-doesnt-close', gap: unclear.gap, stretched: [], at: placeOf(unclear.last) }];
    }
}

/** Walls that cross each other, or go round the wrong way. */
function wrongWay({ corners }: Outline, walls: readonly RoomWall[]): Trouble | undefined {
    if (!isSimple(corners)) {
        const n = corners.length;
        for (let i = 0; i < n; i++) for (let j = i + 2; j < n; j++) {
            if (i === 0 && j === n - 1 || !touch(corners[i]!, corners[(i + 1) % n]!, corners[j]!, corners[(j + 1) % n]!)) continue;
            return { kind: 'no-room', why: 'crosses-itself', walls: [walls[i]!.name, walls[j]!.name], at: placeOf(walls[j]!) };
        }
        return { kind: 'no-room', why: 'crosses-itself', walls: [walls.at(-1)!.name, walls[0]!.name], at: placeOf(walls.at(-1)!) };
    }
    return twiceArea(corners) < 0n ? { kind: 'no-room', why: 'counterclockwise', walls: [], at: placeOf(walls[1]!) } : undefined;
}

/** Whether a place of the plan is outside of these walls. */
export function isOutside(corners: readonly Spot[], { x, y }: Spot): boolean {
    return placeIn(corners, { x: Math.round(x), y: Math.round(y) }) === 'outside';
}

/** Whether a tape that is so far off cannot be right. */
export function isMistake(off: Ticks): boolean {
    return Math.abs(off) > MOST_OPEN;
}
