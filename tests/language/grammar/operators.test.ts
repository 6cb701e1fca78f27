import { describe, expect, test } from 'vitest';
import { createFront } from '../../../src/language/front.ts';
import * as ast from '../../../src/language/generated/ast.ts';
import { treeOf, type Operand } from '../../../src/language/operators.ts';

const { parser: { LangiumParser: parser } } = createFront();
const chainIn = (expression: string) => {
    const text = `let v = ${expression}\n`;
    const [item] = parser.parse<ast.File>(text).value.items;
    return { chain: (item as ast.Let).value as ast.Chain, text };
};
const shown = (operand: Operand | undefined): string => !operand ? '?' : operand.kind === 'leaf' ? operand.expr.$cstNode!.text : `(${shown(operand.left)} ${operand.operator} ${shown(operand.right)})`;

describe('tightest first, and from the left', () => {
    test.each([
        ['a + b * c', '(a + (b * c))'],
        ['a * b + c', '((a * b) + c)'],
        ['a - b - c', '((a - b) - c)'],
        ['a / b / c', '((a / b) / c)'],
        ['5" + 1" ± 1/64"', '((5" + 1") ± 1/64")'],
        ['5" +/- 1/64"', '(5" ± 1/64")'],
        ['2 x 62" - 1/8"', '(2 x (62" - 1/8"))'],
        ['0" to 1/32" * 2', '(0" to (1/32" * 2))'],
        ['2 x 3 to 4 x 5', '((2 x 3) to (4 x 5))'],
        ['a + b <= c * 2', '((a + b) <= (c * 2))'],
        ['3/4"×1"', '(3/4" x 1")'],
        ['a − b', '(a - b)'],
    ])('%s', (expression, expected) => expect(shown(treeOf(chainIn(expression).chain))).toBe(expected));
});

test('every operation knows its place in the text', () => {
    const { chain, text } = chainIn('a + b * c');
    const tree = treeOf(chain)!;
    const cut = ({ start, end }: { start: { character: number }, end: { character: number } }) => text.slice(start.character, end.character);
    expect([cut(tree.range), cut(tree.operatorRange)]).toEqual(['a + b * c', '+']);
    expect(tree.right?.kind === 'operation' && [cut(tree.right.range), cut(tree.right.operatorRange)]).toEqual(['b * c', '*']);
});

test('computed once', () => {
    const { chain } = chainIn('a + b');
    expect(treeOf(chain)).toBe(treeOf(chain));
});

test('a chain that is half typed keeps what it has', () => {
    expect(shown(treeOf(chainIn('a + b *').chain))).toBe('(a + (b * ?))');
    expect(shown(treeOf(chainIn('a +').chain))).toBe('(a + ?)');
    expect(shown(treeOf(chainIn('a - * b').chain))).toBe('(a - (? * b))');
});

test('a thousand operands', () => {
    const { chain } = chainIn(Array(900).fill('1').join(' + '));
    let depth = 0;
    for (let at: Operand | undefined = treeOf(chain); at?.kind === 'operation'; at = at.left) depth++;
    expect(depth).toBe(899);
});
