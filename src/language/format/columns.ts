import type { Column, Places } from './places.ts';
import type { Row } from './rows.ts';
import { textOf } from './spacing.ts';

const STEP = 2;
/** Behind the longest name, or the longest value. */
const GAPS: Readonly<Record<Column, number>> = { value: 2, type: 1, definition: 1 };
const COMMENT_GAP = 2;
const GO_ON = 4;

/** Where everything in a row begins: its indentation, each column, the comment at its end. All counted from zero. */
export interface Layout { readonly starts: readonly number[]; readonly comment: number }

/** Aligns the columns of each run of rows: those that follow each other in one block, with no blank line and no other block between. */
export function layOut(rows: readonly Row[], places: Places): Map<Row, Layout> {
    const layouts = new Map<Row, Layout>();
    for (const run of runsOf(rows)) {
        const starts = new Map(run.map(row => [row, startsOf(row, run, places)] as const));
        for (const row of run) if (row.goesOn) starts.set(row, [indentation(row, starts, layouts)]);
        const ends = new Map(run.map(row => [row, endOf(row, starts.get(row)!, places)] as const));
        const furthest = Math.max(0, ...run.filter(row => row.comment && !row.edge).map(row => ends.get(row)!));
        for (const row of run) layouts.set(row, { starts: starts.get(row)!, comment: (row.edge ? ends.get(row)! : furthest) + COMMENT_GAP });
    }
    return layouts;
}

function* runsOf(rows: readonly Row[]): Generator<Row[]> {
    let run: Row[] = [];
    for (const row of rows) {
        const last = run[run.length - 1];
        if (last && (last.edge || row.apart || row.depth !== last.depth)) { yield run; run = []; }
        run.push(row);
    }
    if (run.length > 0) yield run;
}

function startsOf(row: Row, run: readonly Row[], places: Places): number[] {
    const starts = [row.depth * STEP];
    if (!row.aligns) return starts;
    const alike = run.filter(other => other.aligns === row.aligns);
    const gap = alike.every(isFixture) ? 1 : GAPS[row.aligns];
    starts.push(starts[0]! + widest(alike, 0, places) + gap);
    if (row.columns.length > 2) starts.push(starts[1]! + widest(neighbors(row, alike).filter(other => other.columns.length > 2), 1, places) + 1);
    return starts;
}

/** `fixture lamp-1 light`: the kind belongs to the name. */
function isFixture(row: Row): boolean {
    return row.columns[0]![0]!.kind === 'fixture';
}

/** The rows around a row that begin with the same word: only their modifiers are worth aligning. */
function neighbors(row: Row, alike: readonly Row[]): readonly Row[] {
    const word = row.columns[0]![0]!.text;
    const same = (other: Row | undefined) => other?.columns[0]![0]!.text === word;
    let from = alike.indexOf(row), to = from;
    while (same(alike[from - 1])) from--;
    while (same(alike[to + 1])) to++;
    return alike.slice(from, to + 1);
}

function widest(rows: readonly Row[], column: number, places: Places): number {
    return Math.max(...rows.map(row => lastLine(textOf(row.columns[column]!, places)).length));
}

function indentation({ goesOn }: Row, starts: ReadonlyMap<Row, readonly number[]>, done: ReadonlyMap<Row, Layout>): number {
    const { head, stands, levels } = goesOn!;
    const ofHead = starts.get(head) ?? done.get(head)!.starts;
    switch (stands) {
        case 'inside': return ofHead[0]! + levels * STEP;
        case 'closing': return ofHead[0]! + (levels - 1) * STEP;
        case 'behind': return head.aligns === 'value' ? ofHead[1]! : ofHead[0]! + GO_ON;
    }
}

function endOf(row: Row, starts: readonly number[], places: Places): number {
    const last = row.columns.length - 1;
    return starts[last]! + lastLine(textOf(row.columns[last]!, places)).length;
}

function lastLine(text: string): string {
    return text.slice(text.lastIndexOf('\n') + 1);
}
