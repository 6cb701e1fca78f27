import type { Ceiling } from '../../../src/ceiling/model.ts';
import type { Picture } from '../../../src/drawing/index.ts';
import type { Point } from '../../../src/drawing/display-list.ts';
import { eyeFor, plus, times, type Vector } from '../../../src/drawing/view/eye.ts';
import type { Prism, Solid } from '../../../src/dryfit/model.ts';

/** Where a ray enters a prism: a number of its direction, or infinity. Told by the prism's planes, by none of the drawing's code. */
export function entry({ outline, top, foot }: Prism, from: Vector, along: Vector): number {
    let enter = 0, leave = Infinity;
    const slab = (at: number, by: number, least: number, most: number): void => {
        if (by === 0) { if (at < least || at > most) leave = -1; return; }
        const [a, b] = [(least - at) / by, (most - at) / by];
        enter = Math.max(enter, Math.min(a, b));
        leave = Math.min(leave, Math.max(a, b));
    };
    slab(from[2], along[2], top, foot);
    for (const [i, [px, py]] of outline.entries()) {
        const [qx, qy] = outline[(i + 1) % outline.length]!;
        const inside = (qx - px) * (from[1] - py) - (qy - py) * (from[0] - px), change = (qx - px) * along[1] - (qy - py) * along[0];
        slab(inside, change, 0, Infinity);
    }
    return enter < leave ? enter : Infinity;
}

interface Looked { readonly looked: number; readonly wrong: readonly string[] }

/**
 * Spots of a picture, `across` each way, where what is painted last is not what a ray from the eye meets first, in words; and how many spots show a piece.
 * The eye's own reckoning has tests of its own; here it only says which way to look.
 */
export function wrongSpots(picture: Picture, ceiling: Ceiling, solids: readonly Solid[], across: number): Looked {
    const depth = Math.max(0, ...solids.flatMap(solid => solid.prisms.map(({ foot }) => foot))) + 5 * 16256;
    const eye = eyeFor({ least: [0, 0, 0], most: [ceiling.width, ceiling.length, depth] }, [-0.42, 0.86, 0.78], (960 - 28) / (640 - 28));
    const pieces = picture.things.flatMap(each => ('wall' in each ? [] : [each])), wrong: string[] = [];
    let looked = 0;
    for (let i = 0; i < across ** 2; i++) {
        const spot: Point = [(i % across + 0.37) * picture.width / across, (Math.floor(i / across) + 0.61) * picture.height / across];
        const top = pieces.findLast(({ faces }) => faces.some(({ points }) => isInside(spot, points)));
        if (top === undefined) continue;
        const [x, y] = [
            (spot[0] - picture.width / 2) / 306 * Math.tan(16 * Math.PI / 180), (picture.height / 2 - spot[1]) / 306 * Math.tan(16 * Math.PI / 180),
        ];
        const along = plus(eye.ahead, plus(times(eye.right, x), times(eye.up, y)));
        const met = solids.flatMap(solid => solid.prisms.map(prism =>
            ({ piece: solid.piece.id, at: entry(prism, eye.at, along) }))).filter(({ at }) => at < Infinity).sort((a, b) => a.at - b.at);
        // at an edge, to a hair, either may be seen
        const near = met.filter(({ at }) => at - met[0]!.at < 400).map(({ piece }) => piece);
        looked++;
        if (!near.includes(top.piece)) wrong.push(`${spot.join(', ')}: painted ${top.piece}, a ray meets ${near.join(' or ')}`);
    }
    return { looked, wrong };
}

function isInside([x, y]: Point, points: readonly Point[]): boolean {
    const sides = points.map(([px, py], i) => {
        const [qx, qy] = points[(i + 1) % points.length]!;
        return (qx - px) * (y - py) - (qy - py) * (x - px);
    });
    return sides.every(side => side > 0.01) || sides.every(side => side < -0.01);
}
