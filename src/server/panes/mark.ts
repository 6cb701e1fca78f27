import { URI, type LangiumDocument } from 'langium';
import { cutLines } from '../../cutting/cut-line.ts';
import type { Board } from '../../cutting/model.ts';
import type { TextChange } from '../../findings/finding.ts';
import { importEdit } from '../../language/findings/offered.ts';
import * as ast from '../../language/generated/ast.ts';
import { namesOf } from '../../language/scope/names.ts';
import type { CofferSharedServices } from '../../language/coffer-services.ts';
import { pathBetween } from '../../language/workspace/import-graph.ts';
import { readFile } from '../../language/read-file.ts';
import { importsOf } from '../../language/workspace/imports.ts';
import { boardKey } from '../../pages/boards/board-key.ts';
import { boardsOfHouse } from '../../pages/boards/house-plan.ts';
import type { RoomOnPage } from '../../pages/page.ts';
import { offerKey } from '../../pages/suggest/offer-key.ts';
import type { MarkedAs } from '../../panes/messages.ts';
import type { Stock } from '../../job/model.ts';
import { nameInRoom } from '../../takeoff/ids.ts';
import { documentAt } from '../document-at.ts';
import type { PaneMarkResult } from '../messages.ts';
import { t } from '../../pages/shared/words.ts';

/**
 * What has to be written into the rooms' `measured` so that it says that a board of the house's plan is cut, or a piece is
 * spoiled; or for another grid. The stock of a board is imported where its name is not known in the room's file.
 */
export function markEdits(as: MarkedAs, key: string, page: RoomOnPage, shared: CofferSharedServices): PaneMarkResult {
    switch (as) {
        case 'spoiled': return spoiled(key, page, shared);
        case 'cut': return cut(key, page, shared);
        case 'grid': return otherGrid(key, page, shared);
    }
}

/** Its places are those of the text that it was looked for in: where that is another one by now, nothing is written. */
function otherGrid(key: string, { otherGrids, file, layout: { room } }: RoomOnPage, shared: CofferSharedServices): PaneMarkResult {
    const document = documentAt(shared, file.uri), isThere = document !== undefined && readFile(document).rooms.includes(room);
    const offer = isThere && otherGrids !== undefined && otherGrids !== 'looking' ? otherGrids.offers.find(each => offerKey(each) === key) : undefined;
    return offer?.changes ? { edits: offer.changes } : null;
}

function spoiled(id: string, page: RoomOnPage, shared: CofferSharedServices): PaneMarkResult {
    const room = page.house.find(({ takeOff }) => takeOff.pieces.some(piece => piece.id === id));
    const piece = room?.takeOff.pieces.find(each => each.id === id);
    return room && piece ? written([{ room, line: `spoiled ${nameInRoom(piece)}` }], [], shared) : null;
}

function cut(key: string, page: RoomOnPage, shared: CofferSharedServices): PaneMarkResult {
    const found = boardWith(key, page);
    if (!found) return null;
    const { stock, board } = found;
    const imports: TextChange[] = [];
    const taken: string[] = [];
    const nameIn = (name: string): string => {
        const room = roomNamed(name, page), document = room && documentOf(room, shared);
        const known = document && nameOfStock(stock, document, imports);
        if (known === undefined) taken.push(name);
        return known ?? stock.name;
    };
    const lines = cutLines(board, nameIn, page.layout.room.job);
    if (!lines) return { words: t('A length of this board cannot be written exactly in feet and inches nor in millimeters. Write it into the text by hand.') };
    if (taken.length > 0) return { words: t('{0} means something else in the file of {1}. Import it there under another name first.', stock.name, taken.join(', ')) };
    return written(lines.flatMap(({ room: name, line }) => { const room = roomNamed(name, page); return room ? [{ room, line }] : []; }), imports, shared);
}

function boardWith(key: string, page: RoomOnPage): { stock: Stock; board: Board } | undefined {
    const { plan, order } = boardsOfHouse(page);
    const laid = order.boards.find(board => board.from !== 'already cut' && boardKey(board) === key);
    const own = plan.stocks.find(({ stock }) => stock.key === laid?.stock.key);
    const board = own?.boards.find(({ number }) => number === laid?.number);
    return own && board && { stock: own.stock, board };
}

function roomNamed(name: string, { house }: RoomOnPage): RoomOnPage | undefined {
    return house.find(({ layout }) => layout.room.name === name);
}

function documentOf({ file }: RoomOnPage, shared: CofferSharedServices): LangiumDocument | undefined {
    return shared.workspace.LangiumDocuments.getDocument(URI.parse(file.uri));
}

/** What the stock is called in a file, importing it where it has no name there; undefined where its name is another thing's. */
function nameOfStock({ name, at }: Stock, document: LangiumDocument, imports: TextChange[]): string | undefined {
    const here = document.uri.toString();
    if (at.uri === here) return name;
    for (const { use, key } of importsOf(document)) {
        const used = key === at.uri ? use.names.find(each => each.target?.$refText === name) : undefined;
        if (used) return used.name ?? name;
    }
    const file = document.parseResult.value;
    const isTaken = namesOf(document).has(name)
        || ast.isFile(file) && file.uses.some(use => use.names.some(each => (each.name ?? each.target?.$refText) === name));
    if (isTaken) return undefined;
    const change = importEdit(document, name, at.uri, pathBetween(document.uri, URI.parse(at.uri)));
    if (!imports.some(each => each.uri === here && each.text === change.text)) imports.push(change);
    return name;
}

function written(
    lines: readonly { readonly room: RoomOnPage; readonly line: string }[], imports: readonly TextChange[], shared: CofferSharedServices,
): PaneMarkResult {
    const edits = lines.flatMap(({ room, line }) => {
        const document = documentOf(room, shared);
        return document ? lineInRoom(document, room.layout.room.name, line) ?? [] : [];
    });
    return edits.length === lines.length && lines.length > 0 ? { edits: [...imports, ...edits] } : null;
}

/** At the end of the room's `measured`, or with a `measured` of its own at the end of the room. */
function lineInRoom(document: LangiumDocument, name: string, line: string): TextChange | undefined {
    const file = document.parseResult.value;
    const body = ast.isFile(file) ? file.items.filter(ast.isRoom).find(room => room.name === name)?.body : undefined;
    const measured = body?.members.filter(ast.isLine).find(({ path, body: own }) => own && path.length === 1 && path[0]!.$refText === 'measured')?.body;
    if (measured) return beforeBrace(document, measured, line.split('\n'));
    return body && beforeBrace(document, body, ['measured {', ...line.split('\n').map(each => `  ${each}`), '}']);
}

/** New lines before the brace that closes a block, a step further in than it. */
function beforeBrace({ uri, textDocument }: LangiumDocument, { $cstNode }: ast.Body, lines: readonly string[]): TextChange | undefined {
    const text = textDocument.getText();
    const brace = $cstNode ? text.lastIndexOf('}', $cstNode.end - 1) : -1;
    if (!$cstNode || brace < $cstNode.offset) return undefined;
    const newLine = text.includes('\r\n') ? '\r\n' : '\n';
    const lineOf = (offset: number): number => text.lastIndexOf('\n', offset - 1) + 1;
    const start = lineOf(brace);
    const indent = /^[ \t]*/.exec(text.slice(lineOf($cstNode.offset)))![0];
    const inside = lines.map(line => `${indent}  ${line}${newLine}`).join('');
    const alone = text.slice(start, brace).trim() === '';
    const at = textDocument.positionAt(alone ? start : brace);
    return { uri: uri.toString(), range: { start: at, end: at }, text: alone ? inside : `${newLine}${inside}${indent}` };
}
