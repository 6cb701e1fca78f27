import { HEADS, OPERATORS, ROOM_WORDS, VALUES } from '../grammar-words.ts';
import { columnOf, impliedAfter, indentationOf, isBoundary, isClose, isEnd, isOpen, type Token, type TokenTypes } from './token.ts';

/** After one of these a statement wants more. */
const WANTS_MORE = new Set([...OPERATORS, 'per', ',', '=', ':', '(', '.']);
/** None of these can begin a statement, so a line that begins with one goes on with the line before. */
const GOES_ON = new Set([...OPERATORS, 'per', ',', '=', ':', '(', ')']);

/** True where what stands on either side of a line end says that the statement has more to come. */
export function continues(last: Token, next: Token): boolean {
    return WANTS_MORE.has(last.tokenType.name) || GOES_ON.has(next.tokenType.name);
}

/** True for the first word of a declaration, which stands at the left margin and has a block. */
export function isHead(first: Token, indentation: number): boolean {
    return indentation === 0 && HEADS.includes(first.image);
}

/** True where a line that begins with these two can only be part of a head: a parameter, what closes them, what is varied. */
export function belongsToHead(first: Token, second: Token | undefined): boolean {
    return first.image === ')' || first.image === 'like' || second?.image === ':';
}

/** `profile ... like` and `from ... use` may be broken on either side of their second word. */
export function isBrokenAtWord(statement: Token, last: Token, next: Token): boolean {
    const word = statement.image === 'from' ? 'use' : statement.image === 'profile' ? 'like' : undefined;
    return word !== undefined && (last.image === word || next.image === word);
}

/**
 * Keeps the line ends that end a statement and supplies the ones that are implied (before `}`, at the end of the file).
 * A statement ends with its line. It runs on only when the next line is indented deeper than the statement, and either
 * a comma, an operator, a parenthesis or a name without its value wants more, or a modifier stands under the value.
 */
export function markStatementEnds(tokens: readonly Token[], text: string, types: TokenTypes, whole: boolean): Token[] {
    const eol = types['EOL']!;
    const kept: Token[] = [];
    let last: Token | undefined;
    let begin = 0;                          // where the statement begins
    let anchor: Token | undefined;          // the first statement behind the { of its block, on the same line
    let openParentheses = 0;
    const keep = (token: Token) => { kept.push(token); last = token; };

    tokens.forEach((token, i) => {
        if (isEnd(token)) {
            if (isBoundary(last)) return;
            if (token.image !== ';' && runsOn(last!, nextWord(tokens, i))) return;
            openParentheses = 0;
            keep(withoutWidth(token));
            return;
        }
        if (isBoundary(last)) {
            if (last && isOpen(last) && last.startLine === token.startLine) anchor = token;
            else if (anchor?.startLine !== token.startLine) anchor = undefined;
            begin = i;
        } else if (isClose(token)) keep(impliedAfter(eol, last!));
        if (isOpen(token) || isClose(token)) openParentheses = 0;
        else if (token.image === '(') openParentheses++;
        else if (token.image === ')') openParentheses = Math.max(0, openParentheses - 1);
        keep(token);
    });
    if (whole && !isBoundary(last)) keep(impliedAfter(eol, last!));
    return kept;

    function runsOn(before: Token, at: number): boolean {
        const first = tokens[begin]!, next = tokens[at], second = tokens[at + 1];
        if (!next) return false;
        const line = indentationOf(text, first);
        const head = isHead(first, line);
        if (isOpen(next)) return first === before || head;
        if (next.image === ')' && openParentheses > 0) return true;
        const stands = indentationOf(text, next);
        // Behind the { of its block a statement stands as deep as where it is written.
        if (stands <= (anchor ? columnOf(text, anchor) : line)) return false;
        if (head && belongsToHead(next, second) || isBrokenAtWord(first, before, next)) return true;
        if (continues(before, next)) return true;
        // a line that lost its first word begins with a value, so only a name that has no value yet takes it
        if (VALUES.has(next.tokenType.name)) return before === first || first.image === 'require';
        return second !== undefined && !isBoundary(second) && stands === valueColumn(tokens, begin, text);
    }
}

/** Where the value of a statement stands, if it has one on its first line. */
function valueColumn(tokens: readonly Token[], begin: number, text: string): number | undefined {
    const first = tokens[begin]!;
    let at = ROOM_WORDS.has(first.image) ? begin + 2 : begin + 1;
    while (tokens[at]?.image === '.') at += 2;
    const value = tokens[at];
    return /^[A-Za-z_]/.test(first.image) && value && !isBoundary(value) && value.startLine === first.startLine ? columnOf(text, value) : undefined;
}

function nextWord(tokens: readonly Token[], i: number): number {
    let next = i + 1;
    while (next < tokens.length && isEnd(tokens[next]!)) next++;
    return next;
}

/** So that a statement's range does not reach over the line end. */
function withoutWidth(eol: Token): Token {
    return { ...eol, image: '', endOffset: eol.startOffset - 1, endLine: eol.startLine, endColumn: eol.startColumn! - 1 };
}
