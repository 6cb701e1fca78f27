import { expect, test } from 'vitest';
import { describe as explain } from '../../../src/language/elaborate/describe.ts';
import { readFile } from '../../../src/language/read-file.ts';
import { FULL } from '../../support/full.ts';
import { TestWorkspace } from '../../support/workspace.ts';

/** Texts that nobody writes and a slip of the keyboard, or a machine, can make: they are read, and in finite time. */
const many = <T>(n: number, make: (i: number) => T): T[] => Array.from({ length: n }, (_, i) => make(i));

async function rulesIn(text: string): Promise<string[]> {
    const workspace = await TestWorkspace.open({ 'main.coffer': text });
    const document = workspace.document('main.coffer');
    const { findings } = readFile(document);
    for (const item of document.parseResult.value.items) explain(item);
    return [...new Set(findings.map(finding => finding.rule))];
}

test('sums and products of a thousand', async () => {
    expect(await rulesIn(`let a = ${many(1000, () => '1"').join(' + ')}`)).toEqual([]);
    expect(await rulesIn(`let a = ${many(1000, () => '98765').join(' * ')}`)).toEqual(['out-of-range']);
});
test('sums of a thousand that begin with the next one', async () => {
    const text = many(30, i => `let v${i} = v${i + 1} + ${many(900, () => '1"').join(' + ')}`).join('\n');
    expect(await rulesIn(`${text}\nlet v30 = 1"`)).toEqual(['out-of-range']);
});
test('nine thousand digits', async () => {
    expect(await rulesIn(`let a = ${'9'.repeat(9000)}\nlet b = ${'9'.repeat(9000)}"\nlet c = 1/${'9'.repeat(9000)}"`)).toEqual(['out-of-range']);
});
test('two thousand values that lean on each other, the last first', async () => {
    expect(await rulesIn(many(2000, i => `let v${i} = v${i + 1} + 1"`).join('\n') + '\nlet v2000 = 1"')).toEqual(['out-of-range']);
});
test('two thousand values that lean on each other, the first first', async () => {
    expect(await rulesIn('let v0 = 1"\n' + many(2000, i => `let v${i + 1} = v${i} + 1/128"`).join('\n'))).toEqual([]);
});
test('a thousand profiles, each like the next', async () => {
    const last = 'profile p1000 { blocking { stock wood }; sides { stock wood }; bottom { stock wood } }';
    expect(await rulesIn(`stock wood { size 1x6 }\n${many(1000, i => `profile p${i} like p${i + 1} { }`).join('\n')}\n${last}`)).toEqual(['out-of-range']);
});
test('profiles that are given profiles, each two of the next', async () => {
    // doubled so often there are more than any machine could make
    const PROFILES = FULL ? 60 : 14;
    const parts = '{ blocking { stock wood }; sides { stock wood }; bottom { stock wood } }';
    const house = (parameters: (next: string) => string) => `stock wood { size 1x6 }\nprofile p0(l: Length = 1") ${parts}
${many(PROFILES, i => `profile p${i + 1}(${parameters(`p${i}`)}) ${parts}`).join('\n')}\nroom den { wall north 9'; wall east 9'; grid { coffers-north 2; coffers-east 2; beams p${PROFILES}(l: 4"); through north-south } }`;
    // as they stand: every name of one is twice as long as that of the next
    expect(await rulesIn(house(next => `l: Length = 1", a: Profile = ${next}(l: 2"), b: Profile = ${next}(l: 3")`))).toEqual(['out-of-range']);
    // a variant of their own for each length
    expect(await rulesIn(house(next => `l: Length = 1", a: Profile = ${next}(l: l * 2), b: Profile = ${next}(l: l * 3)`))).toEqual(['out-of-range']);
});
test('doubling at each of a hundred steps', async () => {
    expect(await rulesIn(`let v0 = 1"\n${many(100, i => `let v${i + 1} = v${i} + v${i}`).join('\n')}`)).toEqual([]);
    expect(await rulesIn(`let v0 = 3\n${many(30, i => `let v${i + 1} = v${i} * v${i}`).join('\n')}`)).toEqual(['out-of-range']);
});
test('a million coffers, and a room as long as a road', async () => {
    const room = (north: string, coffers: string) => `room den { wall north ${north}; wall east 10'; grid { coffers-north ${coffers}; coffers-east 2; beams box; through north-south } }
stock wood { size 1x6 }
profile box { blocking { stock wood }; sides { stock wood }; bottom { stock wood } }`;
    expect(await rulesIn(room('12\'', '1000000'))).toEqual([]);          // the layout says that there are too many
    expect(await rulesIn(room('5280\'', '3'))).toEqual(['out-of-range']);
});
