import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readFile } from '../../../src/language/read-file.ts';
import { mismatches, readMarked } from '../../support/marked.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const folder = new URL('findings', import.meta.url).pathname;

describe('all that the language finds in whole files, at the words that cause it', () => {
    test.each(readdirSync(folder).sort())('%s', async name => {
        const files = readMarked(readFileSync(join(folder, name), 'utf8'));
        const workspace = await TestWorkspace.open(Object.fromEntries(files.map(file => [file.path, file.text])));
        expect(mismatches(files.map(file => ({ file, findings: readFile(workspace.document(file.path)).findings })))).toEqual([]);
    });
});
