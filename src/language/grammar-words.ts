import { AstUtils, GrammarAST } from 'langium';
import { CofferGrammar } from './generated/grammar.ts';

// The words of the language as its grammar has them, so that a new one is said in coffer.langium alone.

/** The named things of a room: `wall`, `fixture` … */
export const ROOM_WORDS: ReadonlySet<string> = keywordsIn(AstUtils.streamAst(ruleOf('Fixture')).filter(GrammarAST.isAssignment).find(({ feature }) => feature === 'kind')!);

/** What stands between two operands. */
export const OPERATORS: ReadonlySet<string> = keywordsIn(ruleOf('Operator'));

/** Names of the tokens that are a value by themselves. */
export const VALUES: ReadonlySet<string> = new Set([...tokensIn(ruleOf('Value')), 'STRING']);

/** All that is written in letters. */
export const LETTERED: ReadonlySet<string> = new Set(CofferGrammar().rules.flatMap(rule => [...keywordsIn(rule)]).filter(word => /^[a-z]/.test(word)));

function ruleOf(name: string): GrammarAST.AbstractRule {
    return CofferGrammar().rules.find(rule => rule.name === name)!;
}

function keywordsIn(node: GrammarAST.AbstractRule | GrammarAST.Assignment): ReadonlySet<string> {
    return AstUtils.streamAst(node).filter(GrammarAST.isKeyword).map(({ value }) => value).toSet();
}

function tokensIn(node: GrammarAST.AbstractRule): ReadonlySet<string> {
    return AstUtils.streamAst(node).filter(GrammarAST.isRuleCall).map(({ rule }) => rule.ref!.name).toSet();
}
