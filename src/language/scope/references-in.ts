import { isAstNode, isReference, type AstNode, type ReferenceInfo } from 'langium';

/**
 * All cross-references in a tree, in the order of the text. Langium's own streams do the same several times slower, and
 * this is done for every file at every keystroke that reaches it.
 */
export function referencesIn(root: AstNode): ReferenceInfo[] {
    const found: ReferenceInfo[] = [];
    const todo: AstNode[] = [root];
    for (let node = todo.pop(); node; node = todo.pop()) {
        const inner: AstNode[] = [];
        for (const [property, value] of Object.entries(node)) {
            if (property.startsWith('$')) continue;
            if (Array.isArray(value)) {
                for (let index = 0; index < value.length; index++) take(value[index], node, property, index);
            } else take(value, node, property, undefined);
        }
        for (let i = inner.length - 1; i >= 0; i--) todo.push(inner[i]!);

        function take(value: unknown, container: AstNode, property: string, index: number | undefined): void {
            if (isAstNode(value)) inner.push(value);
            else if (isReference(value)) found.push(index === undefined ? { reference: value, container, property }
                : { reference: value, container, property, index });
        }
    }
    return found;
}
