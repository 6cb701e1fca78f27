import type { Ceiling } from '../../ceiling/model.ts';
import type { Show } from '../../quantity/print-length.ts';
import type { Stack } from '../dimensions/stack.ts';
import type { Extent } from '../extent.ts';
import { FOOT_HEIGHT } from '../sheet/foot.ts';
import { balloonRows, INSIDE_RADIUS, balloonLength, namedOutside, type BalloonRows } from './balloons.ts';
import { runsAskew } from './line-ends.ts';
import { planStack } from './plan-dimensions.ts';
import type { PlanView } from './view.ts';
import { besideDepth, besideWalls, type BesideWall } from './wall-dimensions.ts';
import { wallThickness } from './walls.ts';

export interface PlacedPlan {
    readonly view: PlanView;
    readonly top: Stack; readonly left: Stack;
    readonly across: BalloonRows; readonly down: BalloonRows;
    /** What stands beside each wall on its own. */
    readonly beside: readonly BesideWall[];
    /** So far off the walls' inner face stands no string. */
    readonly outsideStrings: number;
    /** From the walls' outer face to the balloons of A, B … */
    readonly toBalloon: number;
    /** At this scale there is room on the beams for hidden lines. */
    readonly hiddenLines: boolean;
    /** Where the title, scale bar and north arrow begin. */
    readonly footFrom: number;
}

/** How wide a bottom is drawn, in points, so that there is room for hidden lines on it; points are larger in a pane. */
const HIDDEN_FROM = { onPaper: 10, inPane: 6 };
const PAD = 14;
/** Center lines run on past the walls by this. */
export const PAST_WALL = 9;
const TO_BALLOON = 26;
/** From the outermost string to the balloons of 1, 2 … */
export const OVER_STRINGS = 6;

function narrowestBottom(ceiling: Ceiling): number {
    return Math.min(Infinity, ...ceiling.lines.map(line => line.section.bottomWidth.ticks));
}

/**
 * `few`: without the string of centers, the others summed up, all closer together: for a pane with little room. `least`: points that a figure of the
 * strings has at least.
 */
export interface PlaceOptions { readonly few?: boolean; readonly least?: number }

/** The plan's place on the sheet at a scale, or null where it does not fit. */
export function placePlan(ceiling: Ceiling, show: Show, area: Extent, k: number, options: PlaceOptions = {}): PlacedPlan | null {
    const { spareX, spareY, place } = fitPlan(ceiling, show, area, k, options);
    return spareX < 0 || spareY < 0 ? null : place();
}

/** How much of the sheet the plan leaves at a scale, in points (less than nothing where it does not fit), and its place there. */
export interface FittedPlan { readonly spareX: number; readonly spareY: number; place(): PlacedPlan }

export function fitPlan(ceiling: Ceiling, show: Show, area: Extent, k: number, { few = false, least = 0 }: PlaceOptions = {}): FittedPlan {
    const wall = wallThickness(k);
    const [pad, toBalloon, clear] = few ? [4, 10, 10] : [PAD, TO_BALLOON, 22];
    const beside = besideWalls(ceiling, show, k), aroundWalls = beside.length === 0 ? wall : besideDepth(beside, k) + 2;
    const askew = ceiling.lines.filter(runsAskew).map(line => balloonLength(line.name, INSIDE_RADIUS));
    const stacks = (view: PlanView, leftClear: number) => {
        const left = planStack(ceiling, 'down', show, y => view.top + y * k, leftClear, few, least);
        // figures of the left strings set outside stand above the north wall: the strings there begin above them
        const rise = Math.max(0, ...left.strings.map(string => string.after));
        const top = planStack(ceiling, 'across', show, x => view.left + x * k, Math.max(wall + clear - 2, rise + 6, beside.length === 0 ? 0 : aroundWalls + 5), few, least);
        return { left, top };
    };
    const leftClear = Math.max(wall + clear, beside.length === 0 ? 0 : aroundWalls + 5);
    const { left, top } = stacks({ pointsPerTick: k, left: 0, top: 0 }, leftClear);
    // of lines that run askew the names stand outside whatever is beside any wall
    const outsideStrings = Math.max(aroundWalls, left.depth, top.depth) + 2;
    const outer = askew.length > 0 ? outsideStrings + Math.max(...askew) : beside.length > 0 ? aroundWalls : 0;
    const across = balloonRows(namedOutside(ceiling, 'north-south'), k);
    const down = balloonRows(namedOutside(ceiling, 'east-west'), k);
    const before = Math.max(left.depth, outer, ...top.strings.map(string => string.before)) + pad;
    const after = Math.max(wall + (down.rows > 0 ? toBalloon + down.depth : 0), outer, ...top.strings.map(string => string.after)) + pad;
    const above = Math.max(outer, top.depth + OVER_STRINGS + across.depth) + pad;
    const below = Math.max(wall + PAST_WALL, outer, ...left.strings.map(string => string.before)) + 8;
    const spareX = area.right - area.left - before - after - ceiling.width * k;
    const spareY = area.foot - area.top - above - below - FOOT_HEIGHT - ceiling.length * k;
    const place = (): PlacedPlan => {
        const view: PlanView = { pointsPerTick: k, left: area.left + before + spareX / 2, top: area.top + above + spareY * 0.45 };
        return {
            view, ...stacks(view, leftClear), across, down, beside, outsideStrings, toBalloon,
            hiddenLines: narrowestBottom(ceiling) * k >= (least > 0 ? HIDDEN_FROM.inPane : HIDDEN_FROM.onPaper),
            footFrom: view.top + ceiling.length * k + below + Math.min(16, spareY * 0.2),
        };
    };
    return { spareX, spareY, place };
}
