import type { MeasuredBoard, Room, Stock } from '../job/model.ts';
import type { OnHand } from '../job/on-hand.ts';
import type { Part } from '../job/part.ts';
import type { Given } from '../provenance/source.ts';
import { inches } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import { nameInRoom } from '../takeoff/ids.ts';
import type { Piece } from '../takeoff/model.ts';

/** What a board may differ from its stock by and still be cut as if it were of it. Common practice, no source. */
export const PASSES: Ticks = inches('1/64');
/** Of what nobody sees and nothing is mitered to. Common practice, no source. */
const HIDDEN_PASSES: Ticks = inches('1/32');

/** What is wrong with a board for a piece. */
export type Wrong = 'too-narrow' | 'too-thin' | 'too-thick' | 'too-short' | 'groove-off';

const UNSEEN: ReadonlySet<Part> = new Set<Part>(['blocking', 'spacer', 'cleat']);

/** How far its rabbet is off the one of its stock's pieces that it comes nearest to, and how much of its width that takes. */
interface RabbetOff { readonly off: Ticks; readonly takes: Ticks }

export function rabbetOff({ rabbet, stock }: MeasuredBoard, pieces: readonly Piece[]): RabbetOff | undefined {
    if (!rabbet) return undefined;
    const drawn = pieces.filter(piece => piece.stock.key === stock?.value.key).flatMap(({ work }) => work.flatMap(one => (one.kind === 'rabbet' ? [one] : [])));
    const off = (width: Ticks): Ticks => Math.abs(width - rabbet.value);
    const nearest = drawn.reduce<typeof drawn[number] | undefined>((best, one) => (!best || off(one.width) < off(best.width) ? one : best), undefined);
    return nearest && { off: rabbet.value - nearest.width, takes: nearest.height };
}

interface AtHand { readonly board: MeasuredBoard; readonly stock: Stock; readonly rabbet: RabbetOff | undefined; readonly endTrim: Ticks }

/** What is first in the way of cutting a piece out of a board; undefined where it will do. A rabbet that is off is ripped away for what has none. */
export function wrongFor(piece: Piece, { board: { width, thickness, length }, stock, rabbet, endTrim }: AtHand): Wrong | undefined {
    const grooved = piece.work.some(({ kind }) => kind === 'rabbet'), passes = UNSEEN.has(piece.part) ? HIDDEN_PASSES : PASSES;
    if (grooved && rabbet && Math.abs(rabbet.off) > PASSES) return 'groove-off';
    const wide = width?.value ?? stock.width?.value.ticks, needed = piece.width + (piece.scribe ?? 0);
    const usable = wide === undefined ? undefined : wide - (rabbet && !grooved ? rabbet.takes : 0);
    if (usable !== undefined && needed - usable > (piece.ripped ? 0 : passes)) return 'too-narrow';
    const thick = thickness && stock.thickness ? thickness.value - stock.thickness.value.ticks : 0;
    // spacers are cut to height and width
    if (piece.part !== 'spacer' && Math.abs(thick) > passes) return thick > 0 ? 'too-thick' : 'too-thin';
    return length && piece.cutOverall > length.value - endTrim ? 'too-short' : undefined;
}

/** Names of the pieces that were cut from a board that is no good for them, as it was measured: they are to be cut again. */
export function spoiledAtBench({ measuredBoards = [] }: Partial<Pick<Room, 'measuredBoards'>>, pieces: readonly Piece[]): Set<string> {
    const spoiled = new Set<string>();
    for (const { length: _, ...board } of measuredBoards) {
        if (!board.stock || board.into.length === 0) continue;
        const into = new Set(board.into.map(({ value }) => value)), { value: stock } = board.stock;
        const atHand = { board, stock, rabbet: rabbetOff(board, pieces), endTrim: 0 };
        for (const piece of pieces) if (piece.stock.key === stock.key && into.has(nameInRoom(piece)) && wrongFor(piece, atHand)) spoiled.add(nameInRoom(piece));
    }
    return spoiled;
}

/**
 * What is on hand of a stock with its boards as they were measured. One that nothing was cut from is there: it is the shortest of those on hand that are at
 * least as long as it, else it is there besides them. It is as long as it was measured; where it is narrower than its stock it is only ripped; one that is
 * too thin, too thick or has a groove that is off is not reckoned with, since it will do for some pieces only.
 */
export function asMeasured(onHand: readonly Given<OnHand>[], boards: readonly MeasuredBoard[], stock: Stock): Given<OnHand>[] {
    let there = [...onHand];
    for (const { name, at, length, width, thickness, rabbet, into } of boards) {
        if (!length || into.length > 0) continue;
        const boards = there.filter(({ value }) => value.count > 0 && value.measured === undefined && value.width === undefined);
        const longer = boards.filter(({ value }) => value.length >= length.value);
        const shortest = longer.reduce<Given<OnHand> | undefined>((best, one) => (!best || one.value.length < best.value.length ? one : best), undefined);
        if (shortest) there = there.with(there.indexOf(shortest), { ...shortest, value: { ...shortest.value, count: shortest.value.count - 1 } });
        there = there.filter(({ value }) => value.count > 0);
        const off = (found: Given<Ticks> | undefined, meant: Ticks | undefined): number => (found && meant !== undefined ? found.value - meant : 0);
        if (rabbet || Math.abs(off(thickness, stock.thickness?.value.ticks)) > PASSES) continue;
        const worth = shortest?.value.worth, isNarrow = off(width, stock.width?.value.ticks) < -PASSES;
        const found = { ...worth && { worth }, ...isNarrow && { width: width!.value } };
        there.push({ at, said: true, value: { count: 1, length: length.value, measured: name, ...found } });
    }
    return there;
}
