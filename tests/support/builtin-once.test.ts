import { AstUtils, isCompositeCstNode, isLeafCstNode, type AstNode, type CstNode, type LangiumDocument, type ParseResult, type Reference } from 'langium';
import { expect, test } from 'vitest';
import type { CofferParser } from '../../src/language/parser/index.ts';
import { builtinDocument } from '../../src/language/workspace/builtin.ts';
import { EXAMPLES } from './examples.ts';
import { parsedAnew } from './builtin-once.ts';
import { TestWorkspace } from './workspace.ts';

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
    return Object.entries(node).filter(([property]) => property !== '$document').map(([property, value]) => [property, shown(value, number)]);
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

test('the built-in library that all workspaces share is, after houses were opened and changed, what the parser makes of it, and each finds its own words', async () => {
    const one = await TestWorkspace.open(EXAMPLES), other = await TestWorkspace.open({ 'a.coffer': 'edition 1\nstock oak { size 1x4 }\n' });
    await one.edit({ 'rates.coffer': undefined });
    await other.edit({ 'a.coffer': 'edition 1\nstock ash { size 1x6 }\nroom den { }\n' });
    const documents = [one, other].map(({ shared }) => builtinDocument(shared));
    expect(documents[0]).not.toBe(documents[1]);
    for (const { parseResult } of documents) {
        const parsed = parsedAnew(one.coffer.parser.LangiumParser as CofferParser);
        expect(wordsIn(parsed.value.$cstNode!).length).toBeGreaterThan(2000);
        expect(told(parseResult)).toEqual(told(parsed));
    }
    const meantIn = ({ references }: LangiumDocument): unknown[][] => references.map(one => [one.$refText, (one as Reference).ref?.$cstNode?.offset]);
    const [meant, meantToo] = documents.map(meantIn);
    expect(meant!.length).toBeGreaterThan(100);
    expect(meantToo).toEqual(meant);
    expect(meant!.filter(([, at]) => at === undefined)).toEqual([]);
});
