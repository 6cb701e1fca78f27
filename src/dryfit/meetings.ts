import { TICKS_PER_INCH } from '../quantity/ticks.ts';
import { areaAt, facesOf, facing, separation, type Block } from './block.ts';
import type { Body } from './body.ts';

/** How far a face may be from another one to have to do with it. */
export const REACH = TICKS_PER_INCH / 2;
/** Halves of ticks and the roundings of slanted faces come to no more: about a quarter of a thousandth of an inch. */
export const NEAR = 4;
/** Smaller than this in square ticks a contact is a corner's accident, and no joint: 1/8" by 1/8". */
const LEAST_AREA = (TICKS_PER_INCH / 8) ** 2;

/** What is wrong between two bodies. */
export interface Wrong {
    readonly a: Body; readonly b: Body;
    /**
     * `overlap`: in each other by `ticks`. `apart`: so far apart where they should touch. `gap`: a gap that is so much wider than
     * planned. `area`: they touch, or keep their gap, over too little or too much of it. `rounded`: as the tape has it, `ticks` off.
     */
    readonly kind: 'overlap' | 'apart' | 'gap' | 'area' | 'rounded';
    readonly ticks: number;
    readonly touches?: number; readonly wanted?: number;
    /** Whether the list does what the plan wants, so that it is the text that wants it. */
    readonly planned: boolean;
}
export interface Met { readonly joint: boolean; readonly gap: boolean; readonly wrong: readonly Wrong[] }

/** Looks at two bodies: are they in each other; does every face that has to do with a face of the other stand to it as planned. */
export function meetingOf(a: Body, b: Body): Met {
    const wrong: Wrong[] = [];
    const asPlanned = a.asPlanned && b.asPlanned;
    const meant = depth(a.planned, b.planned), deep = asPlanned ? meant : depth(a.blocks, b.blocks);
    const allowed = Math.min(Math.max(0, meant), push(a) + push(b));
    if (deep > allowed + NEAR) wrong.push({ a, b, kind: 'overlap', ticks: deep, planned: Math.abs(deep - meant) <= NEAR });
    let joint = false, gap = false;
    for (const [p, mine] of a.planned.entries()) {
        for (const [q, theirs] of b.planned.entries()) {
            if (!within(mine, theirs)) continue;
            for (let i = 0; i < facesOf(mine); i++) {
                for (let j = 0; j < facesOf(theirs); j++) {
                    const wanted = facing(mine, i, theirs, j);
                    if (!wanted || wanted.area < LEAST_AREA || Math.abs(wanted.near) > REACH || Math.abs(wanted.far) > REACH) continue;
                    // without the tape's roundings and the press, would they touch?
                    const moved = shift(a, mine, i) + shift(b, theirs, j);
                    const touching = Math.abs(wanted.near + moved) <= NEAR;
                    if (touching) joint = true; else gap = true;
                    const mineNow = a.blocks[p], theirsNow = b.blocks[q];
                    const found = asPlanned ? wanted : mineNow && theirsNow && facing(mineNow, i, theirsNow, j);
                    const area = found ? areaAt(found, wanted.near, NEAR) : 0;
                    if (Math.abs(area - wanted.area) > NEAR * wanted.girth) {
                        const apart = found ? Math.max(found.near - wanted.near, found.far - wanted.near) : 0;
                        wrong.push({
                            a, b, kind: apart <= NEAR ? 'area' : touching ? 'apart' : 'gap', ticks: apart > NEAR ? apart : 0, planned: false,
                            touches: squareInches(touching ? area : Math.min(area, wanted.area)), wanted: squareInches(wanted.area),
                        });
                    } else if (touching) {
                        const press = shift(a, mine, i, 'pressed') + shift(b, theirs, j, 'pressed');
                        const off = wanted.near > 0 ? wanted.near : Math.min(0, wanted.near + press);
                        if (Math.abs(off) > OPEN_JOINT + NEAR) wrong.push({ a, b, kind: 'rounded', ticks: off, planned: true });
                    }
                }
            }
        }
    }
    return { joint, gap, wrong };
}

/** An open joint up to this passes at the handover. Common practice, no source. */
export const OPEN_JOINT = TICKS_PER_INCH / 64;

function squareInches(squareTicks: number): number {
    return squareTicks / TICKS_PER_INCH ** 2;
}

/** How deep two bodies are in each other; negative where they are apart. */
function depth(some: readonly Block[], others: readonly Block[]): number {
    let deepest = -Infinity;
    for (const one of some) for (const other of others) deepest = Math.max(deepest, -separation(one, other));
    return deepest;
}

/** What a piece may be in another one by plan: rounded up at the tape, pressed, or said to be so. */
function push({ place }: Body): number {
    return place ? Math.max(0, place.rounded) + place.pressed + place.give : 0;
}

/** How far the tape and the press move a face out of its place, measured square to it: only the ends move, along the piece. */
function shift({ place }: Body, { edges }: Block, face: number, what?: 'pressed'): number {
    const edge = edges[face];
    if (!place || !edge || face % 2 === 0) return 0;
    const by = what === 'pressed' ? place.pressed : place.rounded + place.pressed;
    return by * Math.abs(place.seat.runs === 'east-west' ? edge.dy : edge.dx) / edge.unit;
}

function within(a: Block, b: Block): boolean {
    return a.west - b.east <= REACH && b.west - a.east <= REACH && a.north - b.south <= REACH && b.north - a.south <= REACH
        && a.top - b.foot <= REACH && b.top - a.foot <= REACH;
}
