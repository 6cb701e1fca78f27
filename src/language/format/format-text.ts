import type { LangiumCoreServices, LexingReport, ParseResult } from 'langium';
import { createFront } from '../front.ts';
import type { LineReport } from '../lexer/coffer-lexer.ts';
import { layOut } from './columns.ts';
import { isComment, piecesOf, type Piece } from './pieces.ts';
import { placesOf } from './places.ts';
import { rowsOf } from './rows.ts';
import { between } from './spacing.ts';

/** A stretch of the text and what takes its place. */
interface Edit { readonly offset: number; readonly length: number; readonly text: string }

export type Front = Pick<LangiumCoreServices, 'parser'>;
let front: Front | undefined;

/**
 * A text in its one form: a statement a line, two spaces a block, values and comments in columns, pasted marks spelled
 * plainly. Every word and every comment stays. Undefined where the text cannot be parsed: it is then left alone.
 */
export function formatText(text: string): string | undefined {
    const outcome = formatOrReason(text);
    return 'text' in outcome ? outcome.text : undefined;
}

/** A text in its one form, or what keeps it from that, to be said behind the name of its file. */
export function formatOrReason(text: string): { readonly text: string } | { readonly reason: string } {
    const edits = formatEdits(text);
    return 'reason' in edits ? edits : { text: applied(text, edits) };
}

/** The changes that bring a text into its form, in order; each replaces white space, or one pasted value. Or why there are none. */
export function formatEdits(
    text: string, services: Front = front ??= createFront(), parsed: ParseResult = services.parser.LangiumParser.parse(text),
): Edit[] | { readonly reason: string } {
    const unread = notRead(parsed.lexerReport, parsed.lexerErrors);
    if (unread !== undefined) return { reason: `is left as it is. ${unread}` };
    if (parsed.lexerErrors.length + parsed.parserErrors.length > 0) return { reason: 'has errors that keep it from being formatted; `cofferwright check` shows them' };
    const pieces = piecesOf(services.parser.Lexer.tokenize(text));
    const places = placesOf(parsed.value);
    const newline = /\r\n?|\n/.exec(text)?.[0] ?? '\n';
    const rows = rowsOf(pieces, places);
    const layouts = layOut(rows, places);

    const edits: Edit[] = [];
    let end = text.startsWith('\ufeff') ? 1 : 0;
    const print = (gap: string, piece: Piece | undefined, printed: string) => {
        const offset = piece?.offset ?? text.length;
        replace(edits, text, end, offset, gap);
        if (piece) replace(edits, text, offset, piece.end, printed);
        end = piece?.end ?? text.length;
    };
    rows.forEach((row, i) => {
        const { starts, comment } = layouts.get(row)!;
        let column = 0;
        row.columns.forEach((pieces, c) => pieces.forEach((piece, p) => {
            const first = p === 0;
            const indent = ' '.repeat(Math.max(0, starts[c]! - column));
            const lead = c > 0 ? indent : (i === 0 ? '' : row.apart ? newline + newline : newline) + indent;
            const gap = first ? lead : between(pieces[p - 1]!, piece, places);
            const printed = first && c === 0 && isComment(piece) ? reindented(piece, starts[0]!, newline) : piece.text;
            print(gap, piece, printed);
            column = (first ? starts[c]! : column + gap.length) + printed.length;
        }));
        if (row.comment) print(' '.repeat(Math.max(1, comment - column)), row.comment, row.comment.text);
    });
    print(pieces.length > 0 ? newline : '', undefined, '');
    const after = services.parser.Lexer.tokenize(applied(text, edits)), unreadAfter = notRead(after.report, after.errors);
    if (unreadAfter !== undefined) return { reason: `is left as it is: laid out it could not be read any more. ${unreadAfter}` };
    return saysTheSame(pieces, piecesOf(after)) ? edits : { reason: 'is left as it is: laid out it would not say the same. That is a mistake in this program' };
}

/** Why a text was not read at all, in words. */
function notRead(report: LexingReport | undefined, [error]: readonly { readonly message: string }[]): string | undefined {
    return (report as LineReport | undefined)?.readable === false ? error?.message : undefined;
}

/** A last look before anybody's work is touched: the same words and comments, in the same statements. */
function saysTheSame(before: readonly Piece[], after: readonly Piece[]): boolean {
    const words = ({ text }: Piece) => text.replace(/\s+/g, ' ');
    return before.length === after.length && before.every((piece, i) => {
        const other = after[i]!;
        return piece.kind === other.kind && piece.begins === other.begins && words(piece) === words(other);
    });
}

function applied(text: string, edits: readonly Edit[]): string {
    let result = '', end = 0;
    for (const edit of edits) {
        result += text.slice(end, edit.offset) + edit.text;
        end = edit.offset + edit.length;
    }
    return result + text.slice(end);
}

function replace(edits: Edit[], text: string, from: number, to: number, by: string): void {
    if (text.slice(from, to) !== by) edits.push({ offset: from, length: to - from, text: by });
}

/** The further lines of a comment move with its first; those with a star stand under the first star. */
function reindented({ text, column }: Piece, indentation: number, newline: string): string {
    return text.split(/\r\n?|\n/).map((line, i) => {
        if (i === 0) return line.trimEnd();
        const words = line.trim();
        if (words === '') return '';
        const stood = line.length - line.trimStart().length;
        return ' '.repeat(words.startsWith('*') ? indentation + 1 : Math.max(0, stood - (column - 1) + indentation)) + words;
    }).join(newline);
}
