import { CstUtils, type AstNode, type LangiumDocument } from 'langium';
import type { HoverProvider } from 'langium/lsp';
import type { Hover, HoverParams } from 'vscode-languageserver-protocol';
import { describe } from '../elaborate/describe.ts';
import * as ast from '../generated/ast.ts';
import type { CofferServices } from '../services.ts';
import { signature, whereabouts } from './explain.ts';

/** Shows what a word means: its declaration, what is written about it, and what it comes to here. */
export class CofferHoverProvider implements HoverProvider {
    private readonly services: CofferServices;

    constructor(services: CofferServices) {
        this.services = services;
    }

    getHoverContent(document: LangiumDocument, params: HoverParams): Hover | undefined {
        const value = this.textAt(document, document.textDocument.offsetAt(params.position));
        return value === undefined ? undefined : { contents: { kind: 'markdown', value } };
    }

    private textAt(document: LangiumDocument, offset: number): string | undefined {
        const root = document.parseResult.value.$cstNode;
        const leaf = root && CstUtils.findDeclarationNodeAtOffset(root, offset, this.services.parser.GrammarConfig.nameRegexp);
        if (!leaf || leaf.hidden || leaf.end <= offset && leaf.end < offset) return undefined;
        const [target] = this.services.references.References.findDeclarations(leaf);
        const parts = target ? this.declaration(target) : [];
        const comesTo = describe(leaf.astNode);
        if (comesTo) parts.push(comesTo);
        return parts.length > 0 ? parts.join('\n\n') : undefined;
    }

    private declaration(found: AstNode): string[] {
        const target = ast.isUsedName(found) ? found.target?.ref ?? found : found;
        const parts = [`\`\`\`coffer\n${signature(target)}\n\`\`\``];
        const where = whereabouts(target);
        if (where) parts.push(where);
        const written = this.services.documentation.DocumentationProvider.getDocumentation(ast.isWordDecl(target) ? target.$container : target);
        if (written) parts.push(written);
        return parts;
    }
}
