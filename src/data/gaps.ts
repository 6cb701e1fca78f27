import { TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../quantity/ticks.ts';
import { citation, type Published } from './published.ts';

/** The widest gap of a joint between wood and wood once it is installed, by the grade of the work. Of a joint's length 30 % at most may stand open so. */
export const FIELD_GAPS: Published & Readonly<Record<'premium' | 'custom' | 'economy', Ticks>> = {
    premium: 0.4 * TICKS_PER_MM, custom: 0.8 * TICKS_PER_MM, economy: 1.2 * TICKS_PER_MM,
    source: 'ANSI/AWI 0620-2018, 3.4, field gaps from wood to wood', mark: 'read',
};

/** The highest step from face to face of a flat joint between boards in one plane, by the grade of the work. */
export const FLUSHNESS: Published & Readonly<Record<'premium' | 'custom', Ticks>> = {
    premium: Math.round(0.012 * TICKS_PER_INCH), custom: Math.round(0.025 * TICKS_PER_INCH),
    source: 'Architectural Woodwork Standards, 1st ed. 2009, flushness of flat joints', mark: 'read',
};

/** How far installed work may be out of level or plumb, over so much: in all grades. */
export const LEVEL: Published & { readonly off: Ticks; readonly over: Ticks } = {
    off: 3.2 * TICKS_PER_MM, over: 2438 * TICKS_PER_MM, source: 'ANSI/AWI 0620-2018, 3.4, plumb and level', mark: 'read',
};

/** As a rule tells where its limits are from: the tape's marks nearest below them. */
export const GAPS_ARE_FROM = `an open joint of 1/64" is within what Premium work may have (0.4 mm), one of 1/32" within Custom work (0.8 mm): ${citation(FIELD_GAPS)}`;
