import { describe, expect, test } from 'vitest';
import { saidChanges } from '../../src/changes/said.ts';
import { statementsOf } from '../../src/language/statements.ts';
import { TestWorkspace } from '../support/workspace.ts';

type Files = Readonly<Record<string, string>>;

/** What is said otherwise, a line for each: where, what, from, to. */
async function said(before: Files, after: Files): Promise<string[]> {
    const files = async (texts: Files) => {
        const workspace = await TestWorkspace.open(texts);
        return Object.keys(texts).map(name => ({ name, statements: statementsOf(workspace.document(name)) }));
    };
    return saidChanges(await files(before), await files(after)).map(({ file, movedFrom, what, before: was, after: is }) =>
        `${file}${movedFrom === undefined ? '' : ` (${movedFrom})`} ${what.join(' / ')}: ${was?.value ?? '-'} => ${is?.value ?? '-'}`);
}

const DEN = `edition 1
room den "Den" {
  wall north  12' 3 1/2"
  wall east   10' 2"
  grid { coffers-north 3; coffers-east 2 }
  measured {
    spoiled  bottom-1
    spoiled  bottom-2
  }
}
`;

describe('what is said otherwise', () => {
    test('a value, by its words in both states', async () => {
        expect(await said({ 'den.coffer': DEN }, { 'den.coffer': DEN.replace('coffers-north 3', 'coffers-north 4').replace('"Den"', '"The den"') })).toEqual([
            'den.coffer room den: "Den" => "The den"', 'den.coffer room den / grid / coffers-north: 3 => 4',
        ]);
    });

    test('not spaces, comments, the order within a block, or another spelling of the same length', async () => {
        const other = `edition 1
// the client's den
room den "Den" {
  grid {
    coffers-east   2
    coffers-north  3
  }
  wall east   10'-2"   // by laser
  wall north  12' 3.5"
  measured { spoiled bottom-2; spoiled bottom-1 }
}
`;
        expect(await said({ 'den.coffer': DEN }, { 'den.coffer': other })).toEqual([]);
    });

    test('of what may be said several times, only what is new', async () => {
        expect(await said({ 'den.coffer': DEN }, { 'den.coffer': DEN.replace('spoiled  bottom-1', 'spoiled  bottom-7') })).toEqual(['den.coffer room den / measured / spoiled: bottom-1 => bottom-7']);
    });

    test('a block that moved to another file is the same, and what changed in it says where it was', async () => {
        expect(await said({ 'den.coffer': DEN }, { 'rooms/den.coffer': DEN })).toEqual([]);
        expect(await said({ 'den.coffer': DEN }, { 'rooms/den.coffer': DEN.replace('coffers-east 2', 'coffers-east 3') }))
            .toEqual(['rooms/den.coffer (den.coffer) room den / grid / coffers-east: 2 => 3']);
    });

    test('what has no name went with its file, where that was renamed', async () => {
        const files = { 'den.coffer': `edition 1\nfrom "yard.coffer" use pine, oak\n${DEN.replace('edition 1', '')}`, 'yard.coffer': 'edition 1\nstock pine { size 1x6 }\nstock oak { size 1x6 }\n' };
        const { 'den.coffer': text, ...rest } = files;
        expect(await said(files, { ...rest, 'study.coffer': text })).toEqual([]);
        expect(await said(files, { ...rest, 'study.coffer': text.replace('pine, oak', 'pine') })).toHaveLength(1);
    });

    test('two blocks of one name in two files stay apart', async () => {
        const two = { 'a.coffer': DEN, 'b.coffer': DEN };
        expect(await said(two, { ...two, 'b.coffer': DEN.replace('coffers-east 2', 'coffers-east 3') })).toEqual(['b.coffer room den / grid / coffers-east: 2 => 3']);
    });

    test('a half-written file says what can be read of it', async () => {
        expect(await said({ 'den.coffer': DEN }, { 'den.coffer': DEN.replace('coffers-east 2 }', 'coffers-east') })).toContain('den.coffer room den / grid / coffers-east: 2 => ');
    });
});
