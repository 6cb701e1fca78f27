import type { Zone } from './ways.ts';

/** Below this two places are one: less than any mark of a tape. */
const HAIR = 1 / 16;

/** Zones as they are if a line at `center` moves by `slope` times something. Null: it cannot move, and stands in one. */
export function seenFrom(zones: readonly Zone[], center: number, slope: number): Zone[] | null {
    if (slope === 0) return inZone(zones, center) ? null : [];
    return zones.map(({ from, to, what }) => {
        const ends = [(from - center) / slope, (to - center) / slope];
        return { from: Math.min(...ends), to: Math.max(...ends), what };
    });
}

/** The zone that a place is in. */
export function inZone(zones: readonly Zone[], place: number): Zone | undefined {
    return zones.find(({ from, to }) => place > from + HAIR && place < to - HAIR);
}

/** The places nearest to 0, below it and above, that no zone holds, none farther than `most`; 0 alone where it is free. Zones in any order. */
export function nearestFree(zones: readonly Zone[], most: number): number[] {
    const merged = together(zones), here = inZone(merged, 0);
    if (!here) return [0];
    return [here.from, here.to].filter(place => Math.abs(place) <= most);
}

/** Zones that overlap as one, from the lowest on. */
function together(zones: readonly Zone[]): Zone[] {
    const merged: Zone[] = [];
    for (const zone of [...zones].sort((a, b) => a.from - b.from)) {
        const last = merged.at(-1);
        // zones that only touch leave the place between them free
        if (last && zone.from < last.to - HAIR) merged[merged.length - 1] = { ...last, to: Math.max(last.to, zone.to) };
        else merged.push(zone);
    }
    return merged;
}
