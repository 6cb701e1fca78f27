import { AstUtils, CstUtils, isCompositeCstNode, isLeafCstNode, type AstNode, type CstNode, type ParseResult } from 'langium';
import { expect, test } from 'vitest';
import { createFront } from '../../src/language/front.ts';
import type { CofferParser } from '../../src/language/parser/index.ts';
import { BUILTIN_TEXT } from '../../src/language/workspace/builtin.ts';
import { parsedAnew } from './builtin-once.ts';

const parser = createFront().parser.LangiumParser as CofferParser;

/** All that a tree says, in words and numbers. */
function told({ value, lexerErrors, parserErrors, lexerReport }: ParseResult): object {
    const nodes = AstUtils.streamAst(value).toArray();
    const number = new Map(nodes.map((node, i) => [node, i]));
    return { lexerErrors, parserErrors, lexerReport, nodes: nodes.map(node => said(node, number)), words: wordsIn(value.$cstNode!).map(each => [
        each.text, each.offset, each.end, each.hidden, each.range, each.grammarSource?.$type, isLeafCstNode(each) && each.tokenType.name,
        number.get(each.astNode), each.container?.offset,
    ]) };
}

function said(node: AstNode, number: ReadonlyMap<AstNode, number>): unknown {
    return Object.entries(node).map(([property, value]) => [property, shown(value, number)]);
}

function shown(value: unknown, number: ReadonlyMap<AstNode, number>): unknown {
    if (typeof value !== 'object' || value === null) return value;
    if (Array.isArray(value)) return value.map(each => shown(each, number));
    if ('$refText' in value) return { refText: value.$refText, at: ('$refNode' in value ? value.$refNode as CstNode : undefined)?.offset };
    return number.get(value as AstNode) ?? (value as CstNode).offset;
}

function wordsIn(node: CstNode): CstNode[] {
    return [node, ...isCompositeCstNode(node) ? node.content.flatMap(wordsIn) : []];
}

test('a copy of the built-in library is what the parser makes of it, and is nobody else\'s', () => {
    const [parsed, one, other] = [parsedAnew(parser), parser.parse(BUILTIN_TEXT), parser.parse(BUILTIN_TEXT)];
    expect(CstUtils.flattenCst(parsed.value.$cstNode!).count()).toBeGreaterThan(2000);
    expect(told(one)).toEqual(told(parsed));
    const nodes = new Set<object>([...AstUtils.streamAst(one.value), ...wordsIn(one.value.$cstNode!)]);
    expect([...AstUtils.streamAst(other.value), ...wordsIn(other.value.$cstNode!)].filter(each => nodes.has(each))).toEqual([]);
    for (const each of wordsIn(one.value.$cstNode!)) expect([
        each.root === one.value.$cstNode, nodes.has(each.astNode), each.container === undefined || nodes.has(each.container),
    ]).toEqual([true, true, true]);
});
