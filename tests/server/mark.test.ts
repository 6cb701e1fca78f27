import { describe, expect, test } from 'vitest';
import { boardKey } from '../../src/pages/boards/board-key.ts';
import { boardsOfHouse } from '../../src/pages/boards/house-plan.ts';
import type { RoomOnPage } from '../../src/pages/page.ts';
import { markEdits } from '../../src/server/panes/mark.ts';
import type { PaneMarkResult } from '../../src/server/messages.ts';
import { roomOnPage, serve } from '../panes/support/content.ts';
import { applied } from '../support/applied.ts';

const yard = `edition 1
stock board-1x6 { size 1x6; lengths 8', 12', 16' }
stock board-1x8 { size 1x8; lengths 12', 16' }
`;
const box = `edition 1
from "yard.coffer" use board-1x6, board-1x8
profile box {
  blocking { stock board-1x6; screws #8 x 2 1/2" every 16" }
  sides { stock board-1x8; held-down 1/4"; corners mitered; nails 16 ga x 2" every 12" }
  bottom { stock board-1x6; gap 0" to 1/32" }
}
`;
const den = `edition 1
from "box.coffer" use box

room den {
  wall north  13'
  wall east   11'

  grid {
    coffers-north  3
    coffers-east   2
    beams          box
    through        north-south
  }
}
`;
const house = { 'yard.coffer': yard, 'box.coffer': box, 'den.coffer': den };
type Files = Record<string, string>;

async function opened(files: Files) {
    const workspace = await serve(files);
    return { workspace, page: roomOnPage(workspace, 'den.coffer', 'den') };
}
function write(result: PaneMarkResult, files: Files): Files {
    if (!result || !('edits' in result)) throw new Error(`no edits: ${JSON.stringify(result)}`);
    return applied({ title: '', edits: result.edits }, files);
}
const open = (page: RoomOnPage) => boardsOfHouse(page).order.boards.filter(b => b.from !== 'already cut');
const piecesOf = (page: RoomOnPage): string[] => open(page).flatMap(b => b.strips).flatMap(s => s.pieces).map(p => p.piece.id).sort();

describe('a spoiled piece', () => {
    test('is written into a measured block of its own at the end of the room, and planned once more', async () => {
        const { workspace, page } = await opened(house);
        const files = write(markEdits('spoiled', 'den.bottom-1', page, workspace.shared), house);
        expect(files['den.coffer']).toBe(den.replace(/\n\}\n$/, '\n  measured {\n    spoiled bottom-1\n  }\n}\n'));
        const again = await opened(files);
        expect(piecesOf(again.page).filter(id => id === 'den.bottom-1')).toHaveLength(2);
        // once more spoiled, it goes into the block that is there
        const twice = write(markEdits('spoiled', 'den.bottom-1', again.page, again.workspace.shared), files);
        expect(twice['den.coffer']).toContain('  measured {\n    spoiled bottom-1\n    spoiled bottom-1\n  }\n');
        expect(piecesOf((await opened(twice)).page).filter(id => id === 'den.bottom-1')).toHaveLength(3);
    });

    test('of a room that has none is nothing to write', async () => {
        const { workspace, page } = await opened(house);
        expect(markEdits('spoiled', 'den.bottom-9', page, workspace.shared)).toBeNull();
        expect(markEdits('cut', 'board.nothing', page, workspace.shared)).toBeNull();
    });
});

describe('a board that is cut', () => {
    test('every board of a plan, written as cut, is cut, and its pieces are planned no more', async () => {
        const { workspace, page } = await opened(house);
        for (const board of open(page)) {
            const own = board.strips.flatMap(s => s.pieces).map(p => p.piece.id);
            const files = write(markEdits('cut', boardKey(board), page, workspace.shared), house);
            const after = (await opened(files)).page;
            expect(after.findings.filter(f => f.severity === 'error' || f.rule === 'cut-without-record')).toEqual([]);
            expect(boardsOfHouse(after).order.boards.filter(b => b.from === 'already cut').map(b => [b.stock.name, b.length])).toEqual([[board.stock.name, board.length]]);
            expect(piecesOf(after)).toEqual(piecesOf(page).filter(id => !own.includes(id)));
        }
    });

    test('with pieces of two rooms it is said in both, and its pieces are planned no more in either', async () => {
        const two = { ...house, 'hall.coffer': den.replace('room den', 'room hall').replace("13'", "9' 6\""), 'job.coffer': 'edition 1\njob "Plum Street 4" { }\n' };
        const { workspace, page } = await opened(two);
        const roomsOf = (board: ReturnType<typeof open>[number]): Set<string> => new Set(board.strips.flatMap(s => s.pieces).map(p => p.piece.room));
        const shared = open(page).filter(board => roomsOf(board).size === 2);
        expect(shared.length).toBeGreaterThan(0);
        const own = shared[0]!.strips.flatMap(s => s.pieces).map(p => p.piece.id);
        const files = write(markEdits('cut', boardKey(shared[0]!), page, workspace.shared), two);
        for (const path of ['den.coffer', 'hall.coffer']) expect(files[path]).toMatch(/\n {2}measured \{\n {4}cut .* into .*\n {2}\}\n\}\n$/);
        const after = (await opened(files)).page;
        expect(after.house.flatMap(r => r.findings).filter(f => f.severity === 'error')).toEqual([]);
        expect(piecesOf(after)).toEqual(piecesOf(page).filter(id => !own.includes(id)));
    });

    test('imports its stock where the room has no name for it, once, and uses the name it has', async () => {
        const { workspace, page } = await opened(house);
        const board = open(page).find(b => b.stock.name === 'board-1x6')!;
        const files = write(markEdits('cut', boardKey(board), page, workspace.shared), house);
        expect(files['den.coffer']).toMatch(/^edition 1\nfrom "box.coffer" use box\nfrom ".*yard.coffer" use board-1x6\n/);
        const named = { ...house, 'den.coffer': den.replace('from "box', 'from "yard.coffer" use board-1x6 as sixes\nfrom "box') };
        const other = await opened(named);
        const again = write(markEdits('cut', boardKey(open(other.page).find(b => b.stock.name === 'board-1x6')!), other.page, other.workspace.shared), named);
        expect(again['den.coffer']).toMatch(/cut 16' of sixes\s+into /);
        expect(again['den.coffer']!.match(/from "/g)).toHaveLength(2);
    });

    test('is not written where its stock\'s name is another thing\'s', async () => {
        const taken = { ...house, 'den.coffer': den.replace('room den', 'stock board-1x6 { size 1x6 }\n\nroom den') };
        const { workspace, page } = await opened(taken);
        const board = open(page).find(b => b.stock.name === 'board-1x6')!;
        expect(markEdits('cut', boardKey(board), page, workspace.shared)).toEqual({ words: 'board-1x6 means something else in the file of den. Import it there under another name first.' });
    });

    test('with the room on one line, and with line ends of the other kind', async () => {
        const windows = { ...house, 'den.coffer': den.replace(/\n\}\n$/, '\n  measured { spoiled bottom-2 }\n}\n').replaceAll('\n', '\r\n') };
        const { workspace, page } = await opened(windows);
        const files = write(markEdits('spoiled', 'den.bottom-1', page, workspace.shared), windows);
        expect(files['den.coffer']!.replaceAll('\r\n', '')).not.toContain('\n');
        const after = (await opened(files)).page;
        expect(piecesOf(after).filter(id => /bottom-[12]$/.test(id))).toEqual(['den.bottom-1', 'den.bottom-1', 'den.bottom-2', 'den.bottom-2']);
    });
});
