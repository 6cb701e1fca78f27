import { asMeasured } from '../cutting/at-bench.ts';
import { uncutOf } from '../cutting/rest.ts';
import type { Room, Stock, Trim } from '../job/model.ts';
import { beamsOf, perimetersOf } from '../job/perimeters.ts';
import { knownOf, leastKnown, recordWords, type Recorded } from '../job/status.ts';
import type { Given, Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';

/** Boards that are there, alike and known alike, or one that was measured at the bench, by its name. */
interface BoardsAtHand {
    readonly stock: Stock; readonly board?: string; readonly count: number;
    readonly sizes: readonly Ticks[];
    readonly at: Source; readonly record: Recorded;
}
interface CutBoard { readonly stock: Stock; readonly measured?: string | undefined; readonly length: Ticks; readonly width?: Ticks | undefined }

/**
 * The boards on hand that a room's pieces may be cut from: those that were measured one by one, the others as the stock has them. None that is cut up
 * already.
 */
export function boardsAtHand(room: Room): BoardsAtHand[] {
    const stocks = new Map(stocksOf(room).map(stock => [stock.value.key, stock]));
    return [...stocks.values()].flatMap(({ value: stock, at }): BoardsAtHand[] => {
        const measured = room.measuredBoards.filter(board => board.stock?.value.key === stock.key && board.length && board.into.length === 0);
        const others = asMeasured(uncutOf(stock, [room]), measured, stock).filter(({ value }) => value.measured === undefined && value.count > 0);
        return [
            ...others.map(({ value, at: said }): BoardsAtHand => {
                const sizes = [value.length, ...value.width === undefined ? [] : [value.width]];
                return { stock, count: value.count, sizes, at: said.uri === room.at.uri ? said : at, record: value };
            }),
            ...measured.map((board): BoardsAtHand => {
                const sizes = [board.length, board.width, board.thickness].flatMap(size => (size ? [size.value] : []));
                return { stock, board: board.name, count: 1, sizes, at: board.at, record: board };
            }),
        ];
    });
}

function stocksOf(room: Room): Given<Stock>[] {
    const profiles = new Set(beamsOf(room).map(({ value }) => value));
    const parts = [...profiles].flatMap(({ blocking, spacers, sides, otherSide, cleats, bottom, trim, under, solid, back }) =>
        [blocking, spacers, sides, otherSide, cleats, bottom, trim, under, solid, back]);
    return [...parts, ...perimetersOf(room), room.trim].flatMap(part => part?.stock ?? []);
}

/** A crown of which is said what it reaches out and down, with how that is known, by whose it is. */
export function crownsSaid(room: Room): { readonly of: string; readonly sizes: readonly Ticks[]; readonly at: Source; readonly record: Recorded }[] {
    const profiles = new Set(beamsOf(room).map(({ value }) => value));
    const all: [string, Trim | undefined][] = [...[...profiles].map(({ name, trim }): [string, Trim | undefined] => [name, trim]), ['the room', room.trim]];
    return all.flatMap(([of, trim]) => {
        const sizes = [trim?.projects, trim?.drops].flatMap(size => (size ? [size] : []));
        return sizes.length > 0 ? [{ of, sizes: sizes.map(({ value }) => value.ticks), at: sizes[0]!.at, record: trim?.springKnown ?? {} }] : [];
    });
}

/**
 * How the length of a board on hand is known that a plan cuts: of one that was measured by its name, of any other by its stock's lines, where several have
 * such a board by the one that is known least. Undefined of one that no line has.
 */
export function boardRecord(rooms: readonly Room[], { stock, measured, length, width }: CutBoard): Recorded | undefined {
    if (measured !== undefined) {
        return rooms.flatMap(room => room.measuredBoards).find(board => board.name === measured && board.stock?.value.key === stock.key);
    }
    const alike = stock.onHand.filter(({ value }) => value.length === length && value.width === width && value.measured === undefined && value.count > 0);
    return leastKnown(alike.map(({ value }) => ({ known: knownOf(value).known, record: value })))?.record;
}

/** The same in words, where it is said. */
export function boardKnownWords(rooms: readonly Room[], board: CutBoard): string {
    const record = boardRecord(rooms, board);
    return record ? recordWords(record) : '';
}
