import type { Board, BoardFrom, Money } from '../../cutting/model.ts';
import { onHandKey } from '../../job/on-hand.ts';
import type { Stock } from '../../job/model.ts';
import { printMoney } from '../../quantity/money.ts';
import { printLength, type Show } from '../../quantity/print-length.ts';
import type { Ticks } from '../../quantity/ticks.ts';

/** Boards that need not be bought, those of one length, width, place and worth together. */
interface There { readonly from: BoardFrom; readonly length: Ticks; readonly width?: Ticks; readonly count: number; readonly worth?: Money }

export function there(boards: readonly Board[]): There[] {
    const alike = new Map<string, There>();
    for (const { from, length, worth, width } of boards) {
        if (from === 'bought') continue;
        const key = `${from} ${onHandKey({ length, ...worth && { worth }, ...width !== undefined && { width } })}`;
        alike.set(key, { from, length, ...width !== undefined && { width }, count: (alike.get(key)?.count ?? 0) + 1, ...worth && { worth } });
    }
    return [...alike.values()];
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
