import { standingAtWalls } from '../../ceiling/at-the-wall.ts';
import { aroundWords } from '../../ceiling/around-words.ts';
import type { Ceiling, Line } from '../../ceiling/model.ts';
import { cutSizeOf, isFullGrid } from '../../ceiling/coffer-size.ts';
import { printLength } from '../../quantity/print-length.ts';
import type { TakeOff } from '../../takeoff/model.ts';
import { Claims } from '../claims.ts';
import { sheet, type Item, type Sheet } from '../display-list.ts';
import { drawStack } from '../dimensions/stack.ts';
import type { Extent } from '../extent.ts';
import { paperFor, PAPERS } from '../paper.ts';
import { largestThatFits, planScales, pointsPerTick, type Scale } from '../scale.ts';
import { sectionsOf } from '../section/context.ts';
import { frame } from '../sheet/frame.ts';
import { FOOT_HEIGHT, FOOT_UNDER, northArrow, scaleBar, viewTitle } from '../sheet/foot.ts';
import { strip } from '../sheet/strip.ts';
import { titleBlock } from '../sheet/title-block.ts';
import type { SheetOptions } from '../sheet-options.ts';
import { lastPart } from '../source-reference.ts';
import { ofWay } from './balloons.ts';
import { centerLines } from './center-lines.ts';
import { fixtureNames, fixturesAtWalls, fixtureSymbols, placedFixtures } from './fixtures.ts';
import { bowTimes, foundWalls } from './found-walls.ts';
import { joistLines } from './joists.ts';
import { bottomLabels, cofferLabels } from './labels.ts';
import { sectionMark, spliceMarks } from './marks.ts';
import { pieces } from './pieces.ts';
import { placePlan, type PlacedPlan } from './place.ts';
import { planStrip } from './plan-strip.ts';
import { extentOf, toX, toY } from './view.ts';
import { drawBesideWalls } from './wall-dimensions.ts';
import { walls, wallThickness } from './walls.ts';

/**
 * The reflected ceiling plan of a room, on one sheet, at the largest scale of a draftsman's rule that it fits in. Every
 * piece of the take-off is a group of its own, tied to its id and to the words it comes from.
 */
export function drawPlan(ceiling: Ceiling, takeOff: TakeOff, options: SheetOptions = {}): Sheet {
    const { room } = ceiling;
    const show = room.job.show.value;
    const paper = options.paper === undefined ? paperFor(show) : PAPERS[options.paper];
    const framed = (scale: string) => frame(paper, titleBlock(room.job, {
        unnamed: room.title ?? room.name, room: room.title ?? room.name, drawing: ['Reflected', 'ceiling plan'], scale,
        sheet: options.sheet ?? FIRST_SHEET, of: options.of,
    }));
    const { area } = framed('');
    const scale = largestThatFits(planScales(show), k => placePlan(ceiling, show, area, k) !== null);
    const placed = placePlan(ceiling, show, area, pointsPerTick(scale))!;
    const whole = framed(scale.label);
    const sections = sectionsOf(ceiling).map((each, i) => ({ ...each, sheet: sheetAfter(options.sheet ?? FIRST_SHEET, i + 1) }));
    const fixtures = placedFixtures(room.fixtures, ceiling);
    const { forClient = false, alone = false } = options, bows = bowTimes(ceiling, placed.view.pointsPerTick);
    const title = ['Reflected ceiling plan', room.title ?? room.name, room.job.title?.value].filter(Boolean).join(', ');
    return sheet({ id: options.sheet ?? FIRST_SHEET, title, description: descriptionOf(ceiling, options.forClient ? undefined : takeOff) }, paper, [
        ...drawing(planLayers(ceiling, takeOff, options, placed, sections, fixtures)), ...footOf(ceiling, options, scale, placed, area),
        strip(planStrip(ceiling, takeOff, sections, fixtures, { hidden: placed.hiddenLines, bows, forClient, alone }), whole.strip), whole.group,
        // the room's south-west corner: what lies in the room has no negative coordinates where y points north
    ], { pointsPerTick: placed.view.pointsPerTick, origin: [placed.view.left, toY(placed.view, ceiling.length)] });
}

/** The plan's, unless another is said; the room's other sheets follow it. */
export const FIRST_SHEET = 'C-1';

/** `C-1` is followed by `C-2`; a name without a number gets one. */
export function sheetAfter(sheet: string, by: number): string {
    const number = /\d+$/u.exec(sheet);
    return number === null ? `${sheet}-${1 + by}` : `${sheet.slice(0, number.index)}${Number(number[0]) + by}`;
}

/** What a plan shows, in layers from the ceiling towards the eye. */
interface PlanLayers {
    readonly walls: Item; readonly found: readonly Item[]; readonly pieces: readonly Item[]; readonly joists: readonly Item[]; readonly lines: readonly Item[];
    readonly coffers: readonly Item[];
    readonly lengths: readonly Item[];
    readonly fixtures: readonly Item[]; readonly splices: readonly Item[]; readonly marks: readonly Item[]; readonly dimensions: readonly Item[];
}

function drawing(layers: PlanLayers): readonly Item[] {
    return [
        layers.walls, ...layers.pieces, ...layers.found, ...layers.joists, ...layers.lines, ...layers.coffers, ...layers.lengths, ...layers.fixtures,
        ...layers.splices, ...layers.marks, ...layers.dimensions,
    ];
}

/** `least`: points that words have at least; those that there is no room for then are left out. */
export function planLayers(
    ceiling: Ceiling, takeOff: TakeOff, options: SheetOptions, placed: PlacedPlan,
    sections: readonly (ReturnType<typeof sectionsOf>[number] & { readonly sheet: string })[], fixtures: ReturnType<typeof placedFixtures>, least = 0,
): PlanLayers {
    const { view } = placed;
    const show = ceiling.room.job.show.value;
    const fileName = options.fileName ?? lastPart;
    const claims = new Claims();
    const room = extentOf(view, { west: 0, east: ceiling.width, north: 0, south: ceiling.length });
    // in this order the ground is given out: what hangs there comes first, then the names of the coffers, then the rest
    const symbols = fixtureSymbols(fixtures, view, room, claims, fileName);
    const lines = centerLines(ceiling, placed, claims, fileName);
    const numbers = cofferLabels(ceiling, view, show, claims, least);
    const lengths = bottomLabels(ceiling, takeOff.pieces.filter(piece => piece.part === 'bottom'), view, show, claims, least);
    const names = fixtureNames(fixtures, view, room, claims, least), atWalls = fixturesAtWalls(standingAtWalls(ceiling), view, room, claims, fileName, least);
    const found = options.forClient ? [] : foundWalls(ceiling, view, room, show, claims, least);
    const marks = options.alone ? [] : sections.flatMap(({ lines, sheet }) => sectionMark(ceiling, lines[0]!, sheet, view, claims) ?? []);
    const splices = spliceMarks(ceiling, view);
    const joists = options.forClient ? null : joistLines(ceiling, view, fileName);
    const offWall = wallThickness(view.pointsPerTick) + 3;
    return {
        walls: walls(ceiling, view, fileName), found,
        pieces: pieces(takeOff.pieces, view, { show, fileName, hidden: placed.hiddenLines }),
        joists: joists === null ? [] : [joists],
        lines, coffers: numbers, lengths, fixtures: [...symbols, ...atWalls, ...names], splices: splices === null ? [] : [splices], marks,
        dimensions: [...drawStack(placed.top, view.top, offWall), ...drawStack(placed.left, view.left, offWall), ...drawBesideWalls(placed.beside, view)],
    };
}

/** Title, scale bar and north arrow in one row under the plan, as wide as the plan or as they need. */
function footOf(ceiling: Ceiling, options: SheetOptions, scale: Scale, { view, footFrom }: PlacedPlan, area: Extent): readonly Item[] {
    const show = ceiling.room.job.show.value;
    const width = 690;
    const y = footFrom + FOOT_HEIGHT - FOOT_UNDER;
    const left = Math.max(area.left + 18, Math.min(view.left - wallThickness(view.pointsPerTick), area.right - 18 - width));
    const right = Math.min(area.right - 36, Math.max(left + width - 20, toX(view, ceiling.width) - 10));
    return [
        viewTitle([left, y], (options.sheet ?? FIRST_SHEET).replace(/^.*-/u, ''), 'Reflected ceiling plan', `As in a mirror on the floor: north up, east right, as on the floor plan. ${scale.label}`, 330),
        ...(scale.label === 'not to scale' ? [] : [scaleBar([right - 40, y - 3], view.pointsPerTick, 'plan', show, Math.min(216, right - left - 440))]),
        northArrow([right, y - 1]),
    ];
}

export function descriptionOf(ceiling: Ceiling, takeOff: TakeOff | undefined): string {
    const show = ceiling.room.job.show.value;
    const f = (ticks: number) => printLength(ticks, show);
    const { across, down } = ceiling, first = cutSizeOf(ceiling, ceiling.coffers[0]!);
    const count = (n: number, one: string, many: string) => `${n} ${n === 1 ? one : many}`;
    const lines = (own: readonly Line[], runs: string) => (own.length === 0 ? [] : [`${count(own.length, 'beam runs', 'beams run')} ${runs}: ${own.map(each => each.name).join(', ')}.`]);
    return [
        `A room ${f(ceiling.width)} east to west by ${f(ceiling.length)} north to south, ${Object.values(ceiling.around).some(own => own?.kind === 'half-beam') ? `with ${aroundWords(ceiling.around, f).join(' and ')}` : ceiling.band ? 'with a band around the walls' : 'without a band'}.`,
        `${count(ceiling.coffers.length, 'coffer', 'coffers')}, ${isFullGrid(ceiling) ? `${across.coffers.length} across and ${down.coffers.length} down, ` : ''}the first ${f(first.width)} by ${f(first.length)}.`,
        ...lines(ofWay(ceiling, 'north-south'), 'north to south'), ...lines(ofWay(ceiling, 'east-west'), 'east to west'),
        ...takeOff ? [`${count(takeOff.pieces.length, 'piece', 'pieces')} in all.`] : [],
    ].join(' ');
}
