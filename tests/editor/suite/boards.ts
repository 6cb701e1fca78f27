import * as vscode from 'vscode';
import { inPane, isDriven, open, picture, test, until } from './harness.ts';

const BOARDS = 'Boards';
const count = async (selector: string): Promise<number> => Number(await inPane(BOARDS, `document.querySelectorAll(${JSON.stringify(selector)}).length`));
const text = async (selector: string): Promise<string> => String(await inPane(BOARDS, `document.querySelector(${JSON.stringify(selector)})?.textContent ?? ''`));
const click = (selector: string): Promise<unknown> => inPane(BOARDS, `document.querySelector(${JSON.stringify(selector)}).dispatchEvent(new MouseEvent('click', { bubbles: true, cancelable: true }))`);

test('boards are shown at once and proved in a thread; what is spoiled and what is cut is written into the job and planned again', async () => {
    if (!isDriven) return;
    const { document } = await open('rooms/den.coffer');
    await until('activation', () => vscode.extensions.getExtension('cofferwright.cofferwright')?.isActive);
    await vscode.commands.executeCommand('cofferwright.showBoards');
    await until('boards', async () => await count('figure.board') > 3, () => count('figure.board'), 40);
    await until('what the search has found', async () => /^(None cheaper|At most|None shorter)/.test(await text('#known')) && await count('#proving') === 0, () => text('#known'), 60);
    await picture('boards');

    const done = await count('figure.board.done');
    await click('figure.board:not(.done) [data-act="tick-board"]');
    await until('one board more ticked off', async () => await count('figure.board.done') === done + 1, () => count('figure.board.done'));
    await click('figure.board.done [data-act="tick-board"]');
    await until('it open again', async () => await count('figure.board.done') === done, () => count('figure.board.done'));

    await click('[data-value="den.bottom-1"]');
    await until('what is known of the piece', async () => (await text('#card h3')).includes('bottom-1'), () => text('#card'));
    await click('#card [data-act="mark-spoiled"]');
    await until('the piece in the text', () => document.getText().includes('spoiled bottom-1'), () => document.getText().slice(-200));
    await until('it planned once more', async () => await count('[data-value="den.bottom-1"]') === 2, () => count('[data-value="den.bottom-1"]'));

    await click('[data-act="mark-cut"]');
    await until('the board in the text', () => /\n {4}cut [^\n]*\s+into /.test(document.getText()), () => document.getText().slice(-300));
    await until('a board that is cut already', async () => await count('figure.board.done [data-act="tick-board"]:disabled') === 1, () => text('#page'));
    await picture('boards-cut');
});
