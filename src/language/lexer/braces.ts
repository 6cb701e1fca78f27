import { linesOf, lacksBrace, partOf, partsOf, type Line } from './lines.ts';
import { DEEPEST } from './nesting.ts';
import { problemAfter, problemAt, type Problem } from './problem.ts';
import { impliedAfter, isClose, isEnd, isOpen, type Token, type TokenTypes } from './token.ts';

interface Block { readonly indentation: number; readonly open: Token; readonly implied: boolean }

const NO_BLOCK = 'A `{` is missing here: what belongs to this stands between `{` and `}`.';
const NO_OPEN = 'This `}` closes nothing: there is no `{` for it.';

/**
 * Where the braces of a declaration do not match, its indentation says what was meant: a forgotten `}` is supplied before
 * the next line that stands no deeper than the block, a forgotten `{` behind the line whose block it would open, and a
 * `}` that closes nothing is left out. Each is reported once, at the brace or the line that wants one.
 * Where they match, they are believed however the lines are indented; only a head without a block, with deeper lines
 * below it, is given the block it must mean.
 */
export function mendBraces(tokens: Token[], text: string, types: TokenTypes, problems: Problem[]): Token[] {
    return partsOf(linesOf(tokens, text)).flatMap(lines => mendPart(lines, types, problems));
}

function mendPart(lines: readonly Line[], types: TokenTypes, problems: Problem[]): Token[] {
    const part = partOf(lines);
    const matching = part.balance === 'matching';
    if (matching && !lines.some((_, i) => lacksBrace(part, i))) return lines.flatMap(line => line.tokens);
    const mended: Token[] = [];
    const blocks: Block[] = [];
    const top = () => blocks[blocks.length - 1];

    lines.forEach((line, i) => {
        closeAbove(line);
        for (const token of line.tokens) {
            if (isClose(token)) {
                if (matching) closeWhile(block => block.implied);
                const problem = closesNothing(token, line, lines[i + 1]);
                if (problem) { problems.push(problemAt(token, problem)); continue; }
                blocks.pop();
            }
            if (isOpen(token)) blocks.push({ indentation: line.statement, open: token, implied: false });
            mended.push(token);
        }
        // A line that stands no deeper than its block was pasted: how deep the next one stands says nothing.
        const block = top();
        const believable = !block || block.indentation < line.statement && block.open.startLine !== line.first.startLine;
        if (believable && lacksBrace(part, i)) {
            problems.push(problemAfter(line.last, NO_BLOCK));
            blocks.push({ indentation: line.statement, open: supply('{'), implied: true });
        }
    });
    closeWhile(() => true);
    return mended;

    /** Closes the blocks that this line, by where it begins, no longer belongs to. */
    function closeAbove({ indentation, begins, first }: Line): void {
        if (!begins || isOpen(first)) return;
        // The block of the declaration itself ends with it, whatever stands at the left margin in between.
        const believed = (block: Block) => matching && !block.implied || block === blocks[0];
        if (!isClose(first)) closeWhile(block => block.indentation >= indentation && !believed(block));
        else if (blocks.slice(-DEEPEST)
            .some(block => block.indentation === indentation)) closeWhile(block => block.indentation > indentation && !believed(block));
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
        const at = mended.findLastIndex(token => !isEnd(token));
        const token = impliedAfter(types[brace]!, mended[at]!);
        mended.splice(at + 1, 0, token);
        return token;
    }

    /** A } closes a block of its own line, one that begins where it stands, or one that the next line is no longer in. */
    function closesNothing(token: Token, line: Line, next: Line | undefined): string | undefined {
        const block = top();
        if (!block) return NO_OPEN;
        if (matching || !next || block.open.startLine === token.startLine) return undefined;
        const first = token === line.first;
        if (first && block.indentation === line.indentation) return undefined;
        const goesOn = next.indentation > block.indentation || next.indentation === block.indentation && isClose(next.first);
        if (!goesOn) return undefined;
        return first ? NO_OPEN : 'A `{` is missing on this line: the `}` in it closes nothing.';
    }
}
