import { inLines } from '../plain/in-lines.ts';
import { cleanText } from '../text/clean-text.ts';
import { styled, type Style } from '../text/terminal.ts';

/** How a report names files and shows words: given by whoever prints it. */
export interface Files {
    /** The path to show for a file, with forward slashes: relative where it lies below. */
    nameOf(uri: string): string;
    /** Its text, for the line that a finding is about; undefined where it cannot be had. */
    textOf(uri: string): string | undefined;
}

/** Sets words off on a terminal; words are never told apart by that alone. */
export type Paint = Readonly<Record<Style, (text: string) => string>>;
const same = (text: string): string => text;
export const noPaint: Paint = { error: same, warning: same, hint: same, strong: same, faint: same };
/** Marks that the terminal turns into colors. */
export const paint: Paint = {
    error: text => styled('error', text), warning: text => styled('warning', text), hint: text => styled('hint', text), strong: text => styled('strong', text), faint: text => styled('faint', text),
};

/** Breaks a paragraph at spaces, to lines of at most `width` characters where its words allow it; never inside a length. */
export function wrap(text: string, width: number): string[] {
    return inLines(cleanText(text).trim().split(/(?<!\d'?|\bx) | (?!\d|mm\b|x\b)/), line => line.length <= width);
}

/** Pads to columns; the last is left as it is. `right` lists the columns that are set to the right. */
export function columns(rows: readonly (readonly string[])[], right: readonly number[] = []): string[] {
    const widths: number[] = [];
    for (const row of rows) row.forEach((cell, i) => { widths[i] = Math.max(widths[i] ?? 0, cell.length); });
    return rows.map(row => row
        .map((cell, i) => (right.includes(i) ? cell.padStart(widths[i]!) : i === row.length - 1 ? cell : cell.padEnd(widths[i]!)))
        .join('  ').trimEnd());
}
