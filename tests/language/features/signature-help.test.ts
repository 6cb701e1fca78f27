import { describe, expect, test } from 'vitest';
import { TestWorkspace } from '../../support/workspace.ts';

const DETAIL = `edition 1
stock poplar { size 1x6 }
/** A beam for small rooms. */
profile box(
  /** Beside the bottom. */
  groove: Length = 1/4",
  wide: Stock = poplar,
  deep: Stock
) { sides { stock deep }; bottom { stock wide } }
`;

/** What is shown at the | in a text: the parameter that is next, and the whole. */
async function at(marked: string) {
    const offset = marked.indexOf('|');
    const workspace = await TestWorkspace.open({ 'box.coffer': DETAIL, 'den.coffer': `from "./box" use box as beam, poplar\n${marked.replace('|', '')}` });
    const document = workspace.document('den.coffer');
    const position = document.textDocument.positionAt(document.textDocument.getText().length - marked.replace('|', '').length + offset);
    const help = await workspace.coffer.lsp.SignatureHelp!.provideSignatureHelp(document, { textDocument: { uri: document.textDocument.uri }, position });
    const signature = help?.signatures[0];
    return { signature, next: signature && (signature.parameters?.[help.activeParameter!]?.label ?? 'none') };
}

describe('signature help', () => {
    test.each<[string, string, string | undefined]>([
        ['behind the parenthesis', 'room den { grid { beams beam(|) } }', 'groove: Length = 1/4"'],
        ['by place', 'room den { grid { beams beam(1/8", |) } }', 'wide: Stock = poplar'],
        ['in the middle of a value', 'room den { grid { beams beam(1/8" + 1/16|", poplar) } }', 'groove: Length = 1/4"'],
        ['by name', 'room den { grid { beams beam(deep: |) } }', 'deep: Stock'],
        ['on a name', 'room den { grid { beams beam(de|ep: poplar) } }', 'deep: Stock'],
        ['behind one by name: the first that is not given', 'room den { grid { beams beam(groove: 1/8", deep: poplar, |) } }', 'wide: Stock = poplar'],
        ['past the last', 'room den { grid { beams beam(1/8", poplar, poplar, |) } }', 'none'],
        ['a name that it has not got', 'room den { grid { beams beam(depth: |) } }', 'none'],
        ['within a group', 'room den { grid { beams beam((1/8" + |)) } }', undefined],
        ['in the head of a variant', 'profile other(groove: Length) like beam(groove, |', 'wide: Stock = poplar'],
        ['parenthesis not closed, over several lines', 'room den {\n  grid {\n    beams beam(\n      groove: 1/8",\n      wide: |\n', 'wide: Stock = poplar'],
        ['before the parenthesis', 'room den { grid { beams beam|() } }', undefined],
        ['behind the parenthesis that closes it', 'room den { grid { beams beam()| } }', undefined],
        ['where parameters are declared', 'profile beam(|', undefined],
        ['what is no profile', 'room den { grid { beams poplar(|) } }', undefined],
        ['a text', 'room den { grid { beams beam("|") } }', undefined],
        ['a comment', 'room den { grid { beams beam( // |\n) } }', undefined],
    ])('%s', async (_, marked, next) => expect((await at(marked)).next).toBe(next));

    test('what is written about the profile and its parameters, and their defaults', async () => {
        const { signature } = await at('room den { grid { beams beam(|) } }');
        expect(signature).toEqual({
            label: 'box(groove: Length = 1/4", wide: Stock = poplar, deep: Stock)',
            documentation: { kind: 'markdown', value: 'A beam for small rooms.' },
            parameters: [
                { label: 'groove: Length = 1/4"', documentation: { kind: 'markdown', value: 'Beside the bottom.\n\ndefault 1/4" (6.35 mm)' } },
                { label: 'wide: Stock = poplar', documentation: { kind: 'markdown', value: 'default poplar, dressed 3/4" x 5 1/2" (19.05 x 139.7 mm)' } },
                { label: 'deep: Stock' },
            ],
        });
    });
});
