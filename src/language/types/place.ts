import { AstUtils, GrammarAST, GrammarUtils, isCompositeCstNode, type AstNode, type CstNode } from 'langium';
import { kept } from '../../plain/kept.ts';
import type { Range, Source } from '../../provenance/source.ts';
import type { Leaf, Operand } from '../operators.ts';

/** Where a node of the tree stands in its file. In a recovered tree a node may have no text; then it is the file's first place. */
export function sourceOf(node: AstNode): Source {
    return { uri: uriOf(node), range: rangeOf(node.$cstNode) };
}

/** Where a range stands that was found in the tree of `node`: an operation, an operator. */
export function sourceOfRange(node: AstNode, range: Range): Source {
    return { uri: uriOf(node), range };
}

/** The words of one property of a node: its name, the n-th word of a path. The whole node where it has no such words. */
export function sourceOfProperty(node: AstNode, property: string, index = 0): Source {
    const words = node.$cstNode && wordsOfProperty(node.$cstNode, node, property, { left: index });
    return { uri: uriOf(node), range: rangeOf(words ?? node.$cstNode) };
}

/**
 * Like `GrammarUtils.findNodeForProperty`, which goes through all of a node's text and up the grammar at every step: a
 * file has thousands of names, and each is looked for at every keystroke.
 */
function wordsOfProperty(within: CstNode, node: AstNode, property: string, skip: { left: number }): CstNode | undefined {
    if (!isCompositeCstNode(within)) return undefined;
    for (const child of within.content) {
        if (child.hidden) continue;
        const found = child.grammarSource && featureOf(child.grammarSource) === property ? child
            : child.astNode === node ? wordsOfProperty(child, node, property, skip) : undefined;
        if (found && (found !== child || skip.left-- === 0)) return found;
    }
    return undefined;
}

/** The property that an element of the grammar is assigned to. */
const featureOf = kept((element: AstNode): string => AstUtils.getContainerOfType(element, GrammarAST.isAssignment)?.feature ?? '');

/** The word a declaration or a block begins with, for what has no name. */
export function sourceOfKeyword(node: AstNode, keyword: string): Source {
    const words = GrammarUtils.findNodeForKeyword(node.$cstNode, keyword);
    return { uri: uriOf(node), range: rangeOf(words ?? node.$cstNode) };
}

export function uriOf(node: AstNode): string {
    return AstUtils.findRootNode(node).$document?.uri.toString() ?? '';
}

const NOWHERE: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };
/**
 * From the first word to the last, without the comments and spaces around them. (Langium's own range does the same, at
 * a price that shows in a keystroke.) Positions are copied, since the parser's are shared with its tokens.
 */
function rangeOf(words: CstNode | undefined): Range {
    if (!words) return NOWHERE;
    const { start } = edgeOf(words, 'first').range, { end } = edgeOf(words, 'last').range;
    const last = end.line < start.line ? start : end;
    return { start: { line: start.line, character: start.character }, end: { line: last.line, character: last.character } };
}

function edgeOf(words: CstNode, edge: 'first' | 'last'): CstNode {
    let node = words;
    for (;;) {
        if (!isCompositeCstNode(node) || node.content.length === 0) return node;
        const { content } = node;
        let i = edge === 'first' ? 0 : content.length - 1;
        while (content[i]!.hidden && (edge === 'first' ? i < content.length - 1 : i > 0)) i += edge === 'first' ? 1 : -1;
        node = content[i]!;
    }
}

/** Where an expression, or an operation on some, stands. */
export function sourceOfOperand(operand: Operand): Source {
    return operand.kind === 'leaf' ? sourceOf(operand.expr) : sourceOfRange(leafOf(operand), operand.range);
}

/** Some expression in an operation: enough to know its file. */
export function leafOf(operation: Operand): Leaf['expr'] {
    let operand: Operand | undefined = operation;
    while (operand?.kind === 'operation') operand = operand.left ?? operand.right;
    return operand!.expr;
}
