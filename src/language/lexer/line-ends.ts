import { impliedAfter, indentationOf, isBoundary, isClose, isEnd, isOpen, type Token, type TokenTypes } from './token.ts';

/** After one of these a statement wants more. */
const WANTS_MORE = new Set([',', '+', '-', '*', '/', '±', '+/-', 'x', 'to', 'per', '=', ':', '(', '<', '<=', '>', '>=', '.']);
/** None of these can begin a statement, so a line that begins with one goes on with the line before. */
const GOES_ON = new Set([',', '+', '-', '*', '/', '±', '+/-', 'x', 'to', 'per', '=', ':', '(', ')', '<', '<=', '>', '>=']);
/** Nor can one of these; but a line that lost its first word begins with one, so only a name that has no value yet takes it. */
const VALUES = new Set(['LENGTH', 'MONEY', 'TIME', 'ANGLE', 'PERCENT', 'GAUGE', 'HASH', 'NOMINAL', 'DATE', 'NUMBER', 'UNMARKED', 'STRING']);
/** What is named by its head alone may have its block begin on the next line. */
const HEADS = new Set(['stock', 'profile', 'room', 'job', 'labor', 'bid', 'alternate']);

/** True where what stands on either side of a line end says that the statement has more to come. */
export function continues(last: Token, next: Token): boolean {
    return WANTS_MORE.has(last.tokenType.name) || GOES_ON.has(next.tokenType.name);
}

/**
 * Keeps the line ends that end a statement and supplies the ones that are implied (before `}`, at the end of the file).
 * A statement ends with its line. It runs on only when the next line is indented deeper than the statement, and a comma,
 * an operator, an open parenthesis or a name without its value wants more.
 */
export function markStatementEnds(tokens: readonly Token[], text: string, types: TokenTypes, whole: boolean): Token[] {
    const eol = types['EOL']!;
    const kept: Token[] = [];
    let last: Token | undefined;
    let openParentheses = 0;
    let first: Token | undefined;
    let indentation = 0, lineIndentation = 0;
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
            // Behind the { of its block, a statement stands as deep as where it is written.
            lineIndentation = indentationOf(text, token);
            indentation = last && isOpen(last) && last.startLine === token.startLine ? token.startColumn! - 1 : lineIndentation;
            first = token;
        }
        if (isClose(token) && !isBoundary(last)) keep(impliedAfter(eol, last!));
        if (isOpen(token) || isClose(token)) openParentheses = 0;
        else if (token.image === '(') openParentheses++;
        else if (token.image === ')') openParentheses = Math.max(0, openParentheses - 1);
        keep(token);
    });
    if (whole && !isBoundary(last)) keep(impliedAfter(eol, last!));
    return kept;

    function runsOn(before: Token, next: Token | undefined): boolean {
        if (!next) return false;
        if (isOpen(next)) return first === before || HEADS.has(first!.image);
        const stands = indentationOf(text, next);
        if (openParentheses > 0) return stands > lineIndentation || next.image === ')';
        return stands > indentation && (continues(before, next) || VALUES.has(next.tokenType.name) && (before === first || first!.image === 'require'));
    }
}

function nextWord(tokens: readonly Token[], i: number): Token | undefined {
    let next = i + 1;
    while (next < tokens.length && isEnd(tokens[next]!)) next++;
    return tokens[next];
}

/** So that a statement's range does not reach over the line end. */
function withoutWidth(eol: Token): Token {
    return { ...eol, image: '', endOffset: eol.startOffset - 1, endLine: eol.startLine, endColumn: eol.startColumn! - 1 };
}
