import type { Show } from '../../quantity/print-length.ts';
import { TICKS_PER_INCH, TICKS_PER_MM } from '../../quantity/ticks.ts';
import { sizeFigure } from '../figures.ts';
import { textWidth } from '../text/measure-text.ts';
import type { ToleranceFigure } from './model.ts';

/** From ticks to points along the paper. */
export interface Axis { readonly left: number; readonly right: number; readonly zero: number; readonly pointsPerTick: number }

/** Kept free at both ends for the figures of bars that reach there, and for the wood and its name. */
const ENDS = { bare: 46, wood: 66 };
/** Between two figures of the rule. */
const AIR = 14;
/** Shown at least, so that a length of nothing has a place. */
const LEAST_SPAN: Readonly<Record<Show, number>> = { 'feet-inches': TICKS_PER_INCH / 32, millimeters: TICKS_PER_MM };

/** Wide enough for zero, for all bars and for the bounds of the zones near them. */
export function axisFor({ nominal, bars, zones, wood }: ToleranceFigure, left: number, right: number, show: Show): Axis {
    const marks = [0, nominal, ...bars.flatMap(bar => [bar.least, bar.most])];
    const reach = Math.max(...marks) - Math.min(...marks);
    const bounds = zones.flatMap(zone => [zone.from, zone.to])
        .filter(bound => Number.isFinite(bound) && Math.abs(bound) <= 2.5 * Math.max(reach, LEAST_SPAN[show]));
    const from = Math.min(...marks, ...bounds), to = Math.max(...marks, ...bounds, from + LEAST_SPAN[show]);
    const ends = wood ? ENDS.wood : ENDS.bare;
    const pointsPerTick = (right - left - 2 * ends) / (to - from);
    return { left, right, zero: left + ends - from * pointsPerTick, pointsPerTick };
}

export function along({ left, right, zero, pointsPerTick }: Axis, ticks: number): number {
    return Math.max(left, Math.min(right, zero + ticks * pointsPerTick));
}

interface Mark { readonly at: number; readonly text: string }

/** The finest first; an inch is divided no finer than a steel rule is. */
const STEPS: Readonly<Record<Show, readonly number[]>> = {
    'feet-inches': [64, 32, 16, 8, 4, 2, 1].map(part => TICKS_PER_INCH / part),
    millimeters: [0.1, 0.2, 0.5, 1, 2, 5, 10, 20].map(mm => mm * TICKS_PER_MM),
};

/** The marks of a rule laid on it: as fine as their figures leave room for. */
export function marksOn(axis: Axis, size: number, show: Show): readonly Mark[] {
    const { left, right, zero, pointsPerTick } = axis;
    for (const step of STEPS[show]) {
        const gap = step * pointsPerTick;
        const first = Math.ceil((left + 6 - zero) / gap), last = Math.floor((right - 6 - zero) / gap);
        if (last - first > 40) continue;
        const marks = Array.from(
            { length: Math.max(0, last - first + 1) }, (_, i) => ({ at: zero + (first + i) * gap, text: sizeFigure(Math.round((first + i) * step), show) }),
        );
        if (Math.max(0, ...marks.map(mark => textWidth(mark.text, size))) + AIR <= gap) return marks;
    }
    return [{ at: zero, text: '0' }];
}

/** How many times larger than it is a length is drawn, to two figures. */
export function exaggeration({ pointsPerTick }: Axis): number {
    const times = pointsPerTick * TICKS_PER_INCH / 72;
    const digits = 10 ** Math.max(0, Math.floor(Math.log10(times)) - 1);
    return times < 10 ? Math.round(times * 2) / 2 : Math.round(times / digits) * digits;
}
