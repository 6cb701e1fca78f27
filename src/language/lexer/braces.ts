import { continues } from './line-ends.ts';
import { problemAfter, problemAt, type Problem } from './problem.ts';
import { DEEPEST } from './nesting.ts';
import { indentationOf, impliedAfter, isClose, isEnd, isOpen, type Token, type TokenTypes } from './token.ts';

interface Block { readonly indentation: number; readonly open: Token; readonly implied: boolean }
interface Line { readonly indentation: number; readonly tokens: readonly Token[] }

const NO_OPEN = 'This `}` closes nothing: there is no `{` for it.';

/**
 * Where the braces of a file do not match, the indentation says what was meant: a forgotten `}` is supplied before the
 * next line that stands no deeper than the block, a forgotten `{` behind the line whose block it would open, and a `}`
 * that closes nothing is left out. Each is reported once, at the brace or the line that wants one.
 * Where they match, they are believed however the lines are indented; only a name alone on its line, with deeper lines
 * below it, is given the block it must mean.
 */
export function mendBraces(tokens: Token[], text: string, types: TokenTypes, problems: Problem[]): Token[] {
    const matching = match(tokens);
    const lines = linesOf(tokens, text);
    if (matching && !lines.some((_, i) => isBareHead(lines, i))) return tokens;
    const mended: Token[] = [];
    const blocks: Block[] = [];
    const top = () => blocks[blocks.length - 1];

    lines.forEach((line, i) => {
        const next = lines[i + 1];
        closeAbove(line);
        for (const token of line.tokens) {
            if (isClose(token)) {
                if (matching) closeWhile(block => block.implied);
                const problem = closesNothing(token, line, next);
                if (problem) { problems.push(problemAt(token, problem)); continue; }
                blocks.pop();
            }
            if (isOpen(token)) blocks.push({ indentation: line.indentation, open: token, implied: false });
            mended.push(token);
        }
        const missing = isBareHead(lines, i) ? 'A `{` is missing here: what belongs to this stands between `{` and `}`.'
            : !matching && top()?.open.startLine !== line.tokens[0]!.startLine && endsInBrace(lines, i) ? 'A `{` is missing here: the lines below it end in a `}`.' : undefined;
        if (missing) {
            problems.push(problemAfter(mended[lastWord(mended)]!, missing));
            blocks.push({ indentation: line.indentation, open: supply('{'), implied: true });
        }
    });
    closeWhile(() => true);
    return mended;

    /** Closes the blocks that this line, by where it begins, no longer belongs to. */
    function closeAbove({ indentation, tokens: [first] }: Line): void {
        if (isOpen(first!) || first!.image === ')') return;
        const believed = (block: Block) => matching && !block.implied;
        if (!isClose(first!)) closeWhile(block => block.indentation >= indentation && !believed(block));
        else if (blocks.some(block => block.indentation === indentation)) closeWhile(block => block.indentation > indentation && !believed(block));
    }

    function closeWhile(ends: (block: Block) => boolean): void {
        while (blocks.length > 0 && ends(top()!)) {
            const { open, implied } = blocks.pop()!;
            supply('}');
            if (!implied && blocks.length < DEEPEST) problems.push(problemAt(open, 'This `{` is never closed: its `}` is missing.'));
        }
    }

    /** Puts a brace behind the last word, before the line end. */
    function supply(brace: '{' | '}'): Token {
        const at = lastWord(mended);
        const token = impliedAfter(types[brace]!, mended[at]!);
        mended.splice(at + 1, 0, token);
        return token;
    }

    /** A } closes a block of its own line, one that begins where it stands, or one that the next line is no longer in. */
    function closesNothing(token: Token, line: Line, next: Line | undefined): string | undefined {
        const block = top();
        if (!block) return NO_OPEN;
        if (matching || !next || block.open.startLine === token.startLine) return undefined;
        const first = token === line.tokens[0];
        if (first && block.indentation === line.indentation) return undefined;
        const goesOn = next.indentation > block.indentation || next.indentation === block.indentation && isClose(next.tokens[0]!);
        if (!goesOn) return undefined;
        return first ? NO_OPEN : 'A `{` is missing on this line: the `}` in it closes nothing.';
    }
}

const DECLARATIONS = new Set(['stock', 'profile', 'room', 'job', 'labor', 'bid', 'alternate']);

function isDeclaration({ indentation, tokens }: Line): boolean {
    return indentation === 0 && DECLARATIONS.has(tokens[0]!.image);
}

/** A head with no block, and deeper lines below that do not go on with it: a declaration, or a name alone on its line. */
function isBareHead(lines: readonly Line[], i: number): boolean {
    const line = lines[i]!;
    const words = line.tokens.filter(token => !isEnd(token));
    return (isDeclaration(line) || words.length === 1 && isWord(words[0]!) && isWord(lines[i + 1]?.tokens[0]))
        && words.every(token => !isOpen(token) && !isClose(token)) && hasDeeperBelow(lines, i);
}

/** Deeper lines follow, and the first that is not deeper is a } standing right below this line. */
function endsInBrace(lines: readonly Line[], i: number): boolean {
    const { indentation } = lines[i]!;
    if (!hasDeeperBelow(lines, i, isDeclaration(lines[i]!))) return false;
    for (let j = i + 1; j < lines.length; j++) {
        if (lines[j]!.indentation <= indentation) return lines[j]!.indentation === indentation && isClose(lines[j]!.tokens[0]!);
    }
    return false;
}

function hasDeeperBelow(lines: readonly Line[], i: number, evenIfItGoesOn = false): boolean {
    const { indentation, tokens } = lines[i]!;
    const next = lines[i + 1];
    if (!next || next.indentation <= indentation) return false;
    const last = tokens[lastWord(tokens)]!;
    return !isOpen(last) && !isClose(last) && !isOpen(next.tokens[0]!) && (evenIfItGoesOn || !continues(last, next.tokens[0]!));
}

function isWord(token: Token | undefined): boolean {
    return token !== undefined && /^[A-Za-z_]/.test(token.image);
}

function lastWord(tokens: readonly Token[]): number {
    let at = tokens.length - 1;
    while (at >= 0 && isEnd(tokens[at]!)) at--;
    return at;
}

function match(tokens: readonly Token[]): boolean {
    let depth = 0;
    for (const token of tokens) {
        if (isOpen(token)) depth++;
        else if (isClose(token) && --depth < 0) return false;
    }
    return depth === 0;
}

/** The lines that hold a word, with the line ends behind them; a semicolon does not end a line. */
function linesOf(tokens: readonly Token[], text: string): Line[] {
    const lines: { indentation: number, tokens: Token[] }[] = [];
    let begins = true;
    for (const token of tokens) {
        if (begins && !isEnd(token)) lines.push({ indentation: indentationOf(text, token), tokens: [] });
        begins = begins ? isEnd(token) : isEnd(token) && token.image !== ';';
        lines[lines.length - 1]?.tokens.push(token);
    }
    return lines;
}
