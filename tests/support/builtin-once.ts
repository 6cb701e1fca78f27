import { CompositeCstNodeImpl, isCompositeCstNode, LeafCstNodeImpl, RootCstNodeImpl, type AstNode, type CompositeCstNode, type CstNode, type LangiumCoreServices, type LeafCstNode, type ParseResult, type Reference, type RootCstNode } from 'langium';
import { CofferParser } from '../../src/language/parser/index.ts';
import { BUILTIN_TEXT } from '../../src/language/workspace/builtin.ts';

/**
 * The program parses the built-in library once; tests open some thousand workspaces in a process, and spent most of their time on it. In
 * them the first parses it, and all get copies of that tree, of which nothing is shared. (A setup file of the tests.)
 */
const parse = CofferParser.prototype.parse;
let first: ParseResult | undefined;

CofferParser.prototype.parse = function <T extends AstNode>(this: CofferParser, input: string, options?: Parameters<typeof parse>[1]): ParseResult<T> {
    if (input !== BUILTIN_TEXT || options !== undefined) return parse.call(this, input, options) as ParseResult<T>;
    first ??= parse.call(this, input);
    return copyOf(first, (this as unknown as { readonly services: LangiumCoreServices }).services) as ParseResult<T>;
};

/** The library as the parser itself makes it, without a copy. */
export function parsedAnew(parser: CofferParser): ParseResult {
    return parse.call(parser, BUILTIN_TEXT);
}

type Copies = Map<object, object>;
type Made<Node> = { -readonly [Key in keyof Node]: Node[Key] };
/** What a node of the text keeps for itself: the node of the tree that it is the words of. */
interface Means { readonly _astNode?: AstNode }

/** A tree of its own, whose references are looked up by whom it is for. */
function copyOf(result: ParseResult, services: LangiumCoreServices): ParseResult {
    const copies: Copies = new Map();
    const means: [copy: CstNode, original: AstNode][] = [];
    const original = result.value.$cstNode as RootCstNode, root = new RootCstNodeImpl(original.fullText);
    root.root = root;
    copyWords(original, root, root, copies, means);
    const value = copyNode(result.value, undefined, copies, services);
    for (const [words, original] of means) {
        const node = copies.get(original);
        if (node === undefined) throw new Error(`What ${JSON.stringify(words.text)} means does not stand in the tree.`);
        (words as Made<Means>)._astNode = node as AstNode;
    }
    return { ...result, value };
}

/** Made by constructors and filled by hand, which is several times as fast as copying whatever an object has. */
function copyWords(original: CompositeCstNode, copy: CompositeCstNodeImpl, root: RootCstNode, copies: Copies, means: [CstNode, AstNode][]): void {
    note(original, copy, copies, means);
    for (const each of original.content) {
        const holds = isCompositeCstNode(each);
        const child = holds
            ? new CompositeCstNodeImpl()
            : new LeafCstNodeImpl(each.offset, each.length, each.range, (each as LeafCstNode).tokenType, each.hidden);
        child.grammarSource = each.grammarSource;
        child.root = root;
        copy.content.push(child);
        if (holds) copyWords(each, child as CompositeCstNodeImpl, root, copies, means);
        else note(each, child, copies, means);
    }
}

function note(original: CstNode, copy: CstNode, copies: Copies, means: [CstNode, AstNode][]): void {
    copies.set(original, copy);
    const { _astNode } = original as Means;
    if (_astNode) means.push([copy, _astNode]);
}

function copyNode(original: AstNode, container: AstNode | undefined, copies: Copies, services: LangiumCoreServices): AstNode {
    const copy: AstNode = { $type: original.$type };
    copies.set(original, copy);
    const put = (value: unknown, property: string): unknown => {
        if (typeof value !== 'object' || value === null) return value;
        const { $refText, $refNode } = value as Reference;
        if ($refText !== undefined) return services.references.Linker.buildReference(copy, property, copies.get($refNode!) as CstNode, $refText);
        return copyNode(value as AstNode, copy, copies, services);
    };
    const properties = copy as unknown as Record<string, unknown>;
    for (const [property, value] of Object.entries(original)) {
        if (property === '$container') properties[property] = container;
        else if (property === '$cstNode') properties[property] = copies.get(value as CstNode);
        else if (property.startsWith('$')) properties[property] = value;
        else properties[property] = Array.isArray(value) ? value.map(each => put(each, property)) : put(value, property);
    }
    return copy;
}
