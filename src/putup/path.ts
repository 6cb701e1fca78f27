import type { Block } from '../dryfit/block.ts';
import type { Point } from '../plane/point.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import { reachesOf, type Reach } from './biscuit-reach.ts';
import type { Placing } from './model.ts';
import type { Nearby } from './nearby.ts';
import { clash, lifted, pushed, RIGHT_UNDER, type Box, type Stood } from './stood.ts';
import type { Joint } from '../takeoff/model.ts';

/** What stands in the room while a piece is put up. */
interface Scene { readonly nearby: Nearby<Stood>; readonly up: ReadonlyMap<string, Stood>; readonly walls: readonly Block[] }

/** So much more than the biscuits stand out a piece is held off where there is room: nobody lifts to a hair. Common practice, no source. */
const CLEAR = TICKS_PER_INCH / 16;

/**
 * The way on which a piece gets to its place among those that are up: straight up; past biscuits, lifted so far aside that it clears them, and pushed
 * onto them. Biscuits that stand out at two ends and look at each other leave no such way: then it has to go over them, which the ways in
 * of closing pieces say how. What it passes through on its way must be free, walls included: that is tried on the solids of the dry fit.
 */
export function pathOf(piece: Stood, joints: readonly Joint[], scene: Scene): Placing {
    const reaches = reachesOf(piece, joints, scene.up), blockedBy = inTheWay(piece, RIGHT_UNDER, scene);
    if (reaches.length === 0) return { piece: piece.piece, path: blockedBy.length === 0 ? { aside: RIGHT_UNDER, over: false } : null, blockedBy };
    const aside = [CLEAR, 0].map(more => heldOff(reaches, more)).find(off => off && inTheWay(piece, off, scene).length === 0);
    if (aside) return { piece: piece.piece, path: { aside, over: false }, blockedBy };
    return { piece: piece.piece, path: blockedBy.length === 0 ? { aside: RIGHT_UNDER, over: true } : null, blockedBy };
}

/** Where it has to be lifted to come onto all of the biscuits in one push; nothing where they stand in each other's way. */
function heldOff(reaches: readonly Reach[], more: Ticks): Point | undefined {
    const [first] = reaches, by = Math.max(...reaches.map(reach => reach.by)) + more;
    const alike = reaches.every(({ way }) => way.x * first!.way.x + way.y * first!.way.y > 1 - 1e-9);
    return alike ? { x: 0 - first!.way.x * by, y: 0 - first!.way.y * by } : undefined;
}

/** Names of what it would run into, walls as "the room". */
function inTheWay(piece: Stood, aside: Point, { nearby, up, walls }: Scene): string[] {
    const moves = aside.x !== 0 || aside.y !== 0, swept = [...lifted(piece, aside), ...moves ? pushed(piece, aside) : []];
    const { box } = piece, reached: Box = {
        west: box.west + Math.min(0, aside.x), east: box.east + Math.max(0, aside.x),
        north: box.north + Math.min(0, aside.y), south: box.south + Math.max(0, aside.y),
    };
    const met = [...nearby.within(reached)].filter(other => other !== piece && up.has(other.piece.id) && other.foot > piece.top
        && clash(swept, other.blocks, piece.push + other.push) && !clash(piece.blocks, other.blocks, piece.push + other.push)).map(other => other.piece.id);
    return moves && clash(swept, walls, piece.push) ? [...met, 'the room'] : met.sort();
}
