import { AstUtils, type AstNode } from 'langium';
import * as ast from '../generated/ast.ts';
import type { Problem } from '../lexer/problem.ts';
import { kept } from '../../plain/kept.ts';

/**
 * True where a statement's own words (not those of the block it opens) hold a syntax error: what it says is then unknown,
 * and nothing more is said about it. A member of its block that is sound stays sound.
 */
export function isBroken(statement: AstNode): boolean {
    const words = statement.$cstNode;
    if (!words) return true;
    const lines = brokenLines(AstUtils.findRootNode(statement));
    if (lines.size === 0) return false;
    const body = (statement as { body?: ast.Body }).body?.$cstNode;
    const last = body ? body.range.start.line : words.range.end.line;
    return isAnyBetween(words.range.start.line, last, sortedLines(AstUtils.findRootNode(statement)));
}

/** True where something between the braces could not be read, so that nobody can tell what is missing there. */
export function hasBroken(body: ast.Body): boolean {
    if (!body.$cstNode) return true;
    const lines = brokenLines(AstUtils.findRootNode(body));
    if (lines.size === 0) return false;
    const { range } = body.$cstNode;
    return isAnyBetween(range.start.line, range.end.line, sortedLines(AstUtils.findRootNode(body)));
}

const sortedLines = kept((root: AstNode): readonly number[] => [...brokenLines(root)].sort((a, b) => a - b));

function isAnyBetween(first: number, last: number, sorted: readonly number[]): boolean {
    let from = 0, to = sorted.length;
    while (from < to) {
        const middle = (from + to) >> 1;
        if (sorted[middle]! < first) from = middle + 1;
        else to = middle;
    }
    return from < sorted.length && sorted[from]! <= last;
}

/** Lines with an error of the lexer or the parser, counted from zero. */
export const brokenLines = kept((root: AstNode): ReadonlySet<number> => {
    const lines = new Set<number>();
    const result = root.$document?.parseResult;
    for (const error of result?.lexerErrors ?? []) if (error.line !== undefined && !(error as Problem).harmless) lines.add(error.line - 1);
    // Every line ends in a token of its own, so an error stands on the line it is in. (At the end of the file it has none.)
    for (const { token } of result?.parserErrors ?? []) if (Number.isFinite(token.startLine)) lines.add(token.startLine! - 1);
    return lines;
});
