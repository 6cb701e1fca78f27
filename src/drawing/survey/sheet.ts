import type { Ceiling } from '../../ceiling/model.ts';
import { printIn, printLength } from '../../quantity/print-length.ts';
import { contoursOf, contourStep, edgeOfKnown, offPlane, swellsOf, type Contour, type Swell } from '../../survey/contours.ts';
import { againstLevel, otherPlanesOf } from '../../survey/other-planes.ts';
import { heightOf, type Plane } from '../../survey/surface.ts';
import { capitalized } from '../../plain/words.ts';
import { surveyedOf, type Surveyed } from '../../survey/survey.ts';
import { levelWords, planeRows, surveyNotes } from '../../survey/told.ts';
import { surveyWords, type SurveyWords } from '../../survey/words.ts';
import { convexParts } from '../../plane/convex-parts.ts';
import { partsInside } from '../../plane/parts-inside.ts';
import type { Point as Place } from '../../plane/point.ts';
import type { TakeOff } from '../../takeoff/model.ts';
import { Claims } from '../claims.ts';
import { circle, group, line, polygon, polyline, sheet, text, type Item, type Point, type Sheet } from '../display-list.ts';
import type { Extent } from '../extent.ts';
import { grown, textExtent, within } from '../extent.ts';
import { drawnFractions } from '../figures.ts';
import { keptInside } from '../fill/clip.ts';
import { hatch } from '../fill/hatch.ts';
import { paperFor, PAPERS } from '../paper.ts';
import { patched } from '../patch.ts';
import type { PenName } from '../pens.ts';
import { centerLines } from '../plan/center-lines.ts';
import { placePlan, type PlacedPlan } from '../plan/place.ts';
import { extentOf, toX, toY } from '../plan/view.ts';
import { wallThickness, walls } from '../plan/walls.ts';
import { largestThatFits, planScales, pointsPerTick, type Scale } from '../scale.ts';
import { FOOT_HEIGHT, FOOT_UNDER, northArrow, scaleBar, viewTitle } from '../sheet/foot.ts';
import { frame } from '../sheet/frame.ts';
import { SAMPLE_WIDTH, strip, SYMBOL_WIDTH, type StripBlock, type StripRow } from '../sheet/strip.ts';
import { titleBlock } from '../sheet/title-block.ts';
import type { SheetOptions } from '../sheet-options.ts';
import { lastPart } from '../source-reference.ts';

/** Humps and hollows that are named, at most: the most prominent. */
const MOST_SWELLS = 8;
/** A figure stands on every contour that is as long as so many of it. */
const FIGURE_EVERY = 6;

/** Whether there is anything to draw of a survey. */
export function hasSurveySheet(ceiling: Ceiling, takeOff: TakeOff): boolean {
    return surveyedOf(ceiling, takeOff)?.chosen !== undefined;
}

/**
 * The ceiling as it was surveyed, over the plan of the room: contours of how far it is above the plane that the sides hang by, humps and hollows with their
 * figures, where sides have to be scribed, and where nothing is known.
 */
export function drawSurvey(ceiling: Ceiling, takeOff: TakeOff, options: SheetOptions = {}): Sheet | undefined {
    const surveyed = surveyedOf(ceiling, takeOff), plane = surveyed?.chosen?.plane;
    if (!surveyed || !plane) return undefined;
    const { room } = ceiling, show = room.job.show.value, paper = options.paper === undefined ? paperFor(show) : PAPERS[options.paper], id = options.sheet ?? 'C-9';
    const framed = (scale: string) => frame(paper, titleBlock(room.job, {
        unnamed: room.title ?? room.name, room: room.title ?? room.name, drawing: ['Ceiling', 'survey'], scale, sheet: id, of: options.of,
    }));
    const { area } = framed(''), scale = largestThatFits(planScales(show), k => placePlan(ceiling, show, area, k) !== null);
    const placed = placePlan(ceiling, show, area, pointsPerTick(scale))!, whole = framed(scale.label);
    const shown = shownOf(ceiling, surveyed, plane);
    return sheet({ id, title: ['Ceiling survey', room.title ?? room.name, room.job.title?.value].filter(Boolean).join(', '), description: descriptionOf(ceiling, shown) }, paper, [
        ...drawing(ceiling, takeOff, shown, placed, options), ...footOf(ceiling, options, scale, placed, area),
        strip(blocksOf(ceiling, shown), whole.strip), whole.group,
    ], { pointsPerTick: placed.view.pointsPerTick, origin: [placed.view.left, toY(placed.view, ceiling.length)] });
}

/** What is shown, worked out once. */
interface Shown {
    readonly surveyed: Surveyed; readonly plane: Plane; readonly step: number; readonly contours: readonly Contour[]; readonly swells: readonly Swell[];
    readonly words: SurveyWords; readonly off: (ticks: number) => string;
}

function shownOf({ room, walls: around }: Ceiling, surveyed: Surveyed, plane: Plane): Shown {
    const { surface } = surveyed, show = room.job.show.value, offs = offPlane(surface, plane), step = contourStep(offs, show), words = surveyWords(room.job);
    const contours = contoursOf(surface, plane, step).flatMap(contour => inRoom(contour, around));
    return {
        surveyed, plane, step, contours, swells: swellsOf(surface, plane, step).slice(0, MOST_SWELLS), words,
        off: ticks => {
            const size = words.deep(Math.abs(ticks)), sign = size === words.deep(0) ? '' : ticks > 0 ? '+' : '−';
            return drawnFractions(`${sign}${size.replace(' mm', '')}`);
        },
    };
}

function drawing(ceiling: Ceiling, takeOff: TakeOff, shown: Shown, placed: PlacedPlan, options: SheetOptions): readonly Item[] {
    const { view } = placed, fileName = options.fileName ?? lastPart, claims = new Claims(), at = ({ x, y }: Place): Point => [toX(view, x), toY(view, y)];
    const room = extentOf(view, { west: 0, east: ceiling.width, north: 0, south: ceiling.length });
    const lines = centerLines(ceiling, placed, claims, fileName), edge = edgeOfKnown(shown.surveyed.surface), known = edge.map(at);
    const swells = shown.swells.map(swell => swellAt(swell, shown, at, claims, room));
    const inner = ceiling.walls.map(({ from }) => at(from));
    return [
        // what is known lies over what is not
        group('unknown', { title: 'Not surveyed' }, [polygon(inner, null, 'paper'), ...hatch(inner, 9, false), polygon(known, null, 'paper')]),
        group('humps', { title: 'Where the ceiling hangs below the plane' }, belowPlane(shown, at, ceiling.walls)),
        walls(ceiling, view, fileName),
        group('sides', { title: 'Sides' }, takeOff.pieces.filter(({ part }) => part === 'side').map(({ corners }) => polygon(corners.map(at), 'beyond'))),
        ...lines,
        group('known', { title: 'Edge of the survey' }, ringIn(edge, ceiling.walls).map(part => lineOf(part, at, 'hidden'))),
        group('contours', { title: `Contours every ${printIn(shown.step, ceiling.room.job.show.value)}` }, [
            ...shown.contours.map(contour => lineOf(contour, at, PEN(contour.level))),
            ...shown.contours.flatMap(contour => figureOn(contour, shown, at, claims, room)),
        ]),
        group('readings', { title: 'Readings' }, shown.surveyed.surface.readings.map(reading => circle(at(reading), 1.1, null, 'ink'))),
        group('scribed', { title: 'Scribed' }, scribedOf(shown.surveyed, at)),
        ...swells,
    ];
}

/** A row of places; `closed`: the last is followed by the first. */
type Way = Pick<Contour, 'points' | 'closed'>;

/** What of a contour lies in the room: round a corner of an L the readings on either side of it make triangles that lie outside. */
function inRoom(contour: Contour, around: Ceiling['walls']): Contour[] {
    return wayIn(contour, around).map(way => ({ ...contour, ...way }));
}
function ringIn(points: readonly Place[], around: Ceiling['walls']): Way[] {
    return wayIn({ points, closed: true }, around);
}
function wayIn(way: Way, around: Ceiling['walls']): Way[] {
    if (around.length === 4) return [way];
    const { points, closed } = way, whole = closed ? [...points, points[0]!] : points;
    const parts = partsInside(whole, around.map(({ from }) => from)), [only] = parts;
    const isWhole = parts.length === 1 && only!.length === whole.length && only!.every(({ x, y }, i) => x === whole[i]!.x && y === whole[i]!.y);
    return isWhole ? [way] : parts.map(part => ({ points: part, closed: false }));
}

const PEN = (level: number): PenName => (level === 0 ? 'edge' : 'thin');

function lineOf({ points, closed }: Way, at: (place: Place) => Point, pen: PenName): Item {
    return closed ? polygon(points.map(at), pen) : polyline(points.map(at), pen);
}

/** The figure of a contour on its line, where it is longest straight and the ground is free. */
function figureOn({ level, points, closed }: Contour, { off }: Shown, at: (place: Place) => Point, claims: Claims, room: Extent): readonly Item[] {
    const drawn = [...points, ...closed ? [points[0]!] : []].map(at), words = off(level);
    const stretches = drawn.slice(1).map((to, i) => ({ from: drawn[i]!, to, long: Math.hypot(to[0] - drawn[i]![0], to[1] - drawn[i]![1]) }));
    const whole = stretches.reduce((sum, { long }) => sum + long, 0), size = 7;
    if (whole < FIGURE_EVERY * size) return [];
    const candidates = [...stretches].sort((a, b) => b.long - a.long).slice(0, 12).map(({ from, to }) => [
        text([(from[0] + to[0]) / 2, (from[1] + to[1]) / 2 + size * 0.35], words, { size, anchor: 'middle', weight: level === 0 ? 600 : 400 }),
    ]);
    return claims.placeFirst(candidates, extent => within(extent, room))?.flatMap(run => patched(run, 'paper')) ?? [];
}

/** Per triangle the part of it where the ceiling hangs below the plane, as far as it lies in the room. */
function belowPlane({ surveyed: { surface }, plane }: Shown, at: (place: Place) => Point, around: Ceiling['walls']): readonly Item[] {
    const offs = offPlane(surface, plane), room = convexParts(around.map(({ from }) => from)).map(part => part.map(at));
    return surface.triangles.flatMap(triangle => {
        const corners = triangle.flatMap((i, nth): Place[] => {
            const j = triangle[(nth + 1) % 3]!, from = surface.readings[i]!, to = surface.readings[j]!, [a, b] = [offs[i]!, offs[j]!];
            const share = a / (a - b);
            return [...a < 0 ? [from] : [], ...a < 0 !== b < 0 ? [{ x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share }] : []];
        });
        if (corners.length < 3) return [];
        const below = corners.map(at), isInside = ringIn(corners, around)[0]?.closed;
        return (isInside ? [below] : room.map(part => keptInside(below, part))).filter(shape => shape.length > 2).map(shape => polygon(shape, null, 'wash'));
    });
}

/** The face of a side, heavy where it is scribed. */
function scribedOf({ sides }: Surveyed, at: (place: Place) => Point): readonly Item[] {
    return sides.flatMap(({ under: { piece, length }, scribes }) => {
        const [, , last, first] = piece.corners;
        const on = (along: number): Place => ({ x: first.x + (last.x - first.x) * along / length, y: first.y + (last.y - first.y) * along / length });
        return scribes.map(({ from, to }) => line(at(on(from)), at(on(to)), 'wrong'));
    });
}

/** A hump or a hollow: its number, which the strip goes by, and its figure. */
function swellAt(swell: Swell, { off }: Shown, at: (place: Place) => Point, claims: Claims, room: Extent): Item {
    const [x, y] = at(swell), size = 8.4, words = `${swell.kind} ${swell.number} ${off(swell.off)}`;
    const candidates = ([[6, 3, 'start'], [-6, 3, 'end'], [0, -6, 'middle'], [0, 13, 'middle'], [6, 13, 'start'], [-6, 13, 'end'], [6, -6, 'start'], [-6, -6, 'end']] as const)
        .map(([right, down, anchor]) => [text([x + right, y + down], words, { size, weight: 600, anchor })]);
    const inside = candidates.filter(([run]) => within(textExtent(run!), room));
    const runs = claims.placeFirst(inside) ?? inside[0] ?? candidates[0]!;
    claims.take(grown({ left: x, right: x, top: y, foot: y }, 4));
    return group(`${swell.kind}.${swell.number}`, { title: words }, [circle([x, y], 3.2, 'edge', swell.kind === 'hump' ? 'ink' : 'paper'), ...runs.flatMap(run => patched(run, 'paper'))]);
}

function blocksOf(ceiling: Ceiling, { surveyed, plane, step, swells, words, off }: Shown): readonly StripBlock[] {
    const { room, width, length } = ceiling, show = room.job.show.value;
    const stretch = (pen: PenName, said: string): StripRow => ({ kind: 'sample', words: said, draw: (left, middle) => [line([left, middle], [left + SAMPLE_WIDTH, middle], pen)] });
    const symbol = (draw: (x: number, y: number) => readonly Item[], said: string): StripRow => ({ kind: 'symbol', words: said, draw: (left, y) => draw(left + SYMBOL_WIDTH / 2, y) });
    const isTilted = plane.east !== 0 || plane.south !== 0, hung = surveyed.chosen!;
    return [
        { id: 'key', heading: 'KEY', rows: [
            stretch('edge', 'the ceiling is in the plane that the sides hang by'),
            stretch('thin', `so far above it (+) or below (−); a contour every ${drawnFractions(printLength(step, show))}`),
            ...hung.scribed > 0 ? [stretch('wrong', 'face of a side that is scribed')] : [],
            stretch('hidden', 'edge of the survey: beyond it nothing is known'),
            symbol((x, y) => [circle([x, y], 1.1, null, 'ink')], 'reading'),
            symbol((x, y) => [circle([x, y], 3.2, 'edge', 'ink')], 'hump: nothing around hangs lower'),
            symbol((x, y) => [circle([x, y], 3.2, 'edge', 'paper')], 'hollow: nothing around is higher'),
        ] },
        { id: 'swells', heading: 'HUMPS AND HOLLOWS', rows: swells.map((swell): StripRow => ({
            kind: 'pair', left: drawnFractions(`${swell.kind} ${swell.number}: ${words.place(swell.x)} east, ${words.place(swell.y)} south`), right: off(swell.off),
        })) },
        ...isTilted ? [{ id: 'plane', heading: 'THE PLANE, ABOVE ITS LOWEST CORNER', rows: cornersOf(plane, width, length).map(({ corner, rise }): StripRow => ({ kind: 'pair', left: corner, right: off(rise) })) }] : [],
        { id: 'planes', heading: 'WHAT A TILT WOULD SPARE', rows: planeRows(otherPlanesOf(surveyed), room.job)
            .map(({ plane: slope, takes }): StripRow => ({ kind: 'pair', left: drawnFractions(slope), right: drawnFractions(takes) })) },
        { id: 'notes', heading: 'NOTES', rows: [...surveyNotes(surveyed, room.job), ...levelWords(againstLevel(ceiling, plane), room.job), 'Places count from the north-west corner of the room. Between three readings the ceiling is taken to be flat.']
            .map((said, i): StripRow => ({ kind: 'note', mark: String(i + 1), words: drawnFractions(said) })) },
    ];
}

/** How high the plane is over each corner of the box round the room, above the lowest. */
function cornersOf(plane: Plane, width: number, length: number): { corner: string; rise: number }[] {
    const all = ([['north-west', 0, 0], ['north-east', width, 0], ['south-east', width, length], ['south-west', 0, length]] as const).map(([corner, x, y]) => ({ corner, up: heightOf(plane, { x, y }) }));
    const lowest = Math.min(...all.map(({ up }) => up));
    return all.map(({ corner, up }) => ({ corner, rise: up - lowest }));
}

function footOf(ceiling: Ceiling, options: SheetOptions, scale: Scale, { view, footFrom }: PlacedPlan, area: Extent): readonly Item[] {
    const show = ceiling.room.job.show.value, width = 690, y = footFrom + FOOT_HEIGHT - FOOT_UNDER;
    const left = Math.max(area.left + 18, Math.min(view.left - wallThickness(view.pointsPerTick), area.right - 18 - width));
    const right = Math.min(area.right - 36, Math.max(left + width - 20, toX(view, ceiling.width) - 10));
    return [
        viewTitle([left, y], (options.sheet ?? 'C-9').replace(/^.*-/u, ''), 'Ceiling survey', `As in a mirror on the floor: north up, east right. ${scale.label}`, 330),
        ...scale.label === 'not to scale' ? [] : [scaleBar([right - 40, y - 3], view.pointsPerTick, 'plan', show, Math.min(216, right - left - 440))],
        northArrow([right, y - 1]),
    ];
}

function descriptionOf({ room }: Ceiling, { surveyed, swells, words, off }: Shown): string {
    return [
        ...surveyNotes(surveyed, room.job),
        ...swells.map(swell => `${capitalized(swell.kind)} ${swell.number}: ${off(swell.off)}, ${words.place(swell.x)} east and ${words.place(swell.y)} south of the north-west corner.`),
    ].join(' ');
}
