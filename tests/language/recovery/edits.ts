import type { LexerResult } from 'langium';

export type Kind = 'half-typed line' | 'half-typed head' | 'missing token' | 'half word' | 'missing {' | 'missing }' | 'missing mark' | 'stray quote';

/** A file with one edit in one line, as it stands for a moment while somebody types. */
export interface Edit { readonly kind: Kind; readonly line: number; readonly text: string; readonly note: string }

type Token = LexerResult['tokens'][number];

/** Every edit of a file, one at a time. */
export function* editsOf(text: string, tokens: readonly Token[]): Generator<Edit> {
    const lines = text.split('\n');
    const words = tokens.filter(token => token.image !== '');
    for (let line = 0; line < lines.length; line++) {
        const here = words.filter(token => token.startLine === line + 1);
        for (const [i, token] of here.entries()) yield* editsAt(lines, line, token, i === here.length - 1);
    }
}

function* editsAt(lines: readonly string[], line: number, token: Token, isLast: boolean): Generator<Edit> {
    const whole = lines[line]!;
    const before = whole.slice(0, token.startColumn! - 1);
    const after = whole.slice(token.endColumn!);
    const make = (kind: Kind, changed: string, note: string): Edit =>
        ({ kind, line, text: lines.map((old, i) => i === line ? changed : old).join('\n'), note });

    if (!isLast) {
        const kept = before + token.image;
        const closed = depth(kept) - depth(withoutComment(whole));
        // The editor closes what it opened: the braces that the line had closed stay behind the cursor.
        if (closed >= 0) yield make('half-typed line', kept + ' }'.repeat(closed), kept.trim());
        else yield make('half-typed head', kept, kept.trim());
    }
    if (token.image === '{' || token.image === '}') {
        yield make(token.image === '{' ? 'missing {' : 'missing }', `${before} ${after}`, whole.trim());
        return;
    }
    yield make('missing token', before + ' '.repeat(token.image.length) + after, `without ${token.image}`);
    if (/^[A-Za-z]{3}/.test(token.image)) {
        const half = token.image.slice(0, Math.ceil(token.image.length / 2));
        yield make('half word', before + half + after, `${half} for ${token.image}`);
    }
    if (/\d["']$/.test(token.image)) yield make('missing mark', before + token.image.slice(0, -1) + after, token.image);
    yield make('stray quote', `${before}${token.image}"${after}`, `" after ${token.image}`);
}

function depth(text: string): number {
    return (text.match(/\{/g) ?? []).length - (text.match(/\}/g) ?? []).length;
}

function withoutComment(line: string): string {
    return line.replace(/\/\/.*$/, '');
}
