import type { Point, Prism, Solid } from '../../dryfit/model.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import { guidOf } from './guid.ts';
import { real, text, type StepText } from './step.ts';
import { cubicMeters, type Units } from './units.ts';

/** Where a room's pieces go in the file: the storey's placement, and what turns a point of the room into one of the storey. */
export interface Ground {
    readonly step: StepText;
    readonly units: Units;
    /** Shape representations hang on this context; placements on this placement. */
    readonly body: string; readonly storey: string;
    /** North-south size of the room and height of its ceiling: the storey's zero is the south-west corner of the floor. */
    readonly length: Ticks; readonly ceiling: Ticks;
}

/** x east, y north, z up. */
export function axes(step: StepText, [x, y, z]: readonly [number, number, number]): string {
    const point = step.add(`IFCCARTESIANPOINT((${[x, y, z].map(real).join(',')}))`);
    return step.add(`IFCAXIS2PLACEMENT3D(${point},${step.add('IFCDIRECTION((0.,0.,1.))')},${step.add('IFCDIRECTION((1.,0.,0.))')})`);
}

export function placement(step: StepText, on: string, at: string): string {
    return step.add(`IFCLOCALPLACEMENT(${on},${at})`);
}

/** One piece: an element with its own placement, its prisms as extruded areas, its quantities and what the cut list says of it. */
export function pieceElement(solid: Solid, ground: Ground, house: string): string {
    const { piece, prisms } = solid;
    const { step, units } = ground;
    const west = Math.min(...prisms.flatMap(prism => prism.outline.map(([x]) => x)));
    const south = Math.max(...prisms.flatMap(prism => prism.outline.map(([, y]) => y)));
    const foot = Math.max(...prisms.map(prism => prism.foot));
    const items = prisms.map(prism => extruded(prism, [west, south, foot], ground));
    const shape = step.add(`IFCSHAPEREPRESENTATION(${ground.body},'Body','SweptSolid',(${items.join(',')}))`);
    const product = step.add(`IFCPRODUCTDEFINITIONSHAPE($,$,(${shape}))`);
    const at = placement(step, ground.storey, axes(step, [west / units.ticks, (ground.length - south) / units.ticks, (ground.ceiling - foot) / units.ticks]));
    return step.add(`IFCMEMBER(${guid(house, piece.id)},$,${text(piece.id)},${text(piece.where)},${text(piece.part)},${at},${product},${text(piece.id)},.USERDEFINED.)`);
}

/** Swept up from its foot; the profile runs round against the clock once north is up, as a profile's outer curve should. */
function extruded(prism: Prism, [west, south, foot]: readonly [Ticks, Ticks, Ticks], { step, units }: Ground): string {
    const points = [...prism.outline].reverse().map(([x, y]) => step.add(`IFCCARTESIANPOINT((${real((x - west) / units.ticks)},${real((south - y) / units.ticks)}))`));
    const curve = step.add(`IFCPOLYLINE((${[...points, points[0]].join(',')}))`);
    const profile = step.add(`IFCARBITRARYCLOSEDPROFILEDEF(.AREA.,$,${curve})`);
    const lift = axes(step, [0, 0, (foot - prism.foot) / units.ticks]);
    return step.add(`IFCEXTRUDEDAREASOLID(${profile},${lift},${step.add('IFCDIRECTION((0.,0.,1.))')},${real((prism.foot - prism.top) / units.ticks)})`);
}

/** Quantities by the standard's own names (Qto_MemberBaseQuantities); the length is the one that is cut, long point to long point. */
export function quantities(solid: Solid, element: string, { step, units }: Ground, house: string): void {
    const { piece } = solid;
    const sets = [
        step.add(`IFCQUANTITYLENGTH('Length',$,$,${real(piece.back / units.ticks)},$)`),
        step.add(`IFCQUANTITYVOLUME('NetVolume',$,$,${real(volumeOf(solid))},$)`),
    ];
    const set = step.add(`IFCELEMENTQUANTITY(${guid(house, piece.id, 'quantities')},$,'Qto_MemberBaseQuantities',$,$,(${sets.join(',')}))`);
    step.add(`IFCRELDEFINESBYPROPERTIES(${guid(house, piece.id, 'has quantities')},$,$,$,(${element}),${set})`);
}

/** Cubic meters. */
function volumeOf({ prisms }: Solid): number {
    return prisms.reduce((sum, prism) => sum + cubicMeters(areaOf(prism.outline), prism.foot - prism.top), 0);
}

function areaOf(outline: readonly Point[]): number {
    return outline.reduce((sum, [x, y], i) => {
        const [nextX, nextY] = outline[(i + 1) % outline.length]!;
        return sum + (x * nextY - nextX * y) / 2;
    }, 0);
}

/** A GlobalId for a thing of this house. */
export function guid(house: string, ...names: readonly string[]): string {
    return text(guidOf([house, ...names].join('\n')));
}
