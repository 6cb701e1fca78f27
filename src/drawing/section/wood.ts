import type { Part } from '../../takeoff/model.ts';
import { group, line, polygon, polyline, type Group, type Item, type Point } from '../display-list.ts';
import { endGrain } from '../fill/end-grain.ts';
import { hatch } from '../fill/hatch.ts';
import { convexParts, crown, notched } from './outlines.ts';
import { faceAt, sideAt, type Hand, type SectionShape } from './shape.ts';
import { across, box, down, spot, type SectionView } from './view.ts';

/** Names for a part's group: what it is called, and the words it comes from. */
export type Naming = (part: Part, title: string, hand?: Hand) => { readonly title: string; readonly part: Part; readonly source?: string };

const SIDES = [[-1, 'left'], [1, 'right']] as const;
/** Growth rings: about eight to the inch at full size, and never so close that they print gray. */
const RING_SPACING = 6.2;
/** Lines of sheet material, closer than those of the ceiling's covering. */
export const SHEET_SPACING = 3.4;

/** The wood of the beam, back to front: spacer beyond, then everything the section cuts. */
export function wood(shape: SectionShape, view: SectionView, naming: Naming): readonly Group[] {
    const trims = SIDES.flatMap(([side, name]) => (shape.trim === null ? [] : [trim(shape, shape.trim, view, naming, side, name)]));
    if (shape.isSolid) return [timber(shape, view, naming), ...trims];
    return [
        ...(shape.spacer === null ? [] : [spacerBeyond(shape, view, naming)]),
        blocking(shape, view, naming),
        ...SIDES.flatMap(([side, name]) => [
            sideBoard(shape, view, naming, side, name),
            ...(shape.cleat === null ? [] : [cleat(shape, shape.cleat, view, naming, side, name)]),
            ...(shape.molding === null ? [] : [molding(shape, shape.molding, view, naming, side, name)]),
        ]),
        ...trims,
        bottom(shape, view, naming),
    ];
}

/** The heart of the tree stands in it. */
function timber({ outerWidth, depth, sheet }: SectionShape, view: SectionView, naming: Naming): Group {
    const corners = box(view, [-outerWidth / 2, outerWidth / 2], [0, depth]);
    return cutWood(sheet.has('timber'), 'timber', naming('timber', 'Timber'), corners, [corners], spot(view, outerWidth * 0.1, depth * 0.58));
}

function spacerBeyond({ spacer, blocking: above }: SectionShape, view: SectionView, naming: Naming): Group {
    const top = above.thickness;
    return group('spacer', naming('spacer', 'Spacer, beyond the cut'), [
        polygon(box(view, [-spacer!.width / 2, spacer!.width / 2], [top, top + spacer!.height]), 'thin', 'wash'),
    ]);
}

/** A crossed rectangle: wood that runs on through the cut, by the convention for continuous blocking. What is wrapped is there, and hatched. */
function blocking({ blocking: { width, thickness, isWrapped } }: SectionShape, view: SectionView, naming: Naming): Group {
    const [a, b, c, d] = box(view, [-width / 2, width / 2], [0, thickness]) as [Point, Point, Point, Point];
    if (isWrapped) return group('wrapped', naming('blocking', 'What the beam wraps'), [polygon([a, b, c, d], 'thin', 'wash'), ...hatch([a, b, c, d], 9, true)]);
    return group('blocking', naming('blocking', 'Blocking'), [polygon([a, b, c, d], 'cut', 'paper'), line(a, c, 'thin'), line(b, d, 'thin')]);
}

function sideBoard(shape: SectionShape, view: SectionView, naming: Naming, side: -1 | 1, name: string): Group {
    const { top, height, rabbet, isSheet } = sideAt(shape, side), across = [shape.innerWidth / 2, faceAt(shape, side)] as const;
    const foot = top + height;
    const outline = notched(across, [top, foot], rabbet).map(([x, y]) => spot(view, side * x, y));
    const convex = convexParts(across, [top, foot], rabbet).map(([x, y]) => box(view, x, y, side));
    const pith = spot(view, side * (across[1] + height * 0.55), top + height * (side < 0 ? 0.68 : 0.4));
    return cutWood(isSheet, `side.${name}`, naming('side', `Side, ${name}`, side), outline, convex, pith);
}

function cleat({ innerWidth, sheet }: SectionShape, { thickness, top, foot }: NonNullable<SectionShape['cleat']>, view: SectionView, naming: Naming, side: -1 | 1, name: string): Group {
    const corners = box(view, [innerWidth / 2 - thickness, innerWidth / 2], [top, foot], side);
    return cutWood(sheet.has('cleat'), `cleat.${name}`, naming('cleat', `Cleat, ${name}`), corners, [corners], spot(view, side * (innerWidth / 2 - 2.6 * thickness), top - 1.4 * (foot - top)));
}

function trim(
    shape: SectionShape, { thickness, height, leans }: NonNullable<SectionShape['trim']>, view: SectionView, naming: Naming, side: -1 | 1, name: string,
): Group {
    const face = faceAt(shape, side), corners = leans === undefined ? box(view, [face, face + thickness], [0, height], side)
        : crown({ out: thickness, down: height, thick: leans }).map(([x, y]) => spot(view, side * (face + x), y));
    return cutWood(shape.sheet.has('trim'), `trim.${name}`, naming('trim', `Ceiling trim, ${name}`), corners, [corners], spot(view, side * (face + 3.4 * thickness), 1.5 * height));
}

function molding(
    shape: SectionShape, { inside, beyond, top, foot }: NonNullable<SectionShape['molding']>, view: SectionView, naming: Naming, side: -1 | 1, name: string,
): Group {
    const face = faceAt(shape, side), corners = box(view, [face - inside, face + beyond], [top, foot], side), high = foot - top;
    return cutWood(shape.sheet.has('molding'), `molding.${name}`, naming('molding', `Molding, ${name}`), corners, [corners], spot(view, side * (face + beyond + 2 * high), foot + 1.8 * high));
}

function bottom({ bottom: { width, thickness, top, ease, aside }, channel, sheet }: SectionShape, view: SectionView, naming: Naming): Group {
    const half = width / 2;
    const eased = Math.min(ease, thickness, half);
    const corners: readonly Point[] = [
        [-half + eased, top], [half - eased, top], [half, top + eased], [half, top + thickness], [-half, top + thickness], [-half, top + eased],
    ];
    const outline = corners.filter((_, i) => eased > 0 || (i !== 2 && i !== 5)).map(([x, y]) => spot(view, aside + x, y));
    const drawn = cutWood(sheet.has('bottom'), 'bottom', naming('bottom', 'Bottom'), outline, [outline], spot(view, width * 0.06, top + thickness + width * 0.7));
    if (channel === null || width <= channel) return drawn;
    return { ...drawn, items: [...drawn.items, polygon(outline, 'wrong')] };
}

/** What the section cuts: growth rings in wood, close slanted lines in sheet material. */
export function cutWood(
    isSheet: boolean, id: string, names: ReturnType<Naming>, outline: readonly Point[], convex: readonly (readonly Point[])[], pith: Point,
): Group {
    const grain = isSheet ? convex.flatMap(part => hatch(part, SHEET_SPACING, true)) : endGrain(convex, { pith, spacing: RING_SPACING, seed: id });
    return group(id, names, [polygon(outline, null, 'paper'), ...grain, polygon(outline, 'cut')]);
}

/** Lower edges of the crossing beam, and from where they are seen: those of its sides, of a molding along them, and of a bottom that lies under them. */
function undersides(shape: SectionShape, side: Hand): readonly Point[] {
    const { bottom, depth, molding } = shape, face = faceAt(shape, side), edge = Math.max(face, bottom.width / 2 + side * bottom.aside);
    if (molding) return [[face + molding.beyond, molding.foot], [face + molding.beyond, molding.top]];
    return bottom.place === 'under-sides' ? [[edge, depth], [edge, bottom.top]] : [[face, depth]];
}

/** Edges seen beyond the cut: of the crossing beam and its trim, and of the band. */
export function beyond(shape: SectionShape, view: SectionView, edges: { readonly crossed: boolean; readonly bandEdge: number | null }): Group {
    const lines: Item[] = [];
    for (const side of [-1, 1] as const) {
        const end = side < 0 ? view.left : view.right;
        const from = (x: number, y: number) => polyline([spot(view, side * x, y), [end, down(view, y)]], 'beyond');
        if (shape.trim !== null) lines.push(from(faceAt(shape, side) + shape.trim.thickness, shape.trim.height));
        if (edges.crossed) lines.push(...undersides(shape, side).map(([x, y]) => from(x, y)));
        if (edges.bandEdge !== null && edges.bandEdge > 0) {
            const past = edges.bandEdge > shape.depth ? 0 : faceAt(shape, side);
            lines.push(polyline([[across(view, side * past), down(view, edges.bandEdge)], [end, down(view, edges.bandEdge)]], 'beyond'));
        }
    }
    return group('beyond', { title: 'Beyond the cut' }, lines);
}
