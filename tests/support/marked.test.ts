import { describe, expect, it } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { mismatches, readMarked } from './marked.ts';

const finding = (line: number, from: number, to: number, rule = 'some-rule', message = 'too wide by 1/8"'): Finding => ({
    rule, severity: 'error', message, related: [], fixes: [],
    at: { uri: 'file:///main.coffer', range: { start: { line, character: from }, end: { line, character: to } } },
});

describe('fixtures with marks', () => {
    it('takes the marks out and keeps where they stood', () => {
        const [file] = readMarked('room den {\n  wall north »8«  // error wrong-type "a length"\n}');
        expect(file!.text).toBe('room den {\n  wall north 8  // error wrong-type "a length"\n}');
        expect(file!.expectations).toEqual([{
            verb: 'error', negated: false, rule: 'wrong-type', parts: ['a length'], rest: 'error wrong-type "a length"', line: 1,
            range: { start: { line: 1, character: 13 }, end: { line: 1, character: 14 } },
        }]);
    });

    it('gives expectations above a line, and several on one line, to its marks in order', () => {
        const [file] = readMarked('// error first-rule\n// warning second-rule\n»a« »b«\n»c« // hint third-rule; no error');
        expect(readMarked('a // error x "one; two"; hint y "\\"; "')[0]!.expectations.map(one => one.parts)).toEqual([['one; two'], ['"; ']]);
        expect(file!.expectations.map(one => [one.verb, one.negated, one.line, one.range!.start.character]))
            .toEqual([['error', false, 2, 0], ['warning', false, 2, 2], ['hint', false, 3, 0], ['error', true, 3, 0]]);
    });

    it('reads several files', () => {
        const files = readMarked('// file a.coffer\nlet a = 1"\n// file deep/b.coffer\nlet »b« = 2" // hint x');
        expect(files.map(file => [file.path, file.expectations.length])).toEqual([['a.coffer', 0], ['deep/b.coffer', 1]]);
        expect(files[1]!.expectations[0]!.line).toBe(0);
    });

    it('knows a comment from two slashes in a text', () => {
        const [file] = readMarked('client "http://error" // error a-rule\nclient "5 // error b-rule"\nevery 5 1/2" // error c-rule');
        expect(file!.expectations.map(one => one.rule)).toEqual(['a-rule', 'c-rule']);
    });

    it('keeps what follows a verb that was asked for', () => {
        const [file] = readMarked('let »a« = 5 1/2"   // value 5 1/2"', { verbs: ['value'] });
        expect(file!.expectations[0]).toMatchObject({ verb: 'value', rest: '5 1/2"' });
    });

    it.each([
        ['an expectation that cannot be read', 'a // error Wrong_Type'],
        ['a message without its quotes', 'a // error wrong-type too wide'],
        ['an unclosed mark', '»a // error x'],
        ['a mark that was never opened', 'a« // error x'],
        ['a mark in a mark', '»a »b« // error x'],
        ['more marks than expectations', '»a« »b« // error x'],
        ['an expectation about nothing', 'a\n// error x\n'],
        ['a file named twice', '// file a.coffer\n// file a.coffer\n'],
    ])('rejects %s', (_, text) => {
        expect(() => readMarked(text)).toThrow();
    });
});

describe('comparing with findings', () => {
    const [file] = readMarked('»abc« // error some-rule "1/8\\""');
    it('is content where every expectation is met', () => {
        expect(mismatches([{ file: file!, findings: [finding(0, 0, 3)] }])).toEqual([]);
    });
    it.each([
        ['another place', [finding(0, 0, 2)]],
        ['another rule', [finding(0, 0, 3, 'other-rule')]],
        ['another message', [finding(0, 0, 3, 'some-rule', 'too wide')]],
        ['another severity', [{ ...finding(0, 0, 3), severity: 'hint' as const }]],
    ])('lists the missing and the unexpected one: %s', (_, findings) => {
        expect(mismatches([{ file: file!, findings }])).toHaveLength(2);
    });
    it('wants a finding of its own for every expectation, and one expectation for every finding', () => {
        expect(mismatches([{ file: file!, findings: [finding(0, 0, 3), finding(0, 0, 3)] }])).toHaveLength(1);
        expect(mismatches([{ file: file!, findings: [] }])).toHaveLength(1);
    });
    it('reports what must not be there', () => {
        const [quiet] = readMarked('abc // no error some-rule');
        expect(mismatches([{ file: quiet!, findings: [finding(0, 0, 3)] }])).toHaveLength(1);
        expect(mismatches([{ file: quiet!, findings: [] }])).toEqual([]);
    });
});
