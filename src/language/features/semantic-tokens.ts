import type { AstNode, Properties, Reference } from 'langium';
import { AbstractSemanticTokenProvider, type SemanticTokenAcceptor } from 'langium/lsp';
import { SemanticTokenModifiers, SemanticTokenTypes } from 'vscode-languageserver-types';
import * as ast from '../generated/ast.ts';

/**
 * What only the meaning of a name tells, on top of the colors of the grammar: a stock, a profile, a parameter and a word of
 * a list look alike to it. A name that leads nowhere gets no color of its own. Numbers, units, texts and comments are the
 * grammar's matter.
 */
export class CofferSemanticTokens extends AbstractSemanticTokenProvider {
    protected override highlightElement(node: AstNode, accept: SemanticTokenAcceptor): void {
        if (ast.isLine(node)) {
            for (const [index, word] of node.path.entries()) this.refer(node, 'path', word, accept, index);
        } else if (ast.isMod(node)) this.refer(node, 'decl', node.decl, accept);
        else if (ast.isRef(node)) this.refer(node, 'target', node.target, accept);
        else if (ast.isMemberOf(node)) this.refer(node, 'member', node.member, accept);
        else if (ast.isArg(node)) this.refer(node, 'param', node.param, accept);
        else if (ast.isTypeAtom(node)) {
            this.refer(node, 'ref', node.ref, accept);
            this.refer(node, 'per', node.per, accept);
        } else if (ast.isUsedName(node)) {
            this.refer(node, 'target', node.target, accept);
            this.declare(node, accept);
        } else this.declare(node, accept);
    }

    private declare(node: AstNode & { name?: string }, accept: SemanticTokenAcceptor): void {
        const type = node.name ? typeOf(node) : undefined;
        if (type !== undefined) accept({ node, property: 'name', type, modifier: modifiersOf(node, true) });
    }

    private refer<N extends AstNode>(node: N, property: Properties<N>, reference: Reference | undefined, accept: SemanticTokenAcceptor, index?: number): void {
        const target = reference?.ref;
        const type = target && typeOf(target);
        if (type !== undefined) accept({ node, property, type, modifier: modifiersOf(target!, false), ...index !== undefined && { index } });
    }
}

function typeOf(node: AstNode): string | undefined {
    const target = ast.isUsedName(node) ? node.target?.ref : node;
    return target && TYPES[target.$type];
}

function modifiersOf(node: AstNode, declares: boolean): string[] {
    const target = ast.isUsedName(node) ? node.target?.ref : node;
    return [
        ...declares ? [SemanticTokenModifiers.declaration] : [],
        ...ast.isStock(target) || ast.isLet(target) ? [SemanticTokenModifiers.readonly] : [],
    ];
}

const TYPES: Readonly<Record<string, string>> = {
    Stock: SemanticTokenTypes.variable, Let: SemanticTokenTypes.variable, Fixture: SemanticTokenTypes.variable,
    Profile: SemanticTokenTypes.class, Room: SemanticTokenTypes.namespace, Param: SemanticTokenTypes.parameter,
    PropertyDecl: SemanticTokenTypes.property, WordDecl: SemanticTokenTypes.enumMember,
    Kind: SemanticTokenTypes.type, Words: SemanticTokenTypes.type, Quantity: SemanticTokenTypes.type,
};
