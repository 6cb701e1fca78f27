import { group, line, text, type Item, type Point } from '../display-list.ts';
import { patched } from '../patch.ts';
import { CAP_HEIGHT, textWidth } from '../text/measure-text.ts';
import { overhang, placeFigures, type Placed } from './place-figures.ts';

/** One run of dimensions on one line: where it is ticked, in points along its direction, and the figure of each stretch. */
export interface DimensionString { readonly id: string; readonly title: string; readonly stops: readonly number[]; readonly figures: readonly string[] }

/** On which side of the drawing a string stands. Upright strings are read from the right edge of the sheet, upward. */
export type Edge = 'top' | 'left' | 'right' | 'foot';

export interface LaidString {
    readonly string: DimensionString;
    readonly edge: Edge;
    readonly size: number;
    readonly placed: readonly Placed[];
    readonly rows: number;
    /** Room it takes from its line towards the drawing, and away from it. */
    readonly inner: number; readonly outer: number;
    /** How far figures stick out beyond the first and the last stop, in the direction of reading. */
    readonly before: number; readonly after: number;
}

const OVER_THE_LINE = 3.2;
const TICK = 3.1;
const BEYOND = 4.5;
const BETWEEN_ROWS = 3;

export function layString(string: DimensionString, edge: Edge, size: number): LaidString {
    const stops = inReadingOrder(string.stops, edge);
    const figures = edge === 'left' || edge === 'right' ? [...string.figures].reverse() : string.figures;
    const placed = placeFigures(stops, figures, size);
    const rows = Math.max(0, ...placed.map(p => p.row));
    const high = OVER_THE_LINE + size * CAP_HEIGHT;
    const raised = rows * (size + BETWEEN_ROWS);
    const outward = edge === 'top' || edge === 'left';
    return {
        string, edge, size, placed, rows, ...overhang(placed, stops, size),
        inner: outward ? TICK : high,
        outer: outward ? high + raised : Math.max(BEYOND, raised + OVER_THE_LINE),
    };
}

/** @param at the string's line: its y at the top and the foot, its x at the sides. @param from where the extension lines of each stop begin. */
export function drawString(laid: LaidString, at: number, from: readonly number[]): Item {
    const { string, edge } = laid;
    const upright = edge === 'left' || edge === 'right';
    const sign = edge === 'top' || edge === 'left' ? -1 : 1;
    const point = (along: number, across: number): Point => (upright ? [across, along] : [along, across]);
    const lines = [
        ...string.stops.map((stop, i) => line(point(stop, from[i]!), point(stop, at + BEYOND * sign), 'dimension')),
        line(point(string.stops[0]! - BEYOND, at), point(string.stops.at(-1)! + BEYOND, at), 'dimension'),
        ...string.stops.map(stop => {
            const [x, y] = point(stop, at);
            return line([x - TICK, y + TICK], [x + TICK, y - TICK], 'tick');
        }),
    ];
    return group(string.id, { title: string.title }, [...lines, ...laid.placed.flatMap(p => figureItems(laid, p, at, point))]);
}

function figureItems(laid: LaidString, placed: Placed, at: number, point: (along: number, across: number) => Point): readonly Item[] {
    const { edge, size } = laid;
    const upright = edge === 'left' || edge === 'right';
    const alongOf = (reading: number) => (upright ? -reading : reading);
    const outward = edge === 'top' || edge === 'left';
    const raised = placed.row * (size + BETWEEN_ROWS);
    const baseline = outward || placed.row === 0 ? at - OVER_THE_LINE - (outward ? raised : 0) : at + raised;
    const run = text(point(alongOf(placed.at), baseline), placed.text, { size, anchor: placed.anchor, turned: upright ? 90 : 0 });
    if (placed.leader === null) return patched(run, 'paper');
    const flag = placed.anchor === 'start';
    const end = outward ? baseline - (flag ? size * CAP_HEIGHT : -1) : baseline - (flag ? 0 : size * CAP_HEIGHT + 1);
    return [line(point(alongOf(placed.leader), at), point(alongOf(placed.leader), end), 'dimension'), ...patched(run, 'paper')];
}

/** Whether a figure of the string stands at this place along it, where a line that comes from the drawing would run through it. */
export function standsAt({ edge, placed, size }: LaidString, stop: number): boolean {
    const [at] = inReadingOrder([stop], edge), air = 1.2;
    return placed.some(figure => {
        const width = textWidth(figure.text, size), from = figure.at - (figure.anchor === 'start' ? 0 : figure.anchor === 'middle' ? width / 2 : width);
        return at! > from - air && at! < from + width + air;
    });
}

function inReadingOrder(stops: readonly number[], edge: Edge): readonly number[] {
    return edge === 'left' || edge === 'right' ? [...stops].reverse().map(stop => 0 - stop) : stops;
}
