import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { typeFindings } from '../../../src/language/types/findings.ts';
import { builtinDocument } from '../../../src/language/workspace/builtin.ts';
import { mismatches, readMarked } from '../../support/marked.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const folder = new URL('findings', import.meta.url).pathname;

describe('wrong kinds of things, and things missing, at the words that cause them', () => {
    test.each(readdirSync(folder).sort())('%s', async name => {
        const files = readMarked(readFileSync(join(folder, name), 'utf8'));
        const workspace = await TestWorkspace.open(Object.fromEntries(files.map(file => [file.path, file.text])));
        expect(mismatches(files.map(file => ({ file, findings: typeFindings(workspace.document(file.path)) })))).toEqual([]);
    });

    test('nothing in the built-in library', async () => {
        const workspace = await TestWorkspace.open({});
        expect(typeFindings(builtinDocument(workspace.shared))).toEqual([]);
    });
});
