import type { AsCut, CutBoard, CutName, Room } from '../job/model.ts';
import { PARTS } from '../job/part.ts';
import { grouped } from '../plain/groups.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import type { Piece } from '../takeoff/model.ts';
import { roughWidth } from '../takeoff/rough-width.ts';
import { asRecorded, creditOf, cutNotCounted } from './as-cut.ts';
import { assign } from './assign.ts';
import { canBecome, edgeWork, gainOfCut, offcutsOf } from './become.ts';

/** What a piece that is cut becomes, and how. */
export interface Use { readonly into: Piece; readonly how: 'keep' | 'trim' | 'rip' }

/** A piece that is cut, as it was cut; `use`: what it becomes, where it is best made into another one of its room. */
export interface CutPiece { readonly piece: Piece; readonly use?: Use }

/**
 * What becomes of the pieces of a room that are cut and are wanted otherwise now, or no more, by their words in the record: so that the most of the wood is
 * kept within the room, as a comparison of two states does for all rooms of a house. One that is best recut for its own place has no use.
 */
export function usesOf(room: Room, pieces: readonly Piece[]): ReadonlyMap<CutName, CutPiece> {
    const credit = creditOf(room, pieces), offcuts = offcutsOf(room.job);
    const misfits = credit.misfits.map(({ piece, name, record, board }): Cut => ({ name, own: piece, piece: cutPiece(piece, record, board) }));
    const cut = [...misfits, ...unlisted(room, pieces)];
    const all = new Map<CutName, CutPiece>(cut.map(({ name, piece }) => [name, { piece }]));
    const byStock = grouped(pieces.filter(each => credit.wanted(nameInRoom(each)) > 0), ({ stock: { key } }) => key);
    for (const [stock, own] of grouped(cut, ({ piece }) => piece.stock.key)) {
        const may = byStock.get(stock) ?? [];
        for (const [i, j] of assign(own.length, may.length, (row, column) => gainOfCut(own[row]!.piece, may[column]!, offcuts)).pairs) {
            const into = may[j]!, { name, piece, own: place } = own[i]!, how = canBecome(piece, into);
            if (how && into !== place) all.set(name, { piece, use: { into, how } });
        }
    }
    return all;
}

interface Cut { readonly name: CutName; readonly piece: Piece; readonly own?: Piece }

/**
 * Pieces that are in the cut list no more, as they were cut. Only a name, a board and a length are left of them: how wide they are, and what is done along
 * their edges, is known where all pieces of their part out of these boards are alike in it.
 */
function unlisted(room: Room, pieces: readonly Piece[]): Cut[] {
    const names = new Set(pieces.map(nameInRoom)), open = cutNotCounted(room, pieces);
    return room.cutBoards.flatMap(board => board.into.flatMap((name): Cut[] => {
        const part = PARTS.find(one => name.value.startsWith(`${one}-`)), { asCut } = name;
        if (!part || typeof asCut !== 'object' || names.has(name.value) || !open.has(name)) return [];
        const alike = pieces.filter(piece => piece.part === part && piece.stock.key === board.stock.value.key), [like] = alike;
        if (!like || alike.some(piece => shapeOf(piece) !== shapeOf(like))) return [];
        return [{ name, piece: { ...cutPiece(like, asCut, board), id: `${like.room}.${name.value}` } }];
    }));
}

function shapeOf(piece: Piece): string {
    return JSON.stringify([roughWidth(piece), piece.thickness, edgeWork(piece)]);
}

function cutPiece(piece: Piece, record: AsCut, { stock }: CutBoard): Piece {
    return { ...asRecorded(piece, record), stock: stock.value };
}
