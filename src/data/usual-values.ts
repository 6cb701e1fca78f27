import { TICKS_PER_FOOT, TICKS_PER_INCH } from '../quantity/ticks.ts';

/**
 * What is usual, by kind and property (`property/modifier`) of the language: the one place where a figure that can be read and that
 * hardly any job has is told from one that may stand. Generous on purpose: outside of it most likely the pen slipped. The sizes that a beam is made of
 * have no least: what is too small for its beam the rules say. Common practice, no
 * source, but where a line names one.
 */
export interface Usual {
    /** What least and most are: ticks, shares (1 is 100 %), minutes, minutes a foot, a number, a gauge. */
    readonly of: 'length' | 'share' | 'minutes' | 'minutes a foot' | 'count' | 'gauge';
    readonly least: number; readonly most: number;
    /** What the slip most likely is, where the table knows better than the figure. */
    readonly slip?: string;
}

const inches = (least: number, most: number, slip?: string): Usual => ({ of: 'length', least: Math.round(least * TICKS_PER_INCH), most: Math.round(most * TICKS_PER_INCH), ...slip !== undefined && { slip } });
const feet = (least: number, most: number, slip?: string): Usual => ({ of: 'length', least: least * TICKS_PER_FOOT, most: most * TICKS_PER_FOOT, ...slip !== undefined && { slip } });
const share = (percent: number, slip?: string): Usual => ({ of: 'share', least: 0, most: percent / 100, ...slip !== undefined && { slip } });
const count = (least: number, most: number): Usual => ({ of: 'count', least, most });
const aFoot: Usual = { of: 'minutes a foot', least: 0, most: 60 };
const each = (hours: number): Usual => ({ of: 'minutes', least: 0, most: hours * 60 });

/** Boards are sold to 20 feet, some to 24; what lies on hand or was cut is none longer. */
const BOARD = feet(1, 24), PIECE_OF_BOARD = inches(1, 24 * 12);
const FASTENED = { 'nails': inches(1 / 2, 4), 'nails/every': inches(1, 36) };
/** Finish and brad nailers drive 15 to 23 gauge. */
const NAIL_GAUGE: Usual = { of: 'gauge', least: 15, most: 23 };
/** Wood screws for this work are #4 to #14; the numbers go to #24 (ASME B18.6.1, from memory). */
const SCREW_NUMBER: Usual = { of: 'gauge', least: 4, most: 14 };

export const USUAL: Readonly<Record<string, Readonly<Record<string, Usual>>>> = {
    Stock: {
        'lengths': BOARD, 'price/for': BOARD, 'width': inches(0, 62), 'thickness': inches(0, 4), 'sheet': feet(1, 12), 'on-hand': PIECE_OF_BOARD, 'on-hand#count': count(0, 500), 'lead-days': count(0, 120),
    },
    Blocking: { 'rip': inches(0, 24), 'screws': inches(1, 8), 'screws/every': inches(2, 48), 'screws#gauge': SCREW_NUMBER },
    Spacers: { 'rip': inches(0, 24), 'height': inches(0, 24), 'every': inches(1, 60), 'from-end': inches(0, 24) },
    Sides: { ...FASTENED, 'nails#gauge': NAIL_GAUGE, 'rip': inches(0, 24), 'held-down': inches(0, 2), 'rabbet': inches(0, 3, 'a groove is cut into the edge of a board') },
    Cleats: { ...FASTENED, 'nails#gauge': NAIL_GAUGE, 'rip': inches(0, 4), 'gauge': inches(1 / 8, 3), 'short-each-end': inches(0, 6) },
    Bottom: { ...FASTENED, 'nails#gauge': NAIL_GAUGE, 'rip': inches(0, 24), 'gap': inches(0, 1 / 2), 'ease': inches(0, 1), 'press': inches(0, 1 / 4), 'biscuits#count': count(0, 6) },
    Trim: { ...FASTENED, 'nails#gauge': NAIL_GAUGE, 'rip': inches(0, 12) },
    Perimeter: { ...FASTENED, 'nails#gauge': NAIL_GAUGE, 'rip': inches(0, 24), 'width': inches(1, 24), 'below-beams': inches(-12, 12) },
    Job: {
        'cut-to': inches(0, 2), 'cut-tolerance': inches(0, 1 / 4), 'kerf': inches(1 / 64, 3 / 8, 'a saw takes about 1/8"'), 'end-trim': inches(0, 12),
        'longest-board': feet(2, 24), 'shortest-offcut': inches(0, 10 * 12), 'paint-film': inches(0, 1 / 16),
    },
    Ceiling: { 'height': feet(6, 40), 'covering/thickness': inches(1 / 8, 3) },
    Grid: { 'coffer-size': inches(4, 20 * 12), 'coffers-north': count(0, 60), 'coffers-east': count(0, 60) },
    Wall: { 'value': feet(0, 120) },
    Fixture: { 'value/diameter': inches(1 / 2, 10 * 12), 'value/width': inches(1 / 2, 20 * 12), 'value/height': inches(1 / 2, 20 * 12), 'value/keep-clear': inches(0, 6 * 12) },
    Board: { 'rabbet': inches(0, 3), 'width': inches(0, 62), 'thickness': inches(0, 4), 'length': PIECE_OF_BOARD },
    BeamLine: { 'held-down': inches(0, 2) },
    Measured: { 'cut': PIECE_OF_BOARD, 'cut/left': inches(0, 24 * 12) },
    Labor: {
        'day': { of: 'minutes', least: 2 * 60, most: 16 * 60, slip: 'a person works about 8 h a day' }, 'crew': count(0, 20),
        'blocking': aFoot, 'sides': aFoot, 'cleats': aFoot, 'bottom': aFoot, 'trim': aFoot, 'band': aFoot,
        'layout': each(8), 'spacers': each(4), 'corner': each(8), 'butt': each(8), 'splice': each(8), 'coffer': each(24), 'set-up': each(4),
        'first-bay': share(500), 'unfamiliar': share(300),
    },
    Bid: {
        'overhead': share(100), 'profit': share(150), 'tax': share(40), 'contingency': share(60), 'deposit': share(100, 'more than the whole price'), 'valid-days': count(1, 730),
    },
};
