import { isAstNode, isReference, type AstNode, type ReferenceInfo } from 'langium';

/**
 * All cross-references in a tree, in the order of the text. Langium's own streams do the same several times slower, and
 * this is done for every file at every keystroke that reaches it.
 */
export function referencesIn(root: AstNode): ReferenceInfo[] {
    const found: ReferenceInfo[] = [];
    const todo: AstNode[] = [root];
    for (let node = todo.pop(); node; node = todo.pop()) {
        const inner: AstNode[] = [], container = node;
        const take = (value: unknown, property: string, index?: number): void => {
            if (isAstNode(value)) inner.push(value);
            else if (isReference(value)) found.push(index === undefined ? { reference: value, container, property }
                : { reference: value, container, property, index });
        };
        // not `Object.entries`: that would be a list of pairs for every node
        for (const property in node) {
            if (property.startsWith('$')) continue;
            const value: unknown = (node as unknown as Record<string, unknown>)[property];
            if (Array.isArray(value)) value.forEach((each, index) => { take(each, property, index); });
            else if (typeof value === 'object') take(value, property);
        }
        for (let i = inner.length - 1; i >= 0; i--) todo.push(inner[i]!);
    }
    return found;
}
