import type { Ceiling, Line } from '../../ceiling/model.ts';
import { baysOf, bottomHigh, bottomLow } from '../../ceiling/bays.ts';
import { reachAt, sectionAt } from '../../ceiling/flanks.ts';
import { alongWall } from '../../ceiling/plan.ts';
import { placeIn } from '../../plane/polygon.ts';
import type { Claims } from '../claims.ts';
import { circle, group, line, polygon, text, type Group, type Item, type Point } from '../display-list.ts';
import { around, type Extent } from '../extent.ts';
import { onLine, unitOf } from '../../ceiling/along.ts';
import { runsAskew } from './line-ends.ts';
import { toX, toY, type PlanView } from './view.ts';

const RADIUS = 11;
const REACH = 13;

/** Where a section is cut and which way it looks, with its sheet; left out where no coffer has room for it. */
export function sectionMark(ceiling: Ceiling, cut: Line, sheet: string, view: PlanView, claims: Claims): Group | null {
    if (runsAskew(cut)) return markAskew(ceiling, cut, sheet, view, claims);
    const upright = cut.runs === 'north-south';
    const place = (along: number, across: number): Point => (upright ? [across, along] : [along, across]);
    const toAlong = (ticks: number) => (upright ? toY(view, ticks) : toX(view, ticks));
    const toAcross = (ticks: number) => (upright ? toX(view, ticks) : toY(view, ticks));
    const low = toAcross(cut.low) - REACH;
    const ring = toAcross(cut.high) + REACH + RADIUS;
    const next = ceiling.coffers.filter(coffer => (upright ? coffer.west === cut.high : coffer.north === cut.high));
    for (const bay of baysOf(cut).reverse()) {
        for (const part of [0.8, 0.68, 0.32, 0.2]) {
            const along = toAlong(bay.start + (bay.end - bay.start) * part);
            const center = place(along, ring);
            const needed: readonly Extent[] = [around(center, RADIUS + 2, RADIUS + 2), around(place(along - 7, low), upright ? 5 : 9, upright ? 9 : 5)];
            const home = next.find(coffer => (upright ? coffer.north === bay.start : coffer.west === bay.start));
            const far = home === undefined ? null : toAcross(upright ? home.east : home.south);
            if (far === null || ring + RADIUS + 3 > far || !needed.every(extent => claims.isFree(extent))) continue;
            needed.forEach(extent => claims.take(extent));
            const number = sheet.replace(/^.*-/u, '');
            return group(`mark.${sheet}`, { title: `Section ${number} on sheet ${sheet}` }, [...markItems(place, along, low, ring), ...ringItems(center, number, sheet)]);
        }
    }
    return ceiling.coffers.every(({ outline }) => outline.length === 4) ? null : markAskew(ceiling, cut, sheet, view, claims);
}

/** The same square to a line that runs any way, wherever ring and arrow stand each wholly in a coffer. */
function markAskew(ceiling: Ceiling, cut: Line, sheet: string, view: PlanView, claims: Claims): Group | null {
    const way = unitOf(cut), k = view.pointsPerTick, sign = cut.runs === 'north-south' ? -1 : 1, half = Math.max(reachAt(cut, 'left'), reachAt(cut, 'right')) * k;
    const across = { x: -way.y * sign, y: way.x * sign }, low = -half - REACH, ring = half + REACH + RADIUS;
    const inCoffer = ([x, y]: Point, by: number): boolean => ceiling.coffers.some(({ outline }) => [[by, 0], [-by, 0], [0, by], [0, -by]].every(([dx, dy]) =>
        placeIn(outline, { x: Math.round((x + dx! - view.left) / k), y: Math.round((y + dy! - view.top) / k) }) === 'inside'));
    for (const bay of baysOf(cut).reverse()) {
        for (const part of [0.8, 0.68, 0.5, 0.32, 0.2]) {
            const at = onLine(cut, bay.start + (bay.end - bay.start) * part), start: Point = [toX(view, at.x), toY(view, at.y)];
            const place = (along: number, off: number): Point => [start[0] + way.x * along + across.x * off, start[1] + way.y * along + across.y * off];
            const center = place(0, ring), needed = [around(center, RADIUS + 2, RADIUS + 2), around(place(-7, low), 8, 8)];
            if (!inCoffer(center, RADIUS + 3) || !inCoffer(place(-7, low), 8) || !needed.every(extent => claims.isFree(extent))) continue;
            needed.forEach(extent => claims.take(extent));
            const number = sheet.replace(/^.*-/u, '');
            return group(`mark.${sheet}`, { title: `Section ${number} on sheet ${sheet}` }, [...markItems(place, 0, low, ring), ...ringItems(center, number, sheet)]);
        }
    }
    return null;
}

/** The cutting line across the beam, with the arrow looking north, or west, or so along a line that runs askew. */
function markItems(place: (along: number, across: number) => Point, along: number, low: number, ring: number): readonly Item[] {
    return [
        line(place(along, low), place(along, ring - RADIUS), 'edge'),
        line(place(along, low), place(along - 9, low), 'edge'),
        polygon([place(along - 8, low - 3), place(along - 8, low + 3), place(along - 14, low)], 'thin', 'ink'),
    ];
}

function ringItems([x, y]: Point, number: string, sheet: string): readonly Item[] {
    return [
        circle([x, y], RADIUS, 'edge', 'paper'),
        line([x - RADIUS, y], [x + RADIUS, y], 'thin'),
        text([x, y - 1.8], number, { size: 8.6, weight: 600, anchor: 'middle' }),
        text([x, y + 7.6], sheet, { size: 6.4, anchor: 'middle' }),
    ];
}

/** Splices: a short slanted stroke on the joint, of the bottoms and of the band; a shorter one on those of sides. */
export function spliceMarks(ceiling: Ceiling, view: PlanView): Group | null {
    const strokes: Item[] = [];
    for (const each of ceiling.lines) {
        for (const splice of each.splices) {
            if (runsAskew(each)) {
                const { x, y } = onLine(each, splice.at);
                strokes.push(...stroke([toX(view, x), toY(view, y)]));
                continue;
            }
            const across = (bottomLow(each) + bottomHigh(each)) / 2;
            strokes.push(...stroke(each.runs === 'north-south' ? [toX(view, across), toY(view, splice.at)] : [toX(view, splice.at), toY(view, across)]));
        }
    }
    for (const line of ceiling.lines) for (const flank of ['left', 'right'] as const) {
        const u = unitOf(line), off = (reachAt(line, flank) - sectionAt(line, flank).sideThickness.ticks / 2) * (flank === 'left' ? 1 : -1);
        for (const { at } of line.sideSplices?.[flank] ?? []) {
            const { x, y } = onLine(line, at);
            strokes.push(...stroke([toX(view, x + u.y * off), toY(view, y - u.x * off)], SHORT));
        }
    }
    for (const wall of ceiling.walls) {
        const own = ceiling.around[wall.name], [dx, dy] = [(wall.from.y - wall.to.y) / wall.length, (wall.to.x - wall.from.x) / wall.length];
        const mark = (at: number, off: number, reach?: number): void => {
            const { x, y } = alongWall(wall, at);
            strokes.push(...stroke([toX(view, x + dx * off), toY(view, y + dy * off)], reach));
        };
        for (const { at } of own?.splices ?? []) mark(at, (own!.kind === 'band' ? own!.thickness : own!.width).ticks / 2);
        if (own?.kind === 'half-beam') for (const { at } of own.sideSplices ?? []) mark(at, own.width.ticks + own.section.sideThickness.ticks / 2, SHORT);
    }
    return strokes.length === 0 ? null : group('splices', { title: 'Splices' }, strokes);
}

export function stroke([x, y]: Point, reach = 3.6): readonly Item[] {
    return [line([x - reach, y + reach], [x + reach, y - reach], 'tick')];
}
const SHORT = 2.4;
