import { circle, group, polyline, text, textRuns, type Group, type Item, type Point } from '../display-list.ts';
import { grown, runsThrough, textExtent, type Extent } from '../extent.ts';
import { patched } from '../patch.ts';
import type { Tone } from '../themes.ts';
import { textWidth } from '../text/measure-text.ts';
import { wrapText } from '../text/fit-text.ts';

/** A part's name with its sizes, and the spots its leader points at. */
export interface PartNote { readonly id: string; readonly name: string; readonly words: readonly string[]; readonly spots: readonly Point[] }

const SIZE = 9.4;
const STEP = 11.6;
const BETWEEN = 7;
/** From a leader to a figure that it goes past. */
const CLEAR_OF_FIGURE = 2;

interface SetNote { readonly note: PartNote; readonly lines: readonly string[]; readonly height: number }

/**
 * Notes in a column on the right, each as near to the height of what it names as its neighbors let it.
 * @param between what is drawn between picture and column: leaders go past its figures.
 */
export function noteColumn(notes: readonly PartNote[], column: Extent, between: readonly Item[]): readonly Group[] {
    const figures = textRuns(between).map(run => grown(textExtent(run), CLEAR_OF_FIGURE));
    const size = [SIZE, 8.6, 7.8, 7].find(s => heightOf(setAll(notes, column, s)) <= column.foot - column.top) ?? 7;
    const set = [...setAll(notes, column, size)].sort((a, b) => a.note.spots[0]![1] - b.note.spots[0]![1]);
    const wanted = set.map(({ note: { spots: [spot] } }) => pastFigures([column.left, spot![1]], spot!, figures)?.[1] ?? spot![1]);
    const tops = spread(wanted.map(y => y - size * 0.46), set.map(s => s.height + BETWEEN), column.top, column.foot);
    return set.map((s, i) => {
        const baseline = tops[i]! + size * 0.8;
        const elbow: Point = [column.left - 14, baseline - size * 0.34];
        return group(`note.${s.note.id}`, {}, [
            ...s.note.spots.flatMap(spot => leader([[column.left - 4, elbow[1]], elbow, ...gate(elbow, spot, figures), spot])),
            ...s.lines.map((words, n) => text([column.left, baseline + n * STEP * size / SIZE], words, { size, weight: n === 0 ? 600 : 400 })),
        ]);
    });
}

/** The points that a leader goes through between two figures, where it would run through one. */
function gate(from: Point, spot: Point, figures: readonly Extent[]): readonly Point[] {
    const past = pastFigures(from, spot, figures);
    if (past === undefined) return [];
    const [left, y, right] = past;
    return [[right, y], [left, y]];
}

/**
 * Where a leader crosses the strip of the figures that it would run through: the strip's edges and a height at which none stands; undefined where it runs
 * through none.
 */
function pastFigures(from: Point, spot: Point, figures: readonly Extent[]): readonly [left: number, y: number, right: number] | undefined {
    const hit = figures.find(figure => runsThrough(from, spot, figure));
    if (hit === undefined) return undefined;
    const strip = figures.filter(({ left, right }) => left < hit.right && right > hit.left);
    const left = Math.min(...strip.map(figure => figure.left)), right = Math.max(...strip.map(figure => figure.right));
    if (left <= spot[0] || right >= from[0]) return undefined;
    const straight = from[1] + (spot[1] - from[1]) * ((left + right) / 2 - from[0]) / (spot[0] - from[0]);
    const isClear = (y: number) => strip.every(({ top, foot }) => y <= top || y >= foot);
    const clear = strip.flatMap(({ top, foot }) => [top, foot]).filter(isClear).sort((a, b) => Math.abs(a - straight) - Math.abs(b - straight) || a - b);
    return clear[0] === undefined ? undefined : [left, clear[0], right];
}

function setAll(notes: readonly PartNote[], column: Extent, size: number): readonly SetNote[] {
    return notes.map(note => {
        const lines = [note.name, ...note.words.flatMap(words => wrapText(words, column.right - column.left, size))];
        return { note, lines, height: lines.length * STEP * size / SIZE };
    });
}

function heightOf(notes: readonly SetNote[]): number {
    return notes.reduce((sum, note) => sum + note.height + BETWEEN, 0);
}

/** Tops as near as can be to where they are wanted, in order, none over the next, all between `from` and `to`. */
function spread(wanted: readonly number[], heights: readonly number[], from: number, to: number): readonly number[] {
    const tops: number[] = [];
    let least = from;
    for (const [i, want] of wanted.entries()) {
        tops.push(Math.max(want, least));
        least = tops[i]! + heights[i]!;
    }
    let most = to;
    for (let i = tops.length - 1; i >= 0; i--) {
        tops[i] = Math.min(tops[i]!, most - heights[i]!);
        most = tops[i]!;
    }
    return tops;
}

function leader(points: readonly Point[]): readonly Item[] {
    return [polyline(points, 'dimension'), circle(points.at(-1)!, 1.7, null, 'ink')];
}

/** The size at which all notes go inside the hollow, `room` wide and `pitch` high for each; null where none does. */
export function sizeInside(notes: readonly PartNote[], room: number, pitch: number): number | null {
    const goes = (size: number) => notes.every(note => insideHeight(note, size) <= pitch
        && [note.name, ...note.words].every((words, i) => textWidth(words, size, i === 0 ? 600 : 400) <= room));
    return notes.length === 0 ? null : [SIZE, 8.6, 7.8].find(goes) ?? null;
}

function insideHeight(note: PartNote, size: number): number {
    return (1 + note.words.length) * STEP * size / SIZE + (note.spots.length > 0 ? 14 : 4);
}

/** A note inside the hollow of the beam, in the middle of its `pitch`; leaders go up from its head or down from its foot. */
export function noteInside(note: PartNote, middle: number, from: number, pitch: number, size: number, groundAt: (y: number) => Tone): Group {
    const step = STEP * size / SIZE;
    const up = note.spots.some(spot => spot[1] < from);
    const top = from + (pitch - insideHeight(note, size)) / 2 + (up ? 10 : 0);
    const baseline = top + size * 0.8;
    const foot = baseline + note.words.length * step + 6;
    return group(`note.${note.id}`, {}, [
        ...note.spots.flatMap(spot => leader([[middle, up ? top - 3 : foot], spot])),
        ...[note.name, ...note.words].flatMap((words, n) => patched(text([middle, baseline + n * step], words, { size, weight: n === 0 ? 600 : 400, anchor: 'middle' }), groundAt(baseline + n * step))),
    ]);
}
