import type { Section } from '../../ceiling/model.ts';
import type { Profile } from '../../job/model.ts';
import { blockOf } from '../../job/parts-of.ts';
import { printLength } from '../../quantity/print-length.ts';
import { capitalized } from '../../plain/words.ts';
import type { Item, Sheet } from '../display-list.ts';
import { drawStack } from '../dimensions/stack.ts';
import type { Extent } from '../extent.ts';
import type { Scale } from '../scale.ts';
import { lastPart, sourceReference } from '../source-reference.ts';
import { aboveOf, ceilingAbove } from './ceiling-above.ts';
import type { SectionContext } from './context.ts';
import { fasteners } from './fasteners.ts';
import { noteColumn, noteInside, sizeInside, type PartNote } from './notes.ts';
import { placeSection, type PlacedSection } from './place.ts';
import { sectionSheet, TITLE, type Foot, type SectionDrawing } from './section-sheet.ts';
import { sectionStrip } from './section-strip.ts';
import { shapeOf, type SectionShape } from './shape.ts';
import { down } from './view.ts';
import { beyond, wood, type Naming } from './wood.ts';
import { partNotes } from './words.ts';

/**
 * The section through a box beam. Everything stands where the job puts it: gaps,
 * grooves and fasteners are drawn in their own size, and a bottom too wide for its channel is drawn too wide.
 */
export function beamSection(section: Section, context: SectionContext): SectionDrawing {
    const { profile } = section, { room, job } = context, shape = shapeOf(section), kind = profile.solid ? 'solid' : 'box';
    return {
        context,
        head: {
            title: [nameOf(profile), profile.label, room, job.title?.value].filter(Boolean).join(', '),
            block: { unnamed: `${capitalized(kind)} beam`, room: room ?? profile.name, drawing: ['Section through', `a ${kind} beam`], detail: profile.label },
        },
        picture: shape && {
            place(area, k, around) {
                const placed = placeSection(section, shape, context, area, k, around);
                return placed && {
                    view: placed.view, items: notesBeside => drawing(section, shape, context, placed, notesBeside),
                    notes: () => notesOf(section, shape, context, placed).beside, foot: within => foot(section, context, placed, within),
                };
            },
            description: scale => descriptionOf(shape, context, scale), strip: scale => sectionStrip(section, shape, context, scale),
        },
    };
}
function nameOf({ solid }: Pick<Profile, 'solid'>): string {
    return `Section through a ${solid ? 'solid' : 'box'} beam`;
}

export function drawSection(section: Section, context: SectionContext): Sheet {
    return sectionSheet(beamSection(section, context));
}

/** What is said of the parts: in the hollow of the beam where there is room, the rest beside it. */
function notesOf(section: Section, shape: SectionShape, context: SectionContext, { view }: PlacedSection): {
    readonly inside: readonly PartNote[]; readonly beside: readonly PartNote[]; readonly size: number; readonly hollow: number;
    readonly pitch: number;
} {
    const said = partNotes(section, shape, context, view);
    if (shape.isSolid) return { ...said, size: 0, hollow: 0, pitch: 0 };
    const hollow = down(view, shape.blocking.thickness);
    const room = shape.innerWidth * view.pointsPerTick - 16;
    const pitch = (down(view, shape.cleat?.top ?? shape.bottom.top) - hollow) / said.inside.length;
    const size = sizeInside(said.inside, room, pitch);
    if (size !== null) return { ...said, size, hollow, pitch };
    return { inside: [], beside: [...said.inside.map(note => ({ ...note, spots: note.spots.slice(-1) })), ...said.beside], size: 0, hollow, pitch };
}

function drawing(section: Section, shape: SectionShape, context: SectionContext, placed: PlacedSection, notesBeside: boolean): readonly Item[] {
    const { view, strings, notes, stringsFrom, foot: breakFoot } = placed;
    const { inside, beside, size, hollow, pitch } = notesOf(section, shape, context, placed);
    const spacerFoot = shape.spacer === null ? hollow : down(view, shape.blocking.thickness + shape.spacer.height);
    const right = strings.right === null ? [] : drawStack(strings.right, view.right);
    const dimensions = [...drawStack(strings.left, view.left), ...right, ...drawStack(strings.foot, stringsFrom)];
    return [
        beyond(shape, view, { crossed: context.crossed, bandEdge: context.bandEdge ?? null }),
        ...ceilingAbove(view, aboveOf(context.covering, shape.panel), breakFoot),
        ...wood(shape, view, namingFor(section.profile, context)),
        ...fasteners(section.profile, shape, view),
        ...(notesBeside ? noteColumn(beside.filter(note => note.spots.length > 0), notes, dimensions) : []),
        ...dimensions,
        ...inside.map((note, i) => noteInside(note, view.middle, hollow + pitch * i, pitch, size, y => (y < spacerFoot ? 'wash' : 'paper'))),
    ];
}

function namingFor(profile: Profile, context: SectionContext): Naming {
    const fileName = context.fileName ?? lastPart;
    return (part, title, hand) => ({ title, part, source: sourceReference(((hand === 1 && part === 'side' ? profile.otherSide : undefined) ?? blockOf(profile, part) ?? profile).at, fileName) });
}

function foot({ profile }: Section, { lines }: SectionContext, { view, titleAt: y, strings }: PlacedSection, area: Extent): Foot {
    const left = Math.max(area.left + 14, view.left - strings.left.depth), right = Math.max(view.right, left + TITLE + 230);
    const of = lines.length === 0 ? '' : `Line${lines.length === 1 ? '' : 's'} ${lines.join(', ')}. `;
    return { name: nameOf(profile), of, y, left, barRight: right, longestBar: Math.min(300, right - left - TITLE - 80) };
}

function descriptionOf(shape: SectionShape, context: SectionContext, scale: Scale): string {
    const f = (ticks: number) => printLength(ticks, context.job.show.value);
    const { blocking, side, other, bottom, cleat, spacer, trim } = shape;
    return [
        `Drawn ${scale.label === 'not to scale' ? '' : 'at '}${scale.label}.`,
        `The beam is ${f(shape.outerWidth)} wide and ${f(shape.depth)} deep.`,
        ...shape.isSolid ? [`It is one timber${trim ? ';' : '.'}`] : [
        blocking.isWrapped ? `It wraps something ${f(blocking.width)} wide that hangs down ${f(blocking.thickness)};` : `Blocking ${f(blocking.thickness)} by ${f(blocking.width)} against the ceiling;`,
        `${other ? 'side' : 'sides'} ${f(side.thickness)} by ${f(side.height)}, held down ${f(side.top)};`,
        ...other ? [`other side ${f(other.thickness)} by ${f(other.height)}, held down ${f(other.top)};`] : [],
        ...(spacer ? [`spacers ${f(spacer.height)} high between them;`] : []),
        ...(cleat ? [`cleats ${f(cleat.thickness)} by ${f(cleat.foot - cleat.top)}, their tops ${f(cleat.top)} down;`] : []),
        `bottom ${f(bottom.thickness)} by ${f(bottom.width)} ${shape.channel === null ? 'under the sides' : `${bottom.place === 'in-rabbets' ? 'let into' : 'between'} the sides, play ${f(shape.channel - bottom.width)} in all`}${trim ? ';' : '.'}`,
        ],
        ...(trim ? [`ceiling trim ${f(trim.thickness)} by ${f(trim.height)}.`] : []),
    ].join(' ');
}
