import type { Polygon } from './polygon.ts';
import { lengthOf, reach, type Point, type Vector } from './point.ts';

const ORIGIN: Point = { x: 0, y: 0 };
/** What lies so near to a cut, in units, lies on it. */
const ON: number = 1;

/**
 * What of a region lies beyond a cut: farther along `axis` than `at`. The region as loops, clockwise round it and counterclockwise round holes, so that it
 * lies on the right of all of them; what is left comes as such loops again. A hole that touches the cut from the other side is gone, one that touches it from
 * within is open to it.
 */
export function beyond(loops: readonly Polygon[], axis: Vector, at: number): Polygon[] {
    const kept: Polygon[] = [], chains: Chain[] = [], way = { x: axis.y, y: 0 - axis.x };
    for (const loop of loops) {
        const over = loop.map(point => reach(ORIGIN, point, axis) - at), first = over.findIndex(by => by <= ON);
        if (first < 0) kept.push(loop);
        else chains.push(...chainsOf([...loop.slice(first), ...loop.slice(0, first)], [...over.slice(first), ...over.slice(0, first)]));
    }
    const place = (point: Point | undefined): number => reach(ORIGIN, point!, way), open = new Set(chains);
    for (const first of chains) {
        if (!open.has(first)) continue;
        const loop: Point[] = [];
        // along the cut on to the next one that comes in from it
        for (let chain: Chain | undefined = first; chain && open.has(chain);) {
            open.delete(chain);
            loop.push(...chain);
            const from = place(chain.at(-1)), ahead: Chain[] = [...open, first].filter(other => place(other[0]) >= from - 2 * ON);
            chain = ahead.reduce<Chain | undefined>((near, other) => (near === undefined || place(other[0]) < place(near[0]) ? other : near), undefined);
        }
        kept.push(loop);
    }
    return kept;
}

/** From where a loop comes in over the cut to where it goes out again. */
type Chain = readonly Point[];

/** The loop begins with a corner that is not beyond the cut. */
function chainsOf(loop: Polygon, over: readonly number[]): Chain[] {
    const chains: Point[][] = [];
    loop.forEach((point, i) => {
        const next = (i + 1) % loop.length, to = loop[next]!, [a, b] = [over[i]! > ON, over[next]! > ON];
        if (a) chains.at(-1)!.push(point);
        if (a === b) return;
        // a corner on the cut is where it crosses it
        const share = Math.min(1, Math.max(0, over[i]! / (over[i]! - over[next]!)));
        const crossing = { x: point.x + (to.x - point.x) * share, y: point.y + (to.y - point.y) * share };
        if (b) chains.push([crossing]);
        else chains.at(-1)!.push(crossing);
    });
    return chains;
}

/** Without corners that lie on the straight way between those beside them, to so many units. */
export function withoutStraights(polygon: Polygon, near: number): Polygon {
    let left = [...polygon];
    for (let i = 0; i < left.length && left.length > 3;) {
        const before = left.at(i - 1)!, point = left[i]!, after = left[(i + 1) % left.length]!;
        const way = { x: after.x - before.x, y: after.y - before.y }, long = lengthOf(way);
        const off = long === 0 ? 0 : Math.abs((point.x - before.x) * way.y - (point.y - before.y) * way.x) / long;
        if (off <= near) left = left.filter((_, k) => k !== i);
        else i++;
    }
    return left;
}
