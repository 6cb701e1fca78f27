import { drawPanePlan, PLAN_LAYERS, toPaneSvg, type PlanLayer } from '../../drawing/index.ts';
import type { Group } from '../../drawing/display-list.ts';
import type { Line } from '../../ceiling/model.ts';
import { lineName } from '../../job/line-names.ts';
import type { Room } from '../../job/model.ts';
import type { Source } from '../../provenance/source.ts';
import type { PageContent, RoomOnPage, Wishes } from '../page.ts';
import { Sources } from '../shared/sources.ts';
import { findingsOnPlan, type PlanFinding } from './findings.ts';

export interface PlanContent extends PageContent {
    readonly title: string;
    /** The drawing: markup that src/drawing made. */
    readonly svg: string;
    /** Its ground in the drawing's own points. */
    readonly ground: { readonly width: number; readonly height: number };
    /** Layers that show something in this room. */
    readonly layers: readonly PlanLayer[];
    readonly findings: readonly PlanFinding[];
}

/** CSS pixels a point of the drawing takes: its figures are as large as the editor's small print, a little larger where there is room. */
function pixelsPerPoint(width: number, height: number): number {
    return Math.min(1.5, Math.max(1.1, 1.2 + (Math.min(width, height * 1.3) - 700) / 2500));
}
const SIZE_UNSAID = { width: 900, height: 680 };
/** A pane that is nearly closed gets a plan that can be read once it opens. */
const LEAST_HEIGHT = 240;

export function planContent(room: RoomOnPage, wishes: Wishes): PlanContent {
    const { ceiling, takeOff, layout } = room;
    const sources = new Sources();
    const width = wishes.width ?? SIZE_UNSAID.width, height = Math.max(LEAST_HEIGHT, wishes.height ?? SIZE_UNSAID.height);
    const pixels = pixelsPerPoint(width, height);
    const plan = drawPanePlan(ceiling, takeOff, { width: width / pixels, height: height / pixels });
    const at = placesOf(room);
    const svg = toPaneSvg(plan, { attributesOf: group => attributesOf(group, at, sources) });
    return {
        title: layout.room.title ?? layout.room.name, svg, ground: { width: plan.paper.width, height: plan.paper.height },
        layers: PLAN_LAYERS.filter(name => plan.items.some(item => item.kind === 'group' && item.id === `layer.${name}` && item.items.some(shows))),
        findings: findingsOnPlan(room, plan.placed.view, sources), sources: sources.list,
    };
}

function shows(item: Group['items'][number]): boolean {
    return item.kind !== 'group' || item.items.some(shows);
}

/** Where the parts of the plan are said, by the ids of their groups. */
function placesOf({ takeOff, ceiling, layout: { room } }: RoomOnPage): ReadonlyMap<string, Source> {
    return new Map([
        ...takeOff.pieces.map(({ id, source }) => [id, source] as const),
        ...ceiling.walls.map(({ name, at }) => [`wall-ground.${name}`, at] as const),
        ...ceiling.lines.map(line => [`line.${line.name}`, placeOfLine(line, room)] as const),
        ...room.fixtures.map(({ name, at }) => [`fixture.${name}`, at] as const),
        ...ceiling.coffers.map(({ number }) => [`ground.${number}`, room.grid?.at ?? room.at] as const),
    ]);
}

/** The line's own words where it has some, else what sets it: its center among those that are said, or the number of coffers. */
function placeOfLine({ name, at, runs }: Line, { lines, grid }: Room): Source {
    const spacing = runs === 'north-south' ? grid?.north : grid?.east;
    if (!spacing || lines.some(spec => spec.name === name)) return at;
    if (spacing.by === 'number') return spacing.coffers.at;
    if (spacing.by === 'size') return spacing.size.at;
    const far = runs === 'north-south' ? spacing.from.value.endsWith('east') : spacing.from.value.startsWith('south');
    const inOrder = [...spacing.centers].sort((a, b) => (far ? b.value - a.value : a.value - b.value)), [own] = name.split('-');
    return inOrder.find((_, i) => lineName(runs, i) === own)?.at ?? at;
}

/** A part is a button that leads to its words; its name is its title. The rest of the drawing is scenery. */
function attributesOf({ id, title, items }: Group, at: ReadonlyMap<string, Source>, sources: Sources): Readonly<Record<string, string>> {
    const source = at.get(id);
    if (source === undefined || title === undefined || items.length === 0) return {};
    return { 'class': 'part', 'data-key': id.replace(/^ground\./, 'coffer.').replace(/^wall-ground\./, 'wall.'), 'data-at': String(sources.number(source)), role: 'button', tabindex: '-1', 'aria-label': title };
}
