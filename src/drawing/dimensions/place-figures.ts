import type { Anchor } from '../display-list.ts';
import { textWidth } from '../text/measure-text.ts';

/**
 * Where the figures of a dimension string go so that no two touch. Positions run along the string in the direction
 * in which its figures are read.
 */
export interface Placed {
    readonly text: string;
    /** Position of the text's anchor. */
    readonly at: number; readonly anchor: Anchor;
    /** 0: on the line; 1, 2 …: raised off it, with a leader from the middle of its stretch. */
    readonly row: number;
    readonly leader: number | null;
}

/** Air between a figure and what stands beside it. */
const AIR = 3;
/** From the last tick to a figure set outside. */
const OUTSIDE = 7;

/**
 * A figure stands over its stretch where that is long enough. The first and the last one that does not goes outside, the
 * rest are raised: in the middle of their stretch where they keep clear of each other, else as flags.
 * @param stops positions in points, rising; one figure a stretch between two of them; an empty figure is left out.
 */
export function placeFigures(stops: readonly number[], figures: readonly string[], size: number): readonly Placed[] {
    const stretches = figures.map((text, i) => ({ text, from: stops[i]!, to: stops[i + 1]!, width: textWidth(text, size), index: i })).filter(s => s.text !== '');
    const fits = (s: Stretch) => s.width + 2 * AIR <= s.to - s.from;
    const placed: Placed[] = stretches.filter(fits).map(s => ({ text: s.text, at: (s.from + s.to) / 2, anchor: 'middle', row: 0, leader: null }));
    const raised: Stretch[] = [];
    for (const s of stretches.filter(s => !fits(s))) {
        if (s.index === 0) placed.push({ text: s.text, at: s.from - OUTSIDE, anchor: 'end', row: 0, leader: null });
        else if (s.index === figures.length - 1) placed.push({ text: s.text, at: s.to + OUTSIDE, anchor: 'start', row: 0, leader: null });
        else raised.push(s);
    }
    return [...placed, ...(overMiddles(raised) ?? asFlags(raised))];
}

interface Stretch { readonly text: string; readonly from: number; readonly to: number; readonly width: number; readonly index: number }

const middleOf = (s: Stretch) => (s.from + s.to) / 2;

/** All in one row, each over the middle of its stretch; null where two would touch. */
function overMiddles(raised: readonly Stretch[]): readonly Placed[] | null {
    const clear = raised.every((s, i) => i === 0 || middleOf(s) - s.width / 2 >= middleOf(raised[i - 1]!) + raised[i - 1]!.width / 2 + AIR);
    return clear ? raised.map(s => ({ text: s.text, at: middleOf(s), anchor: 'middle', row: 1, leader: middleOf(s) })) : null;
}

/** Text begins behind the leader's end. Taken from the last to the first, each row above the flags it would cover: so no leader crosses a figure. */
function asFlags(raised: readonly Stretch[]): readonly Placed[] {
    const flags: { placed: Placed; end: number }[] = [];
    for (const s of [...raised].reverse()) {
        const pole = middleOf(s);
        const end = pole + AIR + s.width;
        const covered = flags.filter(flag => flag.placed.leader! < end + AIR);
        const row = 1 + Math.max(0, ...covered.map(flag => flag.placed.row));
        flags.push({ placed: { text: s.text, at: pole + AIR, anchor: 'start', row, leader: pole }, end });
    }
    return flags.map(flag => flag.placed);
}

/** How far the figures stick out before the first and after the last stop. */
export function overhang(placed: readonly Placed[], stops: readonly number[], size: number): { readonly before: number; readonly after: number } {
    const reach = placed.map(p => {
        const width = textWidth(p.text, size);
        const from = p.anchor === 'start' ? p.at : p.anchor === 'middle' ? p.at - width / 2 : p.at - width;
        return [from, from + width] as const;
    });
    return {
        before: Math.max(0, ...reach.map(([from]) => stops[0]! - from)),
        after: Math.max(0, ...reach.map(([, to]) => to - stops.at(-1)!)),
    };
}
