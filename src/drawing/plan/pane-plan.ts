import { cutSizeOf } from '../../ceiling/coffer-size.ts';
import type { Ceiling } from '../../ceiling/model.ts';
import { TICKS_PER_FOOT } from '../../quantity/ticks.ts';
import type { TakeOff } from '../../takeoff/model.ts';
import { group, polygon, rectangle, sheet, type Group, type Item, type Point, type Sheet } from '../display-list.ts';
import type { Extent } from '../extent.ts';
import { figure } from '../figures.ts';
import { paneGround, POINTS_PER_INCH } from '../paper.ts';
import { FOOT_HEIGHT, FOOT_UNDER, northArrow, scaleBar } from '../sheet/foot.ts';
import { placedFixtures } from './fixtures.ts';
import { isBox } from './labels.ts';
import { fitPlan, placePlan, type FittedPlan, type PlacedPlan, type PlaceOptions } from './place.ts';
import { descriptionOf, planLayers } from './plan.ts';
import { extentOf, toX, toY } from './view.ts';

/** The layers that may be left out, by the names of their groups: `layer.sides` and so on. */
export const PLAN_LAYERS = ['blocking', 'bottoms', 'sides', 'trim', 'band', 'hidden', 'joists', 'lines', 'coffers', 'lengths', 'fixtures', 'splices', 'dimensions'] as const;
export type PlanLayer = (typeof PLAN_LAYERS)[number];

/** Least ground that a plan with its strings can be read on, in points; in a smaller pane it is shown smaller. */
const LEAST = 220;
/** On less ground than this the string of centers is left out. */
const ENOUGH = 430;

/** In points; `least`: that words have at least, those that there is no room for then are left out. */
interface PaneSize { readonly width: number; readonly height: number; readonly least?: number }

/** The plan alone, without a frame, as large as it goes in a pane of this size in points. */
export function drawPanePlan(
    ceiling: Ceiling, takeOff: TakeOff, { width, height, least = 0 }: PaneSize,
): Sheet & { readonly placed: PlacedPlan } {
    const { room } = ceiling;
    const show = room.job.show.value;
    const grow = Math.max(1, LEAST / width, LEAST * 0.75 / height);
    const ground = paneGround(width * grow, height * grow);
    const area: Extent = { left: 0, top: 0, right: ground.width, foot: ground.height };
    const placed = placeLargest(ceiling, area, { few: Math.min(ground.width, ground.height * 1.3) < ENOUGH, least });
    const layers = planLayers(ceiling, takeOff, {}, placed, [], placedFixtures(room.fixtures, ceiling), least);
    const ofPart = (...parts: readonly string[]) => layers.pieces.filter(item => item.kind === 'group' && parts.includes(item.id.replace('pieces.', '')));
    const layer = (name: PlanLayer, items: readonly Item[]): Group => group(`layer.${name}`, {}, items);
    const words = { id: 'plan', title: [room.title ?? room.name, 'reflected ceiling plan'].join(', '), description: descriptionOf(ceiling, takeOff) };
    const foot = placed.footFrom + FOOT_HEIGHT - FOOT_UNDER;
    return {
        ...sheet(words, ground, [
            group('ground', {}, [layers.walls]),
            group('coffers', {}, ceiling.coffers.map(coffer => {
                const { left, top, right, foot: below } = extentOf(placed.view, coffer);
                const cut = cutSizeOf(ceiling, coffer), size = `${figure(cut.width, show)} × ${figure(cut.length, show)}`;
                const ground = isBox(coffer) ? rectangle(left, top, right, below, null, 'paper') : polygon(coffer.outline.map(({ x, y }): Point => [toX(placed.view, x), toY(placed.view, y)]), null, 'paper');
                return group(`ground.${coffer.number}`, { title: `Coffer ${coffer.number}, ${size}` }, [ground]);
            })),
            layer('blocking', ofPart('panel', 'blocking')), layer('bottoms', ofPart('bottom', 'timber')), layer('hidden', ofPart('spacer', 'cleat')),
            layer('trim', ofPart('trim')), layer('sides', ofPart('side', 'molding')), layer('band', ofPart('band')),
            ...layers.found.length > 0 ? [group('found', {}, layers.found)] : [],
            ...layers.joists.length > 0 ? [layer('joists', layers.joists)] : [], layer('lines', layers.lines), layer('coffers', layers.coffers), layer('lengths', layers.lengths), layer('fixtures', layers.fixtures),
            layer('splices', layers.splices), layer('dimensions', layers.dimensions),
            group('foot', {}, footOf(ceiling, placed, area, foot, least)),
        ]),
        placed,
    };
}

/** The largest scale at which it fits, nearly; on paper draftsmen's scales rule, here the pane does. */
function placeLargest(ceiling: Ceiling, area: Extent, options: PlaceOptions): PlacedPlan {
    const most = Math.min((area.right - area.left) / Math.max(1, ceiling.width), (area.foot - area.top) / Math.max(1, ceiling.length));
    const found = placeFrom(ceiling, area, options, most * FIRST_GUESS);
    // where a figure stands beside its string because the string is short, a larger plan may take less room than a smaller one
    const larger = options.few ? LARGER.find(times => fits(fitPlan(ceiling, ceiling.room.job.show.value, area, most * times, options))) : undefined;
    const better = larger === undefined ? null : placeFrom(ceiling, area, options, most * larger);
    if (better && (!found || better.view.pointsPerTick > found.view.pointsPerTick)) return better;
    // of a room too large for any pane the strings alone are wider than it: then it is shown over the edge
    return found ?? placePlan(ceiling, ceiling.room.job.show.value, { left: 0, top: 0, right: 1e5, foot: 1e5 }, POINTS_PER_INCH / TICKS_PER_FOOT / 16)!;
}

/** Steps from one scale to the next by what is left of the pane, until little is. */
function placeFrom(ceiling: Ceiling, area: Extent, options: PlaceOptions, first: number): PlacedPlan | null {
    const [width, length] = [Math.max(1, ceiling.width), Math.max(1, ceiling.length)];
    let k = first;
    for (let step = 0; step < STEPS; step++) {
        const fitted = fitPlan(ceiling, ceiling.room.job.show.value, area, k, options);
        const more = Math.min(fitted.spareX / width, fitted.spareY / length);
        if (more >= 0 && (more < k * CLOSE || step >= STEPS / 2)) return fitted.place();
        // what stands around the plan hardly grows with it, but figures that no longer fit go up a row
        k = Math.max(k * 0.3, more < 0 && step > 2 ? (k + more) * 0.98 : k + more);
    }
    return null;
}
const FIRST_GUESS = 0.7;
const LARGER: readonly number[] = [0.8, 0.72, 0.65, 0.58, 0.52];
const CLOSE = 0.02;
const STEPS = 16;

function fits({ spareX, spareY }: FittedPlan): boolean {
    return spareX >= 0 && spareY >= 0;
}

function footOf(ceiling: Ceiling, { view }: PlacedPlan, area: Extent, y: number, least: number): readonly Item[] {
    const right = Math.min(area.right - 20, toX(view, ceiling.width) + 20);
    const longest = Math.min(180, right - area.left - 130);
    return [...longest < 30 ? [] : [scaleBar([right - 40, y - 3], view.pointsPerTick, 'plan', ceiling.room.job.show.value, longest, least)], northArrow([right, y - 1])];
}
