import type { Ceiling, Line } from '../../ceiling/model.ts';
import type { Direction } from '../../job/model.ts';
import { circle, polygon, text, type Item, type Point } from '../display-list.ts';
import { fitText } from '../text/fit-text.ts';
import { textWidth } from '../text/measure-text.ts';
import { centerOf } from '../../ceiling/bays.ts';
import { endsOf, looksOut, runsAskew } from './line-ends.ts';
import { readingAngle } from './turn.ts';

/** How the balloons of one direction are set: in one row where the lines are far enough apart, else staggered. */
export interface BalloonRows {
    readonly radius: number;
    readonly rows: number;
    /** Where even that is too close, only each n-th is named. */
    readonly each: number;
    readonly depth: number;
}

const MOST_ROWS = 3;
/** Of balloons that stand in the room, at the end of their line. */
export const INSIDE_RADIUS = 8;

/** @param k points to a tick. */
export function balloonRows(lines: readonly Line[], k: number): BalloonRows {
    const centers = lines.map(line => centerOf(line) * k);
    const apart = Math.min(Infinity, ...centers.slice(1).map((center, i) => center - centers[i]!));
    if (centers.length === 0) return { radius: 0, rows: 0, each: 1, depth: 0 };
    const reach = (radius: number) => Math.max(...lines.map(({ name }) => balloonLength(name, radius)));
    if (apart >= 25) return { radius: 11, rows: 1, each: 1, depth: reach(11) };
    const radius = 8;
    const rows = Math.min(MOST_ROWS, Math.ceil((2 * radius + 2) / apart));
    // a long name stands outward over the rows of the others: then all are in one, as narrow as the lines leave room for
    if (rows > 1 && lines.some(({ name }) => isLong(name, radius))) {
        const narrow = Math.min(radius, Math.max(4, apart / 2 - 1));
        return { radius: narrow, rows: 1, each: Math.max(1, Math.ceil((2 * narrow + 2) / apart)), depth: reach(narrow) };
    }
    const each = Math.max(1, Math.ceil((2 * radius + 2) / (apart * rows)));
    return { radius, rows, each, depth: rows * (2 * radius + 3) + (rows === 1 ? Math.max(0, reach(radius) - 2 * radius) : 0) };
}

const LONGEST = 110;

function shortName(name: string, radius: number): ReturnType<typeof fitText> {
    return fitText(name, 1.5 * radius, radius * 1.1, 4, 600);
}

/** Too long to be read in a ring. */
function isLong(name: string, radius: number): boolean {
    const { text: words, size } = shortName(name, radius);
    return words.endsWith('…') || size < 0.55 * radius;
}

function longSize(radius: number): number {
    return Math.min(8.4, radius * 1.05);
}

/** From the rim that its line comes to, outward. */
export function balloonLength(name: string, radius: number): number {
    return isLong(name, radius) ? Math.min(LONGEST, textWidth(name, longSize(radius), 600) + 1.3 * radius) : 2 * radius;
}

/** A line's name in a ring; a long one in a drawn-out ring that runs on from its center, along the line. `away`: that way, one long. */
export function balloon(name: string, center: Point, away: Point, radius: number): readonly Item[] {
    if (!isLong(name, radius)) {
        const { text: words, size } = shortName(name, radius);
        return [circle(center, radius, 'edge', 'paper'), text([center[0], center[1] + size * 0.35], words, { size, weight: 600, anchor: 'middle' })];
    }
    const long = balloonLength(name, radius), far = long - 2 * radius, [ax, ay] = away;
    const half = (at: number, from: number): Point[] => Array.from({ length: 9 }, (_, i) => {
        const turn = (from + 180 * i / 8) * Math.PI / 180, along = at + radius * Math.cos(turn), across = radius * Math.sin(turn);
        return [center[0] + ax * along - ay * across, center[1] + ay * along + ax * across];
    });
    const fitted = fitText(name, long - 1.2 * radius, longSize(radius), 4, 600), turned = readingAngle(away), down = turned * Math.PI / 180;
    const middle: Point = [center[0] + ax * far / 2, center[1] + ay * far / 2];
    return [
        polygon([...half(far, -90), ...half(0, 90)], 'edge', 'paper'),
        text([middle[0] + Math.sin(down) * fitted.size * 0.35, middle[1] + Math.cos(down) * fitted.size * 0.35], fitted.text, { size: fitted.size, weight: 600, anchor: 'middle', turned }),
    ];
}

/** Lines that run one way, from the north or west. */
export function ofWay({ lines }: Ceiling, runs: Direction): readonly Line[] {
    return lines.filter(line => line.runs === runs).sort((a, b) => a.low - b.low);
}

/** Those that are named outside the plan: above it where they run north-south, else at its right. */
export function namedOutside(ceiling: Ceiling, runs: Direction): readonly Line[] {
    const [end, way] = runs === 'north-south' ? [0, -1] as const : [1, 1] as const;
    return ofWay(ceiling, runs).filter(line => !runsAskew(line) && looksOut(ceiling, line, endsOf(ceiling, line)[end], way));
}
