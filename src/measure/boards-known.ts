import { PASSES } from '../cutting/at-bench.ts';
import type { Profile, Room, SizeOfStock, Stock } from '../job/model.ts';
import { beamsOf, perimetersOf } from '../job/perimeters.ts';
import { isBetter, leastKnown, type Known, type Recorded } from '../job/status.ts';
import { atKey } from '../plain/at-key.ts';
import type { Given, Source } from '../provenance/source.ts';
import type { Ticks } from '../quantity/ticks.ts';

/** A stock of which sizes of pieces follow, with how those of its sizes are known that do. */
interface StockKnown extends Omit<Recorded, 'status'> {
    readonly stock: Stock;
    /** Its width, where something of it is not ripped, and its thickness: as far as anything follows from them. */
    readonly sizes: readonly Ticks[];
    /** The words that bring it into the room. */
    readonly at: Source;
    /** Of the size that is known least: `assumed` where it is that of the published table. */
    readonly known: Known;
    /** It says itself how one of its sizes is known. */
    readonly says: boolean;
}
type Side = 'width' | 'thickness';
interface Use { readonly stock: Given<Stock> | undefined; readonly sides: readonly Side[] }

/** Every stock of a room's beams and of what runs along its walls, as they are said; not those that are only ripped into cleats, whose size is said there. */
export function stocksKnown(room: Room): StockKnown[] {
    const used = new Map<string, { readonly stock: Given<Stock>; readonly sides: Set<Side> }>();
    for (const { stock, sides } of usesIn(room)) {
        if (!stock) continue;
        const one = atKey(used, stock.value.key, () => ({ stock, sides: new Set<Side>() }));
        for (const side of sides) one.sides.add(side);
    }
    return [...used.values()].flatMap(({ stock: { value: stock, at }, sides }) => {
        const said = (['width', 'thickness'] as const).flatMap(side => (sides.has(side) && stock[side] ? [{ side, size: stock[side] }] : []));
        const worst = leastKnown(said.map(({ side, size }) => knownOf(size, foundAsSaid(room, stock, side))));
        const says = said.some(({ size }) => size.status?.said === true);
        return worst ? [{ stock, at, sizes: said.map(({ size }) => size.value.ticks), ...worst, says }] : [];
    });
}

function usesIn(room: Room): Use[] {
    const { trim } = room, around = perimetersOf(room), profiles = new Set(beamsOf(room).map(({ value }) => value));
    const whole = (part: { readonly stock?: Given<Stock>; readonly rip?: unknown } | undefined): Use =>
        ({ stock: part?.stock, sides: part?.rip ? ['thickness'] : ['width', 'thickness'] });
    const ofBeam = ({ blocking, spacers, sides, otherSide, bottom, trim: own, under, solid, back }: Profile): Use[] => [
        ...[blocking, sides, otherSide, bottom, own, under, solid].map(whole),
        { stock: spacers?.stock, sides: spacers?.rip ? [] : ['width'] }, { stock: back?.stock, sides: ['thickness'] },
    ];
    return [...[...profiles].flatMap(ofBeam), ...around.map(whole), whole(trim)];
}

/** The boards of which a side was measured at the bench and found as the stock says it. */
function foundAsSaid({ measuredBoards }: Room, stock: Stock, side: Side): readonly Recorded[] {
    const meant = stock[side]?.value.ticks ?? 0;
    return measuredBoards.filter(board => {
        const read = board.stock?.value.key === stock.key ? board[side] : undefined;
        return read && Math.abs(read.value - meant) <= PASSES;
    });
}

/** Two boards that were measured are as good as one that was measured twice. */
function knownOf({ said, status, on, by }: SizeOfStock, boards: readonly Recorded[]): Omit<Recorded, 'status'> & { readonly known: Known } {
    const known: Known = said ? status?.value ?? 'unsaid' : 'assumed', last = boards.findLast(board => board.status?.value === 'verified') ?? boards.at(-1);
    const bench = last?.status && (boards.length > 1 ? 'verified' : last.status.value);
    const record = bench && isBetter(bench, known) ? { known: bench, on: last.on, by: last.by } : { known, on, by };
    return { known: record.known, ...record.on && { on: record.on }, ...record.by && { by: record.by } };
}
