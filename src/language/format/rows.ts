import { isComment, type Piece } from './pieces.ts';
import type { Column, Places } from './places.ts';

/** A printed line. */
export interface Row {
    /** How many blocks it stands in. */
    readonly depth: number;
    /** A name, its value, its modifiers; all in the first column where nothing aligns. */
    readonly columns: Piece[][];
    aligns: Column | undefined;
    /** The comment at its end. */
    comment: Piece | undefined;
    /** True where a blank line stands before it. */
    readonly apart: boolean;
    /** The row whose statement it goes on with, and how it stands to it. */
    readonly goesOn: GoesOn | undefined;
    /** True where a block of several lines begins or ends with this row. */
    edge: boolean;
}
interface GoesOn {
    readonly head: Row;
    readonly stands: 'behind' | 'inside' | 'closing';
    /** How many parentheses that were broken over lines it stands in. */
    readonly levels: number;
}

/** Breaks the pieces into the rows they are printed in: a statement a line, broken only where its author broke it. */
export function rowsOf(pieces: readonly Piece[], places: Places): Row[] {
    const rows: Row[] = [];
    const blocks: boolean[] = [];                    // true for a block of several lines
    const parentheses: boolean[] = [];               // of the statement; true where its line ends behind the (
    let row: Row | undefined;
    let head: Row | undefined;                       // the row in which the statement under way begins
    const inOneLine = () => blocks.length > 0 && !blocks[blocks.length - 1];

    pieces.forEach((piece, i) => {
        const before = pieces[i - 1], next = pieces[i + 1];
        if (row && isAtEndOfLine(piece, before, next)) row.comment = piece;
        else {
            if (!row || startsRow(piece, before!, row)) begin(piece, before);
            put(piece);
        }
        if (piece.kind === '{') {
            blocks.push(endsOnLaterLine(pieces, i));
            if (!inOneLine()) row!.edge = true;
        } else if (piece.kind === '}') blocks.pop();
        else if (piece.kind === '(') parentheses.push(next !== undefined && next.line > piece.endLine);
        else if (piece.kind === ')') parentheses.pop();
    });
    return rows;

    function startsRow(piece: Piece, before: Piece, current: Row): boolean {
        if (inOneLine()) return false;
        if (before.kind === 'SL_COMMENT' || current.comment || before.kind === '{' || piece.begins || piece.kind === '}') return true;
        return piece.kind !== '{' && before.endLine < piece.line;
    }

    function begin(piece: Piece, before: Piece | undefined): void {
        const closes = piece.kind === '}';
        const isNew = piece.begins || piece.between || closes;
        if (isNew) parentheses.length = 0;
        const apart = isNew && !closes && before !== undefined && before.kind !== '{' && piece.line > before.endLine + 1;
        const depth = blocks.filter(several => several).length - (closes ? 1 : 0);
        row = { depth, columns: [[]], aligns: undefined, comment: undefined, apart, goesOn: isNew || !head ? undefined : goingOn(piece, head), edge: closes };
        rows.push(row);
        if (isNew) head = piece.begins ? row : undefined;
    }

    function goingOn(piece: Piece, from: Row): GoesOn {
        const levels = parentheses.filter(broken => broken).length;
        return { head: from, stands: levels === 0 ? 'behind' : piece.kind === ')' ? 'closing' : 'inside', levels };
    }

    function put(piece: Piece): void {
        const { columns } = row!;
        if (row === head && !inOneLine()) {
            const column = places.values.get(piece.offset);
            if (column && columns.length === 1) { row!.aligns = column; columns.push([]); }
            else if (columns.length === 2 && places.modifiers.has(piece.offset)) columns.push([]);
        }
        columns[columns.length - 1]!.push(piece);
    }
}

/** A comment behind something else, with nothing behind it on its line. */
function isAtEndOfLine(piece: Piece, before: Piece | undefined, next: Piece | undefined): boolean {
    return isComment(piece) && before?.endLine === piece.line && piece.line === piece.endLine && (!next || next.line > piece.line);
}

/** A block that its author wrote on one line stays on it. */
function endsOnLaterLine(pieces: readonly Piece[], open: number): boolean {
    let depth = 0;
    for (let i = open; i < pieces.length; i++) {
        if (pieces[i]!.kind === '{') depth++;
        else if (pieces[i]!.kind === '}' && --depth === 0) return pieces[i]!.line > pieces[open]!.line;
    }
    return true;
}
