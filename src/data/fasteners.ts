import { inches, millimeters } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
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
