import { continues } from './line-ends.ts';
import { problemAfter, problemAt, type Problem } from './problem.ts';
import { DEEPEST } from './nesting.ts';
import { impliedAfter, indentationOf, isClose, isEnd, isOpen, type Token, type TokenTypes } from './token.ts';

interface Block { readonly indentation: number; readonly open: Token; readonly implied: boolean }
interface Line { readonly indentation: number; readonly tokens: readonly Token[] }

/**
 * Where the braces of a file do not match, the indentation says what was meant: a forgotten `}` is supplied before the
 * next line that stands no deeper than the block, a forgotten `{` behind the line whose block it would open, and a `}`
 * that closes nothing is left out. Each is reported once, at the brace or the line that wants one.
 * Where they match, nothing is touched, however the lines are indented.
 */
export function mendBraces(tokens: Token[], text: string, types: TokenTypes, problems: Problem[]): Token[] {
    if (match(tokens)) return tokens;
    const lines = linesOf(tokens, text);
    const mended: Token[] = [];
    const blocks: Block[] = [];
    const top = () => blocks[blocks.length - 1];

    lines.forEach((line, i) => {
        const next = lines[i + 1];
        closeAbove(line);
        for (const token of line.tokens) {
            if (isClose(token)) {
                const problem = closesNothing(token, line, next);
                if (problem) { problems.push(problemAt(token, problem)); continue; }
                blocks.pop();
            }
            if (isOpen(token)) blocks.push({ indentation: line.indentation, open: token, implied: false });
            mended.push(token);
        }
        if (next && wantsBlock(lines, i)) {
            const last = mended[lastWord(mended)]!;
            problems.push(problemAfter(last, 'A { is missing here: the lines below it end in a }.'));
            blocks.push({ indentation: line.indentation, open: supply('{'), implied: true });
        }
    });
    closeWhile(() => true);
    return mended;

    /** Closes the blocks that this line, by where it begins, no longer belongs to. */
    function closeAbove({ indentation, tokens: [first] }: Line): void {
        if (isOpen(first!) || first!.image === ')') return;
        if (!isClose(first!)) closeWhile(block => block.indentation >= indentation);
        else if (blocks.some(block => block.indentation === indentation)) closeWhile(block => block.indentation > indentation);
    }

    function closeWhile(ends: (block: Block) => boolean): void {
        while (blocks.length > 0 && ends(top()!)) {
            const { open, implied } = blocks.pop()!;
            supply('}');
            if (!implied && blocks.length < DEEPEST) problems.push(problemAt(open, 'This { is never closed: its } is missing.'));
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
        if (!block) return 'This } closes nothing: there is no { for it.';
        if (block.open.startLine === token.startLine) return undefined;
        const first = token === line.tokens[0];
        if (first && block.indentation === line.indentation || !next) return undefined;
        const goesOn = next.indentation > block.indentation || next.indentation === block.indentation && isClose(next.tokens[0]!);
        if (!goesOn) return undefined;
        return first ? 'This } closes nothing: there is no { for it.' : 'A { is missing on this line: the } in it closes nothing.';
    }
}

/** Deeper lines follow that do not run on, and the first that is not deeper is a } standing right below this line. */
function wantsBlock(lines: readonly Line[], i: number): boolean {
    const { indentation, tokens } = lines[i]!;
    const last = tokens[lastWord(tokens)]!;
    const next = lines[i + 1]!;
    if (isOpen(last) || isClose(last) || next.indentation <= indentation || continues(last, next.tokens[0]!)) return false;
    const below = lines.slice(i + 1).find(line => line.indentation <= indentation);
    return below !== undefined && below.indentation === indentation && isClose(below.tokens[0]!);
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

function linesOf(tokens: readonly Token[], text: string): Line[] {
    const lines: { indentation: number, tokens: Token[] }[] = [];
    let begins = true;
    for (const token of tokens) {
        if (begins && !isEnd(token)) lines.push({ indentation: indentationOf(text, token), tokens: [] });
        begins = isEnd(token) && token.image !== ';' || begins && isEnd(token);
        lines[lines.length - 1]?.tokens.push(token);
    }
    return lines;
}
