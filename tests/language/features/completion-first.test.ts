import { expect, test } from 'vitest';
import type { CompletionItem } from 'vscode-languageserver-types';
import { createServerServices } from '../../../src/server/services.ts';
import { JOB } from '../../standing/said-job.ts';
import { FULL } from '../../support/full.ts';
import { TestWorkspace } from '../../support/workspace.ts';
import { askedIn, completionAt } from './offered.ts';

const PATH = 'job.coffer';
const workspace = await TestWorkspace.serve({ [PATH]: JOB }, createServerServices);
workspace.shared.workspace.DocumentBuilder.updateBuildOptions = { validation: false };

/** What an editor lists at the end of a text that was cut off there: what begins with the letters that stand there, as it is sorted. */
async function listed(offset: number, letters: string): Promise<readonly string[]> {
    const lineEnd = JOB.indexOf('\n', offset);
    await workspace.edit({ [PATH]: JOB.slice(0, offset) + letters + JOB.slice(lineEnd) });
    const begins = ({ label, filterText = label }: CompletionItem): boolean => filterText.toLowerCase().startsWith(letters.toLowerCase());
    const items = (await completionAt(workspace, PATH, offset + letters.length)).filter(begins);
    return [...items].sort((a, b) => ((a.sortText ?? a.label) < (b.sortText ?? b.label) ? -1 : 1)).map(({ label }) => label);
}

// of 402 words, all with FULL: 390 within the first three by their first letter (363 of them first); 315 before a letter is typed. The others are invented
// names that stand nowhere else, and names of pieces
test('of a job that says everything each word is within the first three by its first letter, but invented names', { timeout: 300_000 }, async () => {
    const asked = askedIn(workspace, PATH).filter(({ word, line }, i) => word.length > 1 && !JOB.split('\n')[line - 1]!.includes('{') && (FULL || i % 5 === 0)), missed: string[] = [];
    for (const { word, offset } of asked) {
        const place = (await listed(offset, word[0]!)).slice(0, 3).findIndex(label => label === word || label.startsWith(`${word} `));
        if (place < 0) missed.push(word);
    }
    expect(asked.length).toBeGreaterThan(FULL ? 200 : 40);
    expect(missed.length / asked.length, missed.join(' ')).toBeLessThan(0.05);
});

test.each([
    ['corner       4 min per ', ['joint']], ['cutting      1 min per ', ['piece']], ['crew         2 rate 64 USD per ', ['min', 'h', 'day']],
])('behind "%s" the units stand first that it goes by', async (before, units) => {
    const at = JOB.indexOf('\n', JOB.indexOf('\nlabor {') + 1) + 1;
    await workspace.edit({ [PATH]: `${JOB.slice(0, at)}  ${before}\n${JOB.slice(at)}` });
    const items = [...await completionAt(workspace, PATH, at + 2 + before.length)].sort((a, b) => (a.sortText! < b.sortText! ? -1 : 1));
    expect(items.map(({ label }) => label).slice(0, units.length).sort()).toEqual([...units].sort());
});
