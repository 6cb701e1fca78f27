import type { CodeAction } from 'vscode-languageserver';
import { describe, expect, test } from 'vitest';
import { RULES } from '../../../src/rules/index.ts';
import { fixesOf } from '../../../src/language/workspace/diagnostics.ts';
import { some } from '../../support/full.ts';
import type { TestWorkspace } from '../../support/workspace.ts';
import { applied, EVERYWHERE, HOUSE, openHouse, openRested } from './house.ts';

/** What an editor is offered for a file: for all its findings, as they travel to it and back. */
async function actions(house: TestWorkspace, path: string, only?: string[]): Promise<CodeAction[]> {
    const document = house.document(path);
    const diagnostics = JSON.parse(JSON.stringify(document.diagnostics ?? [])) as NonNullable<typeof document.diagnostics>;
    return await house.coffer.lsp.CodeActionProvider!.getCodeActions(
        document, { textDocument: { uri: document.textDocument.uri }, range: EVERYWHERE, context: { diagnostics, ...only && { only } } },
    ) as CodeAction[];
}

const after = (house: TestWorkspace, action: CodeAction, path: string): string => applied(house, action.edit?.changes, [path])[path]!;

const MARKS_MISSING = HOUSE['rooms/den.coffer']!.replace('12\'', '143 1/2').replace('10\'', '119 1/2');

describe('fix all', () => {
    test('of one rule, where there are several', async () => {
        const house = await openHouse({ 'rooms/den.coffer': MARKS_MISSING.replace('north-south', 'north-sout') });
        const all = (await actions(house, 'rooms/den.coffer')).filter(({ title }) => title.startsWith('Fix all'));
        expect(all.map(({ title, kind, diagnostics }) => [title, kind, diagnostics?.length])).toEqual([['Fix all 2 of mark-missing in this file', 'quickfix', 2]]);
        expect(after(house, all[0]!, 'rooms/den.coffer')).toBe(MARKS_MISSING.replace('143 1/2', '143 1/2"').replace('119 1/2', '119 1/2"').replace('north-south', 'north-sout'));
    });
    test('of the file, when it is asked for by name and not otherwise', async () => {
        const house = await openHouse({ 'rooms/den.coffer': MARKS_MISSING });
        expect((await actions(house, 'rooms/den.coffer')).map(({ kind }) => kind)).not.toContain('source.fixAll.cofferwright');
        for (const wanted of ['source', 'source.fixAll', 'source.fixAll.cofferwright']) {
            const found = await actions(house, 'rooms/den.coffer', [wanted]);
            expect(found.map(({ kind }) => kind)).toEqual(['source.fixAll.cofferwright']);
            expect(after(house, found[0]!, 'rooms/den.coffer')).toBe(MARKS_MISSING.replace('143 1/2', '143 1/2"').replace('119 1/2', '119 1/2"'));
        }
        expect(await actions(await openHouse(), 'rooms/den.coffer', ['source.fixAll'])).toEqual([]);
    });
});

describe('every rule of the trade', () => {
    /** A rule's example: one file, or several parted by `// file PATH`; the last is the one that is looked at. */
    const filesOf = (text: string): [string, string][] => text.split(/^\/\/ file (.*)\n/m).length === 1
        ? [['a.coffer', text]]
        : [...text.matchAll(/^\/\/ file (.*)\n([\s\S]*?)(?=^\/\/ file |$(?![\s\S]))/gm)].map(found => [found[1]!.trim(), found[2]!]);

    // what git is asked is not known here
    test.each(some(RULES.filter(({ name, check }) => name !== 'allow-unused' && !('commits' in check)).map(rule => [rule.name, rule] as const), 4))('%s can be let stand with a reason, and its fixes take it away', async (name, rule) => {
        const files = filesOf(rule.wrong), texts = Object.fromEntries(files), [path] = files.at(-1)!;
        const house = await openRested(texts);
        const rulesAfter = async (action: CodeAction): Promise<readonly string[]> => {
            await house.edit({ [path]: after(house, action, path) });
            const rules = house.rules(path);
            await house.edit({ [path]: texts[path]! });
            return rules;
        };
        const rules = house.rules(path), count = (all: readonly string[]): number => all.filter(each => each === name).length;
        expect(count(rules)).toBeGreaterThan(0);
        const offered = await actions(house, path), titles = offered.map(({ title }) => title);
        const allow = offered.filter(({ title }) => title === `Allow ${name} here, and say why`);
        expect(allow).toHaveLength(count(rules));
        for (const diagnostic of house.document(path).diagnostics!.filter(({ code }) => code === name)) {
            expect(titles).toEqual(expect.arrayContaining(fixesOf(diagnostic).map(({ title }) => title)));
        }
        const [preferred] = await actions(house, path, ['source.fixAll']);

        const allowed = await rulesAfter(allow[0]!);
        expect(count(allowed)).toBeLessThan(count(rules));
        expect(allowed.filter(each => each === 'allow-unused' || each === 'syntax')).toEqual([]);
        if (!preferred) return;
        const mended = await rulesAfter(preferred);
        expect(mended.filter(each => each === 'syntax')).toEqual([]);
        expect(mended.length).toBeLessThan(rules.length);
    });
});

describe('letting a finding stand', () => {
    test('the comment is as far in as the line it stands above, and ends its line as the file does', async () => {
        const wrong = HOUSE['rooms/den.coffer']!.replace('east   10\'', 'east   10\'\n  wall west   9\'').replaceAll('\n', '\r\n');
        const house = await openHouse({ 'rooms/den.coffer': wrong });
        const [action] = (await actions(house, 'rooms/den.coffer')).filter(({ title }) => title.startsWith('Allow room-not-rectangular'));
        expect(after(house, action!, 'rooms/den.coffer')).toMatch(/\r\n {2}\/\/ allow room-not-rectangular: say why\r\n {2}wall (west|east) /);
        expect(after(house, action!, 'rooms/den.coffer')).not.toMatch(/[^\r]\n/);
    });
    test('what cannot be read or has no meaning has no such way out', async () => {
        const house = await openHouse({ 'rooms/den.coffer': MARKS_MISSING.replace('north-south', 'north-sout').replace('use box', 'use box (') });
        expect(house.rules('rooms/den.coffer').length).toBeGreaterThan(2);
        expect((await actions(house, 'rooms/den.coffer')).filter(({ title }) => title.startsWith('Allow'))).toEqual([]);
    });
});
