import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { mismatches, readMarked } from '../support/marked.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { toldOf } from './told.ts';

/**
 * Figures of rooms that are just right, beside those that are a hair off: what is told of rules' limits, and of each branch of their words, is
 * marked in the texts, with the sums above them. (Limits of a section, to the tick: thresholds.)
 */
const folder = new URL('limits/', import.meta.url);

it.each(readdirSync(folder))('%s is told what is marked in it, and nothing else', async name => {
    const files = readMarked(readFileSync(new URL(name, folder), 'utf8'));
    const workspace = await TestWorkspace.open(Object.fromEntries(files.map(({ path, text }) => [path, text])));
    const found = files.map(file => {
        const content = readFile(workspace.document(file.path));
        return { file, findings: [...workspace.findings(file.path), ...inspect(content).findings, ...inspectClosely(content)] };
    });
    expect(mismatches(found)).toEqual([]);
    expect(found.flatMap(({ findings }) => findings).flatMap(toldOf).join('\n')).toMatchSnapshot();
});
