import { AstUtils, CstUtils, type AstNode, type CstNode, type LangiumDocument } from 'langium';
import type { HoverProvider } from 'langium/lsp';
import type { Hover, HoverParams } from 'vscode-languageserver-protocol';
import { describe } from '../elaborate/describe.ts';
import * as ast from '../generated/ast.ts';
import type { CofferServices } from '../coffer-services.ts';
import { asCode, asWritten, inWords, together, type Shown } from '../../text/markdown.ts';
import { hasBroken, isBroken } from '../types/broken.ts';
import { markup } from './editor.ts';
import { signature, whereabouts } from './explain.ts';
import { whereNames } from './hover-why.ts';
import { publishedFor } from './published.ts';

/** Shows what a word means: its declaration, what is written about it, what it comes to here, why, and by which standard. */
export class CofferHoverProvider implements HoverProvider {
    constructor(protected readonly services: CofferServices) {}

    getHoverContent(document: LangiumDocument, { position }: HoverParams): Hover | undefined {
        const root = document.parseResult.value.$cstNode;
        // the tree lags behind the text for a moment after a keystroke; what stood at this place then may be gone
        if (!root || root.root.fullText !== document.textDocument.getText()) return undefined;
        const offset = document.textDocument.offsetAt(position);
        const leaf = CstUtils.findDeclarationNodeAtOffset(root, offset, this.services.parser.GrammarConfig.nameRegexp);
        if (!leaf || leaf.hidden || leaf.end < offset) return undefined;
        const parts = this.parts(leaf);
        return parts.length > 0 ? { contents: markup(together(parts), this.services.editor.markdownInHover), range: leaf.range } : undefined;
    }

    private parts(leaf: CstNode): readonly Shown[] {
        const [found] = this.services.references.References.findDeclarations(leaf);
        const target = ast.isUsedName(found) ? found.target?.ref ?? found : found;
        const parts = target ? this.declaration(target) : this.keyword(leaf);
        if (isUnsound(leaf.astNode) || target && isUnsound(target)) return parts;
        const comesTo = describe(leaf.astNode);
        if (comesTo) parts.push(inWords(comesTo));
        const where = comesTo && whereNames(leaf.astNode);
        if (where) parts.push(asWritten(where));
        const stock = sizeOf(leaf.astNode);
        if (stock) parts.push(...[describe(stock)].filter(part => part !== undefined).map(inWords));
        const published = publishedFor(stock ?? target ?? leaf.astNode);
        if (published) parts.push(asWritten(published));
        return [...parts, ...this.computed(leaf, target)];
    }

    /** For whoever knows about ceilings: what more there is to say of a word that stands in sound text. */
    protected computed(_leaf: CstNode, _target: AstNode | undefined): readonly Shown[] {
        return [];
    }

    private declaration(target: AstNode): Shown[] {
        const parts = [asCode(signature(target))];
        const where = whereabouts(target);
        if (where) parts.push(asWritten(where));
        const written = this.written(ast.isWordDecl(target) ? target.$container : target);
        if (written) parts.push(asWritten(written));
        return parts;
    }

    /** What begins a declaration, or something of a room: `stock`, `wall`. */
    private keyword({ text, astNode }: CstNode): Shown[] {
        const { vocabulary } = this.services;
        const kind = ast.isFixture(astNode) && astNode.kind === text ? vocabulary.kindOfFixture(astNode)
            : ast.isItem(astNode) && astNode.$type.toLowerCase() === text ? vocabulary.kind(astNode.$type) : undefined;
        const written = kind && this.written(kind);
        return written ? [asWritten(written)] : [];
    }

    private written(node: AstNode): string | undefined {
        return this.services.documentation.DocumentationProvider.getDocumentation(node);
    }
}

/** The stock whose nominal size is meant: by `size`, or by the `1x6` behind it. */
function sizeOf(node: AstNode): ast.Stock | undefined {
    const line = AstUtils.getContainerOfType(node, ast.isLine);
    const stock = line?.$container.$container;
    return line?.path[0]?.$refText === 'size' && ast.isStock(stock) && !isUnsound(stock) ? stock : undefined;
}

/** True where a line cannot be read, or where it is not known what a stock's block says: then no figure is better than a wrong one. */
function isUnsound(node: AstNode): boolean {
    const statement = AstUtils.getContainerOfType(node, at => ast.isMember(at) || ast.isItem(at) || ast.isParam(at) || ast.isUse(at));
    if (!statement) return false;
    return isBroken(statement) || ast.isStock(node) && node.body !== undefined && hasBroken(node.body);
}
