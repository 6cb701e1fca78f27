import { AstUtils, CstUtils, isLeafCstNode, type LangiumDocument } from 'langium';
import type { FoldingRangeProvider } from 'langium/lsp';
import type { FoldingRange } from 'vscode-languageserver-types';
import * as ast from '../generated/ast.ts';
import { sourceOf } from '../types/place.ts';

/** What can be folded away: blocks, comments, and the imports at the top of a file. */
export class CofferFolding implements FoldingRangeProvider {
    getFoldingRanges(document: LangiumDocument): FoldingRange[] {
        const root = document.parseResult.value;
        if (!ast.isFile(root)) return [];
        return [...blocksOf(root), ...commentsOf(root), ...importsOf(root)].sort((a, b) => a.startLine - b.startLine);
    }
}

/** From the line that opens a block to the line before its last brace, which stays in sight. */
function* blocksOf(file: ast.File): Iterable<FoldingRange> {
    for (const node of AstUtils.streamAllContents(file)) {
        if (!ast.isBody(node) && !ast.isKind(node) && !ast.isWords(node) && !(ast.isPropertyDecl(node) && node.mods.length > 0)) continue;
        const { start, end } = sourceOf(node).range;
        const closed = node.$cstNode?.text.trimEnd().endsWith('}');
        yield* lines(start.line, closed ? end.line - 1 : end.line);
    }
}

/** A comment of several lines, or several comments of one line below each other. */
function* commentsOf(file: ast.File): Iterable<FoldingRange> {
    let first = -1, last = -1, endOfCode = -1;
    for (const leaf of file.$cstNode ? CstUtils.flattenCst(file.$cstNode) : []) {
        const { start, end } = leaf.range;
        const isComment = isLeafCstNode(leaf) && leaf.hidden && /^\/[/*]/.test(leaf.text);
        if (!isComment) { if (!leaf.hidden && leaf.text.trim() !== '') endOfCode = end.line; continue; }
        if (leaf.text.startsWith('/*')) { yield* lines(start.line, end.line, 'comment'); continue; }
        if (start.line === endOfCode) continue;            // behind something
        if (last >= 0 && start.line === last + 1 && endOfCode < first) { last = start.line; continue; }
        yield* lines(first, last, 'comment');
        first = last = start.line;
    }
    yield* lines(first, last, 'comment');
}

function* importsOf(file: ast.File): Iterable<FoldingRange> {
    const places = file.uses.map(use => sourceOf(use).range);
    let first = places[0]?.start.line ?? -1, last = places[0]?.end.line ?? -1;
    for (const { start, end } of places.slice(1)) {
        if (start.line > last + 1) {
            yield* lines(first, last, 'imports');
            first = start.line;
        }
        last = end.line;
    }
    yield* lines(first, last, 'imports');
}

function* lines(startLine: number, endLine: number, kind?: FoldingRange['kind']): Iterable<FoldingRange> {
    if (startLine >= 0 && endLine > startLine) yield { startLine, endLine, ...kind && { kind } };
}
