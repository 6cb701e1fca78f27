import { AstUtils, GrammarAST, type AstNode, type CompositeCstNode, type CstNode, type LeafCstNode, type LangiumCoreServices } from 'langium';
import type { Token, TokenType } from '../lexer/token.ts';

/** The part of Langium's parser that calls one rule from another. */
export interface Calling {
    readonly wrapper: {
        LA(ahead: number): Token;
        wrapConsume(place: number, type: TokenType): Token;
    };
    readonly nodeBuilder: {
        addHiddenNodes(tokens: readonly Token[]): void;
        buildCompositeNode(feature: GrammarAST.AbstractElement): CompositeCstNode;
        buildLeafNode(token: Token, feature: GrammarAST.AbstractElement): LeafCstNode;
        construct(item: object): void;
    };
    readonly converter: LangiumCoreServices['parser']['ValueConverter'];
    readonly stack: object[];
    subrule(place: number, rule: Rule, isFragment: boolean, feature: GrammarAST.AbstractElement, args: object): void;
    isRecording(): boolean;
    getRule(name: string): Rule | undefined;
    extractHiddenTokens(token: Token): readonly Token[];
    performSubruleAssignment(result: unknown, feature: GrammarAST.AbstractElement, node: CompositeCstNode): void;
}
type Rule = (args: object) => unknown;
type ByToken<What> = readonly (What | undefined)[];
type Taking = (parser: Calling, feature: GrammarAST.AbstractElement) => boolean;

/**
 * Half of all words are names, and most of the others are one value by itself: on the long way a name is three rules with two dozen alternatives each
 * (`Word`, `Key`), a value is four (`Expr`, `Unary`, `Postfix`, `Primary`), and the tree keeps one node of either (lean-tree.ts). The next word
 * tells which it will be, and the one after it that nothing goes on with it: then the same node is made at once. Whatever else stands there, a
 * mistake too, takes the long way. The grammar says all of this; here it is only looked up.
 */
export function takeShortWays(parser: Calling, services: LangiumCoreServices): void {
    const ways = new Map<Rule, Taking>();
    const callLong = parser.subrule;
    parser.subrule = (place, rule, isFragment, feature, args) => {
        if (parser.isRecording()) return callLong.call(parser, place, rule, isFragment, feature, args);
        if (ways.size === 0) for (const [name, way] of waysOf(services)) ways.set(parser.getRule(name)!, way);
        if (!ways.get(rule)?.(parser, feature)) callLong.call(parser, place, rule, isFragment, feature, args);
    };
}

function waysOf({ Grammar: grammar, parser: { Lexer: { definition } }, shared: { AstReflection: reflection } }: LangiumCoreServices): Map<string, Taking> {
    const types = definition as Readonly<Record<string, TokenType>>;
    const ruleOf = (name: string): GrammarAST.ParserRule => grammar.rules.filter(GrammarAST.isParserRule).find(rule => rule.name === name)!;
    const byToken = <What>(all: Iterable<readonly [string, What]>): ByToken<What> => {
        const list: (What | undefined)[] = [];
        for (const [token, what] of all) list[types[token]!.tokenTypeIdx!] = what;
        return list;
    };
    const ways = new Map<string, Taking>();
    for (const { name, definition: words, dataType } of grammar.rules.filter(GrammarAST.isParserRule)) {
        const single = dataType && singleTokens(words);
        if (single) ways.set(name, oneWord(byToken(single)));
    }
    const operators = singleTokens(ruleOf('Operator').definition)!.map(([token]) => token);
    const target = AstUtils.streamAst(ruleOf('Ref')).find(GrammarAST.isCrossReference)!;
    const literals = byToken(literalsOf(ruleOf('Primary')));
    const names = byToken(singleTokens(ruleOf('Word').definition)!);
    const goesOn = ['.', 'per'], isCall = byToken([['(', true]]);
    for (const [name, more] of [['Expr', operators], ['Unary', []], ['Postfix', []]] as const) {
        const isMore = byToken([...goesOn, ...more].map(token => [token, true] as const));
        ways.set(name, (parser, feature) => {
            const { wrapper, nodeBuilder, stack } = parser;
            const first = wrapper.LA(1).tokenTypeIdx, second = wrapper.LA(2).tokenTypeIdx;
            if (isMore[second]) return false;
            const literal = literals[first];
            const isName = literal === undefined && names[first] !== undefined && !isCall[second];
            if (!literal && !isName) return false;
            const node = nodeBuilder.buildCompositeNode(feature);
            let made: Made;
            if (literal) {
                const leaf = take(parser, literal.feature);
                made = new Made(literal.type);
                made.text = parser.converter.convert(leaf.image, leaf.node);
            } else {
                made = new Made('Ref');
                stack.push(made);
                ways.get('Word')!(parser, target);
                stack.pop();
            }
            nodeBuilder.construct(made);
            if (isName) AstUtils.assignMandatoryProperties(reflection, made as unknown as AstNode);
            parser.performSubruleAssignment(made, feature, node);
            return true;
        });
    }
    return ways;
}

/** A node of the tree in the making. A constructor of its own has the machine find out how much room such a node takes in the end. */
class Made {
    declare text: unknown;

    constructor(readonly $type: string) {}
}

/** A rule that is one token, of several there are. */
function oneWord(features: ByToken<GrammarAST.AbstractElement>): Taking {
    return (parser, feature) => {
        const { nodeBuilder, converter } = parser;
        const is = features[parser.wrapper.LA(1).tokenTypeIdx];
        if (!is) return false;
        const node = nodeBuilder.buildCompositeNode(feature);
        const { image, node: leaf } = take(parser, is);
        const value = GrammarAST.isKeyword(is) ? image : String(converter.convert(image, leaf));
        nodeBuilder.construct({});
        parser.performSubruleAssignment(converter.convert(value, node), feature, node);
        return true;
    };
}

/** Takes the next token into the tree, with the comments before it. */
function take(parser: Calling, feature: GrammarAST.AbstractElement): { image: string, node: CstNode } {
    const token = parser.wrapper.wrapConsume(1, parser.wrapper.LA(1).tokenType);
    parser.nodeBuilder.addHiddenNodes(parser.extractHiddenTokens(token));
    return { image: token.image, node: parser.nodeBuilder.buildLeafNode(token, feature) };
}

/** The tokens of which a rule is one, each with what the grammar has for it; `undefined` where it can be more. */
function singleTokens(definition: GrammarAST.AbstractElement): [string, GrammarAST.AbstractElement][] | undefined {
    if (definition.cardinality) return undefined;
    if (GrammarAST.isKeyword(definition)) return [[definition.value, definition]];
    if (GrammarAST.isAlternatives(definition)) {
        const all = definition.elements.map(singleTokens);
        return all.every(one => one !== undefined) ? all.flat() : undefined;
    }
    const called = GrammarAST.isRuleCall(definition) ? definition.rule.ref : undefined;
    if (GrammarAST.isTerminalRule(called)) return [[called.name, definition]];
    return GrammarAST.isParserRule(called) ? singleTokens(called.definition) : undefined;
}

/** What a value by itself makes: a node of this type, and what the grammar has for its token. */
interface Literal { readonly type: string; readonly feature: GrammarAST.AbstractElement }

/** The values that are one token. */
function literalsOf(primary: GrammarAST.ParserRule): [string, Literal][] {
    return AstUtils.streamAst(primary).filter(GrammarAST.isAction).flatMap((action): [string, Literal][] => {
        const type = action.inferredType?.name;
        const [assignment, more] = GrammarAST.isGroup(action.$container) ? action.$container.elements.filter(element => element !== action) : [];
        const feature = GrammarAST.isAssignment(assignment) && !more ? assignment.terminal : undefined;
        const token = GrammarAST.isRuleCall(feature) ? feature.rule.ref : undefined;
        return type && feature && GrammarAST.isTerminalRule(token) ? [[token.name, { type, feature }]] : [];
    }).toArray();
}
