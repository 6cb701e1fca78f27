import type { Direction, FoundJoist, Joists, Room } from '../job/model.ts';
import { kept } from '../plain/kept.ts';
import type { Ticks } from '../quantity/ticks.ts';

/** The joists over a room, where they are known. */
export interface LaidJoists {
    readonly said: Joists;
    readonly runs: Direction;
    /** From the west or the north. */
    readonly all: readonly Joist[];
    /** What was found and leads to no joist: it lies outside of the room, or nothing of the row is near it. */
    readonly astray: readonly { readonly found: FoundJoist; readonly why: 'outside' | 'none-near' }[];
}
/** One joist, or two side by side: x of the center of one that runs north-south, y of one that runs east-west; and half of its width. */
export interface Joist { readonly center: Ticks; readonly half: Ticks; readonly found?: FoundJoist }

/** More than any house has; a slip in a length would else lay out joists without end. */
const MOST = 4000;

/**
 * Where the joists are: the row from its first one on, with what was found to differ. What is found is said of the nearest joist of the row
 * that nothing was said of yet, half of the spacing away at most.
 */
export const joistsOf: (ceiling: { readonly room: Room; readonly width: Ticks; readonly length: Ticks }) => LaidJoists | undefined = kept(ceiling => {
    const { room: { joists: said }, width, length } = ceiling;
    if (!said?.first || said.width === undefined || said.every.value <= 0) return undefined;
    const runs = said.running.value, across = runs === 'north-south' ? width : length, isFar = said.from === 'east' || said.from === 'south';
    const first = said.first.value, every = said.every.value, count = Math.floor((across - first) / every) + 1;
    if (count > MOST) return undefined;
    const half = said.width / 2, place = (from: Ticks): Ticks => (isFar ? across - from : from);
    const row: (Joist | null)[] = Array.from({ length: Math.max(0, count) }, (_, i) => ({ center: place(first + i * every), half }));
    const taken = new Set<number>(), extra: Joist[] = [], astray: LaidJoists['astray'][number][] = [];
    for (const found of said.found) {
        const i = Math.round((found.value - first) / every), off = Math.abs(found.value - first - i * every);
        const isNear = row[i] !== undefined && !taken.has(i) && off * 2 <= every;
        const joist: Joist = { center: place(found.value), half: found.how === 'doubled' ? said.width : half, found };
        if (found.value > across) astray.push({ found, why: 'outside' });
        else if (found.how === 'extra') extra.push(joist);
        else if (!isNear) astray.push({ found, why: 'none-near' });
        else {
            taken.add(i);
            row[i] = found.how === 'missing' ? null : joist;
        }
    }
    const all = [...row.flatMap(joist => joist ?? []), ...extra].sort((a, b) => a.center - b.center);
    return { said, runs, all, astray };
});
