import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { READING_RULES } from '../../../src/language/findings/rules.ts';
import { applied } from '../../support/applied.ts';
import { mismatches, readMarked } from '../../support/marked.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const folder = new URL('findings', import.meta.url).pathname;

const FIXTURES = readdirSync(folder).sort();

describe('what the language finds, at the words that cause it', () => {
    test.each(FIXTURES)('%s', async name => {
        const files = readMarked(readFileSync(join(folder, name), 'utf8'));
        const workspace = await TestWorkspace.open(Object.fromEntries(files.map(file => [file.path, file.text])));
        expect(mismatches(files.map(file => ({ file, findings: workspace.findings(file.path) })))).toEqual([]);
    });

    test('what is called otherwise here is mended by the fix that comes with it', async () => {
        const files = readMarked(readFileSync(join(folder, 'said-otherwise.coffer'), 'utf8'));
        let texts = Object.fromEntries(files.map(file => [file.path, file.text]));
        const workspace = await TestWorkspace.open(texts);
        const first = () => files.flatMap(file => workspace.findings(file.path)).find(finding => finding.fixes.length > 0);
        let mended = 0;
        for (let finding = first(); finding && mended < 99; finding = first(), mended++) {
            texts = applied(finding.fixes[0]!, texts);
            await workspace.edit(texts);
        }
        expect(mended).toBe(files.flatMap(file => file.expectations).length);
        expect(files.flatMap(file => workspace.findings(file.path))).toEqual([]);
    });

    test('every rule of reading is shown to find something', () => {
        const expected = new Set(FIXTURES.flatMap(name => readMarked(readFileSync(join(folder, name), 'utf8'))).flatMap(file => file.expectations).map(each => each.rule));
        // a fault of the program itself is made to happen in features/words.test.ts
        expect(Object.keys(READING_RULES).filter(rule => !expected.has(rule))).toEqual(['internal-error']);
    });
});
