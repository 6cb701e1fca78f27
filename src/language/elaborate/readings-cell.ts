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

/**
 * What a fraction is most likely that is more than a whole, where a space is missing before its last digits: `145/16` is 14 5/16, and not 9 1/16. Several where
 * it may stand at several places; none where it stands at none, as in `3/2`.
 */
export function spaceMissing(cell: string): string[] {
    if (cell.length > 2 * LONGEST_FIGURE) return [];
    const [, before = '', over = '', under = '', behind = ''] = /^([-+−]?|.*(?:['′’]|ft)-?)\s*(\d{2,})\/(\d+)([^\d/]*)$/.exec(cell.trim()) ?? [];
    if (!(Number(over) > Number(under))) return [];
    return Array.from({ length: over.length - 1 }, (_, i) => [over.slice(0, i + 1), over.slice(i + 1)] as const)
        .filter(([, part]) => !part.startsWith('0') && Number(part) < Number(under))
        .map(([whole, part]) => `${before}${/['′’t]$/.test(before) ? ' ' : ''}${whole} ${part}/${under}${behind}`);
}

function figureOf(text: string): Rational | undefined {
    if (text.length > LONGEST_FIGURE) return undefined;
    const decimal = /^[-+−]?(\d+\.?\d*|\.\d+)$/.exec(text)?.[1];
    const fraction = /^[-+−]?([\d\s/¼-¾⅛-⅞-]+)$/.exec(text)?.[1];
    const size = decimal !== undefined ? new Rational(decimal.replace(/\.$/, '')) : fraction === undefined ? undefined : readLength(`${fraction}"`)?.div(TICKS_PER_INCH);
    return size && /^[-−]/.test(text) ? size.neg() : size;
}
