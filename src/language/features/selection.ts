import { CstUtils, type AstNode, type LangiumDocument } from 'langium';
import type { Position, SelectionRange } from 'vscode-languageserver-types';
import type { Range } from '../../provenance/source.ts';
import * as ast from '../generated/ast.ts';
import { sourceOf } from '../types/place.ts';

/** What a selection grows to, step by step: the word, the value, the statement, what is between the braces, the block, the declaration, the file. */
export function selectionAt(document: LangiumDocument, position: Position): SelectionRange {
    const root = document.parseResult.value;
    const text = document.textDocument;
    const offset = text.offsetAt(position);
    const leaf = root.$cstNode && wordAt(root, offset);
    const ranges: Range[] = [{ start: text.positionAt(0), end: text.positionAt(text.getText().length) }];
    for (const node of leaf ? [...outwards(leaf.astNode)].reverse() : []) {
        if (ast.isFile(node)) continue;
        ranges.push(sourceOf(node).range);
        if (ast.isBody(node)
            && node.members.length > 0) ranges.push({ start: sourceOf(node.members[0]!).range.start, end: sourceOf(node.members.at(-1)!).range.end });
    }
    if (leaf) ranges.push(leaf.range);
    const own = ranges.filter(range => contains({ start: text.offsetAt(range.start), end: text.offsetAt(range.end) }, offset));
    let selection: SelectionRange | undefined;
    for (const range of own) {
        const inner = { start: text.offsetAt(range.start), end: text.offsetAt(range.end) };
        const outer = selection && { start: text.offsetAt(selection.range.start), end: text.offsetAt(selection.range.end) };
        if (outer && (inner.start < outer.start || inner.end > outer.end || inner.end - inner.start === outer.end - outer.start)) continue;
        selection = { range, ...selection && { parent: selection } };
    }
    return selection!;
}

function wordAt(root: AstNode, offset: number) {
    const leaf = CstUtils.findLeafNodeAtOffset(root.$cstNode!, offset);
    const usable = leaf && leaf.text.trim() !== '' ? leaf : offset > 0 ? CstUtils.findLeafNodeAtOffset(root.$cstNode!, offset - 1) : undefined;
    return usable && usable.text.trim() !== '' ? usable : leaf;
}

function* outwards(node: AstNode): Iterable<AstNode> {
    for (let each: AstNode | undefined = node; each; each = each.$container) yield each;
}

function contains({ start, end }: { start: number; end: number }, offset: number): boolean {
    return start <= offset && offset <= end;
}
