import { DefaultValueConverter, type CstNode, type GrammarAST, type ValueType } from 'langium';
import { VALUES } from '../grammar-words.ts';
import { plainValue } from '../lexer/pasted.ts';
import { unquoted } from '../lexer/quoted.ts';

/** The tree holds every value in its plain spelling, however it was pasted. Total: a throw here would end the parse. */
export class CofferValueConverter extends DefaultValueConverter {
    protected override runConverter(rule: GrammarAST.AbstractRule, input: string, cstNode: CstNode): ValueType {
        if (rule.name === 'STRING') return unquoted(input);
        if (rule.name === 'MONEY') return plainValue(input).replace(/,/g, '');
        if (VALUES.has(rule.name)) return plainValue(input);
        if (rule.name === 'Operator') return input.startsWith('+') && input !== '+' ? '±' : input;
        return super.runConverter(rule, input, cstNode);
    }
}
