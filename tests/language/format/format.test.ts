import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createFront } from '../../../src/language/front.ts';
import { formatText } from '../../../src/language/format/index.ts';
import type { LineReport } from '../../../src/language/lexer/index.ts';
import { isComment, piecesOf } from '../../../src/language/format/pieces.ts';
import { runs } from '../../support/full.ts';

const { parser: { Lexer: lexer } } = createFront();
const here = new URL('.', import.meta.url);
const cases = readdirSync(new URL('cases/', here)).map(name => {
    const [before, after] = readFileSync(new URL(`cases/${name}`, here), 'utf8').split(/^=====\n/m);
    return { name, before: before!, after: after! };
});
const files = ['tuned', 'held-out'].flatMap(folder => readdirSync(new URL(`../recovery/${folder}/`, here)).map(name => ({
    name: `${folder}/${name}`, text: readFileSync(new URL(`../recovery/${folder}/${name}`, here), 'utf8'),
})));
const builtin = readFileSync(new URL('../../../src/language/builtin/builtin.coffer', here), 'utf8');

describe('form', () => {
    test.each(cases)('$name', ({ before, after }) => {
        expect(formatText(before)).toBe(after);
        expect(formatText(after)).toBe(after);
    });
    test('the built-in library stands in its own form', () => expect(formatText(builtin)).toBe(builtin));
    test('nothing but white space becomes nothing', () => {
        expect(formatText('')).toBe('');
        expect(formatText('\n\n  \n')).toBe('');
    });
    test('line ends and the byte order mark stay as they are', () => {
        expect(formatText('\ufeffedition   1\r\nroom r {\r\nheight 8\'\r\n}')).toBe('\ufeffedition 1\r\nroom r {\r\n  height  8\'\r\n}\r\n');
    });
});

describe('a file with a mistake is left alone', () => {
    test.each(["room r {\n height = 8'\n}", 'room r {\n height 8\' @\n}', 'room r {', 'room r {\n height 5 1/2 "\n}', '"', '\0'.repeat(50)])('%j', text => {
        expect(formatText(text)).toBeUndefined();
    });
});

describe('every word and comment stays', () => {
    test.each([...files, ...cases.map(({ name, before }) => ({ name, text: before }))])('$name', ({ text }) => {
        const formatted = formatText(text)!;
        const before = piecesOf(lexer.tokenize(text)), after = piecesOf(lexer.tokenize(formatted));
        expect(after.map(words)).toEqual(before.map(words));
        expect(after.filter(isComment).length).toBe(before.filter(isComment).length);
        expect(formatText(formatted)).toBe(formatted);
    });
    const words = ({ text, kind, begins }: { text: string, kind: string, begins: boolean }) => ({ text: text.replace(/\s+/g, ' '), kind, begins });
});

/** White space that somebody else might have typed: it must not matter. */
describe('white space does not matter', () => {
    test.each(files)('$name', ({ text }) => {
        const formatted = formatText(text)!;
        fc.assert(fc.property(
            fc.infiniteStream(fc.constantFrom(' ', '  ', '\t', ' \u00a0', '   \t ')),
            fc.integer({ min: 1, max: 4 }), fc.boolean(), fc.constantFrom('', ' ', '\t '), fc.integer({ min: 1, max: 3 }),
            (gaps, step, tabs, trail, blankLines) => {
                const respaced = withOtherSpace(formatted, gaps, step, tabs, trail, blankLines);
                expect(formatText(respaced)).toBe(formatted);
            },
        ), { seed: 7, numRuns: runs(25) });
    });
});

/** Other gaps between the words, other indentation, other blank lines. Comments and statements of several lines keep their shape. */
function withOtherSpace(formatted: string, gaps: fc.Stream<string>, step: number, tabs: boolean, trail: string, blankLines: number): string {
    const { tokens, hidden, report } = lexer.tokenize(formatted);
    const begins = new Set((report as LineReport).statements);
    const goesOn = (line: number) => tokens.some(token => token.startLine === line && token.image !== '') && !begins.has(line);
    const isShaped = (line: number) => goesOn(line) || goesOn(line + 1);
    const shaped = new Set(hidden.filter(comment => comment.endLine !== comment.startLine).flatMap(comment => range(comment.startLine!, comment.endLine!)));
    return formatted.split('\n').map((line, i) => {
        if (shaped.has(i + 1) || isShaped(i + 1)) return line;
        if (line === '') return '\n'.repeat(blankLines - 1);
        const indentation = line.length - line.trimStart().length;
        const words = [...tokens, ...hidden].filter(token => token.startLine === i + 1 && token.image !== '').sort((a, b) => a.startOffset - b.startOffset);
        let result = tabs ? '\t'.repeat(indentation) : ' '.repeat(indentation * step);
        words.forEach((word, w) => {
            const before = words[w - 1];
            if (before && before.endOffset! + 1 < word.startOffset) result += formatted.slice(before.endOffset! + 1, word.startOffset).includes(';') ? '; ' : gaps.next().value;
            result += word.image;
        });
        return result + trail;
    }).join('\n');
}

function range(from: number, to: number): number[] {
    return Array.from({ length: to - from + 1 }, (_, i) => from + i);
}
