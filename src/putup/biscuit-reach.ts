import type { Ticks } from '../quantity/ticks.ts';
import type { Point } from '../plane/point.ts';
import type { Joint, TakeOff } from '../takeoff/model.ts';
import { stickOut } from '../takeoff/closing/stick-out.ts';
import type { Stood } from './stood.ts';

/** A joint with biscuits that stand out of the piece that is up, towards another one that has to be pushed onto them. */
export interface Reach {
    readonly joint: Joint;
    /** The way on which the piece has to come, one tick long, and how far it has to be held off before. */
    readonly way: Point; readonly by: Ticks;
}

/** Joints with biscuits by the pieces that are in them. */
export function biscuited({ joints }: TakeOff): ReadonlyMap<string, readonly Joint[]> {
    const found = new Map<string, Joint[]>();
    for (const joint of joints) if (joint.biscuits) for (const id of joint.pieces) found.set(id, [...found.get(id) ?? [], joint]);
    return found;
}

/**
 * Biscuits that are in the way of a straight lift: of the joints of this piece, those whose other piece is up.
 */
export function reachesOf(piece: Stood, joints: readonly Joint[], up: ReadonlyMap<string, Stood>): Reach[] {
    return joints.flatMap((joint): Reach[] => {
        const [a, b] = joint.pieces, other = up.get(a === piece.piece.id ? b : a), out = joint.biscuits ? stickOut(joint.biscuits.size) : 0;
        if (!other || out === 0) return [];
        return [{ joint, way: towards(piece, other, joint), by: Math.ceil(out) }];
    });
}

/** A piece that butts or is spliced comes along its own length, one that others butt against comes sideways. */
function towards(piece: Stood, other: Stood, { kind, pieces: [butting] }: Joint): Point {
    const along = kind !== 'butt' || butting === piece.piece.id;
    const way = along ? piece.way : other.way, { west, east, north, south } = piece.box;
    // the other one's nearest place to the middle of this one
    const near = kind === 'butt' && along
        ? { x: clamp(piece.middle.x, other.box.west, other.box.east), y: clamp(piece.middle.y, other.box.north, other.box.south) }
        : along ? other.middle : { x: clamp(other.middle.x, west, east), y: clamp(other.middle.y, north, south) };
    const from = along ? piece.middle : near, to = along ? near : other.middle;
    const side = (to.x - from.x) * way.x + (to.y - from.y) * way.y;
    return side < 0 ? { x: 0 - way.x, y: 0 - way.y } : way;
}

function clamp(value: number, low: number, high: number): number {
    return Math.min(high, Math.max(low, value));
}
