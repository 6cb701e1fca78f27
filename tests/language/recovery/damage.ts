import { AstUtils, type AstNode, type LangiumCoreServices } from 'langium';
import type { LineReport } from '../../../src/language/lexer/index.ts';
import { editsOf, type Edit, type Kind } from './edits.ts';

/** What an edit did to the lines it did not touch. */
interface Damage { readonly edit: Edit; readonly errors: number; readonly elsewhere: readonly string[]; readonly lost: readonly string[] }

export interface Tally { cases: number; errors: number; elsewhere: number; losing: number; worst: number }

/** Applies every edit, or every n-th, to a file that is sound, and looks at the other lines: errors there, and nodes of the tree lost there. */
export function* damages(services: LangiumCoreServices, text: string, everyNth = 1): Generator<Damage> {
    const { parser: { LangiumParser: parser, Lexer: lexer } } = services;
    const sound = parser.parse(text);
    const first = sound.parserErrors[0] ?? sound.lexerErrors[0];
    if (first) throw new Error(`The file to be edited has to be sound: ${first.message}`);
    const statements = (sound.lexerReport as LineReport).statements;
    let of = -1, before = new Map<string, number>();
    let nth = 0;
    for (const edit of editsOf(text, lexer.tokenize(text).tokens)) {
        if (nth++ % everyNth !== 0) continue;
        const own = statementAround(edit.line, statements);
        const result = parser.parse(edit.text);
        const errorLines = [
            ...result.parserErrors.map(error => ({ line: error.token.startLine! - 1, message: error.message })),
            ...result.lexerErrors.map(error => ({ line: error.line! - 1, message: error.message })),
        ];
        if (of !== own.from) { of = own.from; before = signatures(sound.value, own); }
        const after = signatures(result.value, own);
        yield {
            edit,
            errors: errorLines.length,
            elsewhere: errorLines.filter(({ line }) => line < own.from || line > own.to).map(({ line, message }) => `${line + 1}: ${message}`),
            lost: [...before].filter(([signature, count]) => (after.get(signature) ?? 0) < count).map(([signature]) => signature),
        };
    }
}

export function tally(found: Iterable<Damage>, linesInFile: number, into: Map<Kind, Tally>): void {
    for (const { edit, errors, elsewhere, lost } of found) {
        const t = into.get(edit.kind) ?? { cases: 0, errors: 0, elsewhere: 0, losing: 0, worst: 0 };
        into.set(edit.kind, t);
        t.cases++;
        t.errors += errors;
        if (elsewhere.length > 0) t.elsewhere++;
        const lines = new Set(lost.map(signature => signature.split('|')[0]));
        if (lines.size > 0) t.losing++;
        t.worst = Math.max(t.worst, lines.size / linesInFile);
    }
}

interface Statement { readonly from: number; readonly to: number }

/** The lines of the statement that a line belongs to, from zero. */
function statementAround(line: number, statements: readonly number[]): Statement {
    const i = statements.findLastIndex(start => start - 1 <= line);
    return { from: i < 0 ? line : statements[i]! - 1, to: Math.max(line, (statements[i + 1] ?? line + 2) - 2) };
}

/** Every node outside the edited statement: its line, its own words, and the types of all that it stands in. */
function signatures(root: AstNode, own: Statement): Map<string, number> {
    const counts = new Map<string, number>();
    for (const node of AstUtils.streamAllContents(root)) {
        const line = node.$cstNode?.range.start.line;
        if (line === undefined || isOwn(line, own)) continue;
        const signature = `${line + 1}|${wordsOf(node)}|${surroundings(node, own)}`;
        counts.set(signature, (counts.get(signature) ?? 0) + 1);
    }
    return counts;
}

function wordsOf(node: AstNode): string {
    const words = Object.entries(node).flatMap(([key, value]) => key.startsWith('$') ? [] : [value].flat().flatMap(one =>
        typeof one === 'string' || typeof one === 'boolean' ? [`${key}=${one}`] : one && typeof one === 'object' && '$refText' in one ? [`${key}=${one.$refText}`] : []));
    return `${node.$type} ${words.join(' ')}`;
}

/** The edited statement may become anything itself; what stands in it has to stay there. */
function surroundings(node: AstNode, own: Statement): string {
    const types: string[] = [];
    for (let around = node.$container; around; around = around.$container) {
        const line = around.$cstNode?.range.start.line;
        types.push(around.$container && line !== undefined && isOwn(line, own) && around.$type !== 'Body' ? '*' : around.$type);
    }
    return types.join('<');
}

function isOwn(line: number, own: Statement): boolean {
    return line >= own.from && line <= own.to;
}
