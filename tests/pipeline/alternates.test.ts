import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { mismatches, readMarked } from '../support/marked.ts';
import { TestWorkspace } from '../support/workspace.ts';

test('alternates are checked like the job, and show what is wrong where they say it', async () => {
    const files = readMarked(readFileSync(new URL('alternates.coffer', import.meta.url), 'utf8'));
    const workspace = await TestWorkspace.open(Object.fromEntries(files.map(file => [file.path, file.text])));
    expect(mismatches(files.map(file => ({ file, findings: inspect(readFile(workspace.document(file.path))).findings })))).toEqual([]);
});
