import { NEAR } from '../../dryfit/meetings.ts';
import type { Point } from '../../plane/point.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { Move } from '../model.ts';
import { poseAt, spotIn, type Bar, type Spot } from './pose.ts';

/** A part of a piece seen from its side: a convex outline as it lies in its place. */
export type Part = readonly Spot[];
/** What stands fast, seen from the same side. */
export interface Fast { readonly from: number; readonly to: number; readonly top: Ticks; readonly foot: Ticks }

/** A part on its way, seen from the side. `way`: the direction of its length on the plan, one tick long. */
export interface Passage { readonly move: Move; readonly bar: Bar & { readonly way: Point } }

/**
 * Whether a part comes into something that stands fast by more than `allowed` ticks, on the whole of its way. A lift is exact: all that is under the
 * part. What swings or is straightened is followed in steps that are as long as it is apart from what stands fast, and of a hair where they touch: no
 * place of it moves farther in a step than that, so nothing is stepped over.
 */
export function runsInto(part: Part, passage: Passage, fast: Fast, allowed: number): boolean {
    return passage.move.kind === 'lift' ? isOver(outlineAt(part, passage, 1), fast, allowed) : comesInto(part, passage, fast, allowed);
}

/** The same at a few places of the way alone: most of what does not go is seen at a glance. */
export function isSeenIn(part: Part, passage: Passage, fast: Fast, allowed: number): boolean {
    return GLANCES.some(share => apartOf(outlineAt(part, passage, share), fast) < -(allowed + NEAR));
}
const GLANCES = [0, 1 / 2, 3 / 4, 7 / 8];

function outlineAt(part: Part, { move, bar }: Passage, share: number): Spot[] {
    const pose = poseAt(move, share), aside = pose.aside.x * bar.way.x + pose.aside.y * bar.way.y;
    return part.map(spot => { const [along, down] = spotIn(spot, pose, bar); return [along + aside, down + pose.below] as const; });
}

/** Whether something stands fast where the outline comes from, right below it. */
function isOver(outline: readonly Spot[], { from, to, foot }: Fast, allowed: number): boolean {
    const [west, east] = [from + allowed, to - allowed];
    let highest = Infinity;
    outline.forEach(([x, z], i) => {
        const [nx, nz] = outline[(i + 1) % outline.length]!;
        const low = Math.max(west, Math.min(x, nx)), high = Math.min(east, Math.max(x, nx));
        if (low > high) return;
        for (const at of [low, high]) highest = Math.min(highest, nx === x ? Math.min(z, nz) : z + (nz - z) * (at - x) / (nx - x));
    });
    return highest < foot - allowed;
}

function comesInto(part: Part, passage: Passage, fast: Fast, allowed: number): boolean {
    const speed = fastest(part, passage), least = NEAR / speed;
    for (let share = 0; ; share = Math.min(1, share)) {
        const apart = apartOf(outlineAt(part, passage, share), fast);
        if (apart < -(allowed + NEAR)) return true;
        if (share >= 1) return false;
        share += Math.max(least, (apart + allowed) / speed);
    }
}

/** No place of the part moves farther than this on the whole way, in ticks: as far as it is from what it turns about, and what it is moved level meanwhile. */
function fastest(part: Part, { move: { from, to }, bar: { length, thickness } }: Passage): number {
    const pose = from.shape === 'straight' ? to : from, middle = length / 2;
    const turns = (along: number): number => (pose.shape === 'leaning' || pose.shape === 'tipped' ? pose.low === 1 ? along : length - along : middle - Math.abs(along - middle));
    const far = Math.max(...part.map(([along]) => turns(along))) + thickness + length * Math.max(from.angle, to.angle);
    const level = Math.hypot(from.aside.x - to.aside.x, from.aside.y - to.aside.y);
    return Math.max(1, far * Math.abs(from.angle - to.angle) + Math.abs(from.below - to.below) + level);
}

/** How far a convex outline and an upright rectangle are apart along the best of the directions of their edges; less than nothing: how deep in each other. */
function apartOf(outline: readonly Spot[], { from, to, top, foot }: Fast): number {
    let [west, east, high, low] = [Infinity, -Infinity, Infinity, -Infinity];
    for (const [x, z] of outline) {
        if (x < west) west = x;
        if (x > east) east = x;
        if (z < high) high = z;
        if (z > low) low = z;
    }
    let best = Math.max(from - east, west - to, top - low, high - foot);
    const corners: readonly Spot[] = [[from, top], [to, top], [to, foot], [from, foot]];
    outline.forEach(([x, z], i) => {
        const [nx, nz] = outline[(i + 1) % outline.length]!, dx = nx - x, dz = nz - z, long = Math.hypot(dx, dz);
        if (long === 0) return;
        // outlines run so that their inside is to the right of every edge, seen with down as down
        best = Math.max(best, Math.min(...corners.map(([cx, cz]) => (dz * (cx - x) - dx * (cz - z)) / long)));
    });
    return best;
}
