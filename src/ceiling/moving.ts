import { equilibrium, FIBERBOARD_GROWS, humidityFor } from '../data/moisture.ts';
import { MOVEMENT, movementOf } from '../data/movement.ts';
import type { Room, Stock } from '../job/model.ts';
import type { Seasons } from '../job/seasons.ts';
import { grouped } from '../plain/groups.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Ceiling, Line, WholeSection } from './model.ts';

/** Moisture content of the wood in a room over a year, in percent. */
export interface Year {
    readonly said: Seasons;
    readonly driest: number; readonly dampest: number;
    /** Half way between them. */
    readonly middle: number;
    /** When it goes up: as it is said, or half way. */
    readonly start: number;
    /** Relative humidity at which wood has so much: what fiberboard goes by. */
    readonly startHumidity: number;
}

/** Undefined where neither the room nor its house says its seasons. */
export function yearOf({ seasons: own, job }: Pick<Room, 'seasons' | 'job'>): Year | undefined {
    const said = own ?? job.seasons;
    if (!said) return undefined;
    const { driest: { value: dry }, dampest: { value: damp }, goesUpAt } = said;
    const driest = equilibrium(dry.celsius, dry.humidity), dampest = equilibrium(damp.celsius, damp.humidity), middle = (driest + dampest) / 2;
    const start = goesUpAt?.value ?? middle;
    return { said, driest, dampest, middle, start, startHumidity: humidityFor(start, (dry.celsius + damp.celsius) / 2) };
}

/** Whether wood of so much moisture is damper or drier than it ever gets in the room, by more than a meter shows. */
export function isOffSeason(percent: number, { driest, dampest }: Year): boolean {
    return percent > dampest + 0.05 || percent < driest - 0.05;
}

/** What a width is other in the driest and in the dampest season than when it went up, in ticks. */
interface Change { readonly driest: number; readonly dampest: number }

/** How a board moves across its width. Undefined of a wood that nothing is said of. Flatsawn, unless `quartersawn` is asked for: that moves less. */
export function widthChange(width: Ticks, stock: Stock | undefined, year: Year, sawn: 'flatsawn' | 'quartersawn' = 'flatsawn'): Change | undefined {
    const species = stock?.species?.value;
    if (species === 'mdf') return fiberboardChange(width, year);
    const row = species !== undefined && Object.hasOwn(MOVEMENT, species) ? MOVEMENT[species] : undefined;
    if (!row) return undefined;
    const to = (percent: number): number => movementOf(width, sawn === 'flatsawn' ? row.tangential : row.radial, year.start, percent);
    return { driest: to(year.driest), dampest: to(year.dampest) };
}

/** Fiberboard moves alike in length and width, by the humidity of the air: what it does at most. Wood hardly moves in length. */
export function fiberboardChange(length: Ticks, { said: { driest, dampest }, startHumidity }: Year): Change {
    const to = (humidity: number): number => length * FIBERBOARD_GROWS.share * (humidity - startHumidity) / 0.30;
    return { driest: to(driest.value.humidity), dampest: to(dampest.value.humidity) };
}

/** The joints of one kind of beam that seasons open and close. */
export interface Moving {
    readonly lines: readonly Line[];
    readonly section: WholeSection;
    /** What sets how wide the beam is inside, and its bottom. */
    readonly inside: Stock; readonly bottom: Stock;
    /** Whether both move alike, if they are sawn alike. */
    readonly alike: boolean;
    /**
     * The play of the bottom between the sides, in all: as built, and then; `unlike`: so much more or less if one is flatsawn and the other quartersawn. Null
     * where it lies under them.
     */
    readonly play: Change & { readonly built: Ticks; readonly unlike: number } | null;
    /** What one butt joint opens where a bottom stands against the edge of that of these lines, if nothing holds it; less than nothing: it is pressed. */
    readonly butt: Change & { readonly at: readonly string[] } | null;
    /** What one corner of a coffer opens as the beam gets narrower. */
    readonly corner: Change;
}

/** By kind of beam, in the order of the lines. Beams whose woods are not said, and solid ones, are left out. */
export function movingOf(ceiling: Ceiling, year: Year): Moving[] {
    return [...grouped(ceiling.lines, ({ section }) => section.profile.key).values()].flatMap((lines): Moving[] => {
        const { section } = lines[0]!, { profile: { blocking, spacers, bottom: part } } = section;
        const inside = (blocking?.fit.value === 'bench-box' ? spacers ?? part : blocking)?.stock?.value, bottom = part?.stock?.value;
        const wall = inside && widthChange(section.innerWidth.ticks, inside, year), board = bottom && widthChange(section.bottomWidth.ticks, bottom, year);
        if (!wall || !board) return [];
        const opened = (by: number): number => 0 - by / 2, fit = part!.place.value === 'under-sides' ? undefined : section.fit?.ticks;
        const at = lines.filter(({ name, passes }) => passes.some(({ cuts, of }) => !cuts && isCutBy(of, name, ceiling))).map(({ name }) => name);
        const slow = widthChange(section.bottomWidth.ticks, bottom, year, 'quartersawn')!;
        return [{
            lines, section, inside, bottom, alike: inside.species?.value === bottom.species?.value,
            play: fit === undefined ? null : {
                built: fit, driest: fit + wall.driest - board.driest, dampest: fit + wall.dampest - board.dampest,
                unlike: Math.max(Math.abs(board.driest - slow.driest), Math.abs(board.dampest - slow.dampest)),
            },
            butt: at.length > 0 ? { driest: opened(board.driest), dampest: opened(board.dampest), at } : null,
            corner: { driest: opened(wall.driest), dampest: opened(wall.dampest) },
        }];
    });
}

/** Whether a line's bottom is cut where it meets that one. */
function isCutBy(line: string, by: string, { lines }: Ceiling): boolean {
    return lines.some(({ name, passes }) => name === line && passes.some(({ of, cuts }) => of === by && cuts));
}
