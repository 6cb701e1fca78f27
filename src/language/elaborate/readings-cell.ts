import { readLength } from '../../quantity/read-length.ts';
import { Rational, toTicks } from '../../quantity/rational.ts';
import { TICKS_PER_FOOT, TICKS_PER_INCH, TICKS_PER_MM, type Ticks } from '../../quantity/ticks.ts';

/** What figures without a mark are in. */
export type CellUnit = 'millimeters' | 'centimeters' | 'meters' | 'inches' | 'feet';

const TICKS: Readonly<Record<CellUnit, Ticks>> = {
    millimeters: TICKS_PER_MM, centimeters: 10 * TICKS_PER_MM, meters: 1000 * TICKS_PER_MM, inches: TICKS_PER_INCH, feet: TICKS_PER_FOOT,
};
const WORDS: Readonly<Record<string, CellUnit>> = {
    mm: 'millimeters', millimeter: 'millimeters', millimeters: 'millimeters', cm: 'centimeters', centimeters: 'centimeters', m: 'meters', meter: 'meters', meters: 'meters',
    in: 'inches', inch: 'inches', inches: 'inches', '"': 'inches', ft: 'feet', feet: 'feet', foot: 'feet', '\'': 'feet',
};
/** No figure needs more; exact arithmetic on a page of digits would stop the editor. */
const LONGEST_FIGURE = 40;

/** The unit that a header names: `x (mm)`, `Reading [in]`, `z_mm`, `height, ft`. */
export function unitIn(header: string): CellUnit | undefined {
    const word = /[([]\s*([a-z"']+)\.?\s*[)\]]\s*$/i.exec(header)?.[1] ?? /[_\s,]([a-z]+)\.?$/i.exec(header)?.[1];
    return word === undefined ? undefined : WORDS[word.toLowerCase()];
}

/**
 * Whether a comma is the decimal sign in these cells. Where points are, it is none. Undefined where it may as well part thousands: every one has just
 * three digits behind it.
 */
export function commaOf(cells: readonly string[]): boolean | undefined {
    const commas = cells.filter(cell => /\d,\d/.test(cell));
    if (commas.length === 0 || cells.some(cell => /\d\.\d/.test(cell))) return false;
    return commas.every(cell => /^[-+−]?[1-9]\d{0,2}(,\d{3})+$/.test(cell)) ? undefined : true;
}

/**
 * The length in a cell, rounded to whole ticks: with its own marks (`4' 2 1/2"`, `361.5 mm`), or a figure or a fraction (`14 1/4`) in that unit.
 * `no-unit` where it is a figure and nothing says in what; undefined where it is no length.
 */
export function readCell(cell: string, unit: CellUnit | undefined, commaIsDecimal: boolean): Ticks | 'no-unit' | undefined {
    const text = commaIsDecimal ? cell.replace(/(\d),(\d)/, '$1.$2') : cell;
    const marked = readLength(text);
    if (marked) return toTicks(marked);
    const figure = figureOf(text);
    return figure && (unit === undefined ? 'no-unit' : toTicks(figure.mul(TICKS[unit])));
}

function figureOf(text: string): Rational | undefined {
    if (text.length > LONGEST_FIGURE) return undefined;
    const decimal = /^[-+−]?(\d+\.?\d*|\.\d+)$/.exec(text)?.[1];
    const fraction = /^[-+−]?([\d\s/¼-¾⅛-⅞-]+)$/.exec(text)?.[1];
    const size = decimal !== undefined ? new Rational(decimal.replace(/\.$/, '')) : fraction === undefined ? undefined : readLength(`${fraction}"`)?.div(TICKS_PER_INCH);
    return size && /^[-−]/.test(text) ? size.neg() : size;
}
