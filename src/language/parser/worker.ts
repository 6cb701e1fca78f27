import { createParser, LangiumParser, type AstNode, type CompositeCstNode, type CstNode, type CstNodeBuilder, type LangiumCoreServices, type ParseResult, type ParserOptions } from 'langium';
import type { Token, TokenType } from '../lexer/token.ts';
import { beginListsFull, keepLean, type Assigning } from './lean-tree.ts';
import { noteLeftovers } from './leftovers.ts';
import { takeShortWays, type Calling } from './short-ways.ts';

/** What of those for whom it parses comes into the tree. */
interface Lent {
    linker: LangiumCoreServices['references']['Linker'];
    converter: LangiumCoreServices['parser']['ValueConverter'];
}

/** The parser that does the work. It takes longer to learn the grammar than to parse a house, so one works for all. */
let worker: Worker | undefined;

/** Where it throws, its state is not to be trusted: another one does the next work. Besides the tree, the parts of it that mean nothing. */
export function parseFor<T extends AstNode>(
    services: LangiumCoreServices, input: string, options: ParserOptions | undefined,
): { result: ParseResult<T>, leftovers: AstNode[] } {
    const working = worker ??= createWorker(services);
    worker = undefined;
    working.leftovers.clear();
    Object.assign(working, { linker: services.references.Linker, converter: services.parser.ValueConverter } satisfies Lent);
    const result = working.parse<T>(input, options), leftovers = [...working.leftovers];
    working.leftovers.clear();
    worker = working;
    return { result, leftovers };
}

function createWorker(services: LangiumCoreServices): Worker {
    const parser = createParser(services.Grammar, new Worker(services), services.parser.Lexer.definition);
    parser.finalize();
    return parser;
}

class Worker extends LangiumParser {
    readonly leftovers: Set<AstNode>;

    constructor(services: LangiumCoreServices) {
        super(services);
        keepStatementsApart(this.wrapper as unknown as Recovering);
        takeCommentsInPassing(this as unknown as WithComments);
        beginListsFull(this as unknown as Assigning);
        takeShortWays(this as unknown as Calling, services);
        this.leftovers = noteLeftovers((this as unknown as WithComments).nodeBuilder);
    }
}

/** The part of Langium's parser that puts comments into the tree. */
interface WithComments {
    lexerResult: { hidden: Token[] };
    readonly nodeBuilder: CstNodeBuilder;
    extractHiddenTokens(token: Token): Token[];
    doParse(rule: unknown): AstNode;
}

/**
 * Langium cuts the comments before each token off their list, and looks for their place, and for that of a node that turned out empty,
 * from the beginning of the block: with many lines in a block that takes longest of all. Here a number moves along the list, and
 * places are looked for from the end, where they are.
 */
function takeCommentsInPassing(parser: WithComments): void {
    const parse = parser.doParse;
    let taken = 0;
    parser.doParse = rule => {
        taken = 0;
        const result = parse.call(parser, rule);
        parser.lexerResult.hidden.splice(0, taken);
        return result;
    };
    parser.extractHiddenTokens = ({ startOffset }) => {
        const { hidden } = parser.lexerResult, from = taken;
        while (taken < hidden.length && hidden[taken]!.startOffset <= startOffset) taken++;
        return from === taken ? [] : hidden.slice(from, taken);
    };
    const builder = parser.nodeBuilder;
    builder.removeNode = node => {
        const siblings = node.container?.content;
        const at = siblings?.lastIndexOf(node) ?? -1;
        if (at >= 0) siblings!.splice(at, 1);
    };
    builder.addHiddenNodes = tokens => { if (tokens.length > 0) addComments(builder, tokens); };
    keepLean(builder);
}

/** Into the node under way, or, where that has nothing yet, before it; before everything at the beginning of a file. */
function addComments(builder: CstNodeBuilder, tokens: readonly Token[]): void {
    const { current, rootNode } = builder as unknown as { current: CompositeCstNode, rootNode: CompositeCstNode };
    const isEmpty = current.content.length === 0;
    const comments = tokens.map(token => builder.buildLeafNode(token));
    if (!isEmpty) return;
    current.content.length = 0;
    for (let node = current; node.container; node = node.container) {
        const at = node.container.content.lastIndexOf(node);
        if (at > 0) return insert(node.container, at, comments);
    }
    insert(rootNode, 0, comments);
}

/** A few at a time: a call takes no more arguments than the stack has room for. */
function insert(into: CompositeCstNode, at: number, more: readonly CstNode[]): void {
    for (const each of more) (each as { container: CompositeCstNode }).container = into;
    for (let done = 0; done < more.length; done += 1000) into.content.splice(at + done, 0, ...more.slice(done, done + 1000));
}

/** The part of the parser under Langium that decides how to go on after an error. */
interface Recovering {
    canTokenTypeBeInsertedInRecovery(type: TokenType): boolean;
    canRecoverWithSingleTokenDeletion(expected: TokenType): boolean;
    tryInRuleRecovery(expected: TokenType, follows: TokenType[]): Token;
    findReSyncTokenType(): TokenType;
    flattenFollowSet(): readonly TokenType[];
    buildFullFollowKeyStack(): unknown[];
    /** Rules under way, outermost first, and which of the places in the rule before called each. */
    readonly RULE_STACK: readonly number[];
    readonly RULE_OCCURRENCE_STACK: readonly number[];
    shortRuleNameToFullName(rule: number): string;
    getFollowSetFromFollowKey(key: unknown): TokenType[];
    LA(ahead: number): Token;
    SKIP_TOKEN(): Token;
    consumeToken(): void;
}

/** Ends of statements, and what holds blocks together: never to be made up or skipped (the lexer has mended the braces). */
const BOUNDARIES = new Set(['{', '}', 'EOL', 'EOF']);
const HEADS = new Set(['Head', 'ProfileHead', 'JobHead']);

/**
 * Recovery must not make one line pay for another. A brace that it makes up or skips re-nests all that follows, and a
 * head that it gives up leaves its block without a name: after an error in a head, or behind it, the parser goes on at
 * the `{` of the block.
 */
function keepStatementsApart(parser: Recovering): void {
    parser.canTokenTypeBeInsertedInRecovery = type => !BOUNDARIES.has(type.name) || type.name === 'EOL';
    const canDelete = parser.canRecoverWithSingleTokenDeletion;
    parser.canRecoverWithSingleTokenDeletion = expected => !BOUNDARIES.has(parser.LA(1).tokenType.name) && canDelete.call(parser, expected);
    const recover = parser.tryInRuleRecovery;
    parser.tryInRuleRecovery = (expected, follows) => expected.name === '{' && skipToBlock(parser) || recover.call(parser, expected, follows);
    parser.flattenFollowSet = keptFollows(parser);
    const findAnywhere = parser.findReSyncTokenType;
    const isHead = keptNames(parser, name => HEADS.has(name));
    parser.findReSyncTokenType = () => findInHead(parser, isHead) ?? findAnywhere.call(parser);
}

/**
 * What may follow any of the rules under way. Each of them asks as it is given up, the innermost first; so what is known of those around it
 * is kept, or a mistake in forty parentheses would cost the square of that.
 */
function keptFollows(parser: Recovering): () => readonly TokenType[] {
    const levels: { readonly rule: number; readonly place: number; readonly follows: readonly TokenType[] }[] = [];
    return () => {
        const { RULE_STACK: rules, RULE_OCCURRENCE_STACK: places } = parser;
        let known = 0;
        while (known < levels.length && known < rules.length && levels[known]!.rule === rules[known] && levels[known]!.place === places[known]) known++;
        levels.length = known;
        if (known < rules.length) {
            for (const [i, key] of parser.buildFullFollowKeyStack().entries()) {
                if (i < known) continue;
                const around = levels[i - 1]?.follows ?? [], more = parser.getFollowSetFromFollowKey(key).filter(type => !around.includes(type));
                levels.push({ rule: rules[i]!, place: places[i]!, follows: more.length > 0 ? [...around, ...more] : around });
            }
        }
        return levels.at(-1)?.follows ?? [];
    };
}

/** Whether a rule is one of those, asked by its number. */
function keptNames(parser: Recovering, isOne: (name: string) => boolean): (rule: number) => boolean {
    const known = new Map<number, boolean>();
    return rule => {
        let is = known.get(rule);
        if (is === undefined) known.set(rule, is = isOne(parser.shortRuleNameToFullName(rule).replace(/\u200b$/, '')));
        return is;
    };
}

/** Takes the `{` that follows in the same statement. */
function skipToBlock(parser: Recovering): Token | undefined {
    let ahead = 1;
    while (!BOUNDARIES.has(parser.LA(ahead).tokenType.name)) ahead++;
    if (parser.LA(ahead).tokenType.name !== '{') return undefined;
    let brace = parser.LA(1);
    for (; ahead > 1; ahead--) brace = parser.SKIP_TOKEN();
    parser.consumeToken();
    return brace;
}

/** The next token before the block of a head at which one of the rules inside the head can go on; else its `{`. */
function findInHead(parser: Recovering, isHead: (rule: number) => boolean): TokenType | undefined {
    const head = parser.RULE_STACK.findLastIndex(isHead);
    if (head < 0) return undefined;
    const follows = new Set(parser.buildFullFollowKeyStack().slice(head).flatMap(key => parser.getFollowSetFromFollowKey(key)));
    for (let ahead = 1; ; ahead++) {
        const { tokenType } = parser.LA(ahead);
        if (tokenType.name === 'EOL' || tokenType.name === '}' || tokenType.name === 'EOF') return undefined;
        if (follows.has(tokenType)) return tokenType;
    }
}
