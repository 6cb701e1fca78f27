import type { AstNode, LangiumDocument } from 'langium';
import { replacing, type Finding, type Fix } from '../../findings/finding.ts';
import type { Source } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { DECLARATIONS } from '../grammar-words.ts';
import { plainValue } from '../lexer/pasted.ts';
import type { Problem } from '../lexer/problem.ts';
import { meantAsFeet } from './feet-and-inches.ts';
import { finding } from './make.ts';
import { meantFixes, near } from './near.ts';
import { meantOtherwise } from './written-apart.ts';

/** What the lexer and the parser could not read: one mistake a statement, in their words. */
export function syntaxFindings(document: LangiumDocument): readonly Finding[] {
    const uri = document.uri.toString();
    const { lexerErrors, parserErrors } = document.parseResult;
    const found: Finding[] = [];
    for (const { line = 1, column = 1, length, message, harmless } of lexerErrors as readonly Problem[]) {
        const at = placeOf(uri, line, column, line, column + Math.max(1, length) - 1);
        found.push(finding('syntax', at, message, { fixes: harmless ? plainly(document, at) : [] }));
    }
    const strays = straysOf(document.parseResult.value);
    for (const { token, message } of parserErrors) {
        const at = placeOf(uri, token.startLine ?? 1, token.startColumn ?? 1, token.endLine ?? 1, token.endColumn ?? 1);
        if (strays.has(token.startOffset)) found.push(finding('nothing-starts-with', at, message, { fixes: token.image === 'import' ? importFix(document, at) : meantFixes(at, near(token.image, DECLARATIONS)) }));
        else {
            const meant = meantOtherwise(document, at) ?? meantAsFeet(document, at);
            found.push(meant ? finding('syntax', meant.at, meant.message, { fixes: meant.fixes }) : finding('syntax', at, message));
        }
    }
    return found;
}

/** Where words stand at the margin that declare nothing. The parser steps over them so that nothing after them is lost. */
function straysOf(root: AstNode): ReadonlySet<number> {
    return new Set(ast.isFile(root) ? root.items.filter(ast.isStray).map(stray => stray.$cstNode?.offset ?? -1) : []);
}

/** `import a, b from "./yard.coffer"`, in the order that it has here. */
function importFix(document: LangiumDocument, at: Source): readonly Fix[] {
    const { line } = at.range.start;
    const written = document.textDocument.getText({ start: { line, character: 0 }, end: { line: line + 1, character: 0 } });
    const [all, names, path] = /^\s*import\s+(?:\{\s*)?([\w-]+(?:\s*,\s*[\w-]+)*)(?:\s*\})?\s+from\s+("[^"]*");?/.exec(written) ?? [];
    if (all === undefined || names === undefined || path === undefined) return [];
    const meant = `from ${path} use ${names}`;
    return [replacing({ uri: at.uri, range: { start: at.range.start, end: { line, character: all.length } } }, meant)];
}

/** A value that is read as it is meant, and yet is not written as it should be. */
function plainly(document: LangiumDocument, at: Source): readonly Fix[] {
    const written = document.textDocument.getText(at.range);
    const plain = plainValue(written);
    return plain === written ? [] : [replacing(at, plain)];
}

/** Tokens count lines and columns from one, and the last column in; at the end of a file they count nothing. */
function placeOf(uri: string, startLine: number, startColumn: number, endLine: number, endColumn: number): Source {
    const start = { line: known(startLine) - 1, character: known(startColumn) - 1 };
    const end = { line: known(endLine) - 1, character: known(endColumn) };
    return { uri, range: { start, end: end.line < start.line || end.line === start.line && end.character < start.character ? start : end } };
}

function known(number: number): number {
    return Number.isFinite(number) ? Math.max(1, number) : 1;
}
