import type { Section } from '../../ceiling/model.ts';
import type { Profile } from '../../job/model.ts';
import type { Source } from '../../provenance/source.ts';
import { printLength } from '../../quantity/print-length.ts';
import type { Part } from '../../takeoff/model.ts';
import { sheet, text, type Item, type Sheet } from '../display-list.ts';
import { drawStack } from '../dimensions/stack.ts';
import type { Extent } from '../extent.ts';
import { sizeWithUnit } from '../figures.ts';
import { paperFor, PAPERS } from '../paper.ts';
import { largestThatFits, pointsPerTick, sectionScales, type Scale } from '../scale.ts';
import { frame, type TitleBlock } from '../sheet/frame.ts';
import { scaleBar, viewTitle } from '../sheet/foot.ts';
import { strip } from '../sheet/strip.ts';
import { lastPart, sourceReference } from '../source-reference.ts';
import { aboveOf, ceilingAbove } from './ceiling-above.ts';
import type { SectionContext } from './context.ts';
import { fasteners } from './fasteners.ts';
import { noteColumn, noteInside, sizeInside, type PartNote } from './notes.ts';
import { placeSection, type PlacedSection } from './place.ts';
import { sectionStrip } from './section-strip.ts';
import { shapeOf, type SectionShape } from './shape.ts';
import { down } from './view.ts';
import { beyond, wood, type Naming } from './wood.ts';
import { partNotes } from './words.ts';
import { capitalized } from '../../plain/words.ts';

/**
 * The section through a box beam, at full size where the sheet has room for it. Everything stands where the job puts it: gaps,
 * grooves and fasteners are drawn in their own size, and a bottom too wide for its channel is drawn too wide.
 * Where the text does not say enough for a section, the sheet says so and shows none.
 */
export function drawSection(section: Section, context: SectionContext): Sheet {
    const show = context.job.show.value;
    const paper = context.paper === undefined ? paperFor(show) : PAPERS[context.paper];
    const shape = shapeOf(section);
    const id = context.sheet ?? 'C-2';
    const title = titleOf(section, context);
    const blank = frame(paper, titleBlock(section, context, id, ''));
    if (shape === null) {
        const { area } = blank;
        const words = text([(area.left + area.right) / 2, (area.top + area.foot) / 2], 'The section cannot be drawn yet: its text leaves out, or gets wrong, a size it needs.', { size: 12, anchor: 'middle', tone: 'soft' });
        return sheet({ id, title, description: words.text }, paper, [words, blank.group]);
    }
    const scale = largestThatFits(sectionScales(show), k => placeSection(section, shape, context, blank.area, k) !== null);
    const placed = placeSection(section, shape, context, blank.area, pointsPerTick(scale))!;
    const whole = frame(paper, titleBlock(section, context, id, scale.label));
    return sheet({ id, title, description: descriptionOf(shape, context, scale) }, paper, [
        ...drawing(section, shape, context, placed), ...foot(context, scale, placed, whole.area),
        strip(sectionStrip(section, shape, context, scale), whole.strip), whole.group,
        // the middle of the beam, at the ceiling
    ], { pointsPerTick: placed.view.pointsPerTick, origin: [placed.view.middle, placed.view.ceiling] });
}

/** What is said of the parts: in the hollow of the beam where there is room, the rest beside it. */
export function notesOf(section: Section, shape: SectionShape, context: SectionContext, { view }: PlacedSection): {
    readonly inside: readonly PartNote[]; readonly beside: readonly PartNote[]; readonly size: number; readonly hollow: number;
    readonly pitch: number;
} {
    const said = partNotes(section, shape, context, view);
    const hollow = down(view, shape.blocking.thickness);
    const room = shape.innerWidth * view.pointsPerTick - 16;
    const pitch = (down(view, shape.cleat?.top ?? shape.bottom.top) - hollow) / said.inside.length;
    const size = sizeInside(said.inside, room, pitch);
    if (size !== null) return { ...said, size, hollow, pitch };
    return { inside: [], beside: [...said.inside.map(note => ({ ...note, spots: note.spots.slice(-1) })), ...said.beside], size: 0, hollow, pitch };
}

/** `notesBeside`: a column of notes stands at the right. */
export function drawing(section: Section, shape: SectionShape, context: SectionContext, placed: PlacedSection, notesBeside = true): readonly Item[] {
    const { view, strings, notes, stringsFrom, foot: breakFoot } = placed;
    const { inside, beside, size, hollow, pitch } = notesOf(section, shape, context, placed);
    const spacerFoot = shape.spacer === null ? hollow : down(view, shape.blocking.thickness + shape.spacer.height);
    return [
        beyond(shape, view, { crossed: context.crossed, bandEdge: context.bandEdge ?? null }),
        ...ceilingAbove(view, aboveOf(context.covering, shape.panel), breakFoot),
        ...wood(shape, view, namingFor(section.profile, context)),
        ...fasteners(section.profile, shape, view),
        // before the dimensions, whose figures interrupt the leaders that run through them
        ...(notesBeside ? noteColumn(beside.filter(note => note.spots.length > 0), notes) : []),
        ...drawStack(strings.left, view.left),
        ...(strings.right === null ? [] : drawStack(strings.right, view.right)),
        ...drawStack(strings.foot, stringsFrom),
        ...inside.map((note, i) => noteInside(note, view.middle, hollow + pitch * i, pitch, size, y => (y < spacerFoot ? 'wash' : 'paper'))),
    ];
}

function namingFor(profile: Profile, context: SectionContext): Naming {
    const fileName = context.fileName ?? lastPart;
    const places: Readonly<Record<Part, Source | undefined>> = {
        blocking: profile.blocking?.at, spacer: profile.spacers?.at, side: profile.sides?.at, cleat: profile.cleats?.at,
        bottom: profile.bottom?.at, trim: profile.trim?.at, band: undefined,
    };
    return (part, title) => {
        const at = places[part] ?? profile.at;
        return { title, part, source: sourceReference(at, fileName) };
    };
}

/** Width of the drawing's title under it. */
const TITLE = 340;

function foot(context: SectionContext, scale: Scale, { view, titleAt: y, strings }: PlacedSection, area: Extent): readonly Item[] {
    const where = context.lines.length === 0 ? '' : `Line${context.lines.length === 1 ? '' : 's'} ${context.lines.join(', ')}. `;
    const noScale = scale.label === 'not to scale';
    const left = Math.max(area.left + 14, view.left - strings.left.depth);
    const right = Math.max(view.right, left + TITLE + 230);
    return [
        viewTitle([left, y], (context.sheet ?? 'C-2').replace(/^.*-/u, ''), 'Section through a box beam', `${where}${capitalized(scale.label)}.${noScale ? '' : ' Measure the bar: it tells whether the print is true.'}`, TITLE),
        ...(noScale ? [] : [scaleBar([right, y - 3], view.pointsPerTick, 'section', context.job.show.value, Math.min(300, right - left - TITLE - 80))]),
    ];
}

function titleBlock(section: Section, context: SectionContext, sheet: string, scale: string): TitleBlock {
    const show = context.job.show.value;
    return {
        job: context.job.title?.value ?? 'Box beam', room: context.room ?? section.profile.name,
        ...(context.job.client === undefined ? {} : { client: context.job.client.value }),
        drawing: ['Section through', 'a box beam'], detail: section.profile.label, scale,
        cutTo: sizeWithUnit(context.job.cutTo.value, show),
        lengths: show === 'millimeters' ? 'millimeters' : 'feet, inches', sheet, of: context.of ?? '',
    };
}

export function titleOf(section: Section, context: SectionContext): string {
    return ['Section through a box beam', section.profile.label, context.room, context.job.title?.value].filter(Boolean).join(', ');
}

export function descriptionOf(shape: SectionShape, context: SectionContext, scale: Scale): string {
    const f = (ticks: number) => printLength(ticks, context.job.show.value);
    const { blocking, side, bottom, cleat, spacer, trim } = shape;
    return [
        `Drawn ${scale.label === 'full size' || scale.label === 'half size' ? `at ${scale.label}` : scale.label === 'not to scale' ? scale.label : `at ${scale.label}`}.`,
        `The beam is ${f(shape.outerWidth)} wide and ${f(shape.depth)} deep.`,
        blocking.isWrapped ? `It wraps something ${f(blocking.width)} wide that hangs down ${f(blocking.thickness)};` : `Blocking ${f(blocking.thickness)} by ${f(blocking.width)} against the ceiling;`,
        `sides ${f(side.thickness)} by ${f(side.height)}, held down ${f(side.top)};`,
        ...(spacer ? [`spacers ${f(spacer.height)} high between them;`] : []),
        ...(cleat ? [`cleats ${f(cleat.thickness)} by ${f(cleat.foot - cleat.top)}, their tops ${f(cleat.top)} down;`] : []),
        `bottom ${f(bottom.thickness)} by ${f(bottom.width)} ${shape.channel === null ? 'under the sides' : `${bottom.place === 'in-rabbets' ? 'let into' : 'between'} the sides, play ${f(shape.channel - bottom.width)} in all`}${trim ? ';' : '.'}`,
        ...(trim ? [`ceiling trim ${f(trim.thickness)} by ${f(trim.height)}.`] : []),
    ].join(' ');
}
