import Papa from 'papaparse';

/** What stands between the cells of a table. */
type Separator = '\t' | ';' | ',';

/** A table as it was read: its rows from the first on, as a spreadsheet counts them, each with its cells. */
interface CsvTable {
    readonly rows: readonly (readonly string[])[];
    /** There are more rows than were read. */
    readonly hasMore: boolean;
    /** The row in which a quote is opened that is closed nowhere, counted from 0: it has swallowed the rest. */
    readonly unclosed?: number;
}

/**
 * Reads a table of cells by RFC 4180, with any kind of line end, with or without a byte order mark. Cells are apart by what stands between the first
 * row's: tabs, else semicolons (where a comma is the decimal sign), else commas. A guess over all rows, as papaparse makes it, takes `0,5;0,5` for three cells.
 * @param most rows that are read
 */
export function readCsv(text: string, most: number): CsvTable {
    const plain = text.replace(/^\ufeff/, '');
    const { data, errors } = Papa.parse<string[]>(plain, { delimiter: separatorOf(plain), preview: most + 1, skipEmptyLines: false });
    const unclosed = errors.find(({ code }) => code === 'MissingQuotes')?.row;
    return { rows: data.slice(0, most).map(row => row.map(cell => cell.trim())), hasMore: data.length > most, ...unclosed !== undefined && { unclosed } };
}

function separatorOf(text: string): Separator {
    const first = /^\s*([^\r\n]*)/.exec(text)?.[1]?.replaceAll(/"[^"]*"/g, '') ?? '';
    return first.includes('\t') ? '\t' : first.includes(';') ? ';' : ',';
}
