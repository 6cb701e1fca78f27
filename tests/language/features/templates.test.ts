import { readFileSync } from 'node:fs';
import type { CompletionItem } from 'vscode-languageserver-types';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { describe, expect, test } from 'vitest';
import { readFile } from '../../../src/language/read-file.ts';
import { inspect } from '../../../src/pipeline/inspect.ts';
import { TestWorkspace } from '../../support/workspace.ts';

/** What completion puts into somebody's file has to be right as it stands: each is run through the whole inspection. */
const FIRST_JOB = readFileSync(new URL('../../../src/language/builtin/first-job.coffer', import.meta.url), 'utf8');

async function problems(text: string, others: Readonly<Record<string, string>> = {}): Promise<string[]> {
    const workspace = await TestWorkspace.open({ ...others, 'rooms/job.coffer': text });
    return inspect(readFile(workspace.document('rooms/job.coffer'))).findings.filter(({ severity, allowed }) => severity !== 'hint' && !allowed).map(({ rule, message }) => `${rule}: ${message}`);
}

async function offered(marked: string, others: Readonly<Record<string, string>> = {}): Promise<CompletionItem[]> {
    const text = marked.replace('|', ''), workspace = await TestWorkspace.open({ ...others, 'rooms/job.coffer': text }), document = workspace.document('rooms/job.coffer');
    const position = document.textDocument.positionAt(marked.indexOf('|'));
    const list = await workspace.coffer.lsp.CompletionProvider!.getCompletion(document, { textDocument: { uri: document.textDocument.uri }, position });
    return (list?.items ?? []).toSorted((a, b) => (a.sortText! < b.sortText! ? -1 : 1));
}

/** The text after somebody has chosen one, or the first, and left all figures as they are. */
async function accepted(marked: string, label: string | undefined = undefined, others: Readonly<Record<string, string>> = {}): Promise<string> {
    const items = await offered(marked, others), item = label === undefined ? items[0] : items.find(each => each.label === label);
    if (!item?.textEdit || !('range' in item.textEdit)) throw new Error(`${label ?? 'nothing'} is not offered`);
    const plain = item.textEdit.newText.replaceAll(/\$\{\d+:([^}]*)\}/g, '$1').replaceAll(/\$\{\d+\|([^,]*),[^|]*\|\}/g, '$1').replaceAll('\t', '  ');
    return TextDocument.applyEdits(TextDocument.create('', '', 0, marked.replace('|', '')), [{ ...item.textEdit, newText: plain }, ...item.additionalTextEdits ?? []]);
}

const YARD = `edition 1\nstock pine-1x6 { size 1x6 }\nstock pine-1x8 { size 1x8 }\nstock pine-1x2 { size 1x2 }\nprofile box { blocking { stock pine-1x6 }; sides { stock pine-1x8 }; bottom { stock pine-1x6 } }\n`;

describe('the next thing to write is offered first', () => {
    test('in an empty file of an empty house: a whole job', async () => {
        const job = await accepted('|');
        expect(job).toBe(FIRST_JOB.trimEnd());
        expect(await problems(job)).toEqual([]);
        expect((await problems(job.replace('height  5"', 'height  6 1/2"'))).map(problem => problem.split(':')[0])).toEqual(['spacer-hits-cleat']);
    });

    test('then board after board, the beam, the room: each without a mistake', async () => {
        let text = 'edition 1\n';
        for (const label of ['stock', 'stock', 'stock', 'profile', 'room']) {
            if (label !== 'stock' || text === 'edition 1\n') expect((await offered(`${text}|`))[0]!.label, text).toBe(label === 'room' ? 'room' : text === 'edition 1\n' ? 'stock' : 'profile');
            text = `${await accepted(`${text}|`, label)}\n`;
            expect(await problems(text), text).toEqual([]);
        }
        expect(text).toContain('stock poplar-1x8 {');
        expect(text).toContain('spacers { stock poplar-1x6; height 5" }');
        expect(text).toContain('trim { stock poplar-1x2 }');
    });

    test('in a house that has a beam: a room of it, with its import', async () => {
        const room = await accepted('edition 1\n|', undefined, { 'yard.coffer': YARD });
        expect(room).toMatch(/^edition 1\nfrom "\.\.\/yard\.coffer" use box\nroom dining "Dining room" \{/);
        expect(await problems(room, { 'yard.coffer': YARD })).toEqual([]);
    });

    test('a beam of one board, where there is no other', async () => {
        const one = 'edition 1\nstock ash { size 1x6 }\n', beam = await accepted(`${one}|`);
        expect(beam).toContain('sides { stock ash }');
        expect(await problems(beam)).toEqual([]);
    });

    test('in an empty room its two walls, then its grid', async () => {
        const head = 'edition 1\nfrom "../yard.coffer" use box\nroom den {\n  ', there = { 'yard.coffer': YARD };
        expect((await offered(`${head}|\n}\n`, there))[0]!.label).toBe('wall north');
        expect((await offered(`${head}wall north 14'\n  |\n}\n`, there))[0]!.label).toBe('wall east');
        const whole = await accepted(`${head}wall north 14'\n  wall east 12'\n  |\n}\n`, undefined, there);
        expect(whole).toContain('beams          box');
        expect(await problems(whole, there)).toEqual([]);
    });
});

test('where no board fits, and no beam stands without arguments, the words alone', async () => {
    const text = 'edition 1\nstock sheet { sheet 48" x 96"; thickness 3/4" }\nprofile asks(wide: Stock) { sides { stock wide }; bottom { stock wide } }\n';
    expect(await accepted(`${text}|`, 'profile')).toContain('profile name {\n  sides {\n    stock  $2');
    expect(await accepted(`${text}|`, 'room')).toContain('room name {');
});

describe('figures', () => {
    const labels = async (marked: string): Promise<string[]> => (await offered(marked)).map(({ label }) => label);
    test('sizes that boards are sold in, with what is left of them', async () => {
        const sizes = await offered('stock s {\n  size |\n}');
        expect(sizes.map(({ label }) => label).slice(0, 8)).toEqual(['1x2', '1x3', '1x4', '1x5', '1x6', '1x8', '1x10', '1x12']);
        // American Softwood Lumber Standard PS 20, board sizes, dry (read second-hand)
        expect(sizes.find(({ label }) => label === '1x8')!.detail).toBe('dressed 3/4" x 7 1/4"');
    });
    test('lengths, and what holds where nothing is said, only where a value begins', async () => {
        expect(await labels('stock s {\n  lengths |\n}')).toEqual(["8', 10', 12', 14', 16'", '2400 mm, 3000 mm, 3600 mm, 4200 mm, 4800 mm']);
        expect(await labels('stock s {\n  lengths 8\', |\n}')).toEqual([]);
        expect(await labels('job "House" {\n  kerf |\n}')).toEqual(['1/8"']);
        expect(await labels('job "House" {\n  paint-film 0.004" to |\n}')).toEqual([]);
    });
});

describe('the list opens again', () => {
    const opens = async (marked: string, label: string): Promise<boolean> => (await offered(marked)).find(each => each.label === label)!.command?.command === 'editor.action.triggerSuggest';
    test.each([
        ['a size', 'stock s {\n  |\n}', 'size', true], ['a species', 'stock s {\n  |\n}', 'species', true], ['no price', 'stock s {\n  |\n}', 'price', false],
        ['the first of what has to be said', 'profile p {\n  |\n}', 'sides, bottom', true], ['a block whose first value is a stock', 'profile p {\n  |\n}', 'blocking', true],
        ['a block whose first value is a length', 'profile p {\n  |\n}', 'cleats', false], ['a path', '|', 'from', true], ['no name that is invented', 'room r {\n  |\n}', 'fixture', false],
        ['a currency', 'job "House" {\n  |\n}', 'currency', true], ['what holds unsaid', 'job "House" {\n  |\n}', 'kerf', true],
    ])('where there is something to choose: %s', async (_, marked, label, expected) => expect(await opens(marked, label)).toBe(expected));
});
