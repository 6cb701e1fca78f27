import { circle, group, polyline, text, type Group, type Item, type Point } from '../display-list.ts';
import type { Extent } from '../extent.ts';
import { patched } from '../patch.ts';
import type { Tone } from '../themes.ts';
import { textWidth } from '../text/measure-text.ts';
import { wrapText } from '../text/fit-text.ts';

/** A part's name with its sizes, and the spots its leader points at. */
export interface PartNote { readonly id: string; readonly name: string; readonly words: readonly string[]; readonly spots: readonly Point[] }

const SIZE = 9.4;
const STEP = 11.6;
const BETWEEN = 7;

interface SetNote { readonly note: PartNote; readonly lines: readonly string[]; readonly height: number }

/** Notes in a column on the right, each as near to the height of what it names as its neighbors let it. */
export function noteColumn(notes: readonly PartNote[], column: Extent): readonly Group[] {
    const size = [SIZE, 8.6, 7.8, 7].find(s => heightOf(setAll(notes, column, s)) <= column.foot - column.top) ?? 7;
    const set = [...setAll(notes, column, size)].sort((a, b) => a.note.spots[0]![1] - b.note.spots[0]![1]);
    const tops = spread(set.map(s => s.note.spots[0]![1] - size * 0.46), set.map(s => s.height + BETWEEN), column.top, column.foot);
    return set.map((s, i) => {
        const baseline = tops[i]! + size * 0.8;
        const elbow: Point = [column.left - 14, baseline - size * 0.34];
        return group(`note.${s.note.id}`, {}, [
            ...s.note.spots.flatMap(spot => leader([[column.left - 4, elbow[1]], elbow, spot])),
            ...s.lines.map((words, n) => text([column.left, baseline + n * STEP * size / SIZE], words, { size, weight: n === 0 ? 600 : 400 })),
        ]);
    });
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
