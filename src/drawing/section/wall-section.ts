import type { Section } from '../../ceiling/model.ts';
import { group, line, polygon, rectangle, sheet, text, type Group, type Item, type Point, type Sheet } from '../display-list.ts';
import { drawStack } from '../dimensions/stack.ts';
import type { Extent } from '../extent.ts';
import { sizeWithUnit } from '../figures.ts';
import { endGrain } from '../fill/end-grain.ts';
import { hatch } from '../fill/hatch.ts';
import { paneGround, paperFor, PAPERS } from '../paper.ts';
import { largestThatFits, pointsPerTick, sectionScales, type Scale } from '../scale.ts';
import { scaleBar, viewTitle } from '../sheet/foot.ts';
import { frame, type TitleBlock } from '../sheet/frame.ts';
import { SAMPLE_WIDTH, strip, type StripBlock } from '../sheet/strip.ts';
import { lastPart, sourceReference } from '../source-reference.ts';
import { capitalized, listed } from '../../plain/words.ts';
import { aboveOf, ceilingAbove } from './ceiling-above.ts';
import type { SectionContext } from './context.ts';
import { largestOf } from './largest-place.ts';
import { noteColumn } from './notes.ts';
import type { PaneSection } from './pane-section.ts';
import { down, spot, type SectionView } from './view.ts';
import { placeWall, WALL, type PlacedWall } from './wall-place.ts';
import { isDrawable, wallShape, type AlongWalls, type WallPart, type WallShape } from './wall-shape.ts';
import { wallNotes } from './wall-words.ts';
import { cutWood, RING_SPACING, SHEET_SPACING } from './wood.ts';

/** The section of what runs along a wall, seen along the wall: a band, or half a beam with the strips that its bottom bears on. */
export function drawWallSection(along: AlongWalls, beams: Section | undefined, context: SectionContext): Sheet {
    const { show } = context.job, paper = context.paper === undefined ? paperFor(show.value) : PAPERS[context.paper];
    const shape = wallShape(along, beams), id = context.sheet ?? 'C-2', title = wallTitle(along, context),
        blank = frame(paper, titleBlock(along, context, id, ''));
    if (!isDrawable(shape)) {
        const words = text([(blank.area.left + blank.area.right) / 2, (blank.area.top + blank.area.foot) / 2], UNKNOWN,
            { size: 12, anchor: 'middle', tone: 'soft' });
        return sheet({ id, title, description: words.text }, paper, [words, blank.group]);
    }
    const around = { notes: true, title: true },
        scale = largestThatFits(sectionScales(show.value), k => placeWall(shape, context, blank.area, k, around) !== null);
    const placed = placeWall(shape, context, blank.area, pointsPerTick(scale), around)!, whole = frame(paper, titleBlock(along, context, id, scale.label));
    return sheet({ id, title, description: describe(along, shape, context) }, paper, [
        ...drawing(along, shape, beams, context, placed, true), ...footOf(along, context, scale, placed, whole.area),
        strip(blocks(shape, context, scale), whole.strip), whole.group,
    ], { pointsPerTick: placed.view.pointsPerTick, origin: [placed.view.middle, placed.view.ceiling] });
}

const UNKNOWN = 'The section cannot be drawn yet: its text leaves out, or gets wrong, a size it needs.';

/** The same alone, as large as it goes on a ground of this size in points; in a narrow one what is said of the parts comes beside it. */
export function drawPaneWallSection(along: AlongWalls, beams: Section | undefined, context: SectionContext,
    size: { readonly width: number; readonly height: number }): PaneSection {
    const ground = paneGround(Math.max(250, size.width), Math.max(230, size.height)), shape = wallShape(along, beams), title = wallTitle(along, context);
    if (!isDrawable(shape)) {
        const words = text([ground.width / 2, ground.height / 2], 'A size it needs is missing or wrong.', { size: 11, anchor: 'middle', tone: 'soft' });
        return { ...sheet({ id: 'section', title, description: words.text }, ground, [words]), notes: [] };
    }
    const beside = ground.width >= 560, around = { notes: beside, title: false };
    const placed = largestOf((k, within) => placeWall(shape, context, within, k, around), { left: 0, top: 0, right: ground.width, foot: ground.height });
    const items = drawing(along, shape, beams, context, placed, beside).map((item, i) => (item.kind === 'group' ? item : group(`scenery.${i}`, {}, [item])));
    return {
        ...sheet({ id: 'section', title, description: describe(along, shape, context) }, ground, items),
        notes: beside ? [] : wallNotes(along, shape, beams, context, placed.view),
    };
}

function drawing(along: AlongWalls, shape: WallShape, beams: Section | undefined, context: SectionContext,
    { view, left, foot, stringsFrom, breakFoot, notes }: PlacedWall, notesBeside: boolean): readonly Item[] {
    const end = view.right;
    const seen = shape.beams !== undefined
        && shape.beams > 0 ? [line([view.middle + Math.min(shape.face, shape.reach) * view.pointsPerTick, down(view, shape.beams)],
        [end, down(view, shape.beams)], 'beyond')] : [];
    return [
        group('beyond', { title: 'Beyond the cut' }, seen),
        ...ceilingAbove(view, aboveOf(context.covering, shape.panel), breakFoot),
        wall(view, breakFoot),
        ...scribed(shape, view),
        ...shape.parts.map(part => piece(part, view, context)),
        ...notesBeside ? noteColumn(wallNotes(along, shape, beams, context, view).filter(note => note.spots.length > 0), notes) : [],
        ...drawStack(left, view.left), ...drawStack(foot, stringsFrom),
    ];
}

function wall(view: SectionView, foot: number): Group {
    const corners: readonly Point[] = [[view.left, view.top], [view.middle, view.top], [view.middle, foot], [view.left, foot]];
    return group('wall', { title: 'Wall, as found' }, [
        polygon(corners, null, 'tint'), ...hatch(corners, 4.6, false), line([view.middle, view.ceiling], [view.middle, foot], 'cut'),
        line([view.left, view.top], [view.left, foot], 'thin'),
    ]);
}

/** What is left on the bottom to be taken off again along the wall: it stands in the wall until then. */
function scribed({ scribe }: WallShape, view: SectionView): readonly Group[] {
    if (!scribe) return [];
    const [x, top] = spot(view, -scribe.width, scribe.top), foot = down(view, scribe.foot);
    return [group('scribe', { title: 'Left on to be scribed' }, [rectangle(Math.max(view.middle - WALL + 2, x), top, view.middle, foot, 'hidden')])];
}

function piece({ id, part, title, at, outline, convex, look, pith }: WallPart, view: SectionView, context: SectionContext): Group {
    const place = (points: readonly Point[]) => points.map(([x, y]) => spot(view, x, y)),
        names = { title, part, source: sourceReference(at, context.fileName ?? lastPart) };
    if (look !== 'running on') return cutWood(look === 'sheet', id, names, place(outline), convex.map(place), spot(view, ...pith));
    const [a, b, c, d] = place(outline) as [Point, Point, Point, Point];
    return group(id, names, [polygon([a, b, c, d], 'cut', 'paper'), line(a, c, 'thin'), line(b, d, 'thin')]);
}

function footOf(along: AlongWalls, context: SectionContext, scale: Scale, { view, left: stack, titleAt: y }: PlacedWall, area: Extent): readonly Item[] {
    const left = Math.max(area.left + 14, view.left - stack.depth - 60), right = Math.min(area.right - 20, left + 340 + 330),
        noScale = scale.label === 'not to scale';
    return [
        viewTitle([left, y], (context.sheet ?? 'C-2').replace(/^.*-/u, ''), nameOf(along),
            `${capitalized(wallsNamed(along))}. ${capitalized(scale.label)}.${noScale ? '' : ' Measure the bar: it tells whether the print is true.'}`, 340),
        ...noScale ? [] : [scaleBar([right, y - 3], view.pointsPerTick, 'section', context.job.show.value, 230)],
    ];
}

function blocks(shape: WallShape, context: SectionContext, scale: Scale): readonly StripBlock[] {
    const f = (ticks: number) => sizeWithUnit(ticks, context.job.show.value),
        note = (words: string, i: number) => ({ kind: 'note', mark: String(i + 1), words } as const);
    const field = (left: number, middle: number): readonly Point[] =>
        [[left, middle - 6], [left + SAMPLE_WIDTH, middle - 6], [left + SAMPLE_WIDTH, middle + 6], [left, middle + 6]];
    const has = (look: WallPart['look']) => shape.parts.some(part => part.look === look);
    return [
        { id: 'key', heading: 'KEY', rows: [
            ...has('wood') ? [{ kind: 'sample', words: 'wood cut across the grain',
                draw: (left: number, middle: number) =>
                [...endGrain([field(left, middle)], { pith: [left + 11, middle + 40], spacing: RING_SPACING * 0.75, seed: 'key' }),
                polygon(field(left, middle), 'edge')] } as const] : [],
            ...has('sheet') ? [{ kind: 'sample', words: 'sheet material, cut',
                draw: (left: number, middle: number) =>
                [...hatch(field(left, middle), SHEET_SPACING, true), polygon(field(left, middle), 'edge')] } as const] : [],
            ...has('running on') ? [{ kind: 'sample', words: 'blocking, running on',
                draw: (left: number, middle: number) =>
                { const [a, b, c, d] = field(left, middle) as [Point, Point, Point, Point];
                return [polygon([a, b, c, d], 'edge'), line(a, c, 'thin'), line(b, d, 'thin')]; } } as const] : [],
            { kind: 'sample', words: 'wall', draw: (left, middle) => [polygon(field(left, middle), null, 'tint'), ...hatch(field(left, middle), 4.6, false)] },
            ...shape.scribe ? [{ kind: 'sample', words: 'left on, to be scribed',
                draw: (left: number, middle: number) => [rectangle(left, middle - 5, left + SAMPLE_WIDTH, middle + 5, 'hidden')] } as const] : [],
            ...shape.beams === undefined ? []
                : [{ kind: 'sample', words: 'underside of the beams beyond',
                draw: (left: number, middle: number) => [line([left, middle], [left + SAMPLE_WIDTH, middle], 'beyond')] } as const],
        ] },
        { id: 'follows', heading: 'WHAT FOLLOWS FROM THE PARTS', rows: [
            { kind: 'pair', left: 'wall to face', right: f(shape.face) }, { kind: 'pair', left: 'depth', right: f(shape.depth) },
            ...shape.beams === undefined ? [] : [{ kind: 'pair', left: 'depth of the beams', right: f(shape.beams) } as const],
        ] },
        { id: 'notes', heading: 'NOTES', rows: [
            shape.panel > 0 ? 'Depths are measured down from the panel under the ceiling.' : 'Depths are measured down from the ceiling.',
            'The wall is drawn straight and plumb; lay a straightedge to it before cutting.',
            ...scale.ratio === 1 ? ['Lay your own stock on this sheet before you cut: print it at 100 %.'] : [], 'Figures rule over the scale.',
        ].map(note) },
        { id: 'care', heading: 'CARE',
            rows: ['Look for wires, pipes and ducts in wall and ceiling before driving nails or screws.',
            'Old paint, plaster and texture may hold lead or asbestos: have them tested before you drill or sand.']
            .map(words => ({ kind: 'note', mark: '!', words } as const)) },
    ];
}

function titleBlock(along: AlongWalls, context: SectionContext, id: string, scale: string): TitleBlock {
    const show = context.job.show.value;
    return {
        job: context.job.title?.value ?? 'Coffered ceiling', room: context.room ?? '',
        ...context.job.client === undefined ? {} : { client: context.job.client.value },
        drawing: along.own.kind === 'band' ? ['Section through', 'the band'] : ['Section through', 'a half beam'], detail: wallsNamed(along), scale,
        cutTo: sizeWithUnit(context.job.cutTo.value, show), lengths: show === 'millimeters' ? 'millimeters' : 'feet, inches', sheet: id, of: context.of ?? '',
    };
}

function nameOf({ own }: AlongWalls): string {
    return own.kind === 'band' ? 'Section through the band' : 'Section through a half beam';
}

/** `north wall`, `north, east and south walls`. */
export function wallsNamed({ walls }: AlongWalls): string {
    return `${listed(walls)} wall${walls.length === 1 ? '' : 's'}`;
}

function wallTitle(along: AlongWalls, context: SectionContext): string {
    return [nameOf(along), wallsNamed(along), context.room, context.job.title?.value].filter(Boolean).join(', ');
}

function describe(along: AlongWalls, shape: WallShape, { job }: SectionContext): string {
    const f = (ticks: number) => sizeWithUnit(ticks, job.show.value);
    return `${nameOf(along)}: from the wall to its face ${f(shape.face)}, ${f(shape.depth)} deep.${shape.scribe ? ` ${f(shape.scribe.width)} of its bottom is left on to be scribed.` : ''}`;
}
