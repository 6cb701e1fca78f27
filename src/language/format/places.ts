import { AstUtils, GrammarUtils, type AstNode } from 'langium';
import * as ast from '../generated/ast.ts';

/** What the tree knows of the words and the white space between them does not: by offset in the text. */
export interface Places {
    /** Where the second column of a line begins: the value, `: Type`, `= value`. */
    readonly values: ReadonlyMap<number, Column>;
    /** Where the first modifier of a line begins. */
    readonly modifiers: ReadonlySet<number>;
    /** Parentheses that belong to the name before them, colons behind an argument's name, signs before a value. */
    readonly tight: ReadonlySet<number>;
}
/** Lines align with lines of their own kind. */
export type Column = 'value' | 'type' | 'definition';

export function placesOf(root: AstNode): Places {
    const values = new Map<number, Column>();
    const modifiers = new Set<number>();
    const tight = new Set<number>();
    const mark = (set: Set<number>, offset: number | undefined) => { if (offset !== undefined) set.add(offset); };
    const keyword = (node: AstNode, word: string) => GrammarUtils.findNodeForKeyword(node.$cstNode, word)?.offset;

    for (const node of AstUtils.streamAst(root)) {
        if (ast.isLine(node) || ast.isFixture(node)) {
            const value = node.values[0]?.$cstNode?.offset;
            if (value !== undefined) values.set(value, 'value');
            mark(modifiers, node.mods[0]?.$cstNode?.offset);
        } else if (ast.isLet(node)) {
            const equals = keyword(node, '=');
            if (equals !== undefined) values.set(equals, 'definition');
            mark(tight, keyword(node, ':'));
        } else if (ast.isPropertyDecl(node)) {
            const second = keyword(node, ':') ?? keyword(node, '=');
            if (second !== undefined) values.set(second, 'type');
        } else if (ast.isParam(node) || ast.isArg(node)) mark(tight, keyword(node, ':'));
        else if (ast.isRef(node) || ast.isProfile(node)) mark(tight, keyword(node, '('));
        else if (ast.isNeg(node)) mark(tight, GrammarUtils.findNodeForProperty(node.$cstNode, 'op')?.offset);
    }
    return { values, modifiers, tight };
}
