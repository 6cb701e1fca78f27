import { inches, millimeters } from '../quantity/rational.ts';
import { TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';
import type { Published } from './published.ts';

/** The flat beech splines of a plate joiner. */
interface Biscuit extends Published {
    readonly length: Ticks;
    readonly width: Ticks;
    readonly thickness: Ticks;
}

const TRADE: Published = { source: 'Plate-joiner spline sizes', mark: 'read' };
const biscuit = (length: number, width: number): Biscuit =>
    ({ length: millimeters(length), width: millimeters(width), thickness: millimeters(4), ...TRADE });

/** `#20` is also printed as 60 x 23 mm; the slot, which is what has to fit, is the same. */
const BISCUITS: Readonly<Record<string, Biscuit>> = { '#0': biscuit(47, 15), '#10': biscuit(53, 19), '#20': biscuit(56, 23) };
export const BISCUIT_SIZES: readonly string[] = Object.keys(BISCUITS);

/** By its size as it is written, `#10`. */
export function biscuitOf(size: string): Biscuit | undefined {
    return Object.hasOwn(BISCUITS, size) ? BISCUITS[size] : undefined;
}

/** Usual cutter, 100 mm across, and what a slot is cut deeper than half of the biscuit. */
export const CUTTER_RADIUS: Ticks = millimeters(50);
const SLOT_CLEARANCE: Ticks = inches('1/32');

export function slotDepth(biscuit: Biscuit): Ticks {
    return biscuit.width / 2 + SLOT_CLEARANCE;
}

/**
 * Length of the slot at the surface of the wood, plunged without sliding: the chord 2 sqrt(2 R d - d^2) of the cutter
 * at depth d, to the next whole tick up. It is longer than the biscuit, and it is the slot that must fit on the board.
 */
export function slotLength(biscuit: Biscuit): Ticks {
    const d = slotDepth(biscuit) / TICKS_PER_MM;
    const r = CUTTER_RADIUS / TICKS_PER_MM;
    return Math.ceil(2 * Math.sqrt(2 * r * d - d * d) * TICKS_PER_MM);
}

/** Least wood between a slot and an edge, and between two slots. */
export const SLOT_MARGIN = { ticks: inches('3/16'), source: 'common practice, no source', mark: 'common practice, no source' } as const;
