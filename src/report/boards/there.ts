import type { Board, BoardFrom, Money } from '../../cutting/model.ts';
import { onHandKey } from '../../job/on-hand.ts';
import type { Stock } from '../../job/model.ts';
import { knownOf } from '../../job/status.ts';
import { boardRecord } from '../../measure/lengths-at-hand.ts';
import { printMoney } from '../../quantity/money.ts';
import { printLength, type Show } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';
import type { House } from '../house.ts';

/** Boards that need not be bought, those of one length, width, place and worth together. */
interface There { readonly from: BoardFrom; readonly length: Ticks; readonly width?: Ticks; readonly count: number; readonly worth?: Money }

/** `apart`: what else has to be the same. */
export function there(boards: readonly Board[], apart: (board: Board) => string = () => ''): (There & { readonly first: Board })[] {
    const alike = new Map<string, There & { readonly first: Board }>();
    for (const board of boards) {
        const { from, length, worth, width } = board;
        if (from === 'bought') continue;
        const key = `${from} ${onHandKey({ length, ...worth && { worth }, ...width !== undefined && { width } })} ${apart(board)}`, { count, first } = alike.get(key) ?? { count: 0, first: board };
        alike.set(key, { from, length, ...width !== undefined && { width }, count: count + 1, ...worth && { worth }, first });
    }
    return [...alike.values()];
}

/** How the length of a board on hand is known; undefined of any other. */
export function lengthKnownOf({ from, ...board }: Board, stock: Stock, { rooms }: House): ReturnType<typeof knownOf> | undefined {
    return from === 'on hand' ? knownOf(boardRecord(rooms.map(({ room }) => room), { ...board, stock })) : undefined;
}

/** `2 x 31"`, `1 x 9' 4" worth $4.00`. */
export function countText({ count, length, worth }: { readonly count: number; readonly length: Ticks; readonly worth?: Money }, show: Show): string {
    return `${count} x ${printLength(length, show)}${worth ? ` worth ${printMoney(worth.amount, worth.currency)}` : ''}`;
}

/** `4' x 8' sheet`, or the length of a board; of a strip `8', 2 1/2" wide`. */
export function sizeText({ sheet }: Stock, { length, width }: { readonly length: Ticks; readonly width?: Ticks }, show: Show): string {
    if (width !== undefined) return `${printLength(length, show)}, ${printLength(width, show)} wide`;
    return sheet?.value.length === length ? `${printLength(sheet.value.width, show)} x ${printLength(length, show)} sheet` : printLength(length, show);
}
