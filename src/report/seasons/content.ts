import { equilibrium, FIBERBOARD_GROWS } from '../../data/moisture.ts';
import { MOVEMENT } from '../../data/movement.ts';
import { citation } from '../../data/published.ts';
import type { Ceiling } from '../../ceiling/model.ts';
import { movingOf, widthChange, yearOf, type Moving, type Year } from '../../ceiling/moving.ts';
import { inches } from '../../quantity/rational.ts';
import type { TakeOff } from '../../takeoff/model.ts';

/** What seasons do to a room. */
export interface RoomSeasons {
    readonly year: Year;
    readonly moving: readonly Moving[];
    /** Each wood of the room with the source of how it moves, and what a board of 6" does over the year. */
    readonly woods: readonly { readonly wood: string; readonly source: string; readonly swing: number }[];
    /** Names of stocks of which no wood is said, or one that no table has. */
    readonly unknown: readonly string[];
    /**
     * How wet the boards may be when they go up: no joint then stands open by more than 1/32" after the first winter, and no board is damper than it ever
     * gets. Null where no wood is known.
     */
    readonly startAtMost: number | null;
    /** The same in a room that is kept at 35 % in winter. */
    readonly humidified: number;
    /** What opens most in the driest season, and by how much. */
    readonly opensMost: { readonly what: 'butt' | 'corner'; readonly by: number } | null;
}

/** What a joint may stand open after the first heating season. Common practice, no source. */
const MOST = inches('1/32');
const KEPT = 0.35;

/** Undefined where neither the room nor its house says its seasons. */
export function seasonsContent(ceiling: Ceiling, { pieces }: TakeOff): RoomSeasons | undefined {
    const year = yearOf(ceiling.room);
    if (!year) return undefined;
    const moving = movingOf(ceiling, year), stocks = [...new Map(pieces.map(({ stock }) => [stock.key, stock])).values()];
    const woods = new Map(stocks.flatMap(stock => {
        const change = widthChange(inches('6'), stock, year), wood = stock.species?.value;
        const published = wood === 'mdf' ? FIBERBOARD_GROWS : MOVEMENT[wood ?? ''];
        return change && wood && published ? [[wood, { wood, source: citation(published), swing: change.dampest - change.driest }] as const] : [];
    }));
    const limits = moving.flatMap(({ section, inside, bottom, butt }) => {
        const boards = [{ width: section.innerWidth.ticks, stock: inside }, ...butt ? [{ width: section.bottomWidth.ticks, stock: bottom }] : []];
        return boards.flatMap(({ width, stock }) => {
            const row = MOVEMENT[stock.species?.value ?? ''];
            return row ? [year.driest + 2 * MOST / (width * row.tangential)] : [];
        });
    });
    const all = moving.flatMap(({ butt, corner }): NonNullable<RoomSeasons['opensMost']>[] =>
        [...butt ? [{ what: 'butt' as const, by: butt.driest }] : [], { what: 'corner', by: corner.driest }]);
    return {
        year, moving, woods: [...woods.values()], unknown: stocks.filter(stock => widthChange(inches('6'), stock, year) === undefined).map(({ name }) => name),
        startAtMost: limits.length > 0 ? Math.min(year.dampest, ...limits) : null, humidified: equilibrium(year.said.driest.value.celsius, KEPT),
        opensMost: all.reduce<RoomSeasons['opensMost']>((most, one) => (!most || one.by > most.by ? one : most), null),
    };
}

