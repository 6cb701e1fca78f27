import { AstUtils, URI, type AstNode, type LangiumDocument, type LangiumDocuments, type Reference } from 'langium';
import type { CallHierarchyProvider } from 'langium/lsp';
import type {
    CallHierarchyIncomingCall, CallHierarchyIncomingCallsParams, CallHierarchyItem, CallHierarchyOutgoingCall, CallHierarchyOutgoingCallsParams,
    CallHierarchyPrepareParams, Range,
} from 'vscode-languageserver';
import { declarationAt } from '../../language/features/declaration-at.ts';
import type { CofferServices } from '../../language/coffer-services.ts';
import { symbolOfItem } from '../../language/features/outline.ts';
import * as ast from '../../language/generated/ast.ts';
import type { HouseUses } from './house-uses.ts';

/** Who builds with a stock, a profile or a value, and what a room or a profile is built with: step by step, up and down. */
export class DetailHierarchy implements CallHierarchyProvider {
    private readonly documents: LangiumDocuments;

    constructor(private readonly services: CofferServices, private readonly uses: HouseUses) {
        this.documents = services.shared.workspace.LangiumDocuments;
    }

    prepareCallHierarchy(document: LangiumDocument, { position }: CallHierarchyPrepareParams): CallHierarchyItem[] | undefined {
        const found = declarationAt(document, position, this.services);
        return found && itemsOf(found.target);
    }

    incomingCalls({ item }: CallHierarchyIncomingCallsParams): CallHierarchyIncomingCall[] | undefined {
        const target = this.declared(item);
        return target && this.uses.now().usersOf(target).flatMap(({ owner, places }) => itemsOf(owner).map(from => ({ from, fromRanges: rangesOf(places) })));
    }

    outgoingCalls({ item }: CallHierarchyOutgoingCallsParams): CallHierarchyOutgoingCall[] | undefined {
        const owner = this.declared(item);
        return owner && this.uses.now().usedBy(owner).flatMap(({ target, places }) => itemsOf(target).map(to => ({ to, fromRanges: rangesOf(places) })));
    }

    /** What the editor asks about is what it was given, or nothing of that name any more. */
    private declared({ uri, name, kind }: CallHierarchyItem): ast.Item | undefined {
        const file = this.documents.getDocument(URI.parse(uri))?.parseResult.value;
        return ast.isFile(file) ? file.items.find(item => itemsOf(item).some(one => one.name === name && one.kind === kind)) : undefined;
    }
}

function itemsOf(node: AstNode): CallHierarchyItem[] {
    if (!ast.isFile(node.$container)) return [];
    const uri = AstUtils.getDocument(node).uri.toString();
    return symbolOfItem(node as ast.Item)
        .map(({ name, kind, detail, range, selectionRange }) => ({ name, kind, ...detail && { detail }, uri, range, selectionRange }));
}

function rangesOf(places: readonly Reference[]): Range[] {
    return places.map(({ $refNode }) => $refNode!.range);
}
