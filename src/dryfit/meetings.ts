import { lengthOf } from '../plane/point.ts';
import { TICKS_PER_INCH } from '../quantity/ticks.ts';
import { areaAt, facesOf, facing, separation, type Block, type Facing } from './block.ts';
import type { Body } from './body.ts';
import type { Clash } from './model.ts';

/** How far a face may be from another one to have to do with it. */
export const REACH = TICKS_PER_INCH / 2;
/** Halves of ticks and the roundings of slanted faces come to no more: about a quarter of a thousandth of an inch. */
export const NEAR = 4;
/** Smaller than this in square ticks a contact is a corner's accident, and no joint: 1/8" by 1/8". */
const LEAST_AREA = (TICKS_PER_INCH / 8) ** 2;

/** An open joint up to this passes at the handover: the tape's mark below what Premium work may have, see src/data/gaps.ts. */
export const OPEN_JOINT = TICKS_PER_INCH / 64;
/** Where cleats go on one after the other nothing rests on the joint, and nobody sees it. Common practice, no source. */
const OPEN_BETWEEN_CLEATS = TICKS_PER_INCH / 16;

/** What is wrong between two bodies: see Clash in model.ts. */
export interface Wrong {
    readonly a: Body; readonly b: Body;
    readonly kind: Clash['kind'];
    readonly ticks: number;
    readonly touches?: number; readonly wanted?: number;
}
interface Met { readonly joint: boolean; readonly gap: boolean; readonly wrong: readonly Wrong[] }

/** Looks at two bodies: are they in each other; does every face that has to do with a face of the other stand to it as planned. */
export function meetingOf(a: Body, b: Body): Met {
    const asPlanned = a.asPlanned && b.asPlanned;
    const meant = depth(a.planned, b.planned), deep = asPlanned ? meant : depth(a.blocks, b.blocks);
    const allowed = Math.min(Math.max(0, meant), push(a) + push(b));
    const open = [a, b].every(({ place }) => place?.part === 'cleat') ? OPEN_BETWEEN_CLEATS : OPEN_JOINT;
    let joint = false, gap = false;
    const wrong: Wrong[] = [];
    eachFacing(a, b, asPlanned, (mine, theirs, i, j, wanted, found) => {
        // without the tape's roundings and the press, would they touch?
        const touching = Math.abs(wanted.near + shift(a, mine, i) + shift(b, theirs, j)) <= NEAR;
        if (touching) joint = true; else gap = true;
        const off = wrongWith(wanted, found, touching, shift(a, mine, i, 'pressed') + shift(b, theirs, j, 'pressed'), open);
        if (off) wrong.push({ a, b, ...off });
    });
    // of what is in another piece nobody wants to know what else is off
    return { joint, gap, wrong: deep > allowed + NEAR ? [{ a, b, kind: 'overlap', ticks: deep }] : wrong };
}

/** Every two faces of the plan that look at each other within reach, with what has become of them. */
function eachFacing(
    a: Body, b: Body, asPlanned: boolean,
    look: (mine: Block, theirs: Block, i: number, j: number, wanted: Facing, found: Facing | undefined) => void,
): void {
    a.planned.forEach((mine, p) => b.planned.forEach((theirs, q) => {
        if (!within(mine, theirs)) return;
        const all = facesOf(mine), others = facesOf(theirs);
        for (let i = 0; i < all; i++) {
            for (let j = 0; j < others; j++) {
                const wanted = facing(mine, i, theirs, j, REACH);
                if (!wanted || wanted.area < LEAST_AREA || Math.abs(wanted.near) > REACH || Math.abs(wanted.far) > REACH) continue;
                const mineNow = a.blocks[p], theirsNow = b.blocks[q];
                look(mine, theirs, i, j, wanted, asPlanned ? wanted : mineNow && theirsNow && facing(mineNow, i, theirsNow, j));
            }
        }
    }));
}

function wrongWith(wanted: Facing, found: Facing | undefined, touching: boolean, press: number, open: number): Omit<Wrong, 'a' | 'b'> | undefined {
    // faces that are not quite parallel are as far from each other as planned at either end
    const area = found ? areaAt(found, (wanted.near + wanted.far) / 2, NEAR + Math.abs(wanted.far - wanted.near) / 2) : 0;
    if (Math.abs(area - wanted.area) > NEAR * wanted.girth) {
        const apart = found ? Math.max(found.near - wanted.near, found.far - wanted.near) : 0;
        const areas = { touches: squareInches(area), wanted: squareInches(wanted.area) };
        return apart > NEAR ? { kind: touching ? 'apart' : 'gap', ticks: apart, ...areas } : { kind: 'area', ticks: 0, ...areas };
    }
    // as planned: is the plan, at the steps of the tape, good enough
    const off = wanted.near > 0 ? wanted.near : Math.min(0, wanted.near + press);
    return touching && (off > open + NEAR || off < 0 - OPEN_JOINT - NEAR) ? { kind: 'rounded', ticks: off } : undefined;
}

function squareInches(squareTicks: number): number {
    return squareTicks / TICKS_PER_INCH ** 2;
}

/** How deep two bodies are in each other; negative where they are apart. */
function depth(some: readonly Block[], others: readonly Block[]): number {
    let deepest = -Infinity;
    for (const one of some) for (const other of others) deepest = Math.max(deepest, -separation(one, other));
    return deepest;
}

/** What a piece may be in another one by plan: rounded up at the tape, pressed, or said to be so. Ticks. */
export function push({ place }: Body): number {
    return place ? Math.max(0, place.rounded) + place.pressed + place.give : 0;
}

/** How far the tape and the press move a face out of its place, measured square to it: only the ends move, along the piece. */
function shift({ place }: Body, { edges }: Block, face: number, what?: 'pressed'): number {
    const edge = edges[face];
    if (!place || !edge || face % 2 === 0) return 0;
    const by = what === 'pressed' ? place.pressed : place.rounded + place.pressed;
    const { x, y } = place.seat.way;
    return by * Math.abs(edge.dy * x - edge.dx * y) / edge.unit / lengthOf({ x, y });
}

function within(a: Block, b: Block): boolean {
    return a.west - b.east <= REACH && b.west - a.east <= REACH && a.north - b.south <= REACH && b.north - a.south <= REACH
        && a.top - b.foot <= REACH && b.top - a.foot <= REACH;
}
