import { expect, test } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import type { FileContent } from '../../src/job/file.ts';
import { besideRules } from '../../src/rules/run.ts';
import { nowhere } from '../cutting/samples.ts';

const on = (line: number, rule: string, related: readonly number[] = []): Finding =>
    ({ rule, severity: 'warning', at: at(line), message: '', related: related.map(one => ({ at: at(one), message: '' })), fixes: [] });
const at = (line: number) => ({ ...nowhere, range: { start: { line, character: 0 }, end: { line, character: 5 } } });

test('what a rule says better is left out of what the language found: at the same line, or at the same words', () => {
    const left = (found: readonly Finding[], ofRules: readonly Finding[]): string[] =>
        besideRules({ findings: found, allowances: [] } as unknown as FileContent, ofRules).map(({ rule, at: { range } }) => `${rule} ${range.start.line}`);
    const language = [on(1, 'not-computed-yet'), on(2, 'likely-slip'), on(2, 'no-effect'), on(3, 'likely-slip'), on(1, 'no-effect')];
    expect(left(language, [])).toEqual(['not-computed-yet 1', 'likely-slip 2', 'no-effect 2', 'likely-slip 3', 'no-effect 1']);
    expect(left(language, [on(1, 'not-supported-layout')])).toEqual(['likely-slip 2', 'no-effect 2', 'likely-slip 3', 'no-effect 1']);
    expect(left(language, [on(2, 'not-supported-layout')])).toContain('not-computed-yet 1');
    expect(left(language, [on(2, 'part-vanishes')])).toEqual(['not-computed-yet 1', 'no-effect 2', 'likely-slip 3', 'no-effect 1']);
    expect(left(language, [on(9, 'part-vanishes', [3])])).toEqual(['not-computed-yet 1', 'likely-slip 2', 'no-effect 2', 'no-effect 1']);
    expect(left(language, [on(2, 'headroom')])).toContain('likely-slip 2');
});
