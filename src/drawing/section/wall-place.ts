import type { Ticks } from '../../quantity/ticks.ts';
import { layStack, type Stack } from '../dimensions/stack.ts';
import type { DimensionString } from '../dimensions/dimension-string.ts';
import type { Extent } from '../extent.ts';
import { sizeFigure } from '../figures.ts';
import { FOOT_HEIGHT, FOOT_UNDER } from '../sheet/foot.ts';
import type { SectionContext } from './context.ts';
import type { Around } from './section-sheet.ts';
import { across, down, type SectionView } from './view.ts';
import type { WallShape } from './wall-shape.ts';

/** How thick the wall is shown, in points. Its real thickness is not known and does not matter. */
export const WALL = 30;

export interface PlacedWall {
    /** Its middle is the face of the wall. */
    readonly view: SectionView;
    readonly left: Stack; readonly foot: Stack;
    readonly stringsFrom: number; readonly breakFoot: number; readonly titleAt: number;
    /** The column for the notes at the right. */
    readonly notes: Extent;
}

const SIZE = 9.2, CLEAR = 16, PAD = 14, PAD_IN_PANE = 5;
const UNDER = { strings: 18, breaks: 14 };
const STUB = { most: 90, least: 40 };
const NOTES = { most: 205, least: 150 };
const ABOVE = 34;

/** The drawing's place at a scale, or null where it does not fit. */
export function placeWall(shape: WallShape, context: SectionContext, area: Extent, k: number, around: Around): PlacedWall | null {
    const board = (Math.max(0, context.covering?.thickness?.value ?? 0) + shape.panel) * k;
    const lowest = Math.max(shape.depth, shape.beams ?? 0, ...shape.parts.map(({ y }) => y[1])) * k;
    const unplaced: SectionView = { pointsPerTick: k, middle: 0, ceiling: 0, left: 0, right: 0, top: 0 };
    const rough = strings(shape, context, unplaced), pad = around.title ? PAD : PAD_IN_PANE, footHeight = around.title ? FOOT_HEIGHT : pad;
    const sideways = 2 * pad + rough.left.depth + WALL + shape.reach * k + (around.notes ? 24 + NOTES.least : 0);
    const spare = area.right - area.left - sideways - STUB.least, upward = area.foot - area.top - pad - lowest - UNDER.strings - rough.foot.depth - footHeight;
    if (spare < 0 || upward < board + ABOVE) return null;
    const stub = Math.min(STUB.most, STUB.least + spare * 0.2), notesWidth = around.notes ? Math.min(NOTES.most, NOTES.least + spare * 0.5) : 0;
    const above = Math.min(upward, board + ABOVE + 16), slackY = upward - above;
    const slackX = area.right - area.left - sideways + (around.notes ? NOTES.least : 0) - notesWidth - stub;
    const left = area.left + pad + slackX / 2 + rough.left.depth, right = left + WALL + shape.reach * k + stub, top = area.top + pad + slackY * 0.4;
    const view: SectionView = { pointsPerTick: k, middle: left + WALL, ceiling: top + above, left, right, top };
    const stringsFrom = view.ceiling + lowest + UNDER.strings, column = right + 24;
    return {
        view, ...strings(shape, context, view), stringsFrom, breakFoot: view.ceiling + lowest + UNDER.breaks,
        titleAt: stringsFrom + rough.foot.depth + FOOT_HEIGHT - FOOT_UNDER + Math.min(18, slackY * 0.3),
        notes: { left: column, right: column + notesWidth, top: top + 4, foot: stringsFrom + rough.foot.depth },
    };
}

function strings(shape: WallShape, { job }: SectionContext, view: SectionView): { readonly left: Stack; readonly foot: Stack } {
    const string = (id: string, title: string, marks: readonly Ticks[], place: (ticks: Ticks) => number): readonly (readonly DimensionString[])[] => {
        const rising = [...new Set(marks)].sort((a, b) => a - b);
        return rising.length < 2 ? [] : [[{ id: `dimensions.${id}`, title, stops: rising.map(place),
            figures: rising.slice(1).map((mark, i) => sizeFigure(mark - rising[i]!, job.show.value)) }]];
    };
    const y = (ticks: Ticks) => down(view, ticks), x = (ticks: Ticks) => across(view, ticks), { parts, depth, face, beams, reach } = shape;
    const upright = (ids: readonly string[]): readonly Ticks[] => [0, ...parts.filter(({ id }) => ids.includes(id)).flatMap(part => part.y)]
        .filter(ticks => ticks >= 0);
    const lips = shape.rabbet?.edge === 'lower'
        ? [shape.rabbet.face === 'back' ? face - widthOf(shape, 'side') + shape.rabbet.width.ticks : face - shape.rabbet.width.ticks] : [];
    const trim = reach > face && parts.some(({ id }) => id === 'trim');
    const widths = [0, ...parts.filter(({ id }) => id === 'side' || id === 'band').flatMap(part => part.x), ...lips, ...trim ? [reach] : []],
        first = Math.min(...widths.filter(mark => mark > 0));
    // what the first string says by itself is not said again
    const outer = ([['width', 'From the wall to its face', face], ['bottom', 'Width of the bottom', widthOf(shape, 'bottom')]] as const)
        .filter(([id, , mark]) => mark > 0 && mark !== first && (id === 'width' || mark !== face)).sort((a, b) => a[2] - b[2]);
    return {
        left: layStack('left', [
            ...string('side', 'Down to its upper edge, and how high it is', upright(['band', 'side']), y),
            ...string('parts', 'Blocking, hollow, cleat, bottom', upright(['blocking', 'cleat', 'bottom']), y),
            ...beams !== undefined && beams !== depth
                && beams > 0 ? string('beams', 'Undersides of the beams', [Math.min(beams, depth), Math.max(beams, depth)], y) : [],
            ...string('depth', 'Depth', [0, depth], y),
        ], SIZE, CLEAR),
        foot: layStack('foot', [
            ...string('widths', 'Widths, from the wall', widths, x),
            ...outer.flatMap(([id, title, mark]) => string(id, title, [0, mark], x)),
        ], SIZE, CLEAR),
    };
}

function widthOf({ parts }: WallShape, id: string): Ticks {
    const part = parts.find(each => each.id === id);
    return part ? part.x[1] - part.x[0] : 0;
}
