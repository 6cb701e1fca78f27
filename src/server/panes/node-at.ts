import { AstUtils, type AstNode, type LangiumDocument } from 'langium';
import type { Position } from '../../provenance/source.ts';

/** The innermost node of a file's tree that a place lies in or touches: between words too, where the parser has none. */
export function nodeAt(document: LangiumDocument, position: Position): AstNode {
    const offset = document.textDocument.offsetAt(position);
    let node: AstNode = document.parseResult.value;
    for (;;) {
        const inner = AstUtils.streamContents(node).find(({ $cstNode }) => $cstNode !== undefined && $cstNode.offset <= offset && offset <= $cstNode.end);
        if (!inner) return node;
        node = inner;
    }
}
