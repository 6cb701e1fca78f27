import type { BoardsContent } from '../../pages/boards/content.ts';
import { BOARDS_STATE, renderBoards, type BoardsState } from '../../pages/boards/render.ts';
import { BOARDS_STYLE } from '../../pages/boards/style.ts';
import { startPane } from '../start.ts';
import { Walk } from '../walk.ts';

let walk: Walk | undefined;

startPane<BoardsContent, BoardsState>({
    kind: 'boards', state: BOARDS_STATE, render: renderBoards, style: BOARDS_STYLE, formats: ['html', 'labels', 'svg', 'csv', 'json'],
    begin({ root }) { walk = new Walk(root, '[data-lies] .part', part => part.scrollIntoView({ block: 'nearest', inline: 'nearest' })); },
    shown() { walk?.apply(); },
    acts: {
        'tick-board': (on, pane) => {
            const board = pane.content?.stocks.flatMap(stock => stock.boards).find(({ key }) => key === on.getAttribute('data-board'));
            const keys = board?.pieces.map(({ tick }) => tick) ?? [];
            pane.send({ type: 'tick', ...(on as HTMLInputElement).checked ? { add: keys, remove: [] } : { add: [], remove: keys } });
        },
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
