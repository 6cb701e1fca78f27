import { belongsToHead, continues, isBrokenAtWord, isHead } from './line-ends.ts';
import { indentationOf, isClose, isEnd, isOpen, type Token } from './token.ts';

/** A line that holds a word. */
export interface Line {
    /** Its tokens, with the line ends behind them. */
    readonly tokens: readonly Token[];
    readonly first: Token;
    readonly last: Token;
    readonly indentation: number;
    /** False where it goes on with the statement above. */
    readonly begins: boolean;
    /** The line on which its statement begins, where that is another. */
    readonly head: Line | undefined;
    /** How deep its statement stands. */
    readonly statement: number;
}

/** The lines of a text; a semicolon does not end one. */
export function linesOf(tokens: readonly Token[], text: string): Line[] {
    const groups: Token[][] = [];
    let atStart = true;
    for (const token of tokens) {
        if (atStart && !isEnd(token)) groups.push([]);
        atStart = isEnd(token) && (atStart || token.image !== ';');
        groups[groups.length - 1]?.push(token);
    }
    const lines: Line[] = [];
    let head: Line | undefined;
    for (const group of groups) {
        const first = group[0]!, last = group.findLast(token => !isEnd(token))!;
        const indentation = indentationOf(text, first);
        const above = lines[lines.length - 1];
        const goesOn = above !== undefined && head !== undefined && !isOpen(above.last) && !isClose(above.last)
            && (first.image === ')' || indentation > head.statement && (continues(above.last, first) || isBrokenAtWord(head.first, above.last, first)
                || isHead(head.first, head.statement) && belongsToHead(first, group[1])));
        const line: Line = {
            tokens: group, first, last, indentation, begins: !goesOn, head: goesOn ? head : undefined, statement: goesOn ? head!.statement : indentation,
        };
        if (!goesOn) head = line;
        lines.push(line);
    }
    return lines;
}

/**
 * Parts of a file that stand for themselves, each from a declaration at the left margin to the next. What is wrong with
 * the braces of one, or how it is indented, is no matter of the others. A `let`, and a `stock` with its name alone, stand in
 * blocks as well as in files: at the margin they begin a part only where the braces around them do not match.
 */
export function partsOf(lines: readonly Line[]): Line[][] {
    return split(lines, line => isFileLine(line) || opensBlock(line)).flatMap(part =>
        isMatching(part) ? [part] : split(part, (line, i) => line.indentation === 0 && (line.first.image === 'let' || isHeadAbove(part, i))));
}

function split(lines: readonly Line[], begins: (line: Line, i: number) => boolean): Line[][] {
    const parts: Line[][] = [];
    lines.forEach((line, i) => {
        if (i === 0 || line.begins && begins(line, i)) parts.push([]);
        parts[parts.length - 1]!.push(line);
    });
    return parts;
}

/** The property `from` of a line is followed by a name. */
function isFileLine({ first, tokens, indentation }: Line): boolean {
    return indentation === 0 && (first.image === 'edition' || first.image === 'from' && (tokens[1] === undefined || isEnd(tokens[1]) || tokens[1].tokenType.name === 'STRING'));
}

/** A stock is named in blocks too; the other heads are words of their own. */
function opensBlock(line: Line): boolean {
    return isHead(line.first, line.indentation) && (line.first.image !== 'stock' || hasBrace(line));
}

/** A head whose block may have lost its brace. */
function isHeadAbove(lines: readonly Line[], i: number): boolean {
    return isHead(lines[i]!.first, 0) && (lines[i + 1]?.indentation ?? 0) > 0;
}

function isMatching(lines: readonly Line[]): boolean {
    return balanceOf(lines) === 'matching';
}

function balanceOf(lines: readonly Line[]): Balance {
    let depth = 0, least = 0;
    for (const { tokens } of lines) {
        for (const token of tokens) {
            if (isOpen(token)) depth++;
            else if (isClose(token)) depth--;
            if (depth < least) least = depth;
        }
    }
    if (depth === 0 && least === 0) return 'matching';
    return depth < 0 ? 'too few open' : 'too few closed';
}

/** Lines whose braces are mended together, and what is asked of them as a whole. */
interface Part {
    readonly lines: readonly Line[];
    readonly balance: Balance;
    /** By line: true where a ) stands before the next brace that nothing opened from that line on, so that a head above is not over. */
    readonly closesParenthesis: () => readonly boolean[];
}

export function partOf(lines: readonly Line[]): Part {
    let closing: boolean[] | undefined;
    return { lines, balance: balanceOf(lines), closesParenthesis: () => closing ??= closingLines(lines) };
}

/** From the last line up: the deepest that parentheses go below where they stand at a line, up to the next brace. */
function closingLines(lines: readonly Line[]): boolean[] {
    const closing = new Array<boolean>(lines.length);
    let deepest = 0;
    for (let i = lines.length - 1; i >= 0; i--) {
        const { tokens } = lines[i]!;
        for (let at = tokens.length - 1; at >= 0; at--) {
            const token = tokens[at]!;
            if (isOpen(token) || isClose(token)) deepest = 0;
            else if (token.image === '(') deepest = Math.min(0, deepest + 1);
            else if (token.image === ')') deepest--;
        }
        closing[i] = deepest < 0;
    }
    return closing;
}

type Balance = 'matching' | 'too few open' | 'too few closed';

/**
 * True where a { is missing behind a line: of a declaration without its block, of a name alone on its line with deeper
 * lines below it, or (where the braces do not match) before deeper lines that end in a } standing right below this line.
 */
export function lacksBrace(part: Part, i: number): boolean {
    const { lines, balance } = part;
    const line = lines[i]!, next = lines[i + 1];
    if (!next || isOpen(line.last) || isClose(line.last) || isOpen(next.first)) return false;
    const deeper = next.indentation > line.statement;
    if (!deeper && balance !== 'too few open') return false;
    if (isHead((line.head ?? line).first, line.statement)) return (next.begins || balance !== 'matching') && endsHead(part, i);
    if (!deeper || !next.begins) return false;
    const isName = line.begins && line.first === line.last && isWord(line.first) && isWord(next.first);
    return isName || balance !== 'matching' && endsInBrace(lines, i);
}

function endsInBrace(lines: readonly Line[], i: number): boolean {
    let below = i + 1;
    while (below < lines.length && lines[below]!.indentation > lines[i]!.statement) below++;
    return below < lines.length && lines[below]!.indentation === lines[i]!.statement && isClose(lines[below]!.first);
}

/** A head without a brace ends where the lines below it can no longer be part of it, whatever its own last word wants. */
function endsHead({ lines, closesParenthesis }: Part, i: number): boolean {
    if (isPartOfHead(lines, i + 1)) return false;
    for (let at = i; ; at--) {
        if (hasBrace(lines[at]!)) return false;
        if (lines[at]!.begins) return !closesParenthesis()[i + 1];
        if (!isPartOfHead(lines, at)) return false;
    }
}

function isPartOfHead(lines: readonly Line[], i: number): boolean {
    const { first, last, tokens } = lines[i]!;
    return belongsToHead(first, tokens[1]) || lines[i - 1]!.last.image === 'like' && isOpen(last);
}

function hasBrace({ tokens }: Line): boolean {
    return tokens.some(token => isOpen(token) || isClose(token));
}

function isWord({ image }: Token): boolean {
    return /^[A-Za-z_]/.test(image);
}
