import { drawPanePlan, PLAN_LAYERS, toPaneSvg, type PlanLayer } from '../../drawing/index.ts';
import type { Group } from '../../drawing/display-list.ts';
import type { Line } from '../../ceiling/model.ts';
import { lineName } from '../../job/line-names.ts';
import type { Room, Spacing } from '../../job/model.ts';
import type { Source } from '../../provenance/source.ts';
import { LEAST_LETTERS, type PageContent, type RoomOnPage, type Wishes } from '../page.ts';
import type { Steps } from '../../plain/steps.ts';
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

/** CSS pixels a point of the drawing takes: its figures are as large as the editor's small print, larger where there is room for it. */
function pixelsPerPoint(width: number, height: number): number {
    return Math.min(1.8, Math.max(1.35, 1.45 + (Math.min(width, height * 1.3) - 700) / 2500));
}
const SIZE_UNSAID = { width: 900, height: 680 };
/** A pane that is nearly closed gets a plan that can be read once it opens. */
const LEAST_HEIGHT = 240;

export function* planInSteps(room: RoomOnPage, wishes: Wishes): Steps<PlanContent> {
    const { ceiling, takeOff, layout } = room;
    const sources = new Sources();
    const width = wishes.width ?? SIZE_UNSAID.width, height = Math.max(LEAST_HEIGHT, wishes.height ?? SIZE_UNSAID.height);
    const pixels = pixelsPerPoint(width, height);
    const plan = drawPanePlan(ceiling, takeOff, { width: width / pixels, height: height / pixels, least: LEAST_LETTERS / pixels });
    yield;
    const at = placesOf(room);
    const svg = toPaneSvg(plan, group => attributesOf(group, at, sources));
    yield;
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
    const [north, east] = [spacingPlace(room.grid?.north), spacingPlace(room.grid?.east)], division = north ?? east;
    return new Map([
        ...takeOff.pieces.map(({ id, source }) => [id, source] as const),
        ...ceiling.walls.map(({ name, at }) => [`wall-ground.${name}`, at] as const),
        ...ceiling.lines.map(line => [`line.${line.name}`, placeOfLine(line, room)] as const),
        ...room.joists ? [['joists', room.joists.at] as const] : [],
        ...room.fixtures.map(({ name, at }) => [`fixture.${name}`, at] as const),
        ...ceiling.coffers.map(({ number }) => [`ground.${number}`, division ?? room.grid?.at ?? room.at] as const),
        ...stringPlaces(room, 'across', north), ...stringPlaces(room, 'down', east),
        ...room.walls.flatMap(({ name, length, at }) => [`dimensions.wall.${name}`, `dimensions.wall.${name}.lines`].map(id => [id, length?.at ?? at] as const)),
    ]);
}

/** The line's own words where it has some, else what sets it: its center among those that are said, or the number of coffers. */
export function placeOfLine({ name, at, runs }: Line, { lines, grid }: Room): Source {
    const spacing = runs === 'north-south' ? grid?.north : grid?.east;
    if (!spacing || lines.some(spec => spec.name === name)) return at;
    if (spacing.by === 'number') return spacing.coffers.at;
    if (spacing.by === 'size') return spacing.size.at;
    const far = runs === 'north-south' ? spacing.from.value.endsWith('east') : spacing.from.value.startsWith('south');
    const inOrder = [...spacing.centers].sort((a, b) => (far ? b.value - a.value : a.value - b.value)), [own] = name.split('-');
    return inOrder.find((_, i) => lineName(runs, i) === own)?.at ?? at;
}

/** What places the lines one way: how many coffers, how large, or where. */
function spacingPlace(spacing: Spacing | undefined): Source | undefined {
    switch (spacing?.by) {
        case 'number': return spacing.coffers.at;
        case 'size': return spacing.size.at;
        case 'lines': return spacing.centers[0]?.at;
        case undefined: return undefined;
    }
}

/** A string of figures leads to what its stretches come from; that of the room to the wall it runs along. */
function stringPlaces({ walls, grid }: Room, direction: 'across' | 'down', spacing: Source | undefined): readonly (readonly [string, Source])[] {
    const wall = walls.find(({ name }) => name === (direction === 'across' ? 'north' : 'west')) ?? walls[0];
    const whole = wall?.length?.at ?? wall?.at, parts = spacing ?? grid?.at;
    return [
        ...parts ? ['parts', 'centers'].map(name => [`dimensions.${direction}.${name}`, parts] as const) : [],
        ...whole ? [[`dimensions.${direction}.room`, whole] as const] : [],
    ];
}

/** A part is a button that leads to its words; its name is its title. The rest of the drawing is scenery. */
function attributesOf({ id, title, items }: Group, at: ReadonlyMap<string, Source>, sources: Sources): Readonly<Record<string, string>> {
    const source = at.get(id);
    if (source === undefined || title === undefined || items.length === 0) return {};
    // what is read out holds what is seen (WCAG 2.2, 2.5.3)
    const figures = id.startsWith('dimensions.') ? `: ${wordsIn(items).join(' ')}` : '';
    const key = id.replace(/^ground\./, 'coffer.').replace(/^wall-ground\./, 'wall.');
    return { 'class': 'part', 'data-key': key, 'data-at': String(sources.number(source)), role: 'button', tabindex: '-1', 'aria-label': `${title}${figures}` };
}

function wordsIn(items: Group['items']): readonly string[] {
    return items.flatMap(item => (item.kind === 'text' ? [item.text] : item.kind === 'group' ? wordsIn(item.items) : []));
}
