import type { Prism } from '../../dryfit/model.ts';
import type { Vector } from './eye.ts';

/** A prism as it is seen: the frame of its picture, and how far away it is. */
export interface Seen { readonly prism: Prism; readonly frame: Frame; readonly depth: number }
interface Frame { readonly left: number; readonly right: number; readonly top: number; readonly foot: number }

/**
 * The order in which prisms are painted, the farthest first, so that what is nearer covers what is behind it. Of two solids that
 * are not in each other there is always a plane between them; the one on the eye's side of it hides the other. Where that
 * leads round in a circle, or two are in each other, the farther middle goes first.
 */
export function paintOrder<Each extends Seen>(all: readonly Each[], eye: Vector): readonly Each[] {
    const byDepth = [...all].sort((a, b) => b.depth - a.depth);
    const number = new Map(byDepth.map((each, i) => [each, i]));
    // those that each one hides, and how many of them are not painted yet
    const hiddenBy: number[][] = byDepth.map(() => []);
    const waiting = byDepth.map(() => 0);
    for (const [a, b] of overlapping(byDepth)) {
        const nearer = nearerOf(a.prism, b.prism, eye);
        if (nearer === 0) continue;
        const [front, back] = nearer > 0 ? [number.get(a)!, number.get(b)!] : [number.get(b)!, number.get(a)!];
        hiddenBy[back]!.push(front);
        waiting[front]!++;
    }
    return painted(byDepth, hiddenBy, waiting);
}

function painted<Each>(byDepth: readonly Each[], hiddenBy: readonly (readonly number[])[], waiting: number[]): readonly Each[] {
    const order: Each[] = [];
    const isDone = byDepth.map(() => false);
    const ready = byDepth.flatMap((_, i) => (waiting[i] === 0 ? [i] : [])).reverse();
    let farthest = 0;
    while (order.length < byDepth.length) {
        let next = ready.pop();
        if (next === undefined) {
            while (isDone[farthest]) farthest++;
            next = farthest;
        }
        if (isDone[next]) continue;
        isDone[next] = true;
        order.push(byDepth[next]!);
        for (const front of hiddenBy[next]!) if (--waiting[front]! === 0) ready.push(front);
    }
    return order;
}

/** Pairs whose pictures overlap, by a sweep from left to right. */
function* overlapping<Each extends Seen>(all: readonly Each[]): Iterable<readonly [Each, Each]> {
    const fromLeft = [...all].sort((a, b) => a.frame.left - b.frame.left);
    let open: Each[] = [];
    for (const each of fromLeft) {
        open = open.filter(other => other.frame.right > each.frame.left);
        for (const other of open) if (other.frame.top < each.frame.foot && each.frame.top < other.frame.foot) yield [other, each];
        open.push(each);
    }
}

/**
 * Above 0: `a` may hide `b`, below 0: `b` may hide `a`; 0 where neither does. A plane between the two with the eye on one side of
 * it says that what lies on the other hides nothing of what lies on this.
 */
function nearerOf(a: Prism, b: Prism, eye: Vector): number {
    const planes = [...eyeBeyond(a, b, eye), ...eyeBeyond(b, a, eye).map(beyond => -beyond)];
    const aMayHide = !planes.some(beyond => beyond > 0);
    const bMayHide = !planes.some(beyond => beyond < 0);
    return aMayHide === bMayHide ? 0 : aMayHide ? 1 : -1;
}

/** For each of a's faces that has all of b on its outer side: how far the eye is on that side too. */
function eyeBeyond(a: Prism, b: Prism, eye: Vector): number[] {
    const found: number[] = [];
    if (b.foot <= a.top) found.push(a.top - eye[2]);
    if (b.top >= a.foot) found.push(eye[2] - a.foot);
    for (const [i, [px, py]] of a.outline.entries()) {
        const [qx, qy] = a.outline[(i + 1) % a.outline.length]!;
        const [dx, dy] = [qx - px, qy - py];
        const length = Math.hypot(dx, dy);
        // the outside of an edge is on its left as the plan is read: the corners come in the order of the sun
        const outside = (x: number, y: number) => ((x - px) * dy - (y - py) * dx) / length;
        if (b.outline.every(([x, y]) => outside(x, y) >= -WHOLE_TICKS)) found.push(outside(eye[0], eye[1]));
    }
    return found;
}
/** Corners of miters are rounded to whole ticks. */
const WHOLE_TICKS = 1.5;
