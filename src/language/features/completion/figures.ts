import { BOARD_SIZES, dressedSize } from '../../../data/dressed-sizes.ts';
import { printLength } from '../../../quantity/print-length.ts';
import { Rational } from '../../../quantity/rational.ts';
import * as ast from '../../generated/ast.ts';
import { oneLine } from '../explain.ts';
import { PICTURE, type Suggestion } from './suggestion.ts';

/**
 * Figures that are usual where one is wanted: sizes that boards are sold in, lengths that a yard has, and what holds where nothing is
 * said, to begin with.
 */
export function figuresFor(property: ast.PropertyDecl, wanted: string | undefined): readonly Suggestion[] {
    if (wanted === 'Size') return SIZES;
    if (property.name === 'lengths' && wanted === 'Length') return LENGTHS;
    // a word that holds unsaid is among the words
    if (!property.default || ast.isRef(property.default)) return [];
    return [{ label: oneLine(property.default), kind: PICTURE.constant, detail: 'the default' }];
}

/** As they are asked for most: common practice, no source. What is left of them is the published table's. */
const SIZES: readonly Suggestion[] = BOARD_SIZES.map(([thickness, width]) => {
    const dressed = dressedSize(new Rational(thickness), new Rational(width))!;
    return { label: `${thickness}x${width}`, kind: PICTURE.constant, detail: `dressed ${printLength(dressed.thickness)} x ${printLength(dressed.width)}` };
});

/** Common practice, no source. */
const LENGTHS: readonly Suggestion[] = [
    { label: "8', 10', 12', 14', 16'", kind: PICTURE.constant, detail: 'as yards sell boards by the foot' },
    { label: '2400 mm, 3000 mm, 3600 mm, 4200 mm, 4800 mm', kind: PICTURE.constant, detail: 'as yards sell boards by the meter' },
];
