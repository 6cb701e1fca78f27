import Papa from 'papaparse';
import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';
import type { Show } from '../quantity/print-length.ts';

export type Cell = string | number | null;

/**
 * RFC 4180: commas, CRLF, quotes doubled. A text that a spreadsheet would take for a formula gets an apostrophe before
 * it. Where there is anything but ASCII the file begins with a byte order mark, or spreadsheets would guess the letters.
 */
export function printCsv(header: readonly string[], rows: readonly (readonly Cell[])[]): string {
    const text = Papa.unparse({ fields: [...header], data: rows.map(row => [...row]) }, { newline: '\r\n', escapeFormulae: LIKE_A_FORMULA });
    const file = `${text}\r\n`;
    return /[^\x00-\x7f]/.test(file) ? `\ufeff${file}` : file;
}

/** A row from its cells by the names of their columns; one that has none is empty. */
export function rowOf<Column extends string>(header: readonly Column[], cells: Readonly<Partial<Record<Column, Cell>>>): Cell[] {
    return header.map(column => cells[column] ?? null);
}

/** Also behind spaces and control characters, and in the wide forms that spreadsheets fold to the plain ones. */
const LIKE_A_FORMULA = /^[\s\p{Cc}\p{Cf}]*[=+\-@\uff1d\uff0b\uff0d\uff20\u2212]|^[\t\r\n]/u;

/** A length as a number a spreadsheet can add up, in the unit the job shows. */
export function decimal(ticks: Ticks, show: Show): number {
    return show === 'millimeters' ? rounded(ticks / TICKS_PER_MM) : rounded(ticks / TICKS_PER_INCH);
}
export function unitOf(show: Show): string {
    return show === 'millimeters' ? 'mm' : 'in';
}
function rounded(value: number): number {
    return Math.round(value * 1e7) / 1e7;
}
