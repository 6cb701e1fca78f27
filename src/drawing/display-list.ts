import type { Part } from '../takeoff/model.ts';
import { cleanText } from '../text/clean-text.ts';
import type { Paper } from './paper.ts';
import type { PenName } from './pens.ts';
import type { Tone } from './themes.ts';

/**
 * A drawing as plain data: every output (SVG now, others later) reads this list and nothing else.
 * Coordinates are paper points (1/72 in), x to the right, y down, from the sheet's upper left corner.
 */
export interface Sheet {
    /** Names the sheet among others shown beside it: `C-1`. */
    readonly id: string;
    readonly title: string;
    /** What the drawing shows, in words, for who cannot see it. */
    readonly description: string;
    readonly paper: Paper;
    readonly items: readonly Item[];
    /** How real lengths stand on the paper; undefined on a sheet that shows none. */
    readonly measured?: Measured;
}
/** The drawing's scale, and the point of the paper that is zero in the real world: outputs at true size begin there. */
interface Measured { readonly pointsPerTick: number; readonly origin: Point }

/** A sheet with its words cleaned: title and description may hold names from the job. */
export function sheet(
    words: { readonly id: string; readonly title: string; readonly description: string }, paper: Paper, items: readonly Item[], measured?: Measured,
): Sheet {
    return {
        id: words.id, title: cleanText(words.title), description: cleanText(words.description), paper, items,
        ...(measured === undefined ? {} : { measured }),
    };
}
export type Item = Line | Polyline | Circle | TextRun | Group;
export type Point = readonly [x: number, y: number];

export interface Line { readonly kind: 'line'; readonly from: Point; readonly to: Point; readonly pen: PenName }
export interface Polyline {
    readonly kind: 'polyline'; readonly points: readonly Point[]; readonly closed: boolean;
    readonly pen: PenName | null; readonly fill: Tone | null;
}
export interface Circle { readonly kind: 'circle'; readonly center: Point; readonly radius: number; readonly pen: PenName | null; readonly fill: Tone | null }

/** One line of text. `at` lies on its baseline; fractions are digits around U+2044, which the font makes its own of. */
export interface TextRun {
    readonly kind: 'text'; readonly at: Point; readonly text: string; readonly size: number; readonly weight: Weight;
    readonly anchor: Anchor;
    /** Turned to the left by so many degrees: 90 is read from the right edge of the sheet. */
    readonly turned: number;
    readonly tone: Tone;
    /** Added between letters, in points. */
    readonly spaced: number;
}
export type Weight = 400 | 600;
export type Anchor = 'start' | 'middle' | 'end';

/** What belongs together, with its name; for a piece of wood also its id in the cut list and the words it comes from. */
export interface Group {
    readonly kind: 'group'; readonly id: string; readonly title?: string;
    readonly piece?: string;
    /** The part of the beam it is, or is a picture of. */
    readonly part?: Part;
    /** `file:line:column`, counted from one. */
    readonly source?: string;
    /** Drawn larger than it is, to be seen: outputs at true size leave it out. */
    readonly outOfScale?: true;
    readonly items: readonly Item[];
}

export function line(from: Point, to: Point, pen: PenName): Line {
    return { kind: 'line', from, to, pen };
}
export function polyline(points: readonly Point[], pen: PenName): Polyline {
    return { kind: 'polyline', points, closed: false, pen, fill: null };
}
export function polygon(points: readonly Point[], pen: PenName | null, fill: Tone | null = null): Polyline {
    return { kind: 'polyline', points, closed: true, pen, fill };
}
export function circle(center: Point, radius: number, pen: PenName | null, fill: Tone | null = null): Circle {
    return { kind: 'circle', center, radius, pen, fill };
}
export function rectangle(left: number, top: number, right: number, foot: number, pen: PenName | null, fill: Tone | null = null): Polyline {
    return polygon([[left, top], [right, top], [right, foot], [left, foot]], pen, fill);
}

interface TextStyle {
    readonly size?: number; readonly weight?: Weight; readonly anchor?: Anchor;
    readonly turned?: number; readonly tone?: Tone; readonly spaced?: number;
}
/** Text as it may stand on any sheet: what could hide, reverse or break it is taken out (clean-text.ts). */
export function text(at: Point, words: string, style: TextStyle = {}): TextRun {
    return {
        kind: 'text', at, text: cleanText(words), size: style.size ?? 8.4, weight: style.weight ?? 400, anchor: style.anchor ?? 'start',
        turned: style.turned ?? 0, tone: style.tone ?? 'ink', spaced: style.spaced ?? 0,
    };
}

interface GroupNames { readonly title?: string; readonly piece?: string; readonly part?: Part; readonly source?: string; readonly outOfScale?: true }
export function group(id: string, names: GroupNames, items: readonly Item[]): Group {
    return {
        kind: 'group', id, items,
        ...(names.title === undefined ? {} : { title: cleanText(names.title) }),
        ...(names.piece === undefined ? {} : { piece: names.piece }),
        ...(names.part === undefined ? {} : { part: names.part }),
        ...(names.source === undefined ? {} : { source: names.source }),
        ...(names.outOfScale === undefined ? {} : { outOfScale: true }),
    };
}

/** Every line of text in groups and beside them, in the order in which they are drawn. */
export function textRuns(items: readonly Item[]): readonly TextRun[] {
    return items.flatMap(item => (item.kind === 'text' ? [item] : item.kind === 'group' ? textRuns(item.items) : []));
}
