import type { BoardsContent } from '../../pages/boards/content.ts';
import { BOARDS_STATE, renderBoards, type BoardsState } from '../../pages/boards/render.ts';
import { BOARDS_STYLE } from '../../pages/boards/style.ts';
import { startPane, type Pane } from '../start.ts';
import { Walk } from '../walk.ts';

let walk: Walk | undefined;

/** The card of a piece goes, and the hands are on the piece again. */
function close(pane: Pane<BoardsContent, BoardsState>): void {
    const { piece } = pane.state;
    pane.set({ ...pane.state, piece: '' });
    pane.root.querySelector<SVGElement>(`[data-lies] .part[data-key="${CSS.escape(piece)}"]`)?.focus();
}

startPane<BoardsContent, BoardsState>({
    kind: 'boards', state: BOARDS_STATE, render: renderBoards, style: BOARDS_STYLE, formats: ['html', 'labels', 'svg', 'csv', 'json'],
    begin(pane) {
        walk = new Walk(pane.root, '[data-lies] .part', part => part.scrollIntoView({ block: 'nearest', inline: 'nearest' }));
        pane.root.addEventListener('keydown', event => { if (event.key === 'Escape' && (event.target as Element).closest('.card')) close(pane); });
    },
    shown() { walk?.apply(); },
    acts: {
        'tick-board': (on, pane) => {
            const board = pane.content?.stocks.flatMap(stock => stock.boards).find(({ key }) => key === on.getAttribute('data-board'));
            const keys = board?.pieces.map(({ tick }) => tick) ?? [];
            pane.send({ type: 'tick', ...(on as HTMLInputElement).checked ? { add: keys, remove: [] } : { add: [], remove: keys } });
        },
        close: (_on, pane) => close(pane),
        'stop-looking': (_on, pane) => pane.send({ type: 'stop' }),
        'mark-cut': (on, pane) => pane.send({ type: 'mark', as: 'cut', key: on.getAttribute('data-board')! }),
        'mark-spoiled': (on, pane) => {
            const piece = on.getAttribute('data-piece')!;
            // it has to be cut once more
            pane.send({ type: 'tick', add: [], remove: [on.getAttribute('data-ticked')!] });
            pane.send({ type: 'mark', as: 'spoiled', key: piece });
        },
    },
});
