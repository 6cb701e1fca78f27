import { AstUtils, isReference, type AstNode, type LangiumDocument, type Reference } from 'langium';
import * as ast from '../generated/ast.ts';
import { atKey } from '../../plain/at-key.ts';

/** A declaration at the top of a file, and the places in it that name something. */
interface User { readonly owner: ast.Item; readonly places: readonly Reference[] }

/**
 * Who uses what in a house: read off the links of all files at once, so that asking for many things costs one walk. It holds for the texts
 * as they were when it was made.
 */
export class Uses {
    private readonly byTarget = new Map<AstNode, Map<ast.Item, Reference[]>>();
    private readonly byOwner = new Map<ast.Item, Map<AstNode, Reference[]>>();

    constructor(documents: Iterable<LangiumDocument>) {
        for (const document of documents) for (const reference of document.references) {
            if (!isReference(reference) || !reference.$refNode || !reference.ref) continue;
            const owner = itemAround(reference.$refNode.astNode), target = reference.ref;
            if (!owner || owner === target || AstUtils.hasContainerOfType(target, node => node === owner)) continue;
            put(this.byTarget, target, owner, reference);
            put(this.byOwner, owner, target, reference);
        }
    }

    /** The declarations whose words name it, file by file and down the text. */
    usersOf(target: AstNode): User[] {
        return [...this.byTarget.get(target) ?? []].map(([owner, places]) => ({ owner, places }));
    }

    /** The stocks, profiles and values that a declaration names, as it names them. */
    usedBy(owner: ast.Item): { readonly target: ast.Item; readonly places: readonly Reference[] }[] {
        return [...this.byOwner.get(owner) ?? []].flatMap(([target, places]) => isItem(target) ? [{ target, places }] : []);
    }

    /** The rooms that could not be built without it: they name it, or something that does. */
    roomsUsing(target: AstNode): ast.Room[] {
        const rooms: ast.Room[] = [], seen = new Set<AstNode>([target]), todo = [target];
        for (let node = todo.shift(); node; node = todo.shift()) {
            for (const { owner } of this.usersOf(node)) {
                if (seen.has(owner)) continue;
                seen.add(owner);
                if (ast.isRoom(owner)) rooms.push(owner);
                else todo.push(owner);
            }
        }
        return rooms;
    }
}

function put<A, B>(map: Map<A, Map<B, Reference[]>>, key: A, inner: B, reference: Reference): void {
    atKey(atKey(map, key, () => new Map<B, Reference[]>()), inner, () => []).push(reference);
}

function itemAround(node: AstNode): ast.Item | undefined {
    let found: AstNode | undefined = node;
    while (found && !ast.isFile(found.$container)) found = found.$container;
    return found && isItem(found) ? found : undefined;
}

/** What a house declares and somebody may ask about: no import, no leftover, nothing of the built-in library. */
function isItem(node: AstNode): node is ast.Item {
    return ast.isStock(node) || ast.isProfile(node) || ast.isRoom(node) || ast.isJob(node) || ast.isAlternate(node)
        || ast.isLet(node) && ast.isFile(node.$container);
}
