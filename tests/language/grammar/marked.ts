import type { ParseResult } from 'langium';

/** An error as it is marked in a text: `^^^ message` below the words it stands on. */
interface Mark { readonly line: number; readonly from: number; readonly to: number; readonly message: string }

/** Takes the marks out of a text. Lines count from zero in the text without them. */
export function readMarks(marked: string): { text: string, marks: Mark[] } {
    const lines: string[] = [];
    const marks: Mark[] = [];
    for (const line of marked.split('\n')) {
        const mark = /^( *)(\^+) (.+)$/.exec(line);
        if (mark) marks.push({ line: lines.length - 1, from: mark[1]!.length, to: mark[1]!.length + mark[2]!.length, message: mark[3]! });
        else lines.push(line);
    }
    return { text: lines.join('\n'), marks };
}

/** The errors of a parse in the same form. */
export function marksOf({ lexerErrors, parserErrors }: ParseResult): Mark[] {
    return [
        ...lexerErrors.map(({ line, column, length, message }) => ({ line: line! - 1, from: column! - 1, to: column! - 1 + length, message })),
        ...parserErrors.map(({ token, message }) => ({ line: token.startLine! - 1, from: token.startColumn! - 1, to: token.endColumn!, message })),
    ].sort((a, b) => a.line - b.line || a.from - b.from);
}
