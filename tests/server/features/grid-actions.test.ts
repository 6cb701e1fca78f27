import { CodeActionTriggerKind, type CodeAction, type CodeActionContext } from 'vscode-languageserver';
import { describe, expect, test } from 'vitest';
import { GRID } from '../../../src/server/features/grid-actions.ts';
import type { TestWorkspace } from '../../support/workspace.ts';
import { applied, HOUSE, openRested } from './house.ts';

const DEN = 'rooms/den.coffer';
/** Actions where these words stand. */
async function actions(house: TestWorkspace, words: string, context: Partial<CodeActionContext>): Promise<CodeAction[]> {
    const { textDocument } = house.document(DEN), at = textDocument.positionAt(textDocument.getText().indexOf(words));
    const made = await house.coffer.lsp.CodeActionProvider!.getCodeActions(
        house.document(DEN), { textDocument: { uri: textDocument.uri }, range: { start: at, end: at }, context: { diagnostics: [], ...context } },
    ) as CodeAction[];
    return made.filter(({ kind }) => kind === GRID);
}
const byHand = { triggerKind: CodeActionTriggerKind.Invoked };

describe('other grids, where somebody asks for actions', () => {
    test('on the words that divide the room: each says what it writes, and its text has no error', async () => {
        const house = await openRested({}), offered = await actions(house, 'coffers-north', byHand);
        expect(offered.length).toBeGreaterThan(1);
        expect(offered.map(({ title }) => title)[0]).toMatch(/^Another grid, \d+ x \d+: (coffers|through)/);
        for (const { edit } of offered.slice(0, 2)) {
            const text = applied(house, edit?.changes, [DEN])[DEN]!;
            expect(text).not.toBe(HOUSE[DEN]);
            expect((await openRested({ [DEN]: text })).document(DEN).diagnostics?.filter(({ severity }) => severity === 1)).toEqual([]);
        }
    });
    test('on the word grid and on what runs through; not elsewhere, nor where nobody asked, nor for other kinds', async () => {
        const house = await openRested({});
        for (const words of ['grid {', 'through ']) expect((await actions(house, words, byHand)).length, words).toBeGreaterThan(0);
        for (const words of ['wall north', 'beams  ', 'line B']) expect(await actions(house, words, byHand), words).toEqual([]);
        expect(await actions(house, 'coffers-north', { triggerKind: CodeActionTriggerKind.Automatic })).toEqual([]);
        expect(await actions(house, 'coffers-north', {})).toEqual([]);
        expect(await actions(house, 'coffers-north', { ...byHand, only: ['quickfix'] })).toEqual([]);
        expect((await actions(house, 'coffers-north', { only: ['refactor'] })).length).toBeGreaterThan(0);
    });
});
