import { inches, Rational } from '../quantity/rational.ts';
import type { Ticks } from '../quantity/ticks.ts';
import type { Published } from './published.ts';

/**
 * What is left of a nominal size after drying and surfacing: softwood boards, and dimension lumber.
 * Hardwood surfaced on four sides is sold to the same net sizes by custom (common practice, no source); hardwood sold by
 * the quarter is not: whoever buys it says width and thickness.
 */
interface DressedSize { readonly thickness: Ticks; readonly width: Ticks; readonly published: Published }

const BOARDS: Published = { source: 'American Softwood Lumber Standard PS 20, board sizes, dry', mark: 'read second-hand' };
const THICK_BOARDS: Published = { ...BOARDS, mark: 'from memory' };
const DIMENSION: Published = { source: 'NDS 2018 Supplement, table 1A, dressed dry sizes', mark: 'read' };

/** Nominal and dressed thickness of boards, in inches. */
const BOARD_THICKNESS: Sizes = [['1', '3/4'], ['5/4', '1'], ['3/2', '1 1/4']];
const BOARD_WIDTH: Sizes = [['2', '1 1/2'], ['3', '2 1/2'], ['4', '3 1/2'], ['5', '4 1/2'], ['6', '5 1/2'], ['8', '7 1/4'], ['10', '9 1/4'], ['12', '11 1/4']];
const DIMENSION_THICKNESS: Sizes = [['2', '1 1/2'], ['5/2', '2'], ['3', '2 1/2'], ['7/2', '3'], ['4', '3 1/2'], ['9/2', '4']];
const DIMENSION_WIDTH: Sizes = [...BOARD_WIDTH, ['14', '13 1/4'], ['16', '15 1/4']];

type Sizes = readonly (readonly [nominal: string, dressed: string])[];

const TABLE = new Map<string, DressedSize>();
function fill(thicknesses: Sizes, widths: Sizes, publishedFor: (thickness: string) => Published): void {
    for (const [t, thickness] of thicknesses)
        for (const [w, width] of widths)
            TABLE.set(key(new Rational(t), new Rational(w)), { thickness: inches(thickness), width: inches(width), published: publishedFor(t) });
}
fill(BOARD_THICKNESS, BOARD_WIDTH, t => t === '1' ? BOARDS : THICK_BOARDS);
fill(DIMENSION_THICKNESS, DIMENSION_WIDTH, () => DIMENSION);

/** Nominal sizes of boards, each as thickness and width in inches, from the thinnest and narrowest. */
export const BOARD_SIZES: readonly (readonly [thickness: string, width: string])[] =
    BOARD_THICKNESS.filter(([t]) => t !== '3/2').flatMap(([t]) => BOARD_WIDTH.map(([w]) => [t, w] as const));

/** Nominal thickness and width in inches, as named: `5/4x6` is 5/4 and 6. Undefined where no published table has it. */
export function dressedSize(thickness: Rational, width: Rational): DressedSize | undefined {
    return TABLE.get(key(thickness, width));
}

function key(thickness: Rational, width: Rational): string {
    return `${thickness.toFraction()}x${width.toFraction()}`;
}
