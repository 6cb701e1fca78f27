import Papa from 'papaparse';
import { cleanLine } from './clean-text.ts';
import type { CsvText } from './fit.ts';

export type Cell = string | number | null;

/**
 * RFC 4180: commas, CRLF, quotes doubled; every cell on one line. A text that a spreadsheet would take for a formula gets an
 * apostrophe before it. Where there is anything but ASCII the file begins with a byte order mark, or spreadsheets would guess the letters.
 */
export function printCsv(header: readonly string[], rows: readonly (readonly Cell[])[]): CsvText {
    const text = Papa.unparse({ fields: [...header], data: rows.map(row => row.map(clean)) }, { newline: '\r\n', escapeFormulae: LIKE_A_FORMULA });
    const file = `${text}\r\n`;
    return (/[^\x00-\x7f]/.test(file) ? `\ufeff${file}` : file) as CsvText;
}

/** A row from its cells by the names of their columns; one that has none is empty. */
export function rowOf<Column extends string>(header: readonly Column[], cells: Readonly<Partial<Record<Column, Cell>>>): Cell[] {
    return header.map(column => cells[column] ?? null);
}

/** Also behind spaces and control characters, and in the wide forms that spreadsheets fold to the plain ones. */
const LIKE_A_FORMULA = /^[\s\p{Cc}\p{Cf}]*[=+\-@\uff1d\uff0b\uff0d\uff20\u2212]|^[\t\r\n]/u;

function clean(cell: Cell): Cell {
    return typeof cell === 'string' ? cleanLine(cell) : cell;
}
