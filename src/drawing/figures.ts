import { printInches, printLength, type Show } from '../quantity/print-length.ts';
import type { Ticks } from '../quantity/ticks.ts';

const FRACTION_SLASH = '\u2044';

/**
 * A length as drawings write it: `4' 1 3⁄8"`, `16'`, `7 1⁄4"`, and plain `1239` on a sheet in millimeters, which says so
 * once. It is `printLength`'s, as in lists and in the job itself, the fraction with its own slash.
 */
export function figure(ticks: Ticks, show: Show): string {
    const printed = printLength(ticks, show);
    if (show === 'millimeters') return printed.replace(/ mm$/, '');
    return drawnFractions(printed);
}

/** The same with its unit also in millimeters, for running text. */
export function figureWithUnit(ticks: Ticks, show: Show): string {
    return show === 'millimeters' ? printLength(ticks, show) : figure(ticks, show);
}

/** Sizes of boards and beams, and spacings along them, are called in inches however long: `18 3⁄8"`, `every 16"`. */
export function sizeFigure(ticks: Ticks, show: Show): string {
    return show === 'millimeters' ? figure(ticks, show) : drawnFractions(printInches(ticks));
}
export function sizeWithUnit(ticks: Ticks, show: Show): string {
    return show === 'millimeters' ? printLength(ticks, show) : sizeFigure(ticks, show);
}

/** Fractions in running text: `1/4"` is written `1⁄4"`. */
export function drawnFractions(words: string): string {
    return words.replace(/(\d)\/(?=\d)/g, `$1${FRACTION_SLASH}`);
}

/** Several of a thing: `4 at 50 7⁄8"`. */
export function countedFigures(lengths: readonly Ticks[], show: Show): readonly string[] {
    const counts = new Map<Ticks, number>();
    for (const length of lengths) counts.set(length, (counts.get(length) ?? 0) + 1);
    return [...counts].sort(([a], [b]) => b - a).map(([length, count]) => `${count} at ${figure(length, show)}`);
}
