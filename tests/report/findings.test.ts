import { Ajv } from 'ajv';
import addFormats from 'ajv-formats';
import fc from 'fast-check';
import { readFileSync } from 'node:fs';
import type { Log } from 'sarif';
import { describe, expect, test } from 'vitest';
import { codeFrame, linesOf } from '../../src/report/findings/code-frame.ts';
import { githubFindings } from '../../src/report/findings/github.ts';
import { conciseFindings, humanFindings, summary } from '../../src/report/findings/human.ts';
import { jsonFindings } from '../../src/report/findings/json.ts';
import { sarifFindings } from '../../src/report/findings/sarif.ts';
import { noPaint, type Paint } from '../../src/report/look.ts';
import { files, finding, findings, strictSchema, text } from './samples.ts';
import { runs } from '../support/full.ts';

describe('the line a finding is about', () => {
    const frame = (line: string, from: number, to: number): string[] =>
        codeFrame([line], { start: { line: 0, character: from }, end: { line: 0, character: to } });

    test('marks stand under the words', () => {
        expect(frame('  stock pine', 8, 12)).toEqual(['    1 |   stock pine', '      |         ^^^^']);
    });

    test('under a tab, a wide letter, a combining mark and two halves of a letter', () => {
        expect(frame('\tstock pine', 7, 11)).toEqual(['    1 |     stock pine', '      |           ^^^^']);
        expect(frame('"木" pine', 4, 8)[1]).toBe('      |      ^^^^');
        expect(frame('e\u0301 pine', 3, 7)[1]).toBe('      |   ^^^^');
        expect(frame('"😀" pine', 5, 9)[1]).toBe('      |      ^^^^');
    });

    test('a byte order mark and what would steer a terminal are not shown', () => {
        expect(frame('\ufeffroom den', 1, 5)).toEqual(['    1 | room den', '      | ^^^^']);
        expect(frame('a\u001b[31m b', 7, 8)).toEqual(['    1 | a\ufffd[31m b', '      |        ^']);
        expect(frame('a\u202eb', 2, 3)).toEqual(['    1 | ab', '      |  ^']);
    });

    test('words that are missing, at the end of the line and of the text', () => {
        expect(frame('stock', 5, 5)).toEqual(['    1 | stock', '      |      ^']);
        expect(frame('', 0, 0)).toEqual(['    1 |', '      | ^']);
        expect(codeFrame(['a'], { start: { line: 3, character: 0 }, end: { line: 3, character: 1 } })).toEqual([]);
    });

    test('words over several lines are marked to the end of the first', () => {
        expect(codeFrame(['room den {', '}'], { start: { line: 0, character: 5 }, end: { line: 1, character: 1 } })[1]).toBe('      |      ^^^^^');
    });

    test('a very long line is cut around the words', () => {
        const [code, marks] = frame(`${'x'.repeat(5000)}here${'y'.repeat(5000)}`, 5000, 5004);
        expect(code!.length).toBeLessThan(140);
        expect(code!.slice(marks!.indexOf('^'), marks!.lastIndexOf('^') + 1)).toBe('here');
    });

    test('any range in any line has marks, and never throws', () => {
        fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 200 }), fc.nat(210), fc.nat(210), (line, a, b) => {
            const [code, marks] = codeFrame(linesOf(line), { start: { line: 0, character: Math.min(a, b) }, end: { line: 0, character: Math.max(a, b) } });
            expect(marks).toContain('^');
            expect(/[\u0000-\u001f\u007f-\u009f\u202e]/.test(code!)).toBe(false);
        }), { seed: 4, numRuns: runs(1000) });
    });
});

describe('findings for people', () => {
    test('place, words, line, the other half, the fix', () => {
        expect(humanFindings(findings, files, noPaint)).toMatchInlineSnapshot(`
          "den.coffer:4:5  hint  end-coffers-differ  room den
            The outer coffers are 2 3/4" wider.
              4 |     beams  small-box
                |     ^^^^^

          den.coffer:8:17  error  bottom-wont-fit
            The bottom is 1/16" too wide for the channel.
              8 |     bottom { stock pine-1x6 }
                |                    ^^^^^^^^
            see den.coffer:4:12: the beam is chosen here
              4 |     beams  small-box
                |            ---------
            fix: Rip the bottom to 5 7/16"
          "
        `);
    });

    test('what the text allows is counted, not shown', () => {
        expect(summary(findings, 3)).toBe('1 error, 1 hint in 3 files; 1 allowed in the text');
        expect(summary([], 1)).toBe('Nothing found in 1 file');
    });

    test('color changes no words', () => {
        const marked = (name: string) => (line: string): string => `<${name}>${line}</${name}>`;
        const paint: Paint = { error: marked('e'), warning: marked('w'), hint: marked('h'), strong: marked('s'), faint: marked('f') };
        const painted = humanFindings(findings, files, paint);
        expect(painted).toContain('<e>error</e>');
        expect(painted.replace(/<\/?[ewhsf]>/g, '').split('\n').map(l => l.trimEnd())).toEqual(humanFindings(findings, files, noPaint).split('\n').map(l => l.trimEnd()));
    });

    test('a file whose text is gone still has its finding', () => {
        const gone = humanFindings([finding({ at: { ...finding().at, uri: 'file:///house/gone.coffer' } })], files, noPaint);
        expect(gone).toBe('gone.coffer:8:17  error  bottom-wont-fit\n  The bottom is 1/16" too wide for the channel.\n');
    });

    test('one line each, in the concise form, whatever the message holds', () => {
        const lines = conciseFindings([...findings, finding({ message: 'first\r\nsecond\u001b[2J' })], files).split('\n');
        expect(lines).toEqual([
            'den.coffer:4:5: hint: The outer coffers are 2 3/4" wider. [end-coffers-differ]',
            'den.coffer:8:17: error: The bottom is 1/16" too wide for the channel. [bottom-wont-fit]',
            'den.coffer:8:17: error: first second[2J [bottom-wont-fit]',
            '',
        ]);
    });
});

describe('findings for programs', () => {
    test('JSON as its published schema says', () => {
        const valid = strictSchema('findings');
        const printed = JSON.parse(jsonFindings(findings, ['file:///house/den.coffer'], files)) as { summary: object; findings: { range: object }[] };
        expect(valid(printed), JSON.stringify(valid.errors)).toBe(true);
        expect(printed.summary).toEqual({ errors: 1, warnings: 0, hints: 1, allowed: 1 });
        expect(printed.findings[1]!.range).toEqual({ start: { line: 8, column: 17 }, end: { line: 8, column: 25 } });
        expect(valid({ ...printed, version: 2 })).toBe(false);
        expect(valid({ ...printed, surprise: 1 })).toBe(false);
    });

    test('workflow commands are escaped: no message can end one and begin another', () => {
        const lines = githubFindings([...findings, finding({ severity: 'warning', rule: 'a,b:c', message: '100 %\n::error::forged' })], files).split('\n');
        expect(lines).toEqual([
            '::notice file=den.coffer,line=4,endLine=4,col=5,endColumn=10,title=end-coffers-differ::The outer coffers are 2 3/4" wider.',
            '::error file=den.coffer,line=8,endLine=8,col=17,endColumn=25,title=bottom-wont-fit::The bottom is 1/16" too wide for the channel.%0AFix: Rip the bottom to 5 7/16"',
            '::warning file=den.coffer,line=8,endLine=8,col=17,endColumn=25,title=a%2Cb%3Ac::100 %25%0A::error::forged',
            '',
        ]);
    });
});

describe('SARIF', () => {
    // OASIS, SARIF 2.1.0 plus errata 01, sarif-schema-2.1.0.json, unchanged. It is draft 4, whose `id` newer readers call `$id`.
    const { $schema: _, id: __, ...schema } = JSON.parse(readFileSync(new URL('../data/sarif/sarif-schema-2.1.0.json', import.meta.url), 'utf8')) as Record<string, unknown>;
    const ajv = new Ajv({ strict: false, allErrors: true });
    addFormats.default(ajv);
    const valid = ajv.compile(schema);
    const rules = [{ name: 'bottom-wont-fit', title: 'The bottom will not go in', severity: 'error' as const, explanation: '# Why' }];
    const sarif = (list = findings): Log => JSON.parse(sarifFindings(list, files, { version: '0.1.0', rules })) as Log;

    test('is valid by its official schema, with and without findings', () => {
        expect(valid(sarif()), JSON.stringify(valid.errors)).toBe(true);
        expect(valid(sarif([])), JSON.stringify(valid.errors)).toBe(true);
        expect(valid({ ...sarif(), version: '2.0.0' })).toBe(false);
    });

    test('says rule, level, place, the other half, the fix and what is suppressed', () => {
        const run = sarif().runs[0]!;
        const [hint, error, allowed] = run.results!;
        expect(run.tool.driver.rules!.map(r => r.id)).toEqual(['bottom-gap-shows', 'bottom-wont-fit', 'end-coffers-differ']);
        expect(run.tool.driver.rules![1]).toMatchObject({ shortDescription: { text: 'The bottom will not go in' }, help: { text: '# Why' } });
        expect([hint, error, allowed].map(r => run.tool.driver.rules![r!.ruleIndex!]!.id)).toEqual([hint, error, allowed].map(r => r!.ruleId));
        expect([hint!.level, error!.level, allowed!.level]).toEqual(['note', 'error', 'warning']);
        expect(error!.locations![0]!.physicalLocation).toEqual({ artifactLocation: { uri: 'den.coffer', uriBaseId: '%SRCROOT%' }, region: { startLine: 8, startColumn: 17, endLine: 8, endColumn: 25 } });
        expect(error!.relatedLocations![0]!.message!.text).toBe('the beam is chosen here');
        expect(error!.fixes![0]!.artifactChanges[0]!.replacements[0]!.insertedContent!.text).toBe('pine-1x6\n rip 5 7/16"');
        expect(allowed!.suppressions).toEqual([{ kind: 'inSource', justification: 'painted shut' }]);
    });

    test('paths are addresses: blanks and percent signs escaped, what lies outside by its full address', () => {
        const at = (uri: string) => ({ ...finding().at, uri });
        const run = sarif([finding({ at: at('file:///house/old rooms/100 %.coffer') }), finding({ at: at('file:///other/yard.coffer') })]).runs[0]!;
        expect(run.results!.map(r => r.locations![0]!.physicalLocation!.artifactLocation)).toEqual([
            { uri: 'old%20rooms/100%20%25.coffer', uriBaseId: '%SRCROOT%' }, { uri: 'file:///other/yard.coffer' },
        ]);
    });

    test('any words give a valid log', () => {
        fc.assert(fc.property(fc.string({ unit: 'binary' }), fc.string({ minLength: 1 }), (message, title) => {
            const log = sarif([finding({ message, fixes: [{ title, edits: [] }], related: [{ at: finding().at, message }] })]);
            expect(valid(log), JSON.stringify(valid.errors)).toBe(true);
        }), { seed: 21, numRuns: runs(200) });
    });
});

test('the sample text is what the places were taken from', () => {
    expect(text.split('\n')[7]).toBe('\tbottom { stock pine-1x6 }');
});
