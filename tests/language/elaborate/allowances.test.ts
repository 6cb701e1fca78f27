import { expect, test } from 'vitest';
import { readFile } from '../../../src/language/read-file.ts';
import { TestWorkspace } from '../../support/workspace.ts';

const text = `edition 1
// allow bottom-gap-shows: painted dark, nobody sees it
// allow cleats-crowd-channel: a helper's small hands

// another remark
stock a { size 1x6 }  // allow taper-shows: drapes hide it
stock b { size 1x6 } // allow nail-shows
stock c { size 1x6 } //allow splice-in-sight :   too far up to see
stock d { size 1x6; ripped-with "// allow in-a-text: is no comment" }
// allowances are agreed with the owners
/* allow nail-wont-hold: not in a comment of this kind */
// allow nothing-below: it`;

test('comments that allow a finding, with the line they cover', async () => {
    const workspace = await TestWorkspace.open({ 'main.coffer': text });
    const { allowances, findings } = readFile(workspace.document('main.coffer'));
    expect(allowances.map(({ rule, reason, line }) => [rule, reason, line])).toEqual([
        ['bottom-gap-shows', 'painted dark, nobody sees it', 5],
        ['cleats-crowd-channel', 'a helper\'s small hands', 5],
        ['taper-shows', 'drapes hide it', 5],
        ['splice-in-sight', 'too far up to see', 7],
        ['nothing-below', 'it', 12],
    ]);
    expect(workspace.words(allowances[2]!.at)).toBe('// allow taper-shows: drapes hide it');
    expect(findings.map(({ rule, at }) => [rule, at.range.start.line])).toEqual([['allow-without-reason', 6]]);
});

test.each(['\r', '\r\n'])('whatever ends the lines: %j', async end => {
    const workspace = await TestWorkspace.open({ 'main.coffer': text.replaceAll('\n', end) });
    const { allowances } = readFile(workspace.document('main.coffer'));
    expect(allowances.map(({ line }) => line)).toEqual([5, 5, 5, 7, 12]);
});
