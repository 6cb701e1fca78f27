import { inches, millimeters } from '../quantity/rational.ts';
import { TICKS_PER_INCH, type Ticks } from '../quantity/ticks.ts';
import type { Published } from './published.ts';

interface Diameter extends Published { readonly ticks: Ticks }

/** Shank of a wood screw by its number: 0.060" + 0.013" N. */
const SCREW_NUMBERS = [4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16, 18, 20, 24];
const TABLE_8_9: Published = { source: 'USDA FPL, Wood Handbook FPL-GTR-282 (2021), Table 8-9', mark: 'read' };

/** Undefined for a number the table does not have. */
export function screwShank(number: number): Diameter | undefined {
    if (!SCREW_NUMBERS.includes(number)) return undefined;
    return { ticks: inches((60 + 13 * number) / 1000), ...TABLE_8_9 };
}

const WIRE: Published = { source: 'Steel wire gauge (finish-nail gauges)', mark: 'read' };
const FINISH_NAILS: Readonly<Record<number, Diameter>> = {
    15: { ticks: millimeters('1.83'), ...WIRE },
    16: { ticks: millimeters('1.59'), ...WIRE },
    18: { ticks: millimeters('1.21'), source: 'Steel wire gauge, 18 ga', mark: 'from memory' },
    23: { ticks: millimeters('0.64'), ...WIRE },
};

/** Wire of a finish nail by its gauge. (Steel wire gauge, not the gauge of electric wire.) */
export function finishNail(gauge: number): Diameter | undefined {
    return Object.hasOwn(FINISH_NAILS, gauge) ? FINISH_NAILS[gauge] : undefined;
}

/**
 * What holds a wood screw in side grain, reference value in pounds for each inch of thread in the wood, from the NDS's own specific
 * gravity and the diameter of the shank. Not in end grain, and before the factors of the NDS. AWC NDS 2018, Eq. 12.2-2.
 */
export const screwWithdrawal = (gravity: number, diameter: Ticks): number => 2850 * gravity ** 2 * (diameter / TICKS_PER_INCH);
export const WITHDRAWAL: Published = { source: 'AWC NDS 2018, Eq. 12.2-2', mark: 'read' };

/** The factor for a load that stays, such as a ceiling beam's own weight. AWC NDS 2018, Table 2.3.2. */
export const PERMANENT_LOAD = 0.9;

/** How much of a wood screw's length has thread. AWC NDS 2018, Appendix L, from memory. */
export const THREADED_SHARE = 2 / 3;
