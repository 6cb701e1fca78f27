import { DefaultLexer, type LexerResult, type LexingReport, type TokenizeOptions } from 'langium';
import { mendBraces } from './braces.ts';
import { boundNesting } from './nesting.ts';
import { markStatementEnds } from './line-ends.ts';
import { plainDashes } from './pasted.ts';
import { problemAt, type Problem } from './problem.ts';
import { tooManyImports, tooManyRooms, tooManyWords, unreadable, type NotRead } from './readable.ts';
import { GLUED, isGluedText, slipOf } from './slips.ts';
import { isBoundary, type Token } from './token.ts';

/** What the parser needs to know of the lines, to tell which errors belong together. */
export interface LineReport extends LexingReport {
    /** The lines on which a statement begins, counted from one, ascending. */
    readonly statements: readonly number[];
    /** False where the file was not read at all. */
    readonly readable: boolean;
    /** Words and signs, each a piece of the tree. */
    readonly words: number;
}

/**
 * Reads the tokens, then the lines: which line ends mean something, which braces were forgotten, what nests too deep.
 * Never throws. A text that is cut off on purpose (`partial`, for completion) has no braces mended.
 */
export class CofferLexer extends DefaultLexer {
    override tokenize(text: string, options?: TokenizeOptions): LexerResult {
        const reason = unreadable(text);
        if (reason !== undefined) return notRead(reason);
        const whole = options?.mode !== 'partial';
        const raw = super.tokenize(text, options);
        const tooMany = tooManyWords(raw.tokens.length + raw.hidden.length + raw.errors.length)
            ?? tooManyRooms(countOf('room', raw.tokens)) ?? tooManyImports(countOf('from', raw.tokens));
        if (tooMany !== undefined) return notRead(tooMany);
        const problems: Problem[] = [...raw.errors];
        for (const token of raw.hidden) noteSlip(token, problems);
        raw.tokens.forEach((token, i) => {
            noteSlip(token, problems);
            if (isGluedText(token, raw.tokens[i - 1], raw.tokens[i + 1])) problems.push(problemAt(token, GLUED));
            spellPlainly(token);
        });
        const mended = whole ? mendBraces(raw.tokens, text, this.tokenTypes, problems) : raw.tokens;
        const stated = markStatementEnds(mended, text, this.tokenTypes, whole);
        const tokens = boundNesting(stated, this.tokenTypes, problems);
        problems.sort((a, b) => a.offset - b.offset);
        return { tokens, hidden: raw.hidden, errors: problems, report: { diagnostics: [], statements: statementLines(tokens, this.tokenTypes['EOL']!.name), readable: true, words: tokens.length } satisfies LineReport as LexingReport };
    }
}

/** Statements that begin with a word. */
function countOf(word: string, tokens: readonly Token[]): number {
    return tokens.reduce((sum, token, i) => (token.tokenType.name === word && isBoundary(tokens[i - 1]) ? sum + 1 : sum), 0);
}

function noteSlip(token: Token, problems: Problem[]): void {
    const slip = slipOf(token);
    if (slip) problems.push(problemAt(token, slip.says, slip.harmless));
}

/** Signs and names of one width are spelled plainly at once, so that nobody further on meets `−` or `×`. Values: value-converter.ts. */
function spellPlainly(token: Token): void {
    const name = token.tokenType.name;
    if (name === 'x' || name === '-') token.image = name;
    else if (name === 'ID') token.image = plainDashes(token.image);
}

function statementLines(tokens: readonly Token[], eol: string): number[] {
    const lines: number[] = [];
    let begins = true;
    for (const token of tokens) {
        const name = token.tokenType.name;
        if (begins && lines[lines.length - 1] !== token.startLine) lines.push(token.startLine!);
        begins = name === eol || name === '{' || name === '}';
    }
    return lines;
}

function notRead({ message, offset, line }: NotRead): LexerResult {
    const report: LineReport = { diagnostics: [], statements: [], readable: false, words: 0 };
    return { tokens: [], hidden: [], errors: [{ offset, line, column: 1, length: 1, message }], report };
}
