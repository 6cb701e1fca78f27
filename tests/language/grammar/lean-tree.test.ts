import { readFileSync } from 'node:fs';
import { AstUtils, CstUtils, GrammarAST, isCompositeCstNode, isLeafCstNode, type CompositeCstNode } from 'langium';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { expect, test } from 'vitest';
import { createFront } from '../../../src/language/front.ts';

const TEXTS = [
    readFileSync(new URL('../../../src/language/builtin/builtin.coffer', import.meta.url), 'utf8'),
    'edition 1\r\n/** Over\n    lines. */\nlet a = -(12\' 3" + 4 mm) * 2 // behind\n/* one */ room den {\n\twall north 12\'\n  grid { coffers-north 3; beams box(groove: 1/4") }\n}\n',
    'let = (1 +\nroom {\n  wall "north" 3\' of\n}}\n/* never closed',
];

test('words make the ranges of the places where they stand, and every node knows what holds it', () => {
    const { parser: { LangiumParser } } = createFront();
    for (const text of TEXTS) {
        const root = LangiumParser.parse(text).value.$cstNode!, document = TextDocument.create('file:///a', 'coffer', 1, text);
        for (const node of CstUtils.streamCst(root)) {
            if (isLeafCstNode(node)) expect(node.range).toEqual({ start: document.positionAt(node.offset), end: document.positionAt(node.end) });
            if (node !== root) expect(node.container!.content).toContain(node);
        }
    }
});

test('a chain of rules that call each other for one value is one node', () => {
    const { parser: { LangiumParser } } = createFront();
    const isChain = ({ content: [only, ...more] }: CompositeCstNode): boolean =>
        more.length === 0 && isCompositeCstNode(only) && !AstUtils.getContainerOfType(only.grammarSource, GrammarAST.isAssignment)
            && (only as { _astNode?: unknown })._astNode === undefined;
    const root = LangiumParser.parse(TEXTS[1]!).value.$cstNode!;
    expect(CstUtils.streamCst(root).filter(node => node !== root && isCompositeCstNode(node) && isChain(node)).count()).toBe(0);
});
