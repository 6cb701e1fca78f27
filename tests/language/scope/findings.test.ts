import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { READING_RULES } from '../../../src/language/findings/rules.ts';
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

    test('every rule of reading is shown to find something', () => {
        const expected = new Set(FIXTURES.flatMap(name => readMarked(readFileSync(join(folder, name), 'utf8'))).flatMap(file => file.expectations).map(each => each.rule));
        // a fault of the program itself is made to happen in features/words.test.ts
        expect(Object.keys(READING_RULES).filter(rule => !expected.has(rule))).toEqual(['internal-error']);
    });
});
