import type { Section } from '../../ceiling/model.ts';
import { group, line, polygon, rectangle, type Group, type Item, type Point } from '../display-list.ts';
import { drawStack } from '../dimensions/stack.ts';
import type { Extent } from '../extent.ts';
import { sizeWithUnit } from '../figures.ts';
import { hatch } from '../fill/hatch.ts';
import type { Scale } from '../scale.ts';
import { SAMPLE_WIDTH, type StripBlock } from '../sheet/strip.ts';
import { lastPart, sourceReference } from '../source-reference.ts';
import { capitalized, listed } from '../../plain/words.ts';
import { aboveOf, ceilingAbove } from './ceiling-above.ts';
import type { SectionContext } from './context.ts';
import { noteColumn } from './notes.ts';
import { ACROSS_GRAIN, blocking, sample, SHEET_MATERIAL, stretch, WALL as WALL_KEY } from './samples.ts';
import { TITLE, type Foot, type SectionDrawing } from './section-sheet.ts';
import { down, spot, type SectionView } from './view.ts';
import { placeWall, WALL, type PlacedWall } from './wall-place.ts';
import { isDrawable, wallShape, type AlongWalls, type WallPart, type WallShape } from './wall-shape.ts';
import { wallNotes } from './wall-words.ts';
import { cutWood } from './wood.ts';

/** The section of what runs along a wall, seen along the wall: a band, or half a beam with the strips that its bottom bears on. */
export function wallSection(along: AlongWalls, beams: Section | undefined, context: SectionContext): SectionDrawing {
    const { room, job } = context, shape = wallShape(along, beams), what = along.own.kind === 'band' ? 'the band' : 'a half beam';
    return {
        context,
        head: {
            title: [nameOf(along), wallsNamed(along), room, job.title?.value].filter(Boolean).join(', '),
            block: { unnamed: 'Coffered ceiling', room: room ?? '', drawing: ['Section through', what], detail: wallsNamed(along) },
        },
        picture: !isDrawable(shape) ? null : {
            place(area, k, around) {
                const placed = placeWall(shape, context, area, k, around);
                return placed && {
                    view: placed.view, items: notesBeside => drawing(along, shape, beams, context, placed, notesBeside),
                    notes: () => wallNotes(along, shape, beams, context, placed.view), foot: within => foot(along, placed, within),
                };
            },
            description: () => describe(along, shape, context), strip: scale => blocks(shape, context, scale),
        },
    };
}

function drawing(along: AlongWalls, shape: WallShape, beams: Section | undefined, context: SectionContext,
    { view, left, foot, stringsFrom, breakFoot, notes }: PlacedWall, notesBeside: boolean): readonly Item[] {
    const end = view.right, dimensions = [...drawStack(left, view.left), ...drawStack(foot, stringsFrom)];
    const seen = shape.beams !== undefined
        && shape.beams > 0 ? [line([view.middle + Math.min(shape.face, shape.reach) * view.pointsPerTick, down(view, shape.beams)],
        [end, down(view, shape.beams)], 'beyond')] : [];
    return [
        group('beyond', { title: 'Beyond the cut' }, seen),
        ...ceilingAbove(view, aboveOf(context.covering, shape.panel), breakFoot),
        wall(view, breakFoot),
        ...scribed(shape, view),
        ...shape.parts.map(part => piece(part, view, context)),
        ...notesBeside ? noteColumn(wallNotes(along, shape, beams, context, view).filter(note => note.spots.length > 0), notes, dimensions) : [],
        ...dimensions,
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

function foot(along: AlongWalls, { view, left: stack, titleAt: y }: PlacedWall, area: Extent): Foot {
    const left = Math.max(area.left + 14, view.left - stack.depth - 60);
    return { name: nameOf(along), of: `${capitalized(wallsNamed(along))}. `, y, left, barRight: Math.min(area.right - 20, left + TITLE + 330), longestBar: 230 };
}

function blocks(shape: WallShape, context: SectionContext, scale: Scale): readonly StripBlock[] {
    const f = (ticks: number) => sizeWithUnit(ticks, context.job.show.value),
        note = (words: string, i: number) => ({ kind: 'note', mark: String(i + 1), words } as const);
    const has = (look: WallPart['look']) => shape.parts.some(part => part.look === look);
    return [
        { id: 'key', heading: 'KEY', rows: [
            ...has('wood') ? [ACROSS_GRAIN] : [], ...has('sheet') ? [SHEET_MATERIAL] : [], ...has('running on') ? [blocking('blocking, running on')] : [], WALL_KEY,
            ...shape.scribe
                ? [sample('left on, to be scribed', (left, middle) => [rectangle(left, middle - 5, left + SAMPLE_WIDTH, middle + 5, 'hidden')])] : [],
            ...shape.beams === undefined ? [] : [stretch('underside of the beams beyond', 'beyond')],
        ] },
        { id: 'follows', heading: 'WHAT FOLLOWS FROM THE PARTS', rows: [
            { kind: 'pair', left: 'wall to face', right: f(shape.face) }, { kind: 'pair', left: 'depth', right: f(shape.depth) },
            ...shape.beams === undefined ? [] : [{ kind: 'pair', left: 'depth of the beams', right: f(shape.beams) } as const],
        ] },
        { id: 'notes', heading: 'NOTES', rows: [
            shape.panel > 0 ? 'Depths are measured down from the panel under the ceiling.' : 'Depths are measured down from the ceiling.',
            'The wall is drawn straight and plumb; lay a straightedge to it before cutting.',
            ...scale.ratio === 1 ? ['Lay your own stock on this sheet before you cut: print it at 100 %.'] : [], 'Use the figures; do not scale.',
        ].map(note) },
        { id: 'care', heading: 'CARE',
            rows: ['Look for wires, pipes and ducts in wall and ceiling before driving nails or screws.',
            'Old paint, plaster and texture may hold lead or asbestos: have them tested before you drill or sand.']
            .map(words => ({ kind: 'note', mark: '!', words } as const)) },
    ];
}

function nameOf({ own }: AlongWalls): string {
    return own.kind === 'band' ? 'Section through the band' : own.section.profile.solid ? 'Section through a timber along the wall' : 'Section through a half beam';
}

/** `north wall`, `north, east and south walls`. */
export function wallsNamed({ walls }: AlongWalls): string {
    return `${listed(walls)} wall${walls.length === 1 ? '' : 's'}`;
}

function describe(along: AlongWalls, shape: WallShape, { job }: SectionContext): string {
    const f = (ticks: number) => sizeWithUnit(ticks, job.show.value);
    return `${nameOf(along)}: from the wall to its face ${f(shape.face)}, ${f(shape.depth)} deep.${shape.scribe ? ` ${f(shape.scribe.width)} ${along.own.kind === 'half-beam' && along.own.section.profile.solid ? '' : 'of its bottom '}is left on to be scribed.` : ''}`;
}
