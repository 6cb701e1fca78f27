import type { Show } from '../quantity/print-length.ts';
import { TICKS_PER_INCH } from '../quantity/ticks.ts';
import { drawnFractions } from './figures.ts';
import { POINTS_PER_INCH } from './paper.ts';

/** Paper over real, with its name. */
export interface Scale { readonly ratio: number; readonly label: string }

/** A draftsman's scale: so many inches of paper a foot. */
function toTheFoot(inches: number, label: string): Scale {
    return { ratio: inches / 12, label: `${drawnFractions(label)}" = 1'-0"` };
}
function toOne(times: number): Scale {
    return { ratio: 1 / times, label: `1 : ${times}` };
}

/** The scales on a draftsman's rule, large to small; metric ones of ISO 5455 with the 1 : 25 that building drawings use beside them. */
const PLAN_SCALES: Readonly<Record<Show, readonly Scale[]>> = {
    'feet-inches': [
        toTheFoot(1.5, '1 1/2'), toTheFoot(1, '1'), toTheFoot(3 / 4, '3/4'), toTheFoot(1 / 2, '1/2'), toTheFoot(3 / 8, '3/8'), toTheFoot(1 / 4, '1/4'),
        toTheFoot(3 / 16, '3/16'), toTheFoot(1 / 8, '1/8'), toTheFoot(3 / 32, '3/32'), toTheFoot(1 / 16, '1/16'),
    ],
    millimeters: [10, 20, 25, 50, 100, 200].map(toOne),
};
const SECTION_SCALES: Readonly<Record<Show, readonly Scale[]>> = {
    'feet-inches': [{ ratio: 1, label: 'full size' }, { ratio: 1 / 2, label: 'half size' }, toTheFoot(3, '3'), toTheFoot(1.5, '1 1/2'), toTheFoot(1, '1')],
    millimeters: [1, 2, 5, 10, 20].map(toOne),
};

export function planScales(show: Show): readonly Scale[] {
    return PLAN_SCALES[show];
}
export function sectionScales(show: Show): readonly Scale[] {
    return SECTION_SCALES[show];
}

export function pointsPerTick(scale: Scale): number {
    return scale.ratio * POINTS_PER_INCH / TICKS_PER_INCH;
}

/** The largest of the scales that fits; where none does, the drawing is shrunk until it fits and says that it has no scale. */
export function largestThatFits(scales: readonly Scale[], fits: (pointsPerTick: number) => boolean): Scale {
    const found = scales.find(scale => fits(pointsPerTick(scale)));
    if (found !== undefined) return found;
    let ratio = scales.at(-1)!.ratio;
    for (let tries = 0; tries < MOST_TRIES; tries++) {
        ratio *= 0.8;
        if (fits(pointsPerTick({ ratio, label: '' }))) break;
    }
    return { ratio, label: 'not to scale' };
}
/** Enough to bring a room of a million feet onto the sheet. */
const MOST_TRIES = 100;
