import { DefaultValueConverter, createDefaultCoreModule, createDefaultSharedCoreModule, EmptyFileSystem, inject, type CstNode, type LangiumCoreServices } from 'langium';
import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { frontModule } from '../../../src/language/front-module.ts';
import { createFront } from '../../../src/language/front.ts';
import { CofferGeneratedModule, CofferGeneratedSharedModule } from '../../../src/language/generated/module.ts';
import type * as ast from '../../../src/language/generated/ast.ts';
import { marksOf } from './marked.ts';
import { runs, some } from '../../support/full.ts';

const { parser: { LangiumParser: parser, Lexer: lexer } } = createFront();
const SOUND = 'room r {\n  height 8\'\n}\n';
const soundIsSound = () => {
    const { value, lexerErrors, parserErrors } = parser.parse<ast.File>(SOUND);
    return lexerErrors.length + parserErrors.length === 0 && value.items.length === 1;
};

describe('a file that nobody should have opened', () => {
    test.each<[string, string, RegExp]>([
        ['parentheses without end', `a ${'('.repeat(9000)}`, /nested too deep/],
        ['parentheses closed', `room r {\n a ${'('.repeat(4000)}1${')'.repeat(4000)}\n b 2\n}\n`, /nested too deep/],
        ['blocks closed', `room r {\n${'a {\n'.repeat(5000)}${'}\n'.repeat(5000)}}\n`, /nested too deep/],
        ['signs', `room r {\n a ${'- '.repeat(4500)}1\n}\n`, /signs before one value/],
        ['operators', `room r {\n a 1${' + 1'.repeat(2400)}\n}\n`, /value is too long/],
        ['points', `room r {\n a b${'.c'.repeat(4500)}\n}\n`, /value is too long/],
        ['rates', `room r {\n a b${' per c'.repeat(1600)}\n}\n`, /value is too long/],
        ['calls in calls', `room r {\n a ${'f(x1: '.repeat(1400)}1${')'.repeat(1400)}\n}\n`, /nested too deep/],
        ['nothing but zeros', '\0'.repeat(100_000), /not a text file/],
        ['a picture', Array.from({ length: 50_000 }, (_, i) => String.fromCharCode((i * 7919) % 256)).join(''), /not a text file/],
        ['what is left of a broken decoding', '\ufffd'.repeat(1000), /not a text file/],
        ['halves of characters', '\ud800\udc00\ud800 '.repeat(100), /not a text file/],
        ['two bytes a character', [...'edition 1 room r { height 8 }'].join('\0'), /UTF-16/],
        ['five megabytes', 'height 8\'\n'.repeat(520_000), /too long to be a job: 5 200 000 characters/],
        ['a hundred thousand blocks', '{}\n'.repeat(50_000), /too long to be a job: 150 000 words and signs, and 60 000/],
        ['a text that goes on with semicolons', `room r { title "${';'.repeat(9000)}a }\n`, /not closed/],
        ['a text that goes on with spaces', `room r { title "${' '.repeat(9000)}a }\n`, /not closed/],
        ['a text that goes on with braces', `room r { title "${'({'.repeat(4500)}a }\n`, /not closed/],
        ['a line that does not end', `room r {\n title "${'a'.repeat(10_000)}"\n}\n`, /line is too long to be of a job: 10 009 characters, and 10 000/],
        ['prose', 'The quick brown fox jumps, over: 13 dogs = fun!\n'.repeat(3000), /more than 500 mistakes/],
    ])('%s', (_, text, message) => {
        const marks = marksOf(parser.parse(text));
        expect(marks).toHaveLength(1);
        expect(marks[0]!.message).toMatch(message);
        expect(soundIsSound()).toBe(true);
    });
    test('blocks that are never closed', () => {
        const marks = marksOf(parser.parse(`room r {\n${Array.from({ length: 300 }, (_, i) => `${' '.repeat(i + 1)}a {\n`).join('')}`));
        expect(marks.length).toBeLessThanOrEqual(100);
        expect(marks.some(({ message }) => /nested too deep/.test(message))).toBe(true);
    });
    test('a single zero costs its line', () => {
        const { value, ...result } = parser.parse<ast.File>('room r {\n  height \0 8\'\n  covering gypsum\n}\n');
        expect(marksOf({ value, ...result }).map(({ line, message }) => [line, message])).toEqual([[1, 'There is an invisible character here (U+0000): delete it.']]);
        expect((value.items[0] as ast.Room).body.members).toHaveLength(2);
    });
    test('more than a hundred mistakes are not all shown', () => {
        const marks = marksOf(parser.parse(`room r {\n${'  a = 5\n'.repeat(300)}}\n`));
        expect(marks).toHaveLength(100);
        expect(marks.at(-1)!.message).toMatch(/And 200 more mistakes below/);
    });
    test('quotes, comments and spaces by the hundred thousand', () => {
        for (const text of some(['"\\'.repeat(50_000), '"'.repeat(100_000), '/*'.repeat(50_000), '/*\n'.repeat(30_000), ' '.repeat(400_000), '1 '.repeat(50_000), '1'.repeat(400_000), '½'.repeat(100_000), '5 '.repeat(1000) + ' '.repeat(300_000) + '"', ','.repeat(100_000), '@ '.repeat(50_000),
            `${'{'.repeat(100_000)}\n${' a\n'.repeat(50_000)}`, `room r\n${' a +\n'.repeat(60_000)}`, `profile p(\n${' a: B,\n'.repeat(30_000)}`, `a\n${' b,\n'.repeat(60_000)}}`], 3)) {
            expect(() => parser.parse(text)).not.toThrow();
        }
        expect(soundIsSound()).toBe(true);
    });
    test('fifty thousand sound words and signs', () => {
        const { value, ...result } = parser.parse<ast.File>('stock a { size 1x5; price 2.70 USD per ft }\n'.repeat(4500));
        expect(marksOf({ value, ...result })).toEqual([]);
        expect(value.items).toHaveLength(4500);
    });
});

describe('a parser that throws is replaced', () => {
    class Throwing extends DefaultValueConverter {
        override convert(input: string, cstNode: CstNode): ReturnType<DefaultValueConverter['convert']> {
            if (input === 'bang') throw new RangeError('Maximum call stack size exceeded');
            return super.convert(input, cstNode);
        }
    }
    const shared = inject(createDefaultSharedCoreModule(EmptyFileSystem), CofferGeneratedSharedModule);
    const services: LangiumCoreServices = inject(
        createDefaultCoreModule({ shared }), CofferGeneratedModule, frontModule, { parser: { ValueConverter: () => new Throwing() } },
    );
    test('and the next file parses', () => {
        const broken = services.parser.LangiumParser.parse<ast.File>('room r {\n  a bang\n}\n');
        expect(broken.value.items).toEqual([]);
        expect(broken.value.$cstNode).toBeDefined();
        expect(marksOf(broken)).toEqual([{ line: 0, from: 0, to: 1, message: 'This file cannot be read, and that is a fault of the program, not of the file: Maximum call stack size exceeded' }]);
        const next = services.parser.LangiumParser.parse<ast.File>(SOUND);
        expect([next.value.items.length, next.parserErrors.length + next.lexerErrors.length]).toEqual([1, 0]);
    });
});

describe('whatever is typed', () => {
    const sound = readdirSync(new URL('../recovery/tuned/', import.meta.url)).map(name => readFileSync(new URL(`../recovery/tuned/${name}`, import.meta.url), 'utf8'));
    const holds = (text: string) => {
        const result = parser.parse<ast.File>(text);
        const lines = text.split(/\r\n?|\n/);
        for (const { line, from, to, message } of marksOf(result)) {
            expect(line).toBeLessThan(lines.length);
            expect(from).toBeGreaterThanOrEqual(0);
            expect(to).toBeGreaterThan(from);
            expect(from).toBeLessThanOrEqual(lines[line]!.length);
            expect(message).toMatch(/^\P{C}+$/u);
        }
        expect(result.value.$type).toBe('File');
        expect(() => lexer.tokenize(text, { mode: 'partial' })).not.toThrow();
    };
    test('any text at all', () => {
        fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), holds), { seed: 1, numRuns: runs(300) });
    });
    test('words and signs in any order', () => {
        const word = fc.constantFrom(...'room stock profile let require wall fixture a b-c { } ( ) , . : = + - * / x to per ± 5 5" 5\' 1x6 #8 3% "t" “u” " \' /* */ // ; ? like from use job edition é @'.split(' '), '\n', '\n  ', '\n    ', ' ');
        fc.assert(fc.property(fc.array(word, { maxLength: 60 }).map(words => words.join(' ')), holds), { seed: 2, numRuns: runs(1500) });
    });
    test('a sound file with characters lost, doubled and put in', () => {
        const edit = fc.record({ at: fc.nat(), take: fc.nat({ max: 5 }), put: fc.constantFrom('', '{', '}', '(', '"', '\n', ',', ' ', '/*', 'x', '½', '\u00a0') });
        fc.assert(fc.property(fc.constantFrom(...sound), fc.array(edit, { minLength: 1, maxLength: 4 }), (text, edits) => {
            holds(edits.reduce((now, { at, take, put }) => now.slice(0, at % (now.length + 1)) + put + now.slice(at % (now.length + 1) + take), text));
        }), { seed: 3, numRuns: runs(400) });
    });
});
