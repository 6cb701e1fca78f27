import type { Item } from '../display-list.ts';
import { drawString, layString, standsAt, type DimensionString, type Edge, type LaidString } from './dimension-string.ts';

/** Strings beside each other on one edge of a drawing, the finest innermost. */
export interface Stack {
    readonly strings: readonly LaidString[];
    /** From the drawing's edge to the outermost reach. */
    readonly depth: number;
    readonly lines: readonly number[];
}

/** Figures of a string raised over more rows than this make a thicket: the string is set smaller, or summed up. */
const MOST_ROWS = 3;
const SIZES = [1, 0.9, 0.8, 0.7];
const BETWEEN_STRINGS = 5.5;
/** Extension lines of an outer string begin this far outside the figures of the string before. */
const CLEAR_OF_FIGURES = 2;

/**
 * Lays strings one outside the other. Each comes with ways to say it, fullest first; the first that needs no thicket of
 * raised figures is taken.
 * @param clear distance from the drawing's edge that the first string's line keeps at least.
 * @param least points that a figure has at least.
 */
export function layStack(edge: Edge, ways: readonly (readonly DimensionString[])[], size: number, clear: number, least = 0): Stack {
    const sizes = SIZES.map(factor => size * factor).filter(each => each >= least);
    const strings = ways.map(variants => firstThatSuits(edge, variants, sizes.length > 0 ? sizes : [Math.max(size, least)]));
    const lines: number[] = [];
    let reach = 0;
    for (const [i, string] of strings.entries()) {
        const at = i === 0 ? Math.max(clear, string.inner) : reach + BETWEEN_STRINGS + string.inner;
        lines.push(at);
        reach = at + string.outer;
    }
    return { strings, depth: reach, lines };
}

function firstThatSuits(edge: Edge, variants: readonly DimensionString[], sizes: readonly number[]): LaidString {
    let last: LaidString | null = null;
    for (const variant of variants) {
        for (const size of sizes) {
            last = layString(variant, edge, size);
            if (last.rows <= MOST_ROWS) return last;
        }
    }
    return last!;
}

/**
 * @param edgeAt the drawing's edge: a y at the top and the foot, an x at the sides.
 * @param off how far off that edge extension lines begin: past the walls of a plan.
 * The outermost stops run from the drawing to every line, but for figures that they would run through; the others begin outside the string before, clear of
 * its figures.
 */
export function drawStack(stack: Stack, edgeAt: number, off = 3): readonly Item[] {
    return stack.strings.map((string, i) => {
        const sign = string.edge === 'top' || string.edge === 'left' ? -1 : 1;
        const outside = (of: number) => (of < 0 ? off : stack.lines[of]! + stack.strings[of]!.outer + CLEAR_OF_FIGURES);
        const last = string.string.stops.length - 1;
        const inTheWay = (stop: number) => stack.strings.slice(0, i).findLastIndex(before => standsAt(before, stop));
        const begins = string.string.stops.map((stop, n) => outside(n === 0 || n === last ? inTheWay(stop) : i - 1));
        return drawString(string, edgeAt + sign * stack.lines[i]!, begins.map(begin => edgeAt + sign * begin));
    });
}
