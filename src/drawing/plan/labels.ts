import type { Ceiling, Coffer, Line } from '../../ceiling/model.ts';
import { baysOf } from '../../ceiling/bays.ts';
import { cutSizeOf } from '../../ceiling/coffer-size.ts';
import { placeIn } from '../../plane/polygon.ts';
import type { Show } from '../../quantity/print-length.ts';
import { roundTo } from '../../quantity/round.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { Piece } from '../../takeoff/model.ts';
import type { Claims } from '../claims.ts';
import { group, text, type Group, type Point, type TextRun } from '../display-list.ts';
import { grown, within, type Extent } from '../extent.ts';
import { figure } from '../figures.ts';
import { patched } from '../patch.ts';
import { fitText } from '../text/fit-text.ts';
import { textWidth } from '../text/measure-text.ts';
import { onLine, unitOf } from '../../ceiling/along.ts';
import { runsAskew } from './line-ends.ts';
import { readingAngle } from './turn.ts';
import { extentOf, toX, toY, type PlanView } from './view.ts';

/** Number and size of each coffer, in its middle or, where something hangs there, beside it. */
export function cofferLabels(ceiling: Ceiling, view: PlanView, show: Show, claims: Claims, least = 0): readonly Group[] {
    return ceiling.coffers.map(coffer => {
        const inside = grown(extentOf(view, coffer), -3);
        const drawn = (polygon: Coffer['outline']): Point[] => polygon.map(({ x, y }): Point => [toX(view, x), toY(view, y)]);
        const outline = drawn(coffer.outline), holes = coffer.holes.map(drawn);
        const fits = (extent: Extent): boolean => within(extent, inside) && (isBox(coffer) || isInside(outline, grown(extent, 2)))
            && holes.every(hole => isBeside(hole, grown(extent, 2)));
        const placed = claims.placeFirst(cofferCandidates(ceiling, coffer, inside, show, least), fits) ?? [];
        // seams of panels run through a coffer, and stop short of its number
        const runs = ceiling.beams?.profile.back ? placed.flatMap(run => patched(run, 'paper')) : placed;
        return group(`coffer.${coffer.number}`, { title: `Coffer ${coffer.number}, ${sizeWords(ceiling, coffer, show)}` }, runs);
    });
}

function sizeWords(ceiling: Ceiling, coffer: Coffer, show: Show): string {
    const askew = askewSizeOf(ceiling, coffer);
    if (askew) return askew.map(size => figure(size, show)).join(' × ');
    const { width, length } = cutSizeOf(ceiling, coffer);
    return `${figure(width, show)} × ${figure(length, show)}`;
}

export function isBox({ outline, west, east, north, south }: Coffer): boolean {
    return outline.length === 4 && outline.every(({ x, y }) => (x === west || x === east) && (y === north || y === south));
}

/** Four corners as square as their rounding to whole ticks lets them be. */
export function isRectangular({ outline }: Coffer): boolean {
    const sides = outline.map(({ x, y }, i) => ({ x: outline[(i + 1) % outline.length]!.x - x, y: outline[(i + 1) % outline.length]!.y - y }));
    return sides.length === 4 && sides.every((side, i) => {
        const next = sides[(i + 1) % 4]!;
        return Math.abs(side.x * next.x + side.y * next.y) < Math.hypot(side.x, side.y) * Math.hypot(next.x, next.y) * 1e-3;
    });
}

/** Of a rectangle that stands askew its own sides: the box round it is no size of it. */
function askewSizeOf(ceiling: Ceiling, coffer: Coffer): readonly Ticks[] | undefined {
    const { outline } = coffer;
    if (outline.length !== 4 || isBox(coffer)) return undefined;
    const long = outline.map(({ x, y }, i) => Math.hypot(outline[(i + 1) % 4]!.x - x, outline[(i + 1) % 4]!.y - y));
    return isRectangular(coffer) ? [0, 1].map(i => roundTo(Math.round((long[i]! + long[i + 2]!) / 2), ceiling.room.job.cutTo.value)) : undefined;
}

/** None of it lies within the outline, as far as none of the outline's edges runs right through it. */
function isBeside(outline: readonly Point[], extent: Extent): boolean {
    const polygon = outline.map(inHundredths);
    return cornersOf(extent).every(corner => placeIn(polygon, inHundredths(corner)) !== 'inside') && !outline.some(corner => has(extent, corner));
}

/** All of it lies within the outline, as far as none of the outline's edges runs right through it. */
function isInside(outline: readonly Point[], extent: Extent): boolean {
    const polygon = outline.map(inHundredths);
    return cornersOf(extent).every(corner => placeIn(polygon, inHundredths(corner)) === 'inside') && !outline.some(corner => has(extent, corner));
}

function cornersOf({ left, right, top, foot }: Extent): readonly Point[] {
    return [[left, top], [right, top], [right, foot], [left, foot]];
}

function has({ left, right, top, foot }: Extent, [x, y]: Point): boolean {
    return x >= left && x <= right && y >= top && y <= foot;
}

/** Whole numbers, so that on which side of an edge a corner lies is exact. */
function inHundredths([x, y]: Point): { readonly x: number; readonly y: number } {
    return { x: Math.round(x * 100), y: Math.round(y * 100) };
}

/** Middle first, then around it, with the size, which may take two lines; then the number alone. */
function* cofferCandidates(ceiling: Ceiling, coffer: Coffer, inside: Extent, show: Show, least: number): Iterable<readonly TextRun[]> {
    const width = inside.right - inside.left;
    const height = inside.foot - inside.top;
    const number = String(coffer.number);
    const size = Math.min(15, Math.max(6, least, Math.min(width, height) * 0.32));
    const words = sizeWords(ceiling, coffer, show), sizeText = fitText(words, Math.max(1, width - 6), Math.max(8, least), Math.max(6.2, least));
    const both = !sizeText.text.endsWith('…'), halves = words.replace(' × ', '\n× ').split('\n');
    const isTwo = !both && halves.length === 2 && halves.every(half => textWidth(half, sizeText.size) <= width - 2);
    const label = ([x, y]: Point): readonly TextRun[] => [
        text([x, y + size * 0.1], number, { size, weight: 600, anchor: 'middle' }),
        text([x, y + size * 0.1 + sizeText.size * 1.6], sizeText.text, { size: sizeText.size, anchor: 'middle', tone: 'soft' }),
    ];
    const inTwo = ([x, y]: Point): readonly TextRun[] => [
        text([x, y - sizeText.size * 0.5], number, { size, weight: 600, anchor: 'middle' }),
        ...halves.map((half, i) => text([x, y + sizeText.size * (0.7 + 1.15 * i)], half, { size: sizeText.size, anchor: 'middle', tone: 'soft' })),
    ];
    const spots = [
        0, -0.25, 0.25,
    ].flatMap(right => [0, -0.27, 0.27].map((down): Point => [inside.left + width * (0.5 + right), inside.top + height * (0.5 + down)]));
    if (!isBox(coffer) || coffer.holes.length > 0) {
        const more = [-0.35, -0.15, 0.15, 0.35].flatMap(right => [-0.38, -0.14, 0.14, 0.38].map(down => [right, down] as const));
        spots.push(...more.map(([right, down]): Point => [inside.left + width * (0.5 + right), inside.top + height * (0.5 + down)]));
    }
    if (both) for (const spot of spots) yield label(spot);
    if (isTwo) for (const spot of spots) yield inTwo(spot);
    for (const [x, y] of spots) yield [text([x, y + size * 0.35], number, { size, weight: 600, anchor: 'middle' })];
    for (const [x, y] of spots) yield [text([x, y + 2], number, { size: Math.max(5.5, least), weight: 600, anchor: 'middle' })];
}

/** How long each bottom is cut, written on it where its face is wide enough. The through ones say so. */
export function bottomLabels(ceiling: Ceiling, bottoms: readonly Piece[], view: PlanView, show: Show, claims: Claims, least = 0): readonly Group[] {
    return bottoms.map(piece => {
        const line = ceiling.lines.find(each => each.name === piece.line);
        const runs = line === undefined ? null : claims.placeFirst(bottomCandidates(ceiling, piece, line.through, view, show, least));
        return group(`length.${piece.id}`, {}, (runs ?? []).flatMap(run => patched(run, 'wash')));
    });
}

function* bottomCandidates(ceiling: Ceiling, piece: Piece, through: boolean, view: PlanView, show: Show, least: number): Iterable<readonly TextRun[]> {
    const { west, east, north, south } = piece.box;
    const line = ceiling.lines.find(each => each.name === piece.line)!, upright = line.runs === 'north-south', isAskew = runsAskew(line);
    const face = (isAskew ? piece.width : upright ? east - west : south - north) * view.pointsPerTick;
    const size = Math.min(Math.max(7.8, least), (face - 1.5) / 0.95);
    if (size < Math.max(5.5, least)) return;
    const length = figure(piece.cutBack, show);
    const way = unitOf(line), turned = isAskew ? readingAngle([way.x, way.y]) : upright ? 90 : 0;
    const reach = piece.corners.map(({ x, y }) => x * way.x + y * way.y);
    const [from, to] = isAskew ? [Math.min(...reach), Math.max(...reach)] : upright ? [north, south] : [west, east];
    const middle = (from + to) / 2;
    const bays = baysOf(line).map(bay => [Math.max(from, bay.start), Math.min(to, bay.end)] as const).filter(([a, b]) => b > a)
        .sort(([a, b], [c, d]) => Math.abs((a + b) / 2 - middle) - Math.abs((c + d) / 2 - middle));
    for (const words of through ? [`${length} through`, length] : [length]) {
        for (const [a, b] of bays) {
            if (textWidth(words, size) + 8 > (b - a) * view.pointsPerTick) continue;
            for (const part of [0.5, 0.3, 0.7]) {
                const along = a + (b - a) * part;
                const at: Point = isAskew ? onCenter(line, along) : upright ? [toX(view, (west + east) / 2) + size * 0.35, toY(view, along)]
                    : [toX(view, along), toY(view, (north + south) / 2) + size * 0.35];
                const run = text(at, words, { size, anchor: 'middle', turned });
                yield [run];
            }
        }
    }

    function onCenter(on: Line, along: Ticks): Point {
        const { x, y } = onLine(on, along), down = turned * Math.PI / 180;
        return [toX(view, x) + Math.sin(down) * size * 0.35, toY(view, y) + Math.cos(down) * size * 0.35];
    }
}
