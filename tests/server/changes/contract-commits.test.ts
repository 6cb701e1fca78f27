import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import type { Diagnostic } from 'vscode-languageserver';
import { HISTORY_CHANGED, LOOKING, NAMED_COMMITS, type LookingParams, type NamedCommitsParams, type NamedCommitsResult } from '../../../src/server/messages.ts';
import { signedHouse } from '../../cli/house.ts';
import { Client, hasRule, shipped } from '../client.ts';

let client: Client;
afterEach(() => client.dispose());

const commitRules = (findings: readonly Diagnostic[]): unknown[] => findings.map(({ code }) => code).filter(code => /commit|signed/.test(String(code)));

test('the editor is asked what the commits of a contract are, again when its history has changed; what does not hold any more goes', async () => {
    client = new Client(shipped);
    let answer: NamedCommitsResult = null;
    const asked = new Promise<NamedCommitsParams>(resolve => {
        client.answer(NAMED_COMMITS, (params: NamedCommitsParams) => { resolve(params); return answer; });
    });
    for (const [name, text] of Object.entries(signedHouse)) writeFileSync(join(client.folder, name), text);
    await client.initialize([''], { readsHistory: true });
    const job = await client.open('job.coffer');
    expect(await asked).toEqual({ uri: job, names: ['5b1f0c7'] });
    answer = [{ name: '5b1f0c7', is: 'none' }];
    await client.notify(HISTORY_CHANGED, {});
    const found = await client.until(job, hasRule('no-such-commit'));
    expect(commitRules(found)).toEqual(['no-such-commit']);
    answer = [{ name: '5b1f0c7', is: 'behind' }];
    await client.notify(HISTORY_CHANGED, {});
    await client.until(job, findings => commitRules(findings).length === 0);
});

/** What the hand rests for is looked for, and has been found. */
const looked = (): Promise<void> => new Promise(resolve => {
    let wasBusy = false;
    client.on(LOOKING, ({ busy }: LookingParams) => {
        if (wasBusy && !busy) resolve();
        wasBusy ||= busy;
    });
});

test('an editor that reads no history is asked nothing', async () => {
    client = new Client(shipped);
    let isAsked = false;
    client.answer(NAMED_COMMITS, () => { isAsked = true; return null; });
    for (const [name, text] of Object.entries(signedHouse)) writeFileSync(join(client.folder, name), text);
    await client.initialize(['']);
    const done = looked();
    await client.open('job.coffer');
    await done;
    expect(isAsked).toBe(false);
});
