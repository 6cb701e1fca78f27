import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { createFront } from '../../../src/language/front.ts';

const { parser: { Lexer: lexer } } = createFront();

describe('where a statement ends', () => {
    const cases: { text: string, expected: string }[] = [];
    let text: string[] = [];
    for (const line of readFileSync(new URL('lines.txt', import.meta.url), 'utf8').split('\n').slice(1)) {
        if (!line.startsWith('=> ')) { text.push(line); continue; }
        cases.push({ text: text.join('\n'), expected: line.slice(3) });
        text = [];
    }
    test.each(cases)('$text', ({ text, expected }) => {
        for (const newline of ['\n', '\r\n', '\r']) expect(read(text.replaceAll('\n', newline))).toBe(expected);
    });
    function read(text: string): string {
        return lexer.tokenize(text).tokens.map(token => token.tokenType.name === 'EOL' ? '|' : token.image).join(' ').replace(/ \|$/, '');
    }
});

test('tabs and spaces stand for the same depth', () => {
    const kinds = (text: string) => lexer.tokenize(text).tokens.map(token => token.tokenType.name);
    expect(kinds('\ta 1,\n\t\t2\n')).toEqual(kinds('    a 1,\n        2\n'));
    expect(kinds('\ta 1,\n    2\n')).toEqual(kinds('    a 1,\n    2\n'));
});

test('a statement ends in a token of no width, before what follows on its line', () => {
    const [, , end] = lexer.tokenize('a 1   // note\nb 2').tokens;
    expect([end!.tokenType.name, end!.image, end!.startOffset, end!.endOffset]).toEqual(['EOL', '', 13, 12]);
});

test('a text that is cut off for completion has no braces mended and no end supplied', () => {
    const cut = lexer.tokenize('room r {\n  grid {\n    a ', { mode: 'partial' });
    expect(cut.tokens.map(token => token.tokenType.name)).toEqual(['room', 'ID', '{', 'ID', '{', 'ID']);
    expect(cut.errors).toEqual([]);
});
