import type { Stock } from '../job/model.ts';
import type { Given } from '../provenance/source.ts';
import type { Measure, Tolerance } from '../quantity/measure.ts';
import { worstCase, within } from '../quantity/tolerance.ts';
import { fromWords } from './derived.ts';
import type { Derived } from './model.ts';

/** What every part has that is cut from boards. */
export interface BoardPart { readonly stock?: Given<Stock>; readonly rip?: Given<Measure>; readonly ripWith?: Given<string> }

/**
 * Widths and thicknesses of parts as they will stand in the ceiling, with what may push them off.
 *
 * What shares a cause cancels in a fit, so the causes decide what is luck and what is not:
 * - ripped at one fence setting (`rip … with "fence A"`, or a stock `ripped-with "fence A"`): one cause for all of it;
 * - ripped without saying at which: the part's own cause, whatever the length it was ripped to came from;
 * - the stock's own width: parts of one stock are still different boards, so a cause for each part.
 */
export function widthOf(part: BoardPart | undefined, name: string): Derived | undefined {
    if (!part) return undefined;
    if (part.rip) {
        const cause = part.ripWith ? fenceSetting(part.ripWith.value) : `rip of the ${name}`;
        return fromWords(name, within(part.rip.value.ticks, cause, worstCase(part.rip.value.tolerance)), part.rip.at);
    }
    const stock = part.stock?.value;
    if (!stock?.width) return undefined;
    const cause = stock.rippedWith ? fenceSetting(stock.rippedWith.value) : `${name} of ${stock.name}`;
    return ofStock(name, stock.width, stock, cause);
}

/** `board` tells boards of one part apart, such as the two sides of a beam. */
export function thicknessOf(part: { readonly stock?: Given<Stock> } | undefined, name: string, board = name): Derived | undefined {
    const stock = part?.stock?.value;
    return stock?.thickness && ofStock(name, stock.thickness, stock, `${board} of ${stock.name}, thickness`);
}

function fenceSetting(name: string): string {
    return `set-up ${name}`;
}

/** A stock's error is that of its boards: here it becomes that of one of them. Other causes stay what they are. */
function ofStock(name: string, size: Given<Measure>, stock: Stock, cause: string): Derived {
    const own = size.value.tolerance.map(t => t.cause === `stock:${stock.key}` ? { ...t, cause } : t);
    return fromWords(name, { ticks: size.value.ticks, tolerance: inOrder(own) }, size.at);
}

function inOrder(tolerance: Tolerance): Tolerance {
    return [...tolerance].sort((a, b) => (a.cause < b.cause ? -1 : 1));
}
