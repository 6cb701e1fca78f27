import { GrammarUtils } from 'langium';
import { kept } from '../plain/kept.ts';
import type { Range } from '../provenance/source.ts';
import type { Chain, Expr, Operator as Spelling } from './generated/ast.ts';
import { plainDashes } from './lexer/pasted.ts';

/** An operator with what it works on. Either side is undefined where the line is only half typed. */
export interface Operation {
    readonly kind: 'operation';
    readonly operator: Operator;
    readonly operatorRange: Range;
    readonly left: Operand | undefined;
    readonly right: Operand | undefined;
    /** From the first operand to the last. */
    readonly range: Range;
}
export interface Leaf {
    readonly kind: 'leaf';
    readonly expr: Expr;
    readonly range: Range;
}
export type Operand = Operation | Leaf;
/** As they are read: `+/-` is a spelling of `±`. */
type Operator = Exclude<Spelling, '+/-'>;

/** How tightly an operator binds; operators that bind alike are read from the left. */
const STRENGTH: Readonly<Record<Operator, number>> = { '*': 6, '/': 6, '+': 5, '-': 5, '±': 4, 'x': 3, 'to': 2, '<': 1, '<=': 1, '>': 1, '>=': 1 };

/**
 * The tree of a chain of operands and operators, by precedence. Computed once a chain.
 * `undefined` where the chain has lost its operators to a syntax error.
 */
export const treeOf = kept(build);

function build(chain: Chain): Operation | undefined {
    const operators = GrammarUtils.findNodesForProperty(chain.$cstNode, 'operators').map(node => ({ operator: spelled(node.text), range: node.range, offset: node.offset }));
    if (operators.length === 0) return undefined;
    // Paired by place, not by number: where one is missing, the others stay with their operators.
    const operands = [...chain.operands];
    const operandBefore = (offset: number) => (operands[0]?.$cstNode?.offset ?? Infinity) < offset ? leaf(operands.shift()!) : undefined;
    const done: (Operand | undefined)[] = [operandBefore(operators[0]!.offset)];
    const waiting: { operator: Operator, range: Range }[] = [];
    const reduce = () => {
        const { operator, range } = waiting.pop()!;
        const right = done.pop(), left = done.pop();
        done.push({
            kind: 'operation', operator, operatorRange: range, left, right,
            range: { start: (left ?? { range }).range.start, end: (right ?? { range }).range.end },
        });
    };
    operators.forEach((next, i) => {
        while (waiting.length > 0 && STRENGTH[waiting[waiting.length - 1]!.operator] >= STRENGTH[next.operator]) reduce();
        waiting.push(next);
        done.push(operandBefore(operators[i + 1]?.offset ?? Infinity));
    });
    while (waiting.length > 0) reduce();
    return done[0] as Operation;
}

function leaf(expr: Expr): Leaf {
    const nowhere = { line: 0, character: 0 };
    return { kind: 'leaf', expr, range: expr.$cstNode?.range ?? { start: nowhere, end: nowhere } };
}

function spelled(text: string): Operator {
    const plain = plainDashes(text);
    if (plain.length > 1 && plain.startsWith('+')) return '±';
    return (plain === '×' ? 'x' : plain) as Operator;
}
