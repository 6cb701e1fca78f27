import type { Ceiling } from '../../ceiling/model.ts';
import type { Solid } from '../../dryfit/model.ts';
import { grouped } from '../../plain/groups.ts';
import { printLength } from '../../quantity/print-length.ts';
import { TICKS_PER_FOOT } from '../../quantity/ticks.ts';
import { endWordsOf, isTurned, toldLengths } from '../../takeoff/ends.ts';
import { PARTS, type EndCut, type Piece } from '../../takeoff/model.ts';
import { partsTitle } from '../../job/part.ts';
import { partColor } from '../part-color.ts';
import { axes, guid, pieceElement, placement, quantities, type Ground } from './pieces.ts';
import { real, StepText, text, textOrNone } from './step.ts';
import { unitsOf } from './units.ts';
import type { IfcText } from '../../text/fit.ts';
import { atOnce, eachInSteps, type Steps } from '../../plain/steps.ts';

/** The format wants a time. A job has none, and the same job must give the same file on any day. */
const NO_TIME = '1970-01-01T00:00:00';
/** Where the room's height is not said: as high as rooms often are, common practice, no source. */
const USUAL_HEIGHT = 8 * TICKS_PER_FOOT;

/**
 * The pieces of a room as IFC4 (ISO 16739-1, the reference view), in the clear text of a STEP file: a project, a site, a
 * building and a storey, and on it one member for each piece, named by its id, by part and stock. Lengths in inches or
 * millimeters, as the job shows them; z up from the floor. GlobalIds are made from names, so that they stay the same.
 */
export function toIfc(ceiling: Ceiling, solids: readonly Solid[], notice: readonly string[] = []): IfcText {
    return atOnce(ifcInSteps(ceiling, solids, notice));
}

/** Solids that are described in one step. */
const IN_STEP = 500;

/** The same step by step. */
export function* ifcInSteps(ceiling: Ceiling, solids: readonly Solid[], notice: readonly string[]): Steps<IfcText> {
    const { room } = ceiling;
    const show = room.job.show.value;
    const house = room.job.title?.value ?? 'Job';
    const step = new StepText();
    const units = unitsOf(step, show);
    const world = axes(step, [0, 0, 0]);
    const model = step.add(`IFCGEOMETRICREPRESENTATIONCONTEXT($,'Model',3,1.E-06,${world},$)`);
    const body = step.add(`IFCGEOMETRICREPRESENTATIONSUBCONTEXT('Body','Model',*,*,*,*,${model},$,.MODEL_VIEW.,$)`);
    const project = step.add(`IFCPROJECT(${guid(house, 'project')},$,${text(house)},${textOrNone(notice.length === 0 ? undefined : notice.join(' '))},$,$,$,(${model}),${units.assignment})`);
    const sitePlace = placement(step, '$', world);
    const site = step.add(`IFCSITE(${guid(house, 'site')},$,'Site',$,$,${sitePlace},$,$,.ELEMENT.,$,$,$,$,$)`);
    const buildingPlace = placement(step, sitePlace, world);
    const building = step.add(`IFCBUILDING(${guid(house, 'building')},$,${text(house)},$,$,${buildingPlace},$,$,.ELEMENT.,$,$,$)`);
    const storeyPlace = placement(step, buildingPlace, world);
    const storey = step.add(`IFCBUILDINGSTOREY(${guid(house, room.name)},$,${text(room.title ?? room.name)},$,$,${storeyPlace},$,${textOrNone(room.title)},.ELEMENT.,0.)`);
    for (const [whole, part] of [[project, site], [site, building], [building, storey]] as const) step.add(`IFCRELAGGREGATES(${guid(house, room.name, whole, part)},$,$,$,${whole},(${part}))`);

    const ground: Ground = { step, units, body, storey: storeyPlace, length: ceiling.length, ceiling: room.height?.value ?? USUAL_HEIGHT };
    const elements = yield* eachInSteps(solids, IN_STEP, solid => {
        const element = pieceElement(solid, ground, house);
        quantities(solid, element, ground, house);
        properties(solid.piece, element, ground, house, length => printLength(length, show));
        return { piece: solid.piece, element };
    });
    yield;
    if (elements.length > 0) step.add(`IFCRELCONTAINEDINSPATIALSTRUCTURE(${guid(house, room.name, 'contains')},$,$,$,(${elements.map(({ element }) => element).join(',')}),${storey})`);
    types(elements, ground, house, room.name);
    materials(elements, ground, house, room.name);
    return step.file({ descriptions: ['ViewDefinition [ReferenceView_V1.2]', ...notice.map(words => `Remark [${words}]`)], name: `${room.name}.ifc`, stamp: NO_TIME, schema: 'IFC4', by: 'Cofferwright' });
}

type Made = { readonly piece: Piece; readonly element: string };

/** What the cut list says of a piece, in its own words. */
function properties(piece: Piece, element: string, { step }: Ground, house: string, length: (ticks: number) => string): void {
    const { back, face } = toldLengths(piece);
    const said: readonly (readonly [string, string])[] = [
        ['Piece', piece.id], ['Room', piece.room], ['Part', piece.part], ['Where', piece.where], ['Stock', piece.stock.title ?? piece.stock.name],
        ['Long points', length(back)], ['Short points', length(face)], ['Ends', piece.ends.map(end => endInWords(piece, end)).join(', ')],
        ...(piece.hand === null ? [] : [['Hand', piece.hand] as const]), ...(piece.machining.length === 0 ? [] : [['Machining', piece.machining.join('; ')] as const]),
    ];
    const single = said.map(([name, words]) => step.add(`IFCPROPERTYSINGLEVALUE(${text(name)},$,IFCTEXT(${text(words)}),$)`));
    const set = step.add(`IFCPROPERTYSET(${guid(house, piece.id, 'cut list')},$,'Cut list',$,(${single.join(',')}))`);
    step.add(`IFCRELDEFINESBYPROPERTIES(${guid(house, piece.id, 'has cut list')},$,$,$,(${element}),${set})`);
}

function endInWords(piece: Piece, end: EndCut): string {
    return isTurned(end) ? `${endWordsOf(piece, end)} degrees` : endWordsOf(piece, end);
}

/** One type for every part, so that another program can pick all sides, all cleats. */
function types(elements: readonly Made[], { step }: Ground, house: string, room: string): void {
    for (const part of PARTS) {
        const own = elements.filter(({ piece }) => piece.part === part);
        if (own.length === 0) continue;
        const type = step.add(`IFCMEMBERTYPE(${guid(house, part)},$,${text(partsTitle(part))},$,$,$,$,$,${text(part)},.USERDEFINED.)`);
        step.add(`IFCRELDEFINESBYTYPE(${guid(house, room, part)},$,$,$,(${own.map(({ element }) => element).join(',')}),${type})`);
    }
}

/** The stock is the material; how a part is shown hangs on the material of that part. */
function materials(elements: readonly Made[], { step, body }: Ground, house: string, room: string): void {
    const groups = grouped(elements, ({ piece: { part, stock } }) => `${part} ${stock.key}`);
    for (const [i, made] of [...groups.values()].entries()) {
        const { part, stock } = made[0]!.piece, material = step.add(`IFCMATERIAL(${text(stock.title ?? stock.name)},${text(partsTitle(part))},'wood')`);
        const color = step.add(`IFCCOLOURRGB($,${partColor(part).map(value => real(Math.round(value / 255 * 1000) / 1000)).join(',')})`);
        const style = step.add(`IFCSURFACESTYLE(${text(partsTitle(part))},.BOTH.,(${step.add(`IFCSURFACESTYLESHADING(${color},0.)`)}))`);
        const styled = step.add(`IFCSTYLEDITEM($,(${style}),$)`);
        const shown = step.add(`IFCSTYLEDREPRESENTATION(${body},'Style','Material',(${styled}))`);
        step.add(`IFCMATERIALDEFINITIONREPRESENTATION($,$,(${shown}),${material})`);
        step.add(`IFCRELASSOCIATESMATERIAL(${guid(house, room, 'material', String(i))},$,$,$,(${made.map(({ element }) => element).join(',')}),${material})`);
    }
}
