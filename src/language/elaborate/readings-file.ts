import type { Corner } from '../../job/model.ts';
import { kept } from '../../plain/kept.ts';
import { counted, listed } from '../../plain/words.ts';
import { TICKS_PER_FOOT, type Ticks } from '../../quantity/ticks.ts';
import { readCsv } from '../../text/read-csv.ts';
import { quoted } from '../types/words.ts';
import { LONGEST } from './limits.ts';
import { commaOf, readCell, spaceMissing, unitIn, type CellUnit } from './readings-cell.ts';

/** More readings than a ceiling has; a larger file is something else. */
export const MOST_READINGS = 2000;
/** Characters of a file of readings, at most. */
export const MOST_TEXT = 1_000_000;
/** Characters of a cell, at most: more than any length or name of a column. */
const MOST_IN_CELL = 200;
/** Rows that are told one by one. */
const MOST_TOLD = 3;
/** Columns of the first row that are named where one is not found. */
const MOST_NAMED = 8;

/** What the line that names the file says of it. */
export interface SaidOfFile { readonly columns?: readonly string[]; readonly unit?: CellUnit; readonly from: Corner }

/** A row: its place from the corner it is measured from, and what was read there. `row` as a spreadsheet counts. */
interface ReadingOfFile { readonly x: Ticks; readonly y: Ticks; readonly up: Ticks; readonly row: number }

/** What a file of readings holds; `troubles`: what cannot be read of it, in sentences. */
interface ReadingsFile { readonly readings: readonly ReadingOfFile[]; readonly troubles: readonly string[] }

const ROLES = ['x', 'y', 'up'] as const;
type Role = typeof ROLES[number];

/** What headers call each column; the compass first from the west and north walls, then the other way. */
const NAMES: Readonly<Record<Role, { readonly plain: readonly string[]; readonly forth: string; readonly back: string; readonly says: string }>> = {
    x: { plain: ['x'], forth: 'east', back: 'west', says: 'how far along the north wall' },
    y: { plain: ['y'], forth: 'south', back: 'north', says: 'how far along the east wall' },
    up: { plain: ['reading', 'up', 'z', 'height', 'h', 'level', 'elevation', 'elev', 'ceiling'], forth: '', back: '', says: 'the reading' },
};

const tablesOf = kept((file: { readonly text: string }) => readCsv(file.text, 2 * MOST_READINGS));

/** Reads a table of places and readings. It begins with a row of headers, and every further row that is not empty is one reading. */
export function readReadings(file: { readonly text: string }, name: string, said: SaidOfFile): ReadingsFile {
    const nothing = (trouble: string): ReadingsFile => ({ readings: [], troubles: [trouble] });
    if (/[\0\ufffd]/.test(file.text)) return nothing(`${quoted(name)} is no text that can be read: export it as CSV in UTF-8.`);
    if (file.text.length > MOST_TEXT) return nothing(`${quoted(name)} has more than ${MOST_TEXT} characters, which is more than any survey.`);
    const { rows, hasMore, unclosed } = tablesOf(file);
    if (unclosed !== undefined) return nothing(`Row ${unclosed + 1} of ${quoted(name)} opens a quote that is closed nowhere.`);
    const tooMany = `${quoted(name)} has more than ${MOST_READINGS} rows: ${MOST_READINGS} readings is the limit. A reading every foot is more than enough.`;
    if (hasMore) return nothing(tooMany);
    const long = rows.findIndex(row => row.some(cell => cell.length > MOST_IN_CELL));
    if (long >= 0) return nothing(`Row ${long + 1} of ${quoted(name)} has a cell of more than ${MOST_IN_CELL} characters, which is no reading.`);
    const at = rows.findIndex(row => row.some(cell => cell !== '')), header = rows[at];
    if (!header) return nothing(`${quoted(name)} holds nothing: write a row with the names of the columns, such as x, y, reading, and below it a row for each reading.`);
    if (header.filter(cell => /^[-+−]?[\d.,]+$/.test(cell)).length > header.length / 2) {
        return nothing(`Row ${at + 1} of ${quoted(name)} holds figures, and no names of columns. Write such a row above it: x, y, reading.`);
    }
    const columns = columnsOf(header, said);
    if ('missing' in columns) return nothing(missingColumn(columns, header, name));
    const units = ROLES.map(role => unitIn(header[columns[role]]!));
    // the line's unit is that of columns whose header has none; where every one has its own, and it is none of them, one of both is wrong
    if (said.unit && units.every(unit => unit && unit !== said.unit)) {
        const own = [...new Set(units)].map(unit => unit!);
        return nothing(`${quoted(name)} says ${listed(own)} in its header, and this line says ${said.unit}. Take one of them out.`);
    }
    const body = rows.map((cells, i) => ({ cells, row: i + 1 })).slice(at + 1).filter(({ cells }) => cells.some(cell => cell !== ''));
    if (body.length > MOST_READINGS) return nothing(tooMany);
    const comma = commaOf(body.flatMap(({ cells }) => ROLES.map(role => cells[columns[role]] ?? '')));
    if (comma === undefined) {
        return nothing(`${quoted(name)} has figures such as ${quoted(body.flatMap(({ cells }) => cells).find(cell => /\d,\d/.test(cell))!)}, whose comma may part thousands or be the decimal sign. Write them without it.`);
    }
    const readings: ReadingOfFile[] = [], troubles: { readonly row: number; readonly message: string }[] = [];
    for (const { cells, row } of body) {
        const read = ROLES.map((role, i) => lengthAt(cells, columns[role], role, units[i] ?? said.unit, comma));
        const wrong = read.find(one => typeof one !== 'number') as string | undefined;
        const [x, y, up] = read as number[];
        if (wrong === undefined) readings.push({ x: x!, y: y!, up: up!, row });
        else troubles.push({ row, message: wrong === 'unit' ? wrong : `Row ${row} of ${quoted(name)}: ${wrong}` });
    }
    if (troubles.some(({ message }) => message === 'unit')) {
        return nothing(`Nothing says in which unit ${quoted(name)} is: write it in its first row, such as x (mm), or behind its name here: in millimeters.`);
    }
    if (body.length === 0) return nothing(`${quoted(name)} holds no reading: below its row of headers there is nothing.`);
    const rest = troubles.slice(MOST_TOLD), told = troubles.slice(0, MOST_TOLD).map(({ message }) => message);
    return { readings, troubles: [...told, ...rest.length > 0 ? [`Rows of ${quoted(name)} that cannot be read either: ${rest.length}, the first of them row ${rest[0]!.row}.`] : []] };

    /** The length in a cell; or what is wrong with it; or `unit`. */
    function lengthAt(cells: readonly string[], column: number, role: Role, unit: CellUnit | undefined, comma: boolean): Ticks | string {
        const cell = cells[column] ?? '', called = quoted(header![column]);
        if (cell === '') return `there is nothing in column ${called}.`;
        if (cells.slice(header!.length).some(each => each !== '')) return `it has ${cells.length} cells, and the header has ${header!.length}. Is a comma in it that belongs to a figure?`;
        const likely = spaceMissing(cell).map(each => quoted(each));
        if (likely.length > 0) return `${quoted(cell)} in column ${called} is most likely ${listed(likely, 'or')}: a space is missing. Write it with the space.`;
        const ticks = readCell(cell, unit, comma);
        if (ticks === 'no-unit') return 'unit';
        if (ticks === undefined) return `${quoted(cell)} in column ${called} is no length.`;
        if (Math.abs(ticks) > LONGEST) return `${quoted(cell)} in column ${called} is more than ${LONGEST / TICKS_PER_FOOT} feet. Is the unit right?`;
        if (role === 'up' && ticks < 0) return `${quoted(cell)} in column ${called} is less than nothing. Readings count up from the level line to the ceiling.`;
        return ticks;
    }
}

interface Missing { readonly missing: Role; readonly said?: string; readonly among: readonly string[]; readonly turned?: string }

/** Where each column stands: as it is said, else by its header. */
function columnsOf(header: readonly string[], { columns, from }: SaidOfFile): Readonly<Record<Role, number>> | Missing {
    const found: Partial<Record<Role, number>> = {};
    for (const [i, role] of ROLES.entries()) {
        const said = columns?.[i];
        if (said !== undefined) {
            const at = header.findIndex(cell => cell.toLowerCase() === said.trim().toLowerCase());
            if (at < 0) return { missing: role, said, among: [] };
            found[role] = at;
            continue;
        }
        const { plain, forth, back } = NAMES[role], [toward, away] = from.includes(back) ? [forth, back] : [back, forth];
        const called = (names: readonly string[]): number[] => header.flatMap((cell, at) => (names.includes(plainName(cell)) ? [at] : []));
        const all = called([...plain, ...toward === '' ? [] : compassNames(toward)]);
        const turned = away === '' ? undefined : called(compassNames(away))[0];
        if (all.length !== 1) {
            return { missing: role, among: all.map(at => header[at]!), ...all.length === 0 && turned !== undefined && { turned: header[turned]! } };
        }
        found[role] = all[0]!;
    }
    return found as Record<Role, number>;
}

function compassNames(way: string): string[] {
    return [way, `${way}ing`, way[0]!];
}

/** A header without its unit and signs: `X (mm)` is x. */
function plainName(header: string): string {
    return header.toLowerCase().replace(/[([].*$/, '').replace(/[_\s,]+(mm|cm|m|in|inch(es)?|ft|feet|millimeters|centimeters|meters)\s*$/, '').trim();
}

function missingColumn({ missing, said, among, turned }: Missing, header: readonly string[], name: string): string {
    const has = `its first row says ${first(header.filter(cell => cell !== ''))}`;
    if (said !== undefined) return `${quoted(name)} has no column ${quoted(said)}: ${has}.`;
    const say = 'Say which columns count behind its name, such as columns "x", "y", "reading".';
    if (turned !== undefined) return `The column ${quoted(turned)} of ${quoted(name)} counts the other way: say from which corner, such as from south-west.`;
    if (among.length > 1) return `${quoted(name)} has ${counted(among.length, 'column')} for ${NAMES[missing].says}: ${first(among)}. ${say}`;
    return `${quoted(name)} has no column for ${NAMES[missing].says}: ${has}. ${say}`;
}

/** Columns by name, the first of them where they are many. */
function first(columns: readonly string[]): string {
    const shown = columns.slice(0, MOST_NAMED).map(cell => quoted(cell));
    return listed(columns.length > MOST_NAMED ? [...shown, `${columns.length - MOST_NAMED} more`] : shown);
}
