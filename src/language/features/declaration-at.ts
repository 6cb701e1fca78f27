import { CstUtils, type AstNode, type CstNode, type LangiumDocument } from 'langium';
import type { Position } from '../../provenance/source.ts';
import type { CofferServices } from '../coffer-services.ts';

/** What the word at a place declares or names, and the word. */
export function declarationAt(
    document: LangiumDocument, position: Position, services: CofferServices,
): { readonly target: AstNode; readonly leaf: CstNode } | undefined {
    const root = document.parseResult.value.$cstNode;
    const leaf = root && CstUtils.findDeclarationNodeAtOffset(root, document.textDocument.offsetAt(position), services.parser.GrammarConfig.nameRegexp);
    const [target] = leaf ? services.references.References.findDeclarations(leaf) : [];
    return leaf && target && { target, leaf };
}
