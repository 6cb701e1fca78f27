import createModule, { type Manifold, type ManifoldToplevel } from 'manifold-3d';
import type { Prism } from '../../src/dryfit/model.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import type { EndCut, Piece } from '../../src/takeoff/model.ts';

/**
 * The pieces once more, by another library and another way of thinking: a board is a box, the saw trims its ends by planes,
 * the router takes a box out of it, and it is turned to where it hangs. Inches; x east, y north, z up.
 */
let module: ManifoldToplevel | undefined;
export async function ready(): Promise<void> {
    if (module) return;
    module = await createModule();
    module.setup();
}
const library = (): ManifoldToplevel['Manifold'] => module!.Manifold;
const inch = (ticks: number): number => ticks / TICKS_PER_INCH;

/** Somebody stands before the face of an upright piece: what turn takes the right hand from the east to where it is then. */
const TURN = { south: 0, east: 90, north: 180, west: 270 } as const;
type Side = keyof typeof TURN;
const OPPOSITE: Record<Side, Side> = { south: 'north', north: 'south', east: 'west', west: 'east' };

/** A side shows its face on its own side of the line; trim and band look away from the side of the coffer or room they are on. */
function looksTo({ part, on }: Piece): Side {
    return part === 'trim' || part === 'band' ? OPPOSITE[on as Side] : on as Side;
}

/** As it was cut, with its face to the viewer: x from left to right, y from the face back, z up; hung the way its face looks. */
export function cutAndHung(piece: Piece): Manifold {
    const { part, cutBack, cutOverall, width, thickness } = piece;
    const box = (x: number, y: number, z: number): Manifold => library().cube([inch(x), inch(y), inch(z)]);
    const alongX = piece.line === null ? piece.on === 'north' || piece.on === 'south' : !/\d/.test(piece.line);
    if (part === 'blocking' || part === 'bottom') return alongX ? box(cutBack, width, thickness) : box(width, cutBack, thickness);
    if (part === 'spacer') return alongX ? box(thickness, width, cutBack) : box(width, thickness, cutBack);
    if (part === 'cleat') return alongX ? box(cutBack, thickness, width) : box(thickness, cutBack, width);

    const looks = looksTo(piece);
    const rabbet = piece.work.find(one => one.kind === 'rabbet');
    const upper = rabbet?.kind === 'rabbet' && rabbet.edge === 'upper';
    let board = box(cutOverall, thickness, width);
    // at the saw: groove edge down, face to the viewer
    const [left, right] = cutsOf(piece, looks, upper);
    const L = inch(cutOverall);
    const trim = (cut: EndCut, at: number, away: 1 | -1): void => {
        if (cut.cut === 'square') return;
        const angle = cut.degrees! * Math.PI / 180, t = inch(thickness);
        // the plane through the long point: at the back, leaning in towards the face; of an angle less than nothing at the face
        const normal: [number, number, number] = [away * Math.cos(angle), Math.sin(angle), 0];
        board = board.trimByPlane(normal, normal[0] * at + (angle > 0 ? normal[1] * t : 0));
    };
    trim(left, 0, 1);
    trim(right, L, -1);
    if (rabbet?.kind === 'rabbet') {
        const depth = inch(rabbet.width), high = inch(rabbet.height), y = rabbet.face === 'back' ? inch(thickness) - depth : -1;
        board = board.subtract(library().cube([L + 2, depth + 1, high + 1]).translate([-1, y, -1]));
    }
    if (upper) board = board.rotate([0, 180, 0]);
    return board.rotate([0, 0, TURN[looks]]);
}

/** What is cut left and right by the viewer: as the hand says, or else as the ends lie. */
function cutsOf({ ends, hand }: Piece, looks: Side, upsideDown: boolean): [EndCut, EndCut] {
    const square: EndCut = { cut: 'square' };
    const miter = ends.find(end => end.cut === 'miter');
    if (hand !== null && miter) return hand === 'left' ? [miter, square] : [square, miter];
    // the right hand points east before a face that looks south, north before one that looks east
    const leftToRight = (looks === 'south' || looks === 'west') !== upsideDown;
    return leftToRight ? [ends[0], ends[1]] : [ends[1], ends[0]];
}

/** A solid of the dry fit, as it is. */
export function asManifold(prisms: readonly Prism[]): Manifold {
    return library().union(prisms.map(({ outline, top, foot }) =>
        module!.CrossSection.ofPolygons([outline.map(([x, y]): [number, number] => [inch(x), -inch(y)]).reverse()])
            .extrude(inch(foot - top)).translate([0, 0, -inch(foot)])));
}

/** Moved so that their boxes begin at one place. */
export function broughtTo(one: Manifold, other: Manifold): Manifold {
    const from = one.boundingBox().min, to = other.boundingBox().min;
    return one.translate([to[0] - from[0], to[1] - from[1], to[2] - from[2]]);
}
