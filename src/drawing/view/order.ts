import type { Prism } from '../../dryfit/model.ts';
import { atOnce, type Steps } from '../../plain/steps.ts';
import type { Vector } from './eye.ts';

/** A prism as it is seen: the frame of its picture, and how far away it is. */
export interface Seen { readonly prism: Prism; readonly frame: Frame; readonly depth: number }
interface Frame { readonly left: number; readonly right: number; readonly top: number; readonly foot: number }

/** A thing in two parts, which together are seen as it was; none of what is too short to be cut. */
type Cutting<Each> = (each: Each) => readonly [Each, Each] | undefined;

/**
 * The order in which prisms are painted, the farthest first, so that what is nearer covers what is behind it. Of two solids that
 * are not in each other there is always a plane between them; the one on the eye's side of it hides the other. Where that
 * leads round in a circle, as it does where a long bottom lies before a side in one bay and behind one in the next, the longest of the circle is cut in
 * two, which go on apart. Where nothing is left to cut, or two are in each other, the farther middle goes first.
 */
export function paintOrder<Each extends Seen>(all: readonly Each[], eye: Vector, inTwo: Cutting<Each> = () => undefined): readonly Each[] {
    return atOnce(paintingInSteps(all, eye, inTwo));
}

/** The same step by step. */
export function* paintingInSteps<Each extends Seen>(all: readonly Each[], eye: Vector, inTwo: Cutting<Each>): Steps<readonly Each[]> {
    const painting = new Painting([...all].sort((a, b) => b.depth - a.depth), eye, inTwo);
    yield* painting.relateAll();
    return yield* painting.inOrder();
}

/** Pairs that are held against each other, and things that are painted or cut, in one step. */
const PAIRS_IN_STEP = 4_000, PAINTED_IN_STEP = 400;

/** So many cuts for each thing, and there are things in each other that no cut parts. */
const MOST_CUTS = 4;

class Painting<Each extends Seen> {
    private readonly order: Each[] = [];
    /** What each one hides, and what it waits for: what lies behind it. */
    private readonly before: number[][] = [];
    private readonly behind: number[][] = [];
    /** How many of these are not painted yet. */
    private readonly waiting: number[] = [];
    private readonly isDone: boolean[] = [];
    private ready: number[] = [];
    private cutsLeft: number;

    constructor(private readonly things: Each[], private readonly eye: Vector, private readonly inTwo: Cutting<Each>) {
        for (const _ of things) this.enter();
        this.cutsLeft = MOST_CUTS * things.length;
    }

    *relateAll(): Steps<void> {
        const { things } = this, number = new Map(things.map((thing, i) => [thing, i]));
        let pairs = 0;
        for (const [a, b] of overlapping(things)) {
            this.relate(number.get(a)!, number.get(b)!);
            if (++pairs % PAIRS_IN_STEP === 0) yield;
        }
        this.ready = things.flatMap((_, i) => (this.waiting[i] === 0 ? [i] : [])).reverse();
    }

    *inOrder(): Steps<readonly Each[]> {
        for (let farthest = 0, turns = 1; ; turns++) {
            if (turns % PAINTED_IN_STEP === 0) yield;
            const next = this.ready.pop();
            if (next !== undefined) {
                if (!this.isDone[next]) this.paint(next);
                continue;
            }
            while (this.isDone[farthest]) farthest++;
            if (farthest === this.things.length) return this.order;
            if (!this.cutOneOf(this.circleFrom(farthest))) this.paint(farthest);
        }
    }

    private enter(): void {
        this.before.push([]);
        this.behind.push([]);
        this.waiting.push(0);
        this.isDone.push(false);
    }

    private relate(a: number, b: number): void {
        const nearer = nearerOf(this.things[a]!.prism, this.things[b]!.prism, this.eye);
        if (nearer === 0) return;
        const [front, back] = nearer > 0 ? [a, b] : [b, a];
        this.before[back]!.push(front);
        this.behind[front]!.push(back);
        this.waiting[front]!++;
    }

    private paint(next: number): void {
        this.order.push(this.things[next]!);
        this.leave(next);
    }

    private leave(next: number): void {
        this.isDone[next] = true;
        for (const front of this.before[next]!) if (--this.waiting[front]! === 0) this.ready.push(front);
    }

    /** From one that waits to one that it waits for, until one comes again. */
    private circleFrom(first: number): readonly number[] {
        const at = new Map<number, number>(), way: number[] = [];
        let next = first;
        while (!at.has(next)) {
            at.set(next, way.length);
            way.push(next);
            next = this.behind[next]!.find(back => !this.isDone[back])!;
        }
        return way.slice(at.get(next));
    }

    private cutOneOf(circle: readonly number[]): boolean {
        const longest = circle.reduce((a, b) => (lengthOf(this.things[b]!) > lengthOf(this.things[a]!) ? b : a));
        const parts = this.cutsLeft > 0 && this.inTwo(this.things[longest]!);
        if (!parts) return false;
        this.cutsLeft--;
        for (const part of parts) {
            const own = this.things.push(part) - 1;
            this.enter();
            for (let other = 0; other < own; other++) {
                if (!this.isDone[other] && other !== longest && areOverlapping(this.things[other]!, part)) this.relate(other, own);
            }
        }
        this.leave(longest);
        for (let own = this.things.length - parts.length; own < this.things.length; own++) if (this.waiting[own] === 0) this.ready.push(own);
        return true;
    }
}

function lengthOf({ prism: { outline } }: Seen): number {
    const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
    return Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
}

/** Pairs whose pictures overlap, by a sweep from left to right. */
function* overlapping<Each extends Seen>(all: readonly Each[]): Iterable<readonly [Each, Each]> {
    const fromLeft = [...all].sort((a, b) => a.frame.left - b.frame.left);
    let open: Each[] = [];
    for (const each of fromLeft) {
        open = open.filter(other => other.frame.right > each.frame.left);
        for (const other of open) if (areOverlapping(other, each)) yield [other, each];
        open.push(each);
    }
}

function areOverlapping({ frame: a }: Seen, { frame: b }: Seen): boolean {
    return a.left < b.right && b.left < a.right && a.top < b.foot && b.top < a.foot;
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
