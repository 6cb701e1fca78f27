import type { Block } from '../dryfit/block.ts';
import type { Point } from '../plane/point.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import { reachesOf, type Reach } from './biscuit-reach.ts';
import type { Closing } from '../takeoff/closing/pieces.ts';
import type { Way } from '../takeoff/closing/ways.ts';
import type { ClosingWays } from './motion/closing-ways.ts';
import type { Path, Placing } from './model.ts';
import { besideMoves } from './motion/moves.ts';
import { roundabout, wayAround } from './motion/around.ts';
import { hitOn } from './motion/clear.ts';
import { metBy, wallsMet } from './motion/slices.ts';
import { planIn } from './motion/way-in.ts';
import type { Nearby } from './nearby.ts';
import { clash, lifted, pushed, RIGHT_UNDER, type Box, type Stood } from './stood.ts';
import type { Joint, Piece } from '../takeoff/model.ts';

/** What stands in the room while a piece is put up; and what a piece is that biscuits keep from going up, with the ways in that come into question. */
export interface Scene {
    readonly nearby: Nearby<Stood>; readonly up: ReadonlyMap<string, Stood>; readonly walls: readonly Block[];
    readonly jointsOf: (id: string) => readonly Joint[];
    readonly waysOf: (piece: Piece, reaches: readonly Reach[]) => ClosingWays | undefined;
    /** The middle of the coffer that a piece stands in. */
    readonly openOf: (piece: Piece) => Point | undefined;
}

/** So much more than the biscuits stand out a piece is held off where there is room: nobody lifts to a hair. Common practice, no source. */
const CLEAR = TICKS_PER_INCH / 16;

/**
 * The way on which a piece gets to its place among those that are up: straight up, or round what hangs in the way; past biscuits, lifted so far aside that
 * it clears them, and pushed onto them. Biscuits that stand out at two ends and look at each other leave no such way: then it has to go over them, which
 * the ways in of closing pieces say how: the one that is said, or the first that works. What it passes through on its way must be free, walls included:
 * that is tried on the solids of the dry fit, bent and leaning as it is on that way.
 */
export function pathOf(piece: Stood, scene: Scene): Placing {
    const reaches = reachesOf(piece, scene.jointsOf(piece.piece.id), scene.up), blockedBy = inTheWay(piece, RIGHT_UNDER, scene);
    const { piece: is } = piece;
    if (reaches.length === 0) return { piece: is, path: blockedBy.length === 0 ? straight(RIGHT_UNDER) : around(piece, blockedBy, scene), blockedBy };
    const aside = [CLEAR, 0].map(more => heldOff(reaches, more)).find(off => off && inTheWay(piece, off, scene).length === 0);
    if (aside) return { piece: is, path: straight(aside), blockedBy };
    const known = scene.waysOf(is, reaches);
    if (!known) return { piece: is, path: null, blockedBy };
    const { closing } = known, path = overBiscuits(piece, closing, known.ways, scene), run = closing.run.map(one => one.piece.id);
    const instead = path ? [] : known.instead.filter(way => overBiscuits(piece, closing, [way], scene));
    return { piece: is, path, blockedBy, ...run.length > 1 && { run }, ...instead.length > 0 && { instead } };
}

/**
 * What is not up yet and would be in the way of this path if it were, each for itself: what another crew must not put up before. By the same trials by which
 * the path was found.
 */
export function wouldBlock(piece: Stood, { path, run }: Placing, scene: Scene): string[] {
    if (!path) return [];
    const { nearby, up } = scene, later = { nearby, walls: [], up: { has: (id: string) => !up.has(id) } };
    if (path.by?.kind === 'join-first' && run) {
        const members = [piece, ...run.flatMap(id => up.get(id) ?? [])];
        return members.flatMap(member => inTheWay(member, path.aside, later)).filter(id => !run.includes(id));
    }
    if (!path.around && !path.by) return inTheWay(piece, path.aside, later);
    const box = path.around ? roundabout(piece, scene.openOf(piece.piece)) : piece.box;
    const near = clearOf(piece, [...nearby.within(box)].filter(other => !up.has(other.piece.id) && other.foot > piece.top));
    const known = path.by && scene.waysOf(piece.piece, reachesOf(piece, scene.jointsOf(piece.piece.id), up));
    const isHit = (other: Stood): boolean => {
        const met = metBy([other]);
        return path.by ? !known || !planIn(piece, known.closing, path.by, met) : hitOn(piece, path.moves, met).length > 0;
    };
    return near.filter(isHit).map(other => other.piece.id);
}

/** Those that it is not in by plan where both stand. */
function clearOf(piece: Stood, others: readonly Stood[]): Stood[] {
    return others.filter(other => other !== piece && !clash(piece.blocks, other.blocks, piece.push + other.push));
}

type Room = Pick<Scene, 'nearby' | 'walls' | 'openOf'>;

/** Round what hangs in the way of its straight lift. */
function around(piece: Stood, blockedBy: readonly string[], scene: Scene): Path | null {
    const { nearby, up, openOf } = scene, near = [...nearby.within(roundabout(piece, openOf(piece.piece)))].filter(other => up.has(other.piece.id));
    return roundThem(piece, blockedBy, near, scene);
}

/** Whether a piece gets round others that are up, as far as these alone and the walls are in its way. */
export function getsRound(piece: Stood, others: readonly Stood[], room: Room): boolean {
    return roundThem(piece, others.map(other => other.piece.id), others, room) !== null;
}

function roundThem(piece: Stood, blockedBy: readonly string[], near: readonly Stood[], { walls, openOf }: Room): Path | null {
    const others = clearOf(piece, near).filter(other => other.foot > piece.top);
    const hanging = others.filter(other => blockedBy.includes(other.piece.id));
    return wayAround(piece, { hanging: metBy(hanging), met: [...metBy(others), wallsMet(walls)], open: openOf(piece.piece) });
}

function straight(aside: Point): Path {
    return { aside, over: false, moves: besideMoves(aside) };
}

/** Over the biscuits, by the first of the ways in that come into question on which it gets there. */
function overBiscuits(piece: Stood, closing: Closing, ways: readonly Way[], scene: Scene): Path | null {
    const { up, nearby, walls } = scene;
    const others = clearOf(piece, [...nearby.within(piece.box)].filter(other => up.has(other.piece.id)));
    const met = [...metBy(others), wallsMet(walls)];
    for (const way of ways) {
        const aside = way.kind === 'join-first' ? joinedAside(piece, closing, scene) : undefined;
        if (aside) return { ...straight(aside), over: true, by: way };
        const plan = planIn(piece, closing, way, met);
        if (plan) return { aside: RIGHT_UNDER, over: true, by: way, moves: plan.moves };
    }
    return null;
}

/** Where all of a spliced run has to be lifted, joined before it goes up, so that it comes onto the biscuits at its ends; nothing where that does not go. */
function joinedAside(piece: Stood, { run }: Closing, scene: Scene): Point | undefined {
    const members = run.flatMap(bottom => (bottom.piece.id === piece.piece.id ? piece : scene.up.get(bottom.piece.id)) ?? []);
    const own = new Set(members.map(({ piece: { id } }) => id));
    if (members.length < run.length) return undefined;
    const up = new Map([...scene.up].filter(([id]) => !own.has(id))), without = { ...scene, up };
    const reaches = members.flatMap(member => reachesOf(member, scene.jointsOf(member.piece.id), up));
    const asides = reaches.length === 0 ? [RIGHT_UNDER] : [CLEAR, 0].flatMap(more => heldOff(reaches, more) ?? []);
    return asides.find(aside => members.every(member => inTheWay(member, aside, without).length === 0));
}

/** Where it has to be lifted to come onto all of the biscuits in one push; nothing where they stand in each other's way. */
function heldOff(reaches: readonly Reach[], more: Ticks): Point | undefined {
    const [first] = reaches, by = Math.max(...reaches.map(reach => reach.by)) + more;
    const alike = reaches.every(({ way }) => way.x * first!.way.x + way.y * first!.way.y > 1 - 1e-9);
    return alike ? { x: 0 - first!.way.x * by, y: 0 - first!.way.y * by } : undefined;
}

/** Names of what it would run into, walls as "the room". */
function inTheWay(piece: Stood, aside: Point, { nearby, up, walls }: Pick<Scene, 'nearby' | 'walls'> & { readonly up: Pick<Scene['up'], 'has'> }): string[] {
    const moves = aside.x !== 0 || aside.y !== 0, swept = [...lifted(piece, aside), ...moves ? pushed(piece, aside) : []];
    const { box } = piece, reached: Box = {
        west: box.west + Math.min(0, aside.x), east: box.east + Math.max(0, aside.x),
        north: box.north + Math.min(0, aside.y), south: box.south + Math.max(0, aside.y),
    };
    const met = [...nearby.within(reached)].filter(other => other !== piece && up.has(other.piece.id) && other.foot > piece.top
        && clash(swept, other.blocks, piece.push + other.push) && !clash(piece.blocks, other.blocks, piece.push + other.push)).map(other => other.piece.id);
    return moves && clash(swept, walls, piece.push) ? [...met, 'the room'] : met.sort();
}
