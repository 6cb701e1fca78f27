import { readdirSync, readFileSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { createFront } from '../../../src/language/front.ts';
import { painter, type Painted } from './tokenize.ts';

const here = new URL('.', import.meta.url);
let paint: (text: string) => Painted[][];
beforeAll(async () => { paint = await painter(); });

/** Below a line stand its marks: `^^^^ scope` is painted so in all of its columns, `- scope` in none from there on. */
interface Mark { readonly from: number; readonly to: number; readonly scope: string; readonly absent: boolean }

describe('marked lines', () => {
    const lines = readFileSync(new URL('marked.txt', here), 'utf8').split('\n');
    const cases: { line: string, marks: Mark[] }[] = [];
    for (const line of lines) {
        const mark = /^( *)(\^+|-) ([a-z][\w.-]*)$/.exec(line);
        const from = mark ? mark[1]!.length : 0;
        if (mark) cases[cases.length - 1]!.marks.push({ from, to: mark[2] === '-' ? Infinity : from + mark[2]!.length, scope: mark[3]!, absent: mark[2] === '-' });
        else if (line.trim() !== '') cases.push({ line, marks: [] });
    }
    test('every line has marks', () => expect(cases.filter(({ marks }) => marks.length === 0)).toEqual([]));
    test.each(cases)('$line', ({ line, marks }) => {
        const [painted] = paint(line);
        for (const { from, to, scope, absent } of marks) {
            const under = painted!.filter(({ start, end }) => start < to && end > from);
            const has = ({ scopes }: Painted) => scopes.some(one => one === `${scope}.coffer` || one.startsWith(`${scope}.`));
            if (absent) expect(under.filter(has), `${scope} nowhere from ${from}`).toEqual([]);
            else {
                expect(under.map(({ text }) => text).join(''), `${scope} from ${from}: where it begins and ends`).toBe(line.slice(from, to));
                expect(under.filter(one => !has(one)), `${scope} from ${from}`).toEqual([]);
            }
        }
    });
});

/** The colors must not contradict the lexer: that is what the inch mark would make them do. */
describe('the colors agree with the lexer', () => {
    const { parser: { Lexer: lexer } } = createFront();
    const scopeOf: Readonly<Record<string, string>> = {
        LENGTH: 'constant.numeric.length', NOMINAL: 'constant.numeric.size', MONEY: 'constant.numeric.money', TIME: 'constant.numeric.quantity', ANGLE: 'constant.numeric.quantity',
        PERCENT: 'constant.numeric.quantity', GAUGE: 'constant.numeric.quantity', HASH: 'constant.numeric.number-size', DATE: 'constant.numeric.date', UNMARKED: 'constant.numeric.unmarked',
        NUMBER: 'constant.numeric', STRING: 'string.quoted.double', SL_COMMENT: 'comment.line', ML_COMMENT: 'comment.block',
    };
    const files = [
        ...['tuned', 'held-out'].flatMap(folder => readdirSync(new URL(`../recovery/${folder}/`, here)).map(name => `../recovery/${folder}/${name}`)),
        '../../../src/language/builtin/builtin.coffer', '../format/cases/pasted.coffer',
    ];
    test.each(files)('%s', file => {
        const text = readFileSync(new URL(file, here), 'utf8');
        const painted = paint(text);
        const { tokens, hidden } = lexer.tokenize(text);
        for (const token of [...tokens, ...hidden]) {
            const scope = scopeOf[token.tokenType.name];
            for (let line = token.startLine!; scope && line <= token.endLine!; line++) {
                const from = line === token.startLine ? token.startColumn! - 1 : 0;
                const to = line === token.endLine ? token.endColumn! : Infinity;
                const wrong = painted[line - 1]!.filter(({ start, end, scopes }) => start < to && end > from && !scopes.some(one => one.startsWith(scope)));
                // The number that names a wall or a line is painted as the name it is.
                const names = wrong.filter(({ scopes }) => token.tokenType.name === 'NUMBER' && scopes.some(one => one.startsWith('entity.name.tag')));
                expect(wrong.filter(one => !names.includes(one)), `${token.image} in line ${line}`).toEqual([]);
            }
            if (scope || token.image === '') continue;
            const at = painted[token.startLine! - 1]!.find(({ start, end }) => start <= token.startColumn! - 1 && end > token.startColumn! - 1)!;
            expect(at.scopes.filter(one => /^(?:constant\.numeric|string|comment)/.test(one)), `${token.image} in line ${token.startLine}`).toEqual([]);
        }
    });
});

test('the file is JSON that the editor can read, and so is the language configuration', () => {
    const configuration = JSON.parse(readFileSync(new URL('../../../syntaxes/language-configuration.json', here), 'utf8'));
    const words = (text: string) => text.match(new RegExp(configuration.wordPattern, 'g'));
    expect(words('held-down  5/16" on lower-back  #8 x 2 1/2" shadow-box2(groove: 1x6)')).toEqual(['held-down', '5/16"', 'on', 'lower-back', '#8', 'x', '2', '1/2"', 'shadow-box2', 'groove', '1x6']);
    const increases = new RegExp(configuration.indentationRules.increaseIndentPattern);
    expect(['grid {', 'survey {   // up', 'wall a 5" {', 'job "x" {'].map(line => increases.test(line))).toEqual([true, true, true, true]);
    expect(['trim { stock a }', 'height 8\'', '// {', 'client "a {"'].map(line => increases.test(line))).toEqual([false, false, false, false]);
});
