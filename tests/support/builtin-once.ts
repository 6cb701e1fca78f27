import { isCompositeCstNode, LeafCstNodeImpl, RootCstNodeImpl, type AstNode, type CompositeCstNode, type CstNode, type LangiumCoreServices, type LeafCstNode, type ParseResult, type Reference, type RootCstNode } from 'langium';
import { CofferParser } from '../../src/language/parser/index.ts';
import { leanComposite } from '../../src/language/parser/lean-tree.ts';
import { BUILTIN_TEXT } from '../../src/language/workspace/builtin.ts';

/**
 * The program parses the built-in library once; tests open some thousand workspaces in a process, and spent most of their time on it. In
 * them the first parses it, and all get copies of that tree, of which nothing is shared. (A setup file of the tests.)
 */
const parse = CofferParser.prototype.parse;
let first: { readonly result: ParseResult; readonly mold: Mold } | undefined;

CofferParser.prototype.parse = function <T extends AstNode>(this: CofferParser, input: string, options?: Parameters<typeof parse>[1]): ParseResult<T> {
    if (input !== BUILTIN_TEXT || options !== undefined) return parse.call(this, input, options) as ParseResult<T>;
    first ??= molded(parse.call(this, input));
    const { references: { Linker } } = (this as unknown as { readonly services: LangiumCoreServices }).services;
    return { ...first.result, value: cast(first.mold, Linker) as T };
};

/** The library as the parser itself makes it, without a copy. */
export function parsedAnew(parser: CofferParser): ParseResult {
    return parse.call(parser, BUILTIN_TEXT);
}

/** What a node of the text keeps for itself: the node of the tree that it is the words of. */
interface Means { readonly _astNode?: AstNode }
type Made<Node> = { -readonly [Key in keyof Node]: Node[Key] };

/** A node of the text; `within` and `means` are the places of others in their lists, -1 for none. */
interface Words { readonly original: CstNode; readonly within: number; readonly means: number; readonly range: CstNode['range'] }
/** What a node of the tree says: other nodes and words by their places. */
type Said = { readonly node: number } | { readonly text: string; readonly words: number } | { readonly list: readonly Said[] } | { readonly plain: unknown };
interface Node { readonly within: number; readonly words: number; readonly said: readonly (readonly [property: string, said: Said])[] }
/** The tree with each node in its place in a list, those that hold others before what they hold, so that a copy looks nothing up. */
interface Mold { readonly fullText: string; readonly words: readonly Words[]; readonly nodes: readonly Node[] }

function molded(result: ParseResult): { readonly result: ParseResult; readonly mold: Mold } {
    const root = result.value.$cstNode as RootCstNode, nodes: AstNode[] = [], words: CstNode[] = [], within: number[] = [];
    const placesOfNodes = new Map<AstNode, number>(), placesOfWords = new Map<CstNode, number>();
    const takeWords = (each: CstNode, holder: number): void => {
        const place = words.push(each) - 1;
        placesOfWords.set(each, place);
        within.push(holder);
        if (isCompositeCstNode(each)) for (const child of each.content) takeWords(child, place);
    };
    const takeNode = (node: AstNode): void => {
        placesOfNodes.set(node, nodes.push(node) - 1);
        for (const child of held(node)) takeNode(child);
    };
    takeWords(root, -1);
    takeNode(result.value);
    const placeOf = <Key>(places: ReadonlyMap<Key, number>, key: Key | undefined): number => {
        const place = key === undefined ? -1 : places.get(key);
        if (place === undefined) throw new Error('Something in the tree does not stand in it.');
        return place;
    };
    const sayingOf = (value: unknown): Said => {
        if (Array.isArray(value)) return { list: value.map(sayingOf) };
        if (isNode(value)) return { node: placeOf(placesOfNodes, value) };
        if (isReference(value)) return { text: value.$refText, words: placeOf(placesOfWords, value.$refNode) };
        return { plain: value };
    };
    return { result, mold: {
        fullText: root.fullText,
        words: words.map((original, i) => ({
            original, within: within[i]!, means: placeOf(placesOfNodes, (original as Means)._astNode), range: original.range,
        })),
        nodes: nodes.map(node => ({
            within: placeOf(placesOfNodes, node.$container), words: placeOf(placesOfWords, node.$cstNode),
            said: Object.entries(node).map(([property, value]) =>
                [property, property.startsWith('$') ? { plain: value as unknown } : sayingOf(value)] as const),
        })),
    } };
}

function held(node: AstNode): AstNode[] {
    return Object.entries(node).flatMap(([property, value]) => (property.startsWith('$') ? [] : [value as unknown].flat().filter(isNode)));
}
function isNode(value: unknown): value is AstNode {
    return typeof value === 'object' && value !== null && '$type' in value;
}
function isReference(value: unknown): value is Reference {
    return typeof value === 'object' && value !== null && '$refText' in value;
}

/** A tree of its own, whose references are looked up by whom it is for. Made by constructors, which is several times as fast as copying what an object has. */
function cast({ fullText, words, nodes }: Mold, linker: LangiumCoreServices['references']['Linker']): AstNode {
    const root = new RootCstNodeImpl(fullText), texts: CstNode[] = [root], values: AstNode[] = nodes.map(() => ({}) as AstNode);
    root.root = root;
    for (let i = 0; i < words.length; i++) {
        const { original, within, means, range } = words[i]!;
        if (i > 0) {
            const holder = texts[within] as CompositeCstNode, copy: Made<CstNode> = isCompositeCstNode(original)
                ? leanComposite() : new LeafCstNodeImpl(original.offset, original.length, range, (original as LeafCstNode).tokenType, original.hidden);
            copy.grammarSource = original.grammarSource;
            copy.root = root;
            copy.container = holder;
            holder.content.push(copy as CstNode);
            texts.push(copy as CstNode);
        }
        if (means >= 0) (texts[i] as Made<Means>)._astNode = values[means]!;
    }
    for (let i = 0; i < nodes.length; i++) {
        const { within, words: own, said } = nodes[i]!, copy = values[i] as unknown as Record<string, unknown>;
        const put = (what: Said, property: string): unknown => {
            if ('plain' in what) return what.plain;
            if ('node' in what) return values[what.node];
            if ('list' in what) return what.list.map(each => put(each, property));
            return linker.buildReference(values[i]!, property, texts[what.words], what.text);
        };
        for (const [property, what] of said) {
            if (property === '$container') copy[property] = values[within];
            else if (property === '$cstNode') copy[property] = texts[own];
            else copy[property] = put(what, property);
        }
    }
    return values[0]!;
}
