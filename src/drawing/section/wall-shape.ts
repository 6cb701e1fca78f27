import type { Band, Ceiling, HalfBeam, Section } from '../../ceiling/model.ts';
import { cleatFootOf, moldingOf, seatOf, sideFootOf } from '../../ceiling/section.ts';
import { thicknessOf } from '../../ceiling/part-sizes.ts';
import { isFiberboard } from '../../job/fiberboard.ts';
import type { Rabbet } from '../../job/model.ts';
import type { Source } from '../../provenance/source.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { Part } from '../../takeoff/model.ts';
import type { Point } from '../display-list.ts';
import { convexParts, crown, notched, type Stretch } from './outlines.ts';
import { panelOf } from './shape.ts';

/** What runs along some of the walls, and is the same along all of these. */
export interface AlongWalls { readonly own: Band | HalfBeam; readonly walls: readonly string[] }

/** In the order of the walls. */
export function alongWalls({ walls, around }: Ceiling): readonly AlongWalls[] {
    const found = new Map<string, { own: Band | HalfBeam; walls: string[] }>();
    for (const { name } of walls) {
        const own = around[name];
        if (!own) continue;
        const key = keyOf(own), same = found.get(key);
        if (same) same.walls.push(name);
        else found.set(key, { own, walls: [name] });
    }
    return [...found.values()];
}

function keyOf(own: Band | HalfBeam): string {
    if (own.kind === 'band') return ['band', own.thickness.ticks, own.height.ticks, own.lowerEdge.ticks].join(' ');
    return ['half-beam', own.width.ticks, own.section.profile.key, own.perimeter.scribe?.value ?? 0].join(' ');
}

/** The section of what runs along a wall: x in ticks from the wall into the room, y down from the ceiling. */
export interface WallShape {
    readonly parts: readonly WallPart[];
    /** From the wall to the face that looks into the room, and to all that stands beyond it. */
    readonly face: Ticks; readonly reach: Ticks;
    readonly depth: Ticks;
    /** Depth of the grid's beams, seen beyond. */
    readonly beams: Ticks | undefined;
    readonly panel: Ticks;
    /** Of a half beam's bottom: what is left on it at the wall, to be scribed. */
    readonly scribe: { readonly width: Ticks; readonly top: Ticks; readonly foot: Ticks } | undefined;
    readonly heldDown: Ticks | undefined;
    readonly rabbet: Rabbet | undefined;
}
export interface WallPart {
    readonly id: string; readonly part: Part; readonly title: string; readonly at: Source;
    readonly x: Stretch; readonly y: Stretch;
    readonly outline: readonly Point[];
    /** The same as convex shapes, for filling. */
    readonly convex: readonly (readonly Point[])[];
    readonly look: 'wood' | 'sheet' | 'running on';
    /** Where the middle of the tree was, as far as the rings tell. */
    readonly pith: Point;
}

export function wallShape({ own }: AlongWalls, beams: Section | undefined): WallShape {
    return own.kind === 'band' ? bandShape(own, beams) : halfBeamShape(own, beams);
}

function bandShape({ thickness, height, lowerEdge, perimeter }: Band, beams: Section | undefined): WallShape {
    const face = thickness.ticks, depth = lowerEdge.ticks, top = depth - height.ticks;
    const band = board('band', 'Band', perimeter.at, [0, face], [top, depth], isFiberboard(perimeter), [-face, top + height.ticks * 0.4]);
    return shapeOf([band], beams, face, depth, { heldDown: top, panel: beams ? panelOf(beams) : 0 });
}

function halfBeamShape({ width: { ticks: width }, bottomWidth, section, perimeter }: HalfBeam, beams: Section | undefined): WallShape {
    if (section.profile.solid) return timberShape(width, section, perimeter, beams);
    const { profile, sideThickness, blockingThickness, bottomThickness, cleatThickness, cleatHeight, heldDown } = section,
        { sides, blocking, cleats, bottom } = profile;
    const face = width + sideThickness.ticks, depth = section.depth.ticks, foot = sideFootOf(section), seat = seatOf(section), parts: WallPart[] = [];
    if (blocking) parts.push({ ...board('blocking', 'Blocking', blocking.at, [0, width], [0, blockingThickness.ticks], false, [0, 0]), look: 'running on' });
    if (cleats && cleatThickness && cleatHeight) {
        const cleatFoot = cleatFootOf(section), y: Stretch = [cleatFoot - cleatHeight.ticks, cleatFoot], sheet = isFiberboard(cleats),
            above = y[0] - 1.4 * cleatHeight.ticks;
        parts.push(
            board('cleat', 'Cleat at the side', cleats.at, [width - cleatThickness.ticks, width], y, sheet, [width - 2.6 * cleatThickness.ticks, above]),
            { ...board('cleat', 'Wall cleat', cleats.at, [0, cleatThickness.ticks], y, sheet, [2.6 * cleatThickness.ticks, above]), id: 'wall-cleat' },
        );
    }
    const rabbet = sides?.rabbet?.value, y: Stretch = [heldDown.value.ticks, foot];
    if (sides) {
        parts.push({
            ...board('side', 'Side', sides.at, [width, face], y, isFiberboard(sides), [face + (y[1] - y[0]) * 0.5, y[0] + (y[1] - y[0]) * 0.4]),
            outline: notched([width, face], y, rabbet ?? null),
            convex: convexParts([width, face], y, rabbet ?? null).map(([across, down]) => box(across, down)),
        });
    }
    const under: Stretch = [seat, seat + bottomThickness.ticks];
    if (bottom) parts.push(board('bottom', 'Bottom', bottom.at, [0, bottomWidth.ticks], under, isFiberboard(bottom),
        [bottomWidth.ticks * 0.56, seat + bottomThickness.ticks + bottomWidth.ticks * 0.9]));
    const molding = moldingOf(section);
    if (molding && profile.under) parts.push(board('molding', 'Molding', profile.under.at, [face - molding.inside, face + molding.beyond], [molding.top, molding.foot],
        isFiberboard(profile.under), [face + molding.beyond * 2, molding.foot + 1.8 * (molding.foot - molding.top)]));
    return {
        ...shapeOf(parts, beams, face, Math.max(depth, under[1]), { heldDown: y[0], panel: panelOf(section) }), rabbet,
        scribe: perimeter.scribe && { width: perimeter.scribe.value, top: under[0], foot: under[1] },
    };
}

function timberShape(width: Ticks, section: HalfBeam['section'], { scribe }: HalfBeam['perimeter'], beams: Section | undefined): WallShape {
    const depth = section.depth.ticks, { solid } = section.profile;
    const timber = board('timber', 'Timber', solid!.at, [0, width], [0, depth], false, [width * 0.3, depth * 0.45]);
    return {
        ...shapeOf([timber], beams, width, depth, { heldDown: 0, panel: panelOf(section) }), scribe: scribe && { width: scribe.value, top: 0, foot: depth },
    };
}

function shapeOf(parts: readonly WallPart[], beams: Section | undefined, face: Ticks, depth: Ticks,
    rest: { readonly heldDown: Ticks; readonly panel: Ticks }): WallShape {
    const trim = beams && trimAt(beams, face), all = [...parts, ...trim ? [trim] : []];
    return { parts: all, face, depth, beams: beams?.depth?.ticks, reach: Math.max(...all.map(part => part.x[1])), scribe: undefined, rabbet: undefined,
        ...rest };
}

/** The trim of the grid's beams goes round every coffer, along the walls too. */
function trimAt({ trimThickness, trimHeight, profile: { trim } }: Section, face: Ticks): WallPart | undefined {
    if (!trim || !trimThickness || !trimHeight) return undefined;
    const out = trimThickness.ticks, high = trimHeight.ticks,
        flat = board('trim', 'Ceiling trim', trim.at, [face, face + out], [0, high], isFiberboard(trim), [face + 3.4 * out, 1.5 * high]);
    const thick = trim.spring && thicknessOf(trim, 'trim')?.ticks;
    if (thick === undefined) return flat;
    const leaning = crown({ out, down: high, thick }).map(([x, y]): Point => [face + x, y]);
    return { ...flat, outline: leaning, convex: [leaning] };
}

function board(part: Part, title: string, at: Source, x: Stretch, y: Stretch, isSheet: boolean, pith: Point): WallPart {
    return { id: part, part, title, at, x, y, outline: box(x, y), convex: [box(x, y)], look: isSheet ? 'sheet' : 'wood', pith };
}

function box([from, to]: Stretch, [top, foot]: Stretch): readonly Point[] {
    return [[from, top], [to, top], [to, foot], [from, foot]];
}

/** Whether all of it has a size: nothing, or less, of a part cannot be drawn. */
export function isDrawable({ parts }: WallShape): boolean {
    return parts.length > 0 && parts.every(({ x, y }) => x[1] > x[0] && y[1] > y[0]);
}
