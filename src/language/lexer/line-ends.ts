import type { IToken, TokenTypeDictionary } from 'chevrotain';
import { impliedAfter, indentationOf } from './implied.ts';

/** After one of these a statement wants more. */
const WANTS_MORE = new Set([',', '+', '-', '*', '/', '±', '+/-', 'x', 'to', 'per', '=', ':', '(', '<', '<=', '>', '>=', '.']);
/** None of these can begin a statement, so a line that does goes on with the one before. */
const GOES_ON = new Set([',', '+', '-', '*', '/', '±', '+/-', 'x', 'per', '=', ':', ')', '<', '<=', '>', '>=', '.']);

/**
 * Keeps the line ends that end a statement and supplies the ones that are implied (before `}` and at the end of the file).
 * A statement ends with its line; it runs on only when the next line is indented deeper, and either an open
 * parenthesis or a comma or operator beside the line end says that there is more to come.
 */
export function markStatementEnds(tokens: readonly IToken[], text: string, types: TokenTypeDictionary, whole: boolean): IToken[] {
    const eol = types['EOL']!, open = types['{']!, close = types['}']!;
    const kept: IToken[] = [];
    let last: IToken | undefined;
    let openParentheses = 0;
    let indentation = 0;
    const between = () => !last || last.tokenType === eol || last.tokenType === open || last.tokenType === close;
    const keep = (token: IToken) => { kept.push(token); last = token; };

    for (let i = 0; i < tokens.length; i++) {
        const token = tokens[i]!;
        if (token.tokenType === eol) {
            if (between()) continue;
            if (token.image !== ';' && runsOn(last!, nextOf(tokens, i, types))) continue;
            openParentheses = 0;
            keep(withoutWidth(token));
            continue;
        }
        if (between()) indentation = indentationOf(text, token);
        if (token.tokenType === open) openParentheses = 0;
        else if (token.tokenType === close) {
            openParentheses = 0;
            if (!between()) keep(impliedAfter(eol, last!));
        }
        else if (token.image === '(') openParentheses++;
        else if (token.image === ')') openParentheses = Math.max(0, openParentheses - 1);
        keep(token);
    }
    if (whole && !between()) keep(impliedAfter(eol, last!));
    return kept;

    function runsOn(before: IToken, next: IToken | undefined): boolean {
        if (!next) return false;
        if (next.tokenType === open) return true;
        const deeper = indentationOf(text, next) > indentation;
        if (openParentheses > 0) return deeper || next.image === ')';
        return deeper && (WANTS_MORE.has(before.image) || GOES_ON.has(next.image));
    }
}

function nextOf(tokens: readonly IToken[], i: number, types: TokenTypeDictionary): IToken | undefined {
    const eol = types['EOL'];
    let next = i + 1;
    while (next < tokens.length && tokens[next]!.tokenType === eol) next++;
    return tokens[next];
}

/** A statement's range in the text stops short of the line end. */
function withoutWidth(eol: IToken): IToken {
    return { ...eol, image: '', endOffset: eol.startOffset - 1, endLine: eol.startLine, endColumn: eol.startColumn! - 1 };
}
