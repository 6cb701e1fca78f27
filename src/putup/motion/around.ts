import type { Point } from '../../plane/point.ts';
import { TICKS_PER_INCH, type Ticks } from '../../quantity/ticks.ts';
import type { Path, Pose } from '../model.ts';
import { RIGHT_UNDER, type Box, type Stood } from '../stood.ts';
import { hitOn } from './clear.ts';
import { aroundMoves } from './moves.ts';
import type { Met } from './slices.ts';

/** What a piece has to get past: `hanging` is in the way of its straight lift, `met` is all that stands near. `open`: the middle of the coffer it stands in. */
interface Obstacles { readonly hanging: readonly Met[]; readonly met: readonly Met[]; readonly open: Point | undefined }

/** So much clear of what it is lifted past. Common practice, no source. */
const CLEAR = TICKS_PER_INCH / 16;
/** Degrees that are tried: a long piece is tipped a little, and turned to where it goes through. */
const TIPS = [2, 4, 6, 8, 10, 12, 15, 18, 21, 25, 30], TURNS = Array.from({ length: 18 }, (_, i) => 5 * (i + 1));
/** As often it is tried lower, where what is up beside its place is in the way there. */
const LEVELS = 4;

/**
 * A way to its place for a piece that cannot be lifted straight, since something hangs under it: up beside it, and pushed over what hangs there along
 * its normals or its length; one end first, and swung up; turned level in the open, and turned straight above what hangs. Each at the height where it
 * belongs, or as much lower as what is up there already wants it, and then up. The first that goes; null where none does.
 */
export function wayAround(piece: Stood, { hanging, met, open }: Obstacles): Path | null {
    const asides = asidesOf(piece, hanging, open);
    // above what hangs there: no room for that is less than nothing
    const room = Math.min(...hanging.flatMap(({ blocks }) => blocks.map(({ top }) => top))) - piece.foot;
    const tried = (from: Pose): Path | null => {
        let below = 0;
        for (let i = 0; i < LEVELS; i++) {
            const moves = aroundMoves({ ...from, below }), hit = hitOn(piece, moves, met);
            if (hit.length === 0) return { aside: from.aside, over: false, around: true, moves };
            const lower = Math.max(...hit.flatMap(({ blocks }) => blocks.map(({ foot }) => foot))) - piece.top + CLEAR;
            if (lower <= below || lower > room) return null;
            below = lower;
        }
        return null;
    };
    for (const aside of asides) { const path = tried(poseOf('straight', aside, 0)); if (path) return path; }
    for (const aside of [RIGHT_UNDER, ...asides]) for (const degrees of TIPS) for (const low of [0, 1] as const) {
        const path = tried({ ...poseOf('tipped', aside, degrees), low });
        if (path) return path;
    }
    const out = open && outTo(open, piece);
    if (out) for (const degrees of TURNS) for (const side of [1, -1]) { const path = tried(poseOf('turned', out, side * degrees)); if (path) return path; }
    return null;
}

function poseOf(shape: Pose['shape'], aside: Point, degrees: number): Pose {
    return { shape, aside, below: 0, angle: degrees * Math.PI / 180, low: 1 };
}

/** So far beside its place a piece is lifted at most, where it is not to the middle of its coffer: its length. */
function reachOf({ box: { west, east, north, south } }: Stood): number {
    return Math.hypot(east - west, south - north);
}

/** The box of all that it may come to on any of these ways. */
export function roundabout(piece: Stood, open: Point | undefined): Box {
    const { west, east, north, south } = piece.box, far = 2 * reachOf(piece), out = open ? outTo(open, piece) : RIGHT_UNDER;
    return {
        west: west - far + Math.min(0, out.x), east: east + far + Math.max(0, out.x),
        north: north - far + Math.min(0, out.y), south: south + far + Math.max(0, out.y),
    };
}

/** Out along its normal, as far as the open is: along its length it stays between what it fits between. */
function outTo(open: Point, { middle, way }: Stood): Point {
    const off = (open.y - middle.y) * way.x - (open.x - middle.x) * way.y;
    return { x: Math.round(0 - way.y * off), y: Math.round(way.x * off) };
}

/**
 * Beside its place, by no more than its length, just clear of one or more of what hangs there: along its normals, then along its length, those
 * towards the open first.
 */
function asidesOf(piece: Stood, hanging: readonly Met[], open: Point | undefined): Point[] {
    const { way } = piece, normal = { x: 0 - way.y, y: way.x };
    const towards = (one: Point): number => (open ? (open.x - piece.middle.x) * one.x + (open.y - piece.middle.y) * one.y : 0);
    const both = (one: Point): Point[] => [one, { x: 0 - one.x, y: 0 - one.y }].sort((a, b) => towards(b) - towards(a));
    return [...both(normal), ...both(way)].flatMap(one => {
        const along = (blocks: Stood['blocks']): number[] => blocks.flatMap(({ prism }) => prism.outline.map(([x, y]) => x * one.x + y * one.y));
        const least = Math.min(...along(piece.blocks)), offs = hanging.map(({ blocks }): Ticks => Math.max(...along(blocks)) - least + CLEAR);
        const near = [...new Set(offs.filter(off => off <= reachOf(piece)))].sort((a, b) => a - b);
        return near.map(off => ({ x: Math.round(one.x * off), y: Math.round(one.y * off) }));
    });
}
