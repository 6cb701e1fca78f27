import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { inspectClosely } from '../../src/pipeline/inspect-closely.ts';
import { mismatches, readMarked } from '../support/marked.ts';
import { some } from '../support/full.ts';
import { TestWorkspace } from '../support/workspace.ts';

/**
 * Jobs of a careful carpenter, and rooms of other kinds (an L, half beams, capped and lapped bottoms, crowns, out of square): whatever is told of
 * them has to be worth acting on, so each finding is marked in them.
 */
const jobs = ['real-jobs', 'real-rooms'].flatMap(folder => readdirSync(new URL(`${folder}/`, import.meta.url)).filter(name => name.endsWith('.coffer')).sort().map(name => `${folder}/${name}`));

it('there are sixteen of them', () => {
    expect(jobs).toHaveLength(16);
});

// every third everyday
describe.each(some(jobs, 3))('%s', name => {
    it('is told what is marked in it, and nothing else', async () => {
        const files = readMarked(readFileSync(new URL(name, import.meta.url), 'utf8'));
        const workspace = await TestWorkspace.open(Object.fromEntries(files.map(({ path, text }) => [path, text])));
        const found = files.map(file => {
            const content = readFile(workspace.document(file.path));
            return { file, findings: [...inspect(content).findings, ...inspectClosely(content)] };
        });
        expect(mismatches(found)).toEqual([]);
    });
});
