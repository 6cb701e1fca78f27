import type { AstNode, LangiumDocument } from 'langium';
import { DefaultRenameProvider } from 'langium/lsp';
import type { Range, RenameParams, TextDocumentPositionParams, TextEdit, WorkspaceEdit } from 'vscode-languageserver-protocol';
import * as ast from '../generated/ast.ts';
import { localName, usedNames } from '../scope/names.ts';
import type { CofferServices } from '../coffer-services.ts';
import { sourceOfProperty, uriOf } from '../types/place.ts';
import { BUILTIN_URI } from '../workspace/builtin.ts';
import { declarationAt } from './declaration-at.ts';
import { whyClash, whyNoName } from './rename-check.ts';

/**
 * Renames what a file declares, wherever it is used. Words of the built-in library keep their names, and so does whatever
 * would become unreadable or mean something else: see rename-check.ts. A name given with `as` is renamed in its own file only.
 */
export class CofferRenameProvider extends DefaultRenameProvider {
    constructor(private readonly services: CofferServices) {
        super(services);
    }

    override async rename(document: LangiumDocument, params: RenameParams): Promise<WorkspaceEdit | undefined> {
        const found = this.targetAt(document, params);
        if (!found) return undefined;
        const { target, word } = found;
        const alias = this.aliasFor(document, word);
        this.check(alias ?? target, alias?.target?.ref ?? target, word, params.newName, alias && document);
        if (params.newName === word) return { changes: {} };
        if (alias) return { changes: { [document.uri.toString()]: this.editsOfAlias(document, alias, word, params.newName) } };
        const changes: Record<string, TextEdit[]> = {};
        for (const { segment, sourceUri } of this.references.findReferences(target, { includeDeclaration: true })) {
            const uri = sourceUri.toString();
            const written = this.services.shared.workspace.LangiumDocuments.getDocument(sourceUri)?.textDocument.getText(segment.range);
            if (written === word) (changes[uri] ??= []).push({ range: segment.range, newText: params.newName });
        }
        return { changes };
    }

    override prepareRename(document: LangiumDocument, params: TextDocumentPositionParams): Range | undefined {
        return this.targetAt(document, params)?.range;
    }

    /** A new name that would change what some other word means is refused, with the reason. `only`: the file that an `as` holds in. */
    private check(declared: AstNode, target: AstNode, oldName: string, newName: string, only: LangiumDocument | undefined): void {
        if (newName === oldName) return;
        const documents = only ? [only] : this.services.shared.workspace.LangiumDocuments.all.toArray();
        const beside = only && whyClash(declared, oldName, newName, [], this.services);
        const why = whyNoName(newName, this.services.vocabulary) ?? beside ?? whyClash(target, oldName, newName, documents, this.services);
        if (why) throw new RenameRefused(why);
    }

    private targetAt(document: LangiumDocument, { position }: TextDocumentPositionParams): { target: AstNode, word: string, range: Range } | undefined {
        const found = declarationAt(document, position, this.services);
        if (!found) return undefined;
        const { target, leaf } = found;
        if (uriOf(target) === BUILTIN_URI.toString() || hasGivenName(target)) return undefined;
        return { target, word: leaf.text, range: leaf.range };
    }

    /** The import that gives `word` its name in this file, if it is another name than the thing has at home. */
    private aliasFor(document: LangiumDocument, word: string): ast.UsedName | undefined {
        const file = document.parseResult.value;
        return ast.isFile(file) ? usedNames(file).get(word)?.find(used => used.name !== undefined && localName(used) === word) : undefined;
    }

    private editsOfAlias(document: LangiumDocument, alias: ast.UsedName, word: string, newText: string): TextEdit[] {
        const target = alias.target?.ref;
        const uses = document.references.filter(reference => 'ref' in reference && reference.ref === target && reference.$refText === word && reference.$refNode);
        return [sourceOfProperty(alias, 'name').range, ...uses.map(use => use.$refNode!.range)].map(range => ({ range, newText }));
    }
}

/** Walls are named by where they lie, lines and crossings by the grid. */
function hasGivenName(target: AstNode): boolean {
    return ast.isFixture(target) && target.kind !== 'fixture' && target.kind !== 'board';
}

/** Says in the carpenter's words why something cannot be called so. */
export class RenameRefused extends Error {}
