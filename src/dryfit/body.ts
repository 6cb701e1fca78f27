import type { Ceiling } from '../ceiling/model.ts';
import { TICKS_PER_INCH } from '../quantity/ticks.ts';
import type { Piece } from '../takeoff/model.ts';
import { blockOf, type Block } from './block.ts';
import type { Prism } from './model.ts';
import type { Place } from './place.ts';
import { prismsOf } from './stand.ts';

/** What stands in the room: a piece in its place, or what the room itself is. */
export interface Body {
    /** The piece, or "the ceiling", "the north wall". */
    readonly is: Piece | string;
    readonly place: Place | undefined;
    /** As the cut list makes it, and as the plan has it. The room itself is what it is. */
    readonly blocks: readonly Block[]; readonly planned: readonly Block[];
    /** Whether the two are the same. */
    readonly asPlanned: boolean;
    readonly box: Box;
}
type Box = readonly [west: number, north: number, top: number, east: number, south: number, foot: number];

export function bodyOf(piece: Piece, place: Place, prisms: readonly Prism[]): Body {
    const meant = prismsOf(place.form, place.seat);
    const asPlanned = samePrisms(prisms, meant);
    const planned = meant.map(blockOf), blocks = asPlanned ? planned : prisms.map(blockOf);
    return { is: piece, place, blocks, planned, asPlanned, box: around(asPlanned ? planned : [...blocks, ...planned]) };
}

/** The ceiling and the walls, as thick as is of use, and no thicker than that a wall reaches past what lies behind it. */
export function roomBodies({ width, length, walls, around: edging, lines, beams }: Ceiling): Body[] {
    const thick = 12 * TICKS_PER_INCH, thin = Math.min(thick, ...walls.map(wall => Math.ceil(wall.length / 2)));
    const low = Math.max(0, ...Object.values(edging).map(own => (own?.kind === 'band' ? own.lowerEdge.ticks : own?.section.depth.ticks ?? 0)), ...lines.map(line => line.section.depth.ticks)) + thick;
    const body = (is: string, outline: Prism['outline'], top: number, foot: number): Body => {
        const blocks = [blockOf({ outline, top, foot })];
        return { is, place: undefined, blocks, planned: blocks, asPlanned: true, box: around(blocks) };
    };
    const panel = beams?.profile.back?.stock ? beams.profile.back.thickness?.value.ticks ?? 0 : 0;
    return [
        body('the ceiling', [[0, 0], [width, 0], [width, length], [0, length]], -thick - panel, -panel),
        ...walls.map(({ name, from, to, length: long }) => {
            // the room lies to the right of a wall
            const off = { x: Math.round((to.y - from.y) * thin / long), y: Math.round((from.x - to.x) * thin / long) };
            return body(`the ${name} wall`, [[from.x + off.x, from.y + off.y], [to.x + off.x, to.y + off.y], [to.x, to.y], [from.x, from.y]], -panel, low);
        }),
    ];
}

function samePrisms(some: readonly Prism[], others: readonly Prism[]): boolean {
    return some.length === others.length && some.every((one, i) => {
        const other = others[i]!;
        return one.top === other.top && one.foot === other.foot
            && one.outline.every(([x, y], k) => x === other.outline[k]![0] && y === other.outline[k]![1]);
    });
}

function around(blocks: readonly Block[]): Box {
    const box: [number, number, number, number, number, number] = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
    for (const { west, north, top, east, south, foot } of blocks) {
        if (west < box[0]) box[0] = west;
        if (north < box[1]) box[1] = north;
        if (top < box[2]) box[2] = top;
        if (east > box[3]) box[3] = east;
        if (south > box[4]) box[4] = south;
        if (foot > box[5]) box[5] = foot;
    }
    return box;
}

/** Every pair of bodies whose boxes come within `reach` of each other, but for the room with itself. Swept from west to east. */
export function pairsWithin(bodies: readonly Body[], reach: number): [Body, Body][] {
    const pairs: [Body, Body][] = [];
    const met: Body[] = [];
    for (const body of [...bodies].sort((a, b) => a.box[0] - b.box[0])) {
        const [west, north, top, , south, foot] = body.box;
        let still = 0;
        for (const other of met) {
            const { box } = other;
            if (box[3] + reach < west) continue;
            met[still++] = other;
            if (box[4] + reach < north || south + reach < box[1] || box[5] + reach < top || foot + reach < box[2]) continue;
            if (body.place || other.place) pairs.push([other, body]);
        }
        met.length = still;
        met.push(body);
    }
    return pairs;
}
