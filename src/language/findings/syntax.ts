import type { LangiumDocument } from 'langium';
import type { Finding } from '../../findings/finding.ts';
import type { Range } from '../../provenance/source.ts';
import { finding } from './make.ts';

/**
 * What the lexer and the parser could not read. One finding a line: the first says what is wrong, the others are what
 * came of it.
 */
export function syntaxFindings(document: LangiumDocument): readonly Finding[] {
    const uri = document.uri.toString();
    const { lexerErrors, parserErrors } = document.parseResult;
    const found: Finding[] = [];
    for (const error of lexerErrors) {
        const start = { line: (error.line ?? 1) - 1, character: (error.column ?? 1) - 1 };
        const end = { line: start.line, character: start.character + Math.max(1, error.length) };
        found.push(finding('syntax', { uri, range: { start, end } }, error.message));
    }
    for (const error of parserErrors) {
        const before = 'previousToken' in error ? error.previousToken as Token : undefined;
        found.push(finding('syntax', { uri, range: rangeOf(error.token) ?? rangeOf(before) ?? TOP }, error.message));
    }
    const lines = new Set<number>();
    return found.filter(({ at: { range: { start } } }) => !lines.has(start.line) && lines.add(start.line));
}

type Token = LangiumDocument['parseResult']['parserErrors'][number]['token'];
const TOP: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** Where a token stands; undefined for the end of the file and the end of a line, which have no width to underline. */
function rangeOf(token: Token | undefined): Range | undefined {
    if (!token || !(token.endOffset! >= token.startOffset)) return undefined;
    return {
        start: { line: token.startLine! - 1, character: token.startColumn! - 1 },
        end: { line: token.endLine! - 1, character: token.endColumn! },
    };
}
