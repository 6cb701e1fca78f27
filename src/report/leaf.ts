import type { House } from './house.ts';
import { columns, wrap, type Paint } from './look.ts';
import { standingText } from './standing.ts';
import { cleanText } from '../text/clean-text.ts';
import type { TerminalText } from '../text/fit.ts';
import { terminalParagraphs } from '../text/terminal.ts';

/** A page of tables and sentences about the rooms of one house: printed in a terminal here, on paper by `src/pages/leaves`. */
export interface Leaf {
    readonly title: string;
    /** Whose it is: the job. */
    readonly of: string;
    readonly house: House;
    /** What is wrong with it beside all that is wrong with the rooms. */
    readonly head?: readonly string[];
    readonly sections: readonly LeafSection[];
    /** How the figures are meant, and where they come from. */
    readonly notes: readonly string[];
    readonly cautions: readonly string[];
}
export interface LeafSection {
    readonly heading: string;
    readonly words: readonly string[];
    /** `figures`: columns that are set to the right. */
    readonly table?: { readonly head: readonly string[]; readonly rows: readonly (readonly string[])[]; readonly figures: readonly number[] };
    /** Under the table. */
    readonly after?: readonly string[];
}

/** A table without the columns in which nothing stands. */
export function shownTable({ head, rows, figures }: NonNullable<LeafSection['table']>): NonNullable<LeafSection['table']> {
    const shown = [...head.keys()].filter(column => column === 0 || rows.some(row => (row[column] ?? '') !== ''));
    const of = (row: readonly string[]): string[] => shown.map(column => row[column] ?? '');
    return { head: of(head), rows: rows.map(of), figures: shown.flatMap((column, i) => (figures.includes(column) ? [i] : [])) };
}

const WIDTH = 110;

/** `lacks`: what follows where a room could not be laid out. */
export function humanLeaves(leaves: readonly Leaf[], lacks: string, paint: Paint): TerminalText {
    return terminalParagraphs(leaves.map(({ title, of, house: { rooms }, head = [], sections, notes, cautions }) => [
        paint.strong(`${title}  ${cleanText(of)}`),
        ...head.flatMap(each => wrap(each, WIDTH)).map(paint.error),
        ...standingText(rooms, { dont: 'build', lacks }, paint, WIDTH),
        ...sections.flatMap(section => ['', ...sectionLines(section, paint)]),
        ...notes.length > 0 ? ['', ...notes.flatMap(note => wrap(note, WIDTH)).map(paint.faint)] : [],
        ...cautions.length > 0 ? ['', paint.strong('Take care'), ...cautions.flatMap(caution => wrap(caution, WIDTH - 2).map(line => `  ${line}`))] : [],
    ]));
}

function sectionLines({ heading, words, table: whole, after = [] }: LeafSection, paint: Paint): string[] {
    const table = whole && shownTable(whole);
    const indented = (all: readonly string[]): string[] => all.flatMap(each => wrap(each, WIDTH - 2).map((line, i) => (i === 0 ? `  ${line}` : `    ${line}`)));
    const rows = table ? columns([table.head, ...table.rows.map(row => row.map(cleanText))], table.figures) : [];
    return [paint.strong(cleanText(heading)), ...indented(words), ...rows.map((row, i) => `  ${i === 0 ? paint.faint(row) : row}`), ...indented(after)];
}
