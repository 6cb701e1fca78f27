import { flanksOf } from '../ceiling/flanks.ts';
import type { Layout, Section } from '../ceiling/model.ts';
import { creditOf } from '../cutting/as-cut.ts';
import type { JobSettings, MeasuredBoard, Room, Stock } from '../job/model.ts';
import type { Part } from '../job/part.ts';
import { grouped } from '../plain/groups.ts';
import type { Source } from '../provenance/source.ts';
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

/** A measured board beside its stock: what it is spoiled for, and where it may still go. */
export interface BoardAtBench {
    readonly board: MeasuredBoard & { readonly stock: NonNullable<MeasuredBoard['stock']> };
    /** By how much it is off, more than nothing where there is too much; not said of what is as it should be. */
    readonly off: { readonly width?: Ticks; readonly thickness?: Ticks; readonly rabbet?: Ticks };
    /** The pieces of its stock that it will not do for, by what is first in the way. */
    readonly spoils: ReadonlyMap<Wrong, readonly Piece[]>;
    /** Those that it will do for and that are still to be cut, the longest first; and what of them can come out of its length, where that was measured. */
    readonly mayGo: readonly Piece[];
    readonly takes: readonly Piece[];
    /** Pieces that were cut from it and are spoiled by it, and what is left that each can be cut from again. */
    readonly recut: readonly { readonly piece: Piece; readonly wrong: Wrong; readonly from: Leftover | null }[];
}

/** Wood that is there already: a board on hand, or what is left of one that is cut. */
export interface Leftover { readonly length: Ticks; readonly what: 'on hand' | 'left'; readonly at: Source }

/** Every measured board of a room whose stock is known. */
export function boardsAtBench({ room, sections }: Pick<Layout, 'room' | 'sections'>, pieces: readonly Piece[], job: JobSettings): BoardAtBench[] {
    const credit = creditOf(room, pieces), left = leftoversIn(room);
    return room.measuredBoards.flatMap((board): BoardAtBench[] => {
        const { stock } = board;
        if (!stock) return [];
        const own = pieces.filter(piece => piece.stock.key === stock.value.key), rabbet = rabbetOff(board, stock.value, sections);
        const off = offOf(board, stock.value), atHand = { board, stock: stock.value, rabbet, endTrim: job.endTrim.value };
        const wrongs = new Map(own.map(piece => [piece, wrongFor(piece, atHand)])), into = new Set(board.into.map(({ value }) => value));
        const spoils = grouped(own.filter(piece => wrongs.get(piece)), piece => wrongs.get(piece)!);
        const mayGo = own.filter(piece => !wrongs.get(piece) && credit.wanted(nameInRoom(piece)) > 0).sort((a, b) => b.cutOverall - a.cutOverall);
        const recut = own.flatMap(piece => {
            const why = into.has(nameInRoom(piece)) ? wrongs.get(piece) : undefined;
            return why ? [{ piece, wrong: why, from: takeLeftover(left, piece, stock.value, job.kerf.value) }] : [];
        });
        const offs = { ...off, ...rabbet && { rabbet: rabbet.off } };
        return [{ board: { ...board, stock }, off: offs, spoils, mayGo, takes: takenFrom(board, mayGo, job), recut }];
    });
}

function offOf({ width, thickness }: MeasuredBoard, stock: Stock): BoardAtBench['off'] {
    const off = (found: Ticks | undefined, meant: Ticks | undefined): Ticks | undefined =>
        (found === undefined || meant === undefined || found === meant ? undefined : found - meant);
    const [wide, thick] = [off(width?.value, stock.width?.value.ticks), off(thickness?.value, stock.thickness?.value.ticks)];
    return { ...wide !== undefined && { width: wide }, ...thick !== undefined && { thickness: thick } };
}

/** How far its rabbet is off the one of its stock's sides that it comes nearest to, and how much of its width that takes. */
interface RabbetOff { readonly off: Ticks; readonly takes: Ticks }

function rabbetOff({ rabbet }: MeasuredBoard, stock: Stock, sections: Layout['sections']): RabbetOff | undefined {
    if (!rabbet) return undefined;
    const drawn = [...sections.values()].flatMap(flanksOf)
        .flatMap(({ profile: { sides } }: Section) => (sides?.stock?.value.key === stock.key && sides.rabbet ? [sides.rabbet.value] : []));
    const nearest = drawn.sort((a, b) => Math.abs(a.width.ticks - rabbet.value) - Math.abs(b.width.ticks - rabbet.value))[0];
    return nearest && { off: rabbet.value - nearest.width.ticks, takes: nearest.height.ticks };
}

const UNSEEN: ReadonlySet<Part> = new Set<Part>(['blocking', 'spacer', 'cleat']);

interface AtHand { readonly board: MeasuredBoard; readonly stock: Stock; readonly rabbet: RabbetOff | undefined; readonly endTrim: Ticks }

/** What is first in the way of cutting a piece out of a board; undefined where it will do. A rabbet that is off is ripped away for what has none. */
function wrongFor(piece: Piece, { board: { width, thickness, length }, stock, rabbet, endTrim }: AtHand): Wrong | undefined {
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

/** As many of them as come out of a board of which the length is known, the longest first. */
function takenFrom({ length }: MeasuredBoard, pieces: readonly Piece[], { endTrim, kerf }: JobSettings): Piece[] {
    if (!length) return [];
    let left = length.value - endTrim.value;
    return pieces.filter(piece => {
        const fits = piece.cutOverall <= left;
        if (fits) left -= piece.cutOverall + kerf.value;
        return fits;
    });
}

type Left = { length: Ticks } & Omit<Leftover, 'length'> & { readonly stock: string };

/** What the room says is left of boards that are cut, and what its stocks have on hand. */
function leftoversIn({ cutBoards, measuredBoards }: Room): Left[] {
    const stocks = new Map(measuredBoards.flatMap(({ stock }) => (stock ? [[stock.value.key, stock.value] as const] : [])));
    return [
        ...cutBoards.flatMap(({ left = [], stock }) => left.map(({ value, at }) => ({ length: value, what: 'left' as const, at, stock: stock.value.key }))),
        ...[...stocks.values()].flatMap(({ onHand, key }) => onHand.flatMap(({ value: { count, length }, at }) => Array.from({ length: Math.min(count, MOST_ON_HAND) }, () => ({ length, what: 'on hand' as const, at, stock: key })))),
    ];
}
/** More alike make no difference to the few pieces that a board spoils. */
const MOST_ON_HAND = 100;

/** The shortest that it can be cut from, which is then so much shorter. */
function takeLeftover(left: readonly Left[], piece: Piece, stock: Stock, kerf: Ticks): Leftover | null {
    const fits = left.filter(one => one.stock === stock.key && one.length >= piece.cutOverall);
    const best = fits.reduce<Left | undefined>((shortest, one) => (!shortest || one.length < shortest.length ? one : shortest), undefined);
    if (!best) return null;
    const { length, what, at } = best;
    best.length -= piece.cutOverall + kerf;
    return { length, what, at };
}
