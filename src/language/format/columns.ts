import type { Column, Places } from './places.ts';
import type { Row } from './rows.ts';
import { textOf } from './spacing.ts';
import { atKey } from '../../plain/at-key.ts';

const STEP = 2;
/** Behind the longest name, or the longest value. */
const GAPS: Readonly<Record<Column, number>> = { value: 2, type: 1, definition: 1 };
const COMMENT_GAP = 2;
const GO_ON = 4;

/** Where everything in a row begins: its indentation, each column, the comment at its end. All counted from zero. */
interface Layout { readonly starts: readonly number[]; readonly comment: number }

/** Aligns the columns of each run of rows: those that follow each other in one block, with no blank line and no other block between. */
export function layOut(rows: readonly Row[], places: Places): Map<Row, Layout> {
    const layouts = new Map<Row, Layout>();
    for (const run of runsOf(rows)) {
        const starts = startsOf(run, places);
        for (const row of run) if (row.goesOn) starts.set(row, [indentation(row, starts, layouts)]);
        const ends = new Map(run.map(row => [row, endOf(row, starts.get(row)!, places)] as const));
        const furthest = most(run.filter(row => row.comment && !row.edge).map(row => ends.get(row)!));
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

/** Where the columns of each row of a run begin. Rows align with those of the run that have columns of the same kind. */
function startsOf(run: readonly Row[], places: Places): Map<Row, readonly number[]> {
    const starts = new Map<Row, readonly number[]>(run.map(row => [row, [row.depth * STEP]]));
    const kinds = new Map<Column, Row[]>();
    for (const row of run) if (row.aligns) atKey(kinds, row.aligns, () => []).push(row);
    for (const [column, alike] of kinds) {
        const second = alike[0]!.depth * STEP + widest(alike, 0, places) + (alike.every(isFixture) ? 1 : GAPS[column]);
        for (const group of groupsOf(alike)) {
            const third = second + widest(group.filter(row => row.columns.length > 2), 1, places) + 1;
            for (const row of group) starts.set(row, row.columns.length > 2 ? [row.depth * STEP, second, third] : [row.depth * STEP, second]);
        }
    }
    return starts;
}

/** `fixture lamp-1 light`: the kind belongs to the name. */
function isFixture(row: Row): boolean {
    return row.columns[0]![0]!.kind === 'fixture';
}

/** Rows that follow each other and begin with the same word: only their modifiers are worth aligning. */
function groupsOf(alike: readonly Row[]): Row[][] {
    const groups: Row[][] = [];
    const word = (row: Row) => row.columns[0]![0]!.text;
    for (const row of alike) {
        const group = groups[groups.length - 1];
        if (group && word(group[0]!) === word(row)) group.push(row);
        else groups.push([row]);
    }
    return groups;
}

function widest(rows: readonly Row[], column: number, places: Places): number {
    return most(rows.map(row => lastLine(textOf(row.columns[column]!, places)).length));
}

/** Zero where there is none. (`Math.max(...)` takes no more arguments than the stack has room for.) */
function most(numbers: readonly number[]): number {
    return numbers.reduce((a, b) => Math.max(a, b), 0);
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
