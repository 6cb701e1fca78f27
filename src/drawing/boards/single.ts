import { roundTo } from '../../quantity/round.ts';
import { figure } from '../figures.ts';
import type { LaidBoard, SawOrder } from '../../sawing/model.ts';
import { sheet, type Sheet } from '../display-list.ts';
import { paperFor } from '../paper.ts';
import { boardAtTheSaw } from './board.ts';
import { boardView, longestOf } from './view.ts';

const MARGIN = { left: 10, right: 12, top: 3, foot: 5 };

/**
 * One board without frame or title, for a page that has its own words beside it. All boards of an order at one scale: `width` points for the longest,
 * `least` for letters.
 */
export function drawBoard(order: SawOrder, board: LaidBoard, id: string, width = 900, least = 0): Sheet {
    const view = boardView(order, MARGIN.left, (width - MARGIN.left - MARGIN.right) / longestOf(order), least);
    const laid = boardAtTheSaw(board, view, MARGIN.top);
    const height = laid.foot + MARGIN.foot;
    const pieces = board.strips.flatMap(s => s.pieces);
    const description = pieces.length === 0 ? 'Nothing is cut from it.' : `From the hooked end: ${pieces.map(p => `${view.nameOf(p.piece)} to ${figure(roundTo(p.to, view.step), view.show)}`).join(', ')}.`;
    return sheet(
        { id, title: `${board.name}, ${figure(board.length, view.show)}`, description },
        { ...paperFor(view.show), width, height, cssWidth: `${Math.round(width * 10) / 10}px`, cssHeight: `${Math.round(height * 10) / 10}px` }, [laid.group],
    );
}
