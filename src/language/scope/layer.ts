import type { AstNode } from 'langium';

/**
 * Names that are in reach at some place. A `Map` is one. A place looks through several, nearest first.
 * Looking up a name never walks through the others: scopes that do make linking quadratic in the length of a file.
 */
export interface Layer {
    get(name: string): AstNode | undefined;
    entries(): Iterable<[string, AstNode]>;
}

/** The first thing called `name`, nearest layer first. */
export function lookUp(layers: readonly Layer[], name: string): AstNode | undefined {
    for (const layer of layers) {
        const node = layer.get(name);
        if (node) return node;
    }
    return undefined;
}

/** Everything in reach, nearest first, what is hidden by a nearer one left out. */
export function* allNames(layers: readonly Layer[]): Iterable<[string, AstNode]> {
    const seen = new Set<string>();
    for (const layer of layers) {
        for (const entry of layer.entries()) {
            if (seen.has(entry[0])) continue;
            seen.add(entry[0]);
            yield entry;
        }
    }
}

/** Named things by their names, the first of a name standing. In a recovered tree a name may be missing. */
export function byName<T extends AstNode & { name?: string }>(nodes: Iterable<T>): ReadonlyMap<string, T> {
    const names = new Map<string, T>();
    for (const node of nodes) if (node.name && !names.has(node.name)) names.set(node.name, node);
    return names;
}
