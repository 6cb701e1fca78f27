import type { CodeAction, DocumentSymbol, Hover, LocationLink, TextEdit } from 'vscode-languageserver-types';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../../../src/findings/finding.ts';
import { BUILTIN_URI } from '../../../src/language/workspace/builtin.ts';
import { TestWorkspace, uriOf } from '../../support/workspace.ts';

const FILES = {
    'yard.coffer': 'edition 1\n\n/** The yard on Mill Street has it primed. */\nstock poplar {\n  size     1x6\n  species  yellow-poplar\n}\nstock oak { size 1x8 }\n',
    'box.coffer': `edition 1
from "./yard.coffer" use poplar, oak as wide

/** A beam for small rooms. */
profile box(groove: Length = 1/4", deep: Stock = wide) {
  sides {
    stock      deep
    held-down  groove
    corners    mitered
  }
  bottom { stock poplar }
}
`,
    'den.coffer': `edition 1
from "./box" use box

job "Den" { currency "USD" }

room den "Den" {
  wall north  10' 6"
  grid {
    beams        box(groove: 1/8")
    through      north-south
    centered-on  lamp
  }
  fixture lamp light at 5', 4'
}

alternate wider "Wider grooves" { den.north 11' }
`,
};

/** For tests that only look. */
const OPEN = await TestWorkspace.open(FILES);

/** The place in a file where the text between « and » begins, e.g. `held«-down»`. */
function placeIn(workspace: TestWorkspace, path: string, marked: string) {
    const text = workspace.text(path);
    const before = marked.indexOf('«');
    const plain = marked.replace(/[«»]/g, '');
    const offset = text.indexOf(plain);
    if (offset < 0 || text.indexOf(plain, offset + 1) >= 0) throw new Error(`${plain} is not in ${path} once.`);
    const document = workspace.document(path);
    return { document, params: { textDocument: { uri: document.textDocument.uri }, position: document.textDocument.positionAt(offset + before) } };
}

async function hover(path: string, marked: string): Promise<string | undefined> {
    const { document, params } = placeIn(OPEN, path, marked);
    const found: Hover | undefined = await OPEN.coffer.lsp.HoverProvider!.getHoverContent(document, params);
    return found && (found.contents as { value: string }).value;
}

describe('hover', () => {
    test('a property: how it is declared, where, and what is written about it', async () => {
        const text = await hover('box.coffer', 'held«-down»');
        expect(text).toBe('```coffer\nheld-down : Length = 1/4"\n```\n\nproperty of `Sides`\n\nHow far the upper edge of the side stays below the ceiling.\n\n1/4" (6.35 mm)\n\nwhere `groove` is 1/4" (6.35 mm) by default');
    });
    test('a stock of another file, with its comment', async () => {
        expect(await hover('box.coffer', 'bottom { stock «poplar»')).toBe('```coffer\nstock poplar\n```\n\nThe yard on Mill Street has it primed.\n\ndressed 3/4" x 5 1/2" (19.05 x 139.7 mm)\n\nDressed size of 1x6: American Softwood Lumber Standard PS 20, board sizes, dry (read second-hand).');
    });
    test('an alias leads to what it stands for', async () => {
        expect(await hover('box.coffer', 'as «wide»')).toContain('stock oak');
        expect(await hover('box.coffer', 'Stock = «wide»')).toContain('stock oak');
    });
    test('a word of a list', async () => {
        expect(await hover('box.coffer', '«mitered»')).toContain('one of mitered or butted');
    });
    test('a parameter, a profile, a wall', async () => {
        expect(await hover('box.coffer', 'held-down  «groove»')).toBe('```coffer\ngroove: Length = 1/4"\n```\n\nparameter of `box`\n\ndefault 1/4" (6.35 mm)');
        expect(await hover('den.coffer', 'beams        «box»')).toBe('```coffer\nprofile box(groove: Length = 1/4", deep: Stock = wide)\n```\n\nA beam for small rooms.');
        expect(await hover('den.coffer', 'den.«north»')).toContain('wall north 10\' 6"');
    });
    test('what it comes to', async () => {
        expect(await hover('den.coffer', 'wall north  «10\' 6"»')).toBe('10\' 6" (3200.4 mm)');
        expect(await hover('box.coffer', 'held«-down»')).toMatch(/below the ceiling\.\n\n1\/4" \(6\.35 mm\)\n/);
        expect(await hover('box.coffer', 'bottom { stock «poplar»')).toContain('dressed 3/4" x 5 1/2"');
    });
    test('where its figures are published', async () => {
        expect(await hover('yard.coffer', '«size»     1x6')).toContain('dressed 3/4" x 5 1/2" (19.05 x 139.7 mm)\n\nDressed size of 1x6: American Softwood Lumber Standard PS 20');
        expect(await hover('yard.coffer', 'size     «1x6»')).toContain('American Softwood Lumber Standard PS 20');
        // Wood Handbook, Table 5-3b: 1.58 million psi, 10,100 psi
        expect(await hover('yard.coffer', '«yellow-poplar»')).toContain('stiffness 1,580,000 psi (10.9 GPa), rupture 10,100 psi (70 MPa), at 12 % moisture: USDA FPL, Wood Handbook FPL-GTR-282 (2021), Table 5-3b');
    });
    test('a word that begins something', async () => {
        expect(await hover('den.coffer', '«wall» north')).toMatch(/^A wall, measured along its inner face\.[^]*\n\n10' 6" \(3200\.4 mm\)$/);
        expect(await hover('yard.coffer', '«stock» oak')).toContain('A board you can buy');
    });
    test('nothing to say', async () => {
        expect(await hover('den.coffer', 'grid «{»')).toBeUndefined();
    });
});

describe('from word to word', () => {
    async function definition(path: string, marked: string): Promise<string[]> {
        const { document, params } = placeIn(OPEN, path, marked);
        const links: LocationLink[] | undefined = await OPEN.coffer.lsp.DefinitionProvider!.getDefinition(document, params);
        return (links ?? []).map(link => `${link.targetUri.replace('file:///house/', '')}: ${OPEN.words({ uri: link.targetUri, range: link.targetSelectionRange })}`);
    }
    test.each([
        ['den.coffer', 'beams        «box»', 'box.coffer: box'],
        ['den.coffer', 'box(«groove»', 'box.coffer: groove'],
        ['den.coffer', 'centered-on  «lamp»', 'den.coffer: lamp'],
        ['den.coffer', '«through»', `${BUILTIN_URI.toString()}: through`],
        ['den.coffer', 'north«-south»', `${BUILTIN_URI.toString()}: north-south`],
        ['box.coffer', 'stock      «deep»', 'box.coffer: deep'],
        ['box.coffer', '«oak» as', 'yard.coffer: oak'],
    ])('%s %s is declared at %s', async (path, marked, expected) => {
        expect(await definition(path, marked)).toEqual([expected]);
    });

    test('all uses of a property of the built-in library', async () => {
        const workspace = await TestWorkspace.open(FILES);
        const { document, params } = placeIn(workspace, 'box.coffer', 'bottom { «stock»');
        const found = await workspace.coffer.lsp.ReferencesProvider!.findReferences(document, { ...params, context: { includeDeclaration: false } });
        expect(found.map(each => workspace.words(each))).toEqual(['stock']);
    });
});

describe('rename', () => {
    async function rename(path: string, marked: string, newName: string): Promise<Record<string, string> | undefined> {
        const { document, params } = placeIn(OPEN, path, marked);
        const edit = await OPEN.coffer.lsp.RenameProvider!.rename(document, { ...params, newName });
        return edit?.changes && Object.fromEntries(Object.entries(edit.changes).map(([uri, edits]) => [uri.replace('file:///house/', ''), applied(OPEN.text(uri.replace('file:///house/', '')), edits)]));
    }
    test('in every file that uses it', async () => {
        const changed = await rename('box.coffer', 'profile «box»', 'slim-box');
        expect(Object.keys(changed ?? {}).sort()).toEqual(['box.coffer', 'den.coffer']);
        expect(changed!['den.coffer']).toContain('use slim-box');
        expect(changed!['den.coffer']).toContain('beams        slim-box(groove: 1/8")');
    });
    test('what goes by another name elsewhere keeps that', async () => {
        const changed = await rename('yard.coffer', 'stock «oak»', 'white-oak-1x8');
        expect(changed!['box.coffer']).toContain('use poplar, white-oak-1x8 as wide');
        expect(changed!['box.coffer']).toContain('deep: Stock = wide');
    });
    test('the other name, in its own file', async () => {
        for (const marked of ['as «wide»', 'Stock = «wide»']) {
            const changed = await rename('box.coffer', marked, 'deep-stock');
            expect(Object.keys(changed ?? {})).toEqual(['box.coffer']);
            expect(changed!['box.coffer']).toContain('oak as deep-stock');
            expect(changed!['box.coffer']).toContain('deep: Stock = deep-stock');
        }
    });
    test('what cannot be renamed', async () => {
        expect(await rename('box.coffer', 'held«-down»', 'drop')).toBeUndefined();
        expect(await rename('box.coffer', '«mitered»', 'cut')).toBeUndefined();
        expect(await rename('den.coffer', 'wall «north»', 'south')).toBeUndefined();
        await expect(rename('box.coffer', 'profile «box»', 'per')).rejects.toThrow('`per` is a word of the language');
        await expect(rename('box.coffer', 'profile «box»', 'a box')).rejects.toThrow('`a box` cannot be a name');
    });
});

describe('the rest of a file', () => {
    test('outline', async () => {
        const workspace = await TestWorkspace.open(FILES);
        const lines = (symbols: DocumentSymbol[], indent = ''): string[] => symbols.flatMap(each => [`${indent}${each.name} | ${each.detail ?? ''}`, ...lines(each.children ?? [], indent + '  ')]);
        const outline = async (path: string) =>
            lines(await workspace.coffer.lsp.DocumentSymbolProvider!.getSymbols(workspace.document(path), { textDocument: { uri: uriOf(path).toString() } }));
        expect(await outline('den.coffer')).toEqual(['Den | job', 'den | Den', '  wall north | 10\' 6"', '  grid | ', '  fixture lamp | light', 'wider | Wider grooves']);
        expect(await outline('box.coffer')).toEqual(['box | profile', '  sides | ', '  bottom | ']);
        expect(await outline('yard.coffer')).toEqual(['poplar | 1x6', 'oak | 1x8']);
    });

    test('formatting', async () => {
        const workspace = await TestWorkspace.open({ 'a.coffer': 'edition 1\nstock s {\nsize 1x6\n    species   red-oak\n}\n' });
        const document = workspace.document('a.coffer');
        const edits = await workspace.coffer.lsp.Formatter!.formatDocument(
            document, { textDocument: { uri: document.textDocument.uri }, options: { tabSize: 2, insertSpaces: true } },
        );
        expect(applied(workspace.text('a.coffer'), edits)).toBe('edition 1\nstock s {\n  size     1x6\n  species  red-oak\n}\n');
    });

    test('links on imports that lead somewhere', async () => {
        const workspace = await TestWorkspace.open({ ...FILES, 'den.coffer': `${FILES['den.coffer']}from "./gone.coffer" use x\n` });
        const links = await workspace.coffer.lsp.DocumentLinkProvider!.getDocumentLinks(workspace.document('den.coffer'), { textDocument: { uri: uriOf('den.coffer').toString() } });
        expect(links).toEqual([{ range: { start: { line: 1, character: 5 }, end: { line: 1, character: 12 } }, target: 'file:///house/box.coffer' }]);
    });
});

describe('quick fixes', () => {
    const text = 'edition 1\nprofile slim {\n  sides { stock poplar; corers mitred }\n  bottom { stock popler }\n}\n';

    /** The text after the fixes that an editor offers are taken, the preferred ones. */
    async function mended(texts: Record<string, string>, path: string): Promise<string> {
        const workspace = await TestWorkspace.open({ ...FILES, ...texts });
        const document = workspace.document(path);
        const { diagnostics = [] } = document;
        const range = { start: { line: 0, character: 0 }, end: { line: 99, character: 0 } };
        const actions = await workspace.coffer.lsp.CodeActionProvider!.getCodeActions(document, {
            textDocument: { uri: document.textDocument.uri }, range, context: { diagnostics: JSON.parse(JSON.stringify(diagnostics)) as typeof diagnostics },
        });
        const edits = ((actions ?? []) as CodeAction[]).filter(action => action.isPreferred)
            .flatMap(action => action.edit?.changes?.[document.textDocument.uri] ?? []);
        return applied(document.textDocument.getText(), edits);
    }
    test('what was meant is written', async () => {
        const once = await mended({ 'slim.coffer': text.replace('popler', 'poplar').replace('edition 1\n', 'edition 1\nfrom "./yrd" use poplar\n') }, 'slim.coffer');
        expect(once).toContain('from "./yard.coffer" use poplar');
        expect(once).toContain('corners mitred');
        expect(await mended({ 'slim.coffer': once }, 'slim.coffer')).toContain('corners mitered');
    });
    test('a name from another file is imported', async () => {
        expect(await mended({ 'slim.coffer': text.replace('; corers mitred', '').replace('popler', 'poplar') }, 'slim.coffer')).toContain('edition 1\nfrom "./yard.coffer" use poplar\n');
        expect(await mended({ 'slim.coffer': text.replace('; corers mitred', '').replace('popler', 'oak').replace('edition 1\n', 'edition 1\nfrom "./yard.coffer" use poplar\n') }, 'slim.coffer'))
            .toContain('from "./yard.coffer" use poplar, oak\n');
    });
    test('a misplaced import moves to the top', async () => {
        expect(await mended({ 'late.coffer': 'edition 1\nstock s { size 1x2 }\nfrom "./yard.coffer" use poplar\n' }, 'late.coffer'))
            .toBe('edition 1\nfrom "./yard.coffer" use poplar\nstock s { size 1x2 }\n');
    });
    test('other kinds of actions are not asked for', async () => {
        const workspace = await TestWorkspace.open({ 'slim.coffer': text });
        const document = workspace.document('slim.coffer');
        const range = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } };
        expect(await workspace.coffer.lsp.CodeActionProvider!.getCodeActions(document, { textDocument: { uri: document.textDocument.uri }, range, context: { diagnostics: document.diagnostics ?? [], only: ['refactor'] } })).toEqual([]);
    });
});

describe('findings as the editor is told them', () => {
    test('one function is asked; what stands elsewhere and what is allowed is left out; a fault is said', async () => {
        const at = (path: string) => ({ uri: uriOf(path).toString(), range: { start: { line: 1, character: 0 }, end: { line: 1, character: 4 } } });
        const finding = (path: string, more: Partial<Finding> = {}): Finding => ({ rule: 'some-rule', severity: 'warning', at: at(path), message: 'Something.', related: [{ at: at('box.coffer'), message: 'There.' }], fixes: [], ...more });
        const allowed = { reason: 'drapes', at: at('den.coffer') };
        const workspace = await TestWorkspace.open(FILES, () => [finding('den.coffer'), finding('yard.coffer'), finding('den.coffer', { allowed })]);
        expect(workspace.document('den.coffer').diagnostics).toEqual([{
            source: 'cofferwright', code: 'some-rule', severity: 2, message: 'Something.', range: at('den.coffer').range,
            relatedInformation: [{ location: { uri: 'file:///house/box.coffer', range: at('box.coffer').range }, message: 'There.' }],
        }]);
        const faulty = await TestWorkspace.open({ 'a.coffer': 'stock s { siez 1x2 }\n' }, () => { throw new Error('out of boards'); });
        expect(faulty.rules('a.coffer')).toEqual(['internal-error', 'unknown-property']);
    });
});

function applied(text: string, edits: readonly TextEdit[]): string {
    const lines = text.split('\n');
    const offset = ({ line, character }: { line: number, character: number }) =>
        lines.slice(0, line).reduce((sum, each) => sum + each.length + 1, 0) + character;
    return edits.toSorted((a, b) => offset(b.range.start) - offset(a.range.start))
        .reduce((now, { range, newText }) => now.slice(0, offset(range.start)) + newText + now.slice(offset(range.end)), text);
}
