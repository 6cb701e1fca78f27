import { AstUtils, CompositeCstNodeImpl, GrammarAST, isCompositeCstNode, LeafCstNodeImpl, type AstNode, type CompositeCstNode, type CstNode, type CstNodeBuilder } from 'langium';
import { kept } from '../../plain/kept.ts';
import type { Range } from '../../provenance/source.ts';
import type { Token } from '../lexer/token.ts';

/**
 * The tree of a text is most of what an editor holds of it. A word keeps where it begins and how long it is, and makes its range when
 * somebody asks; a chain of rules that call each other for one value (`12'` goes through four) is one node.
 */
export function keepLean(builder: CstNodeBuilder): void {
    const rootNode = (): LeanLeaf['root'] => (builder as unknown as { rootNode: LeanLeaf['root'] }).rootNode;
    builder.buildCompositeNode = feature => {
        const node = leanComposite(), { current } = builder;
        node.grammarSource = feature;
        node.root = rootNode();
        node.container = current;
        current.content.push(node);
        (builder as unknown as { nodeStack: CompositeCstNode[] }).nodeStack.push(node);
        return node;
    };
    builder.buildLeafNode = (token, feature) => {
        const leaf = new LeanLeaf(token, feature === undefined), { current } = builder;
        leaf.grammarSource = feature;
        leaf.root = rootNode();
        leaf.container = current;
        current.content.push(leaf);
        return leaf;
    };
    const construct = builder.construct;
    builder.construct = item => {
        const { current } = builder;
        construct.call(builder, item);
        if (!current.container || current.content.length === 0) return;
        const content = exactly(contentOf(current));
        for (const each of content as { container: CompositeCstNode }[]) each.container = current;
        (current as Composite).content = content;
    };
}

/** The part of Langium's parser that puts what it found into a node. */
export interface Assigning {
    readonly stack: Record<string, unknown>[];
    readonly linker: { buildReference(node: object, property: string, words: CstNode, text: string): unknown };
    assign(operator: string, property: string, value: unknown, words: CstNode, leads: 'single' | 'multi' | undefined): void;
}

/** A list begins with what comes first: an empty one that something is put into is given room for sixteen more, and most hold one. */
export function beginListsFull(parser: Assigning): void {
    const assign = parser.assign;
    parser.assign = (operator, property, value, words, leads) => {
        const node = parser.stack.at(-1)!;
        if (operator !== '+=' || node[property] !== undefined || leads === 'multi') return assign.call(parser, operator, property, value, words, leads);
        node[property] = [leads === 'single' && typeof value === 'string' ? parser.linker.buildReference(node, property, words, value) : value];
    };
}

type Composite = { -readonly [Key in keyof CompositeCstNodeImpl]: CompositeCstNodeImpl[Key] };

/**
 * A node that holds others in a plain list. Langium's looks at all that is put in, to say where it lies, and is no plain list to the
 * machine either: putting nodes into it took as long as all else of parsing.
 */
class LeanComposite {
    content: CstNode[] = [];
    grammarSource: CstNode['grammarSource'] = undefined;
    container: CompositeCstNode | undefined = undefined;
}
Object.setPrototypeOf(LeanComposite.prototype, CompositeCstNodeImpl.prototype);

/** An empty one. */
function leanComposite(): Composite {
    return new LeanComposite() as unknown as Composite;
}

const NOWHERE: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

class LeanLeaf extends LeafCstNodeImpl {
    private readonly line: number;
    private readonly character: number;
    private readonly overLines: Range | undefined;

    constructor(token: Token, hidden: boolean) {
        // only what goes on over several lines cannot be reckoned from its beginning and its length
        const { startLine = 1, startColumn = 1, endLine = startLine, endColumn = startColumn } = token;
        const range: Range | undefined = endLine === startLine && endColumn - startColumn + 1 === token.image.length ? undefined
            : { start: { line: startLine - 1, character: startColumn - 1 }, end: { line: endLine - 1, character: endColumn } };
        super(token.startOffset, token.image.length, NOWHERE, token.tokenType, hidden);
        this.overLines = range;
        this.line = startLine - 1;
        this.character = startColumn - 1;
    }

    override get range(): Range {
        return this.overLines ?? { start: { line: this.line, character: this.character }, end: { line: this.line, character: this.character + this.length } };
    }
}

/** What a node holds; where that is one rule that it calls for nothing of its own, what that holds. */
function contentOf({ content }: CompositeCstNode): readonly CstNode[] {
    const only = content.length === 1 ? content[0] : undefined;
    const isOnlyCalled = isCompositeCstNode(only) && (only as { _astNode?: unknown })._astNode === undefined
        && !(only.grammarSource && isAssigned(only.grammarSource));
    return isOnlyCalled ? only.content : content;
}

const isAssigned = kept((feature: AstNode): boolean => AstUtils.getContainerOfType(feature, GrammarAST.isAssignment) !== undefined);

/** A list that grows is given room for many more, and most nodes of a tree hold one or two: in a finished node there is room for just these. */
function exactly(nodes: readonly CstNode[]): CstNode[] {
    const exact = new Array<CstNode>(nodes.length);
    for (let i = 0; i < nodes.length; i++) exact[i] = nodes[i]!;
    return exact;
}
