import type { Section } from '../../ceiling/model.ts';
import type { Extent } from '../extent.ts';
import { FOOT_HEIGHT, FOOT_UNDER } from '../sheet/foot.ts';
import type { SectionContext } from './context.ts';
import { screwAbove } from './fasteners.ts';
import type { Around } from './section-sheet.ts';
import { sectionDimensions } from './section-dimensions.ts';
import { reachOf, type SectionShape } from './shape.ts';
import { across, down, type SectionView } from './view.ts';

export interface PlacedSection {
    readonly view: SectionView;
    readonly strings: ReturnType<typeof sectionDimensions>;
    /** Middle of the title's ring, under the strings. */
    readonly titleAt: number;
    /** The column for the notes at the right. */
    readonly notes: Extent;
    /** Where the strings below the beam begin, and where the break lines end. */
    readonly stringsFrom: number;
    readonly foot: number;
}

const PAD = 14, PAD_IN_PANE = 5;
/** From the lowest edge to where the strings below begin, and to where the break lines end. */
const UNDER = { strings: 4, breaks: 14 };
/** Ceiling shown on either side of the beam. */
const STUB = { most: 70, least: 30, leastInPane: 12 };
const NOTES = { most: 205, least: 150 };
/** Shown above the ceiling's board: enough for a break line and a screw's shank, at most the whole screw. */
const LEAST_ABOVE = 34;

/** The drawing's place on the sheet at a scale, or null where it does not fit. */
export function placeSection(
    section: Section, shape: SectionShape, context: SectionContext, area: Extent, k: number, around: Around,
): PlacedSection | null {
    const board = (Math.max(0, context.covering?.thickness?.value ?? 0) + shape.panel) * k;
    const reach = reachOf(shape);
    const lowest = Math.max(reach.down, context.bandEdge ?? 0) * k;
    const half = reach.aside * k;
    const least = Math.max(board, reach.up * k) + LEAST_ABOVE;
    const unplaced: SectionView = { pointsPerTick: k, middle: 0, ceiling: 0, left: 0, right: 0, top: 0 };
    const rough = sectionDimensions(shape, context.job.show.value, { across: t => across(unplaced, t), down: t => down(unplaced, t) });
    const leastStub = around.title ? STUB.least : STUB.leastInPane;
    const leastNotes = around.notes ? NOTES.least : 0, pad = around.title ? PAD : PAD_IN_PANE, footHeight = around.title ? FOOT_HEIGHT : pad;
    const sideways = pad + rough.left.depth + 2 * half + (rough.right?.depth ?? 0) + (around.notes ? 24 : 0) + pad;
    const spare = area.right - area.left - sideways - 2 * leastStub - leastNotes;
    const below = lowest + UNDER.strings + rough.foot.depth + footHeight;
    const upward = area.foot - area.top - pad - below;
    // a figure set outside its stretch stands above the ceiling's line: it needs no more than what is shown there anyway
    if (spare < 0 || upward < least) return null;
    const stub = Math.min(STUB.most, leastStub + spare * 0.2);
    const notesWidth = around.notes ? Math.min(NOTES.most, NOTES.least + spare * 0.5) : 0;
    const above = Math.min(upward, Math.max(least, screwAbove(section.profile, shape) * k + 16));
    const slackX = area.right - area.left - sideways - 2 * stub - notesWidth;
    const slackY = upward - above;
    const left = area.left + pad + slackX / 2 + rough.left.depth;
    const right = left + 2 * stub + 2 * half;
    const top = area.top + pad + slackY * 0.4;
    const view: SectionView = { pointsPerTick: k, middle: (left + right) / 2, ceiling: top + above, left, right, top };
    const stringsFrom = view.ceiling + lowest + UNDER.strings;
    const column = right + (rough.right?.depth ?? 0) + 24;
    return {
        view, stringsFrom, titleAt: stringsFrom + rough.foot.depth + FOOT_HEIGHT - FOOT_UNDER + Math.min(18, slackY * 0.3),
        foot: view.ceiling + lowest + UNDER.breaks,
        strings: sectionDimensions(shape, context.job.show.value, { across: t => across(view, t), down: t => down(view, t) }),
        notes: { left: column, right: column + notesWidth, top: top + 4, foot: stringsFrom + rough.foot.depth },
    };
}
