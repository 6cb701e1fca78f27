import { AstUtils, type AstNode, type LangiumDocument, type Reference } from 'langium';
import { AbstractSemanticTokenProvider, SemanticTokensBuilder, type SemanticTokenAcceptor } from 'langium/lsp';
import type { Range, SemanticTokens, SemanticTokensDelta, SemanticTokensDeltaParams, SemanticTokensOptions, SemanticTokensRangeParams } from 'vscode-languageserver-protocol';
import { SemanticTokenModifiers, SemanticTokenTypes } from 'vscode-languageserver-types';
import * as ast from '../generated/ast.ts';

/**
 * What only the meaning of a name tells, on top of the colors of the grammar: a stock, a profile, a parameter and a word of
 * a list look alike to it. A name that leads nowhere gets no color of its own. Numbers, units, texts and comments are the
 * grammar's matter.
 */
export class CofferSemanticTokens extends AbstractSemanticTokenProvider {
    override get semanticTokensOptions(): SemanticTokensOptions {
        return { ...super.semanticTokensOptions, full: { delta: true } };
    }

    override async semanticHighlight(document: LangiumDocument): Promise<SemanticTokens> {
        const builder = this.getDocumentTokensBuilder(document);
        builder.flush();
        return this.color(document, undefined, builder).build();
    }

    override async semanticHighlightRange(document: LangiumDocument, { range }: SemanticTokensRangeParams): Promise<SemanticTokens> {
        return this.color(document, range, new SemanticTokensBuilder()).build();
    }

    override async semanticHighlightDelta(
        document: LangiumDocument, { previousResultId }: SemanticTokensDeltaParams,
    ): Promise<SemanticTokens | SemanticTokensDelta> {
        const builder = this.getDocumentTokensBuilder(document);
        builder.previousResult(previousResultId);
        return this.color(document, undefined, builder).buildEdits();
    }

    /** In one go: an editor that opens a file asks for what it shows and for the whole at once, and both use the same fields here. */
    private color(document: LangiumDocument, range: Range | undefined, builder: SemanticTokensBuilder): SemanticTokensBuilder {
        this.currentDocument = document;
        this.currentRange = range;
        this.currentTokensBuilder = builder;
        const accept = this.createAcceptor();
        for (const node of AstUtils.streamAst(document.parseResult.value, range && { range })) this.highlightElement(node, accept);
        return builder;
    }

    protected override highlightElement(node: AstNode, accept: SemanticTokenAcceptor): void {
        if (ast.isLine(node)) for (const word of node.path) refer(word, accept);
        else if (ast.isMod(node)) refer(node.decl, accept);
        else if (ast.isRef(node)) refer(node.target, accept);
        else if (ast.isMemberOf(node)) refer(node.member, accept);
        else if (ast.isArg(node)) refer(node.param, accept);
        else if (ast.isTypeAtom(node)) {
            refer(node.ref, accept);
            refer(node.per, accept);
        } else if (ast.isUsedName(node)) {
            refer(node.target, accept);
            this.declare(node, accept);
        } else this.declare(node, accept);
    }

    private declare(node: AstNode & { name?: string }, accept: SemanticTokenAcceptor): void {
        const type = node.name ? typeOf(node) : undefined;
        if (type !== undefined) accept({ node, property: 'name', type, modifier: modifiersOf(node, true) });
    }
}

function refer(reference: Reference | undefined, accept: SemanticTokenAcceptor): void {
    const target = reference?.ref;
    const type = target && typeOf(target);
    if (type !== undefined && reference?.$refNode) accept({ cst: reference.$refNode, type, modifier: modifiersOf(target!, false) });
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
