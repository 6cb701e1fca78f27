import { AstUtils, GrammarAST } from 'langium';
import { CofferGrammar } from './generated/grammar.ts';

// The words of the language as its grammar has them, so that a new one is said in coffer.langium alone.

/** The named things of a room: `wall`, `fixture` … */
export const ROOM_WORDS: ReadonlySet<string> = keywordsIn(AstUtils.streamAst(ruleOf('Fixture')).filter(GrammarAST.isAssignment).find(({ feature }) => feature === 'kind')!);

/** What a line at the margin of a file begins with and goes on with a block: `stock`, `profile` … */
export const HEADS: readonly string[] = alternativesOf('Item').filter(rule => hasBody(rule)).flatMap(firstWord);

/** What only the built-in library begins a line with. */
export const LIBRARY_WORDS: readonly string[] = alternativesOf('Library').flatMap(firstWord);

/** All that a line at the margin of a job file can begin with. */
export const DECLARATIONS: readonly string[] = [...HEADS, ...['Let', 'Use', 'Edition'].map(ruleOf).flatMap(firstWord)];

/** Words with a name right behind them: `stock poplar-1x6`, `wall north`. */
export const NAMED: ReadonlySet<string> = new Set([...alternativesOf('Item'), ...alternativesOf('Library'), ruleOf('Fixture')].filter(isNamed).flatMap(firstWord));

/** What stands between two operands. */
export const OPERATORS: ReadonlySet<string> = keywordsIn(ruleOf('Operator'));

/** Names of the tokens that are a value by themselves. */
export const VALUES: ReadonlySet<string> = new Set([...tokensIn(ruleOf('Value')), 'STRING']);

/** All that is written in letters. */
export const LETTERED: ReadonlySet<string> = new Set(CofferGrammar().rules.flatMap(rule => [...keywordsIn(rule)]).filter(word => /^[a-z]/.test(word)));

function alternativesOf(name: string): GrammarAST.ParserRule[] {
    return AstUtils.streamAst(ruleOf(name)).filter(GrammarAST.isRuleCall).map(({ rule }) => rule.ref).filter(GrammarAST.isParserRule).toArray();
}

/** The keyword that a rule begins with, or the keywords; none where it begins with something else. */
function firstWord(rule: GrammarAST.AbstractRule): string[] {
    const [first] = elementsOf(rule);
    return first && (GrammarAST.isKeyword(first) || GrammarAST.isAssignment(first)) ? [...keywordsIn(first)] : [];
}

/** True where the second thing in a rule is a name, said in it or in a fragment that it begins with. */
function isNamed(rule: GrammarAST.AbstractRule): boolean {
    const [, second] = elementsOf(rule);
    const first = GrammarAST.isRuleCall(second) && second.rule.ref ? elementsOf(second.rule.ref)[0] : second;
    return GrammarAST.isAssignment(first) && first.feature === 'name';
}

function elementsOf(rule: GrammarAST.AbstractRule): GrammarAST.AbstractElement[] {
    const { definition } = rule as GrammarAST.ParserRule;
    return GrammarAST.isGroup(definition) ? definition.elements.filter(element => !GrammarAST.isAction(element)) : [definition];
}

function hasBody(rule: GrammarAST.AbstractRule): boolean {
    return AstUtils.streamAst(rule).some(node => GrammarAST.isAssignment(node) && node.feature === 'body');
}

function ruleOf(name: string): GrammarAST.AbstractRule {
    return CofferGrammar().rules.find(rule => rule.name === name)!;
}

function keywordsIn(node: GrammarAST.AbstractRule | GrammarAST.AbstractElement): ReadonlySet<string> {
    return AstUtils.streamAst(node).filter(GrammarAST.isKeyword).map(({ value }) => value).toSet();
}

function tokensIn(node: GrammarAST.AbstractRule): ReadonlySet<string> {
    return AstUtils.streamAst(node).filter(GrammarAST.isRuleCall).map(({ rule }) => rule.ref!.name).toSet();
}
