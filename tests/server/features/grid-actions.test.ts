import { CancellationToken, CancellationTokenSource, CodeActionTriggerKind, type CodeAction, type CodeActionContext } from 'vscode-languageserver';
import { OperationCancelled } from 'langium';
import { describe, expect, test } from 'vitest';
import { GRID, GridActions } from '../../../src/server/features/grid-actions.ts';
import { Rooms } from '../../../src/server/panes/rooms.ts';
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
    test('who cancels ends it; so does a text that is another one by then', async () => {
        const house = await openRested({}), source = new CancellationTokenSource(), { textDocument } = house.document(DEN);
        const start = textDocument.positionAt(textDocument.getText().indexOf('coffers-north'));
        const ask = async (): Promise<unknown> => house.coffer.lsp.CodeActionProvider!.getCodeActions(
            house.document(DEN), { textDocument: { uri: textDocument.uri }, range: { start, end: start }, context: { diagnostics: [], ...byHand } },
            source.token,
        );
        const cancelled = expect(ask()).rejects.toBe(OperationCancelled);
        source.cancel();
        await cancelled;
    });
    test('of a room with very many coffers none is tried, and where the editor shows it, it is told why', async () => {
        const many = HOUSE[DEN]!.replace("north  12'", "north  40'").replace("east   10'", "east   36'")
            .replace('coffers-north  4', 'coffers-north  9').replace('coffers-east   3', 'coffers-east   8');
        const house = await openRested({ [DEN]: many }), document = house.document(DEN), { textDocument } = document, start = textDocument.positionAt(many.indexOf('coffers-north'));
        expect(await actions(house, 'coffers-north', byHand)).toEqual([]);
        const asked = { textDocument: { uri: textDocument.uri }, range: { start, end: start }, context: { diagnostics: [], ...byHand } };
        const told = new GridActions(new Rooms(house.shared), { disabledActions: true }).at(document, asked, CancellationToken.None);
        expect(told).toEqual([{ title: 'Another grid', kind: GRID, disabled: { reason: 'The room has 72 coffers: where there are more than 64 only the Suggestions pane tries others' } }]);
    });
});
