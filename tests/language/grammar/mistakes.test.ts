import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { createFront } from '../../../src/language/front.ts';
import type * as ast from '../../../src/language/generated/ast.ts';
import { marksOf, readMarks } from './marked.ts';

const { parser: { LangiumParser: parser } } = createFront();
const read = (name: string) => readFileSync(new URL(name, import.meta.url), 'utf8');

describe('a line in a room', () => {
    const cases = read('mistakes-in-lines.txt').split('\n\n').filter(text => text.trim() !== '').map(marked => readMarks(marked.replace(/\n$/, '')));
    test.each(cases)('$text', ({ text, marks }) => {
        const result = parser.parse<ast.File>(`room r {\n${text}\n  height 8'\n}\nroom s {\n}\n`);
        expect(marksOf(result)).toEqual(marks.map(mark => ({ ...mark, line: mark.line + 1 })));
        expect(marks).toHaveLength(1);
        // The line below it and the room below that one are there.
        const [room, other] = result.value.items as ast.Room[];
        expect(room!.body.members.at(-1)?.$cstNode?.text).toBe("height 8'");
        expect([room?.name, other?.name]).toEqual(['r', 's']);
    });
});

describe('a file', () => {
    const cases = read('mistakes-in-files.txt').split('=====\n').map(readMarks);
    test.each(cases)('$text', ({ text, marks }) => {
        expect(marks.length).toBeGreaterThan(0);
        expect(marksOf(parser.parse(text))).toEqual(marks);
        expect(marksOf(parser.parse(text.replaceAll('\n', '\r\n')))).toEqual(marks);
    });
});

test('no message speaks of tokens or rules', () => {
    const messages = [...read('mistakes-in-lines.txt').matchAll(/\^ (.+)/g), ...read('mistakes-in-files.txt').matchAll(/\^ (.+)/g)].map(match => match[1]!);
    expect(messages.length).toBeGreaterThan(80);
    expect(messages.filter(message => /\b(?:tokens?|expect\w*|EOF|EOL|ID|rules?|syntax|pars\w+|LENGTH|NUMBER|STRING|NoViable\w*)\b/.test(message))).toEqual([]);
});
