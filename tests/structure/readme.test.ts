import { describe, expect, test } from 'vitest';
import type { Finding } from '../../src/findings/finding.ts';
import { readFile } from '../../src/language/read-file.ts';
import { inspect } from '../../src/pipeline/inspect.ts';
import { TestWorkspace } from '../support/workspace.ts';
import { read } from './files.ts';

const readme = read('README.md');
const tour = [...readme.matchAll(/^```coffer\n(.*?)^```$/gms)].map(([, text]) => text).join('\n');

async function findingsOf(text: string): Promise<readonly Finding[]> {
    const workspace = await TestWorkspace.open({ 'tour.coffer': text });
    return inspect(readFile(workspace.document('tour.coffer'))).findings;
}

describe('the tour in the README', () => {
    test('its blocks, one after the other in one file, are a job without a mistake', async () => {
        expect(tour).toContain('room dining');
        expect((await findingsOf(tour)).filter(({ severity }) => severity !== 'hint').map(({ message }) => message)).toEqual([]);
    });

    test('the mistake it makes is told in the words that it shows', async () => {
        const wrong = tour.replace('height 5"', 'height 5 1/2"');
        expect(wrong).not.toBe(tour);
        const shown = readme.replaceAll(/\s+/g, ' ');
        const errors = (await findingsOf(wrong)).filter(({ severity }) => severity === 'error');
        expect(errors.map(({ rule }) => rule)).toEqual(['spacer-hits-cleat']);
        for (const { message, fixes } of errors) {
            expect(shown).toContain(message);
            expect(fixes.map(({ title }) => shown.includes(`fix: ${title}`))).toEqual([true]);
        }
    });
});
