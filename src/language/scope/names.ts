import type { AstNode, LangiumDocument } from 'langium';
import * as ast from '../generated/ast.ts';
import { byName, type Layer } from './layer.ts';
import { atKey } from '../../plain/at-key.ts';
import { kept } from '../../plain/kept.ts';

/** What a file offers to others, and to itself: its stocks, profiles, rooms and values. What it imports it does not pass on. */
export const ownNames = kept((file: ast.File): ReadonlyMap<string, AstNode> => byName(
    file.items.filter(item => ast.isStock(item) || ast.isProfile(item) || ast.isRoom(item) || ast.isLet(item)),
));

/** The names a file has through its `from ... use` lines, by the name they have here. One import a name is right; more are a mistake. */
export const usedNames = kept((file: ast.File): ReadonlyMap<string, readonly ast.UsedName[]> => {
    const names = new Map<string, ast.UsedName[]>();
    for (const used of file.uses.flatMap(use => use.names)) {
        const name = localName(used);
        if (name) atKey(names, name, () => []).push(used);
    }
    return names;
});

export function localName(used: ast.UsedName): string {
    return used.name ?? used.target?.$refText ?? '';
}

/** `let` in a block. */
export const letsOf = kept((body: ast.Body) => byName(body.members.filter(ast.isLet)));

export const parametersOf = kept((profile: ast.Profile) => byName(profile.params));

/** The walls, lines, crossings and fixtures of a room. */
export const fixturesOf = kept((room: ast.Room) => byName((room.body?.members ?? []).filter(ast.isFixture)));

/**
 * Imported names. Each is looked up in the file it comes from when it is asked for, so that nothing here goes stale
 * when that file changes; and no import is followed further, so that files that import each other do no harm.
 */
export class ImportedNames implements Layer {
    constructor(private readonly file: ast.File, private readonly importOf: (use: ast.Use) => LangiumDocument | undefined) {}

    get(name: string): AstNode | undefined {
        for (const used of usedNames(this.file).get(name) ?? []) {
            const target = this.targetOf(used);
            if (target) return target;
        }
        return undefined;
    }

    *entries(): Iterable<[string, AstNode]> {
        for (const name of usedNames(this.file).keys()) {
            const target = this.get(name);
            if (target) yield [name, target];
        }
    }

    private targetOf(used: ast.UsedName): AstNode | undefined {
        const from = this.importOf(used.$container);
        return from && namesOf(from).get(used.target?.$refText);
    }
}

/** What a document offers; nothing, while it has not been parsed. */
export function namesOf(document: LangiumDocument): ReadonlyMap<string, AstNode> {
    const root = document.parseResult.value;
    return ast.isFile(root) ? ownNames(root) : new Map();
}
