import type { AstNode, ParseResult } from 'langium';
import type { LineReport } from '../lexer/coffer-lexer.ts';
import type { Problem } from '../lexer/problem.ts';
import type { Token } from '../lexer/token.ts';

export type SyntaxError = ParseResult['parserErrors'][number];

/** More would only scroll past; the last one says so. */
const MOST_SHOWN = 100;

/**
 * Leaves one error a mistake: of all that the parser stumbles over in one statement the first, and none where the lexer
 * has already said what is wrong with it. Every error stands on a word that can be underlined.
 */
export function onePerMistake<T extends AstNode>(result: ParseResult<T>, leftovers: readonly SyntaxError[]): ParseResult<T> {
    const report = result.lexerReport as LineReport | undefined;
    const statements = report?.statements ?? [];
    const taken = new Set<number>();
    const isFirst = (line: number | undefined) => {
        const statement = statementOf(line ?? 1, statements);
        return !taken.has(statement) && taken.add(statement);
    };
    const lexerErrors = (result.lexerErrors as Problem[]).filter(error => error.harmless || isFirst(error.line));
    const parserErrors: SyntaxError[] = [];
    for (const error of [...result.parserErrors.map(onAWord), ...leftovers].sort((a, b) => a.token.startOffset - b.token.startOffset)) {
        if (isFirst(error.token.startLine)) parserErrors.push(error);
    }
    return { ...result, lexerErrors: firstOf(lexerErrors, MOST_SHOWN), parserErrors: firstOf(parserErrors, MOST_SHOWN) };
}

/** The line end and the tokens that recovery makes up cannot be underlined: the word before them wants something. */
function onAWord(error: SyntaxError): SyntaxError {
    const { token } = error;
    if (token.endOffset! >= token.startOffset) return error;
    const before = 'previousToken' in error ? error.previousToken as Token : undefined;
    if (before && before.endOffset! >= before.startOffset) return Object.assign(error, { token: before });
    const at = [token, before].find(candidate => candidate && Number.isFinite(candidate.startOffset));
    return Object.assign(error, { token: at ?? { ...token, startOffset: 0, endOffset: 0, startLine: 1, endLine: 1, startColumn: 1, endColumn: 1 } });
}

/** The line on which the statement around a line begins. */
function statementOf(line: number, statements: readonly number[]): number {
    let from = 0, to = statements.length;
    while (from < to) {
        const middle = (from + to) >> 1;
        if (statements[middle]! <= line) from = middle + 1;
        else to = middle;
    }
    return statements[from - 1] ?? line;
}

function firstOf<E extends { message: string }>(errors: E[], most: number): E[] {
    if (errors.length <= most) return errors;
    const last = errors[most - 1]!;
    return [...errors.slice(0, most - 1), Object.assign(last, { message: `${last.message} (And ${errors.length - most} more mistakes below.)` })];
}
