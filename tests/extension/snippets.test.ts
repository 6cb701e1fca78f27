import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { TestWorkspace } from '../support/workspace.ts';

/** What the extension puts into somebody's file has to be right: each is run through the whole inspection. */
interface Snippet { readonly prefix: string; readonly body: readonly string[] }
const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const snippets = Object.values(JSON.parse(read('syntaxes/coffer.code-snippets.json')) as Record<string, Snippet>);

/** The text of a snippet whose user accepts what it suggests: `${1:5}` is 5, `${1|a,b|}` is a. */
function accepted(prefix: string): string {
    const { body } = snippets.find(snippet => snippet.prefix === prefix)!;
    return body.join('\n').replaceAll(/\$\{\d+:([^}]*)\}/g, '$1').replaceAll(/\$\{\d+\|([^,]*),[^|]*\|\}/g, '$1').replaceAll('$0', '');
}

async function problems(text: string): Promise<string[]> {
    const workspace = await TestWorkspace.open({ 'job.coffer': text });
    return inspect(readFile(workspace.document('job.coffer'))).findings.filter(({ severity, allowed }) => severity !== 'hint' && !allowed).map(({ rule, message }) => `${rule}: ${message}`);
}

const boards = `${accepted('stock')}
stock poplar-1x8 { size 1x8; lengths 12', 16' }
stock strip-1x2 { size 1x2; lengths 8', 16' }
`;

test('the snippets, as they are suggested, make a job without a mistake', async () => {
    expect(await problems(`edition 1\n${accepted('job')}${boards}${accepted('profile')}${accepted('room')}`)).toEqual([]);
});

test('so does the grid that is put into a room', async () => {
    const room = `room study "Study" {\n  wall north 11' 6"\n  wall east 10'\n${accepted('grid')}}\n`;
    expect(await problems(`edition 1\n${boards}${accepted('profile')}${room.replace('poplar-1x6\n    below', 'poplar-1x8\n    below')}`)).toEqual([]);
});

test('the comment that lets a finding stand is one', async () => {
    const wide = `edition 1\n${boards}${accepted('profile')}`.replace('height  5"', 'height  6 1/2"');
    expect(await problems(wide)).toHaveLength(1);
    const allowed = accepted('allow').replace('rule:', 'spacer-hits-cleat:').trim();
    expect(await problems(wide.replace('height  6', `${allowed}\n    height  6`))).toEqual([]);
});

test('no snippet is left out here', () => {
    expect(snippets.map(({ prefix }) => prefix).sort()).toEqual(['allow', 'grid', 'job', 'profile', 'room', 'stock']);
});

test('the small job that a new file begins with has no mistake, and makes the one that its comment promises', async () => {
    const job = read('src/extension/first-job.coffer');
    expect(await problems(job)).toEqual([]);
    expect((await problems(job.replace('height  5"', 'height  6 1/2"'))).map(problem => problem.split(':')[0])).toEqual(['spacer-hits-cleat']);
});
