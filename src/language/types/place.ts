import { AstUtils, GrammarUtils, type AstNode, type CstNode } from 'langium';
import type { Range, Source } from '../../provenance/source.ts';

/** Where a node of the tree stands in its file. In a recovered tree a node may have no text; then it is the file's first place. */
export function sourceOf(node: AstNode): Source {
    return { uri: uriOf(node), range: rangeOf(node.$cstNode) };
}

/** Where a range stands that was found in the tree of `node`: an operation, an operator. */
export function sourceOfRange(node: AstNode, range: Range): Source {
    return { uri: uriOf(node), range };
}

/** The words of one property of a node: its name, the n-th word of a path. The whole node where it has no such words. */
export function sourceOfProperty(node: AstNode, property: string, index?: number): Source {
    const words = GrammarUtils.findNodeForProperty(node.$cstNode, property, index);
    return { uri: uriOf(node), range: rangeOf(words ?? node.$cstNode) };
}

/** The word a declaration or a block begins with, for what has no name. */
export function sourceOfKeyword(node: AstNode, keyword: string): Source {
    const words = GrammarUtils.findNodeForKeyword(node.$cstNode, keyword);
    return { uri: uriOf(node), range: rangeOf(words ?? node.$cstNode) };
}

export function uriOf(node: AstNode): string {
    return AstUtils.findRootNode(node).$document?.uri.toString() ?? '';
}

const NOWHERE: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
function rangeOf(words: CstNode | undefined): Range {
    const range = words?.range;
    // Positions are copied: the parser's are shared with its tokens, and findings are compared and sent as plain data.
    return range ? { start: { line: range.start.line, character: range.start.character }, end: { line: range.end.line, character: range.end.character } } : NOWHERE;
}
