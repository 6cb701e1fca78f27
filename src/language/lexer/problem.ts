import type { LexingDiagnostic } from 'langium';
import type { Token } from './token.ts';

/** An error of the lexer. Harmless: what is read after it is read as it would be without it. */
export interface Problem extends LexingDiagnostic {
    readonly harmless?: boolean;
}

export function problemAt(token: Token, message: string, harmless = false): Problem {
    return {
        offset: token.startOffset, line: token.startLine, column: token.startColumn, length: Math.max(1, firstLine(token.image).length), message, harmless,
    };
}

export function problemAfter(token: Token, message: string): Problem {
    return { offset: token.endOffset! + 1, line: token.endLine, column: token.endColumn! + 1, length: 1, message };
}

function firstLine(image: string): string {
    return /^[^\r\n]*/.exec(image)![0];
}
