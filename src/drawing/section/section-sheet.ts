import { capitalized } from '../../plain/words.ts';
import { group, sheet, text, type Group, type Item, type Sheet } from '../display-list.ts';
import type { Extent } from '../extent.ts';
import { paneGround, paperFor, PAPERS } from '../paper.ts';
import { largestThatFits, pointsPerTick, sectionScales, type Scale } from '../scale.ts';
import { scaleBar, viewTitle } from '../sheet/foot.ts';
import { frame } from '../sheet/frame.ts';
import { strip, type StripBlock } from '../sheet/strip.ts';
import { titleBlock, type OfSheet } from '../sheet/title-block.ts';
import type { SectionContext } from './context.ts';
import { largestOf } from './largest-of.ts';
import type { PartNote } from './notes.ts';
import type { SectionView } from './view.ts';

/** What stands around the picture besides its dimensions: on a sheet a column of notes and a title, in a narrow pane neither. */
export interface Around { readonly notes: boolean; readonly title: boolean }

/** What is said of a section whether it can be drawn or not. */
interface SectionHead {
    readonly title: string;
    /** Of its sheet's title block. */
    readonly block: Pick<OfSheet, 'room' | 'drawing' | 'detail' | 'unnamed'>;
}

/** A section of which its text says enough: of a beam, or of what runs along a wall. */
interface SectionPicture {
    /** In its place at a scale, in points a tick, or null where it does not fit. */
    place(area: Extent, k: number, around: Around): PlacedPicture | null;
    description(scale: Scale): string;
    strip(scale: Scale): readonly StripBlock[];
}
interface PlacedPicture {
    readonly view: SectionView;
    /** `notesBeside`: a column of notes stands at the right. */
    items(notesBeside: boolean): readonly Item[];
    /** What is said of the parts and stands nowhere in the picture. */
    notes(): readonly PartNote[];
    /** What stands under it: its name, of what it is, where it begins, and the right end and greatest length of the bar. */
    foot(area: Extent): Foot;
}
/** `picture`: null where the text does not say enough. */
export interface SectionDrawing { readonly head: SectionHead; readonly picture: SectionPicture | null; readonly context: SectionContext }
export interface Foot {
    readonly name: string; readonly of: string; readonly y: number; readonly left: number; readonly barRight: number; readonly longestBar: number;
}

/** Width of the drawing's title under it. */
export const TITLE = 340;
const UNKNOWN = 'The section cannot be drawn yet: its text leaves out, or gets wrong, a size it needs.';
const UNKNOWN_IN_PANE = 'A size it needs is missing or wrong.';

/** The section on a sheet, at full size where it has room for it. Without a picture the sheet says so and shows none. */
export function sectionSheet({ head: { title, block }, picture, context }: SectionDrawing): Sheet {
    const { job } = context, show = job.show.value, paper = context.paper === undefined ? paperFor(show) : PAPERS[context.paper], id = context.sheet ?? 'C-2';
    const framed = (scale: string) => frame(paper, titleBlock(job, { ...block, scale, sheet: id, of: context.of })), blank = framed('');
    if (picture === null) {
        const words = text([(blank.area.left + blank.area.right) / 2, (blank.area.top + blank.area.foot) / 2], UNKNOWN,
            { size: 12, anchor: 'middle', tone: 'soft' });
        return sheet({ id, title, description: words.text }, paper, [words, blank.group]);
    }
    const around = { notes: true, title: true }, scale = largestThatFits(sectionScales(show), k => picture.place(blank.area, k, around) !== null);
    const placed = picture.place(blank.area, pointsPerTick(scale), around)!, whole = framed(scale.label);
    return sheet({ id, title, description: picture.description(scale) }, paper, [
        ...placed.items(true), ...footOf(placed.foot(whole.area), id, scale, placed.view, context),
        strip(picture.strip(scale), whole.strip), whole.group,
        // the middle of the beam, or the face of the wall, at the ceiling
    ], { pointsPerTick: placed.view.pointsPerTick, origin: [placed.view.middle, placed.view.ceiling] });
}

function footOf({ name, of, y, left, barRight, longestBar }: Foot, id: string, scale: Scale, view: SectionView, { job }: SectionContext): readonly Item[] {
    const noScale = scale.label === 'not to scale';
    return [
        viewTitle([left, y], id.replace(/^.*-/u, ''), name,
            `${of}${capitalized(scale.label)}.${noScale ? '' : ' Measure the bar to check that the print is to scale.'}`, TITLE),
        ...noScale ? [] : [scaleBar([barRight, y - 3], view.pointsPerTick, 'section', job.show.value, longestBar)],
    ];
}

export interface PaneSection extends Sheet {
    /** What no room was found for beside the picture: to be said in words near it. */
    readonly notes: readonly PartNote[];
}

/** Least ground on which wood and figures can be told apart, in points; in a smaller pane it is shown smaller. */
const LEAST = { width: 250, height: 230 };
/** From this width on the notes stand in a column beside the picture. */
const NOTES_FROM = 560;

/** The section alone, without a frame, as large as it goes on a ground of this size in points. */
export function sectionInPane({ head: { title }, picture }: SectionDrawing, size: { readonly width: number; readonly height: number }): PaneSection {
    const ground = paneGround(Math.max(LEAST.width, size.width), Math.max(LEAST.height, size.height));
    if (picture === null) {
        const words = text([ground.width / 2, ground.height / 2], UNKNOWN_IN_PANE, { size: 11, anchor: 'middle', tone: 'soft' });
        return { ...sheet({ id: 'section', title, description: words.text }, ground, [words]), notes: [] };
    }
    const beside = ground.width >= NOTES_FROM, area: Extent = { left: 0, top: 0, right: ground.width, foot: ground.height };
    const placed = largestOf((k, within) => picture.place(within, k, { notes: beside, title: false }), area);
    const description = picture.description({ ratio: 1, label: 'not to scale' });
    return {
        ...sheet({ id: 'section', title, description }, ground, placed.items(beside).map(named)),
        notes: beside ? [] : placed.notes(),
    };
}

/** Only what has a name may be pointed at; the rest is one group of scenery. */
function named(item: Item, i: number): Group {
    return item.kind === 'group' ? item : group(`scenery.${i}`, {}, [item]);
}
