import { FONT_WIDTHS, type FontWidths } from '../generated/font-metrics.ts';
import type { TextRun, Weight } from '../display-list.ts';

/** Heights of the font above and below the baseline, in ems: of a capital or a digit, and of a comma or a `p`. */
export const CAP_HEIGHT = 0.7;
export const DESCENT = 0.2;

const FRACTION = /(\d+)\u2044(\d+)/gu;

/**
 * Width of a line of text in points, from the font's own table. Kerning is left out: it brings letters closer by up to a
 * few percent, and moves none apart by as much as one. Characters that the font has not got are
 * reckoned as wide as they come in other fonts (`isInFont` tells).
 */
export function textWidth(words: string, size: number, weight: Weight = 400): number {
    const widths = FONT_WIDTHS[weight];
    const fractions = [...words.matchAll(FRACTION)].reduce((sum, [, over, under]) => sum + fractionWidth(widths, over!, under!), 0);
    const rest = [...words.replace(FRACTION, '')].reduce((sum, c) => sum + characterWidth(widths, c), 0);
    return (fractions + rest) * size / widths.unitsPerEm;
}

/** Width of a run as it stands on the sheet, with the space added between its letters. */
export function runWidth(run: TextRun): number {
    return textWidth(run.text, run.size, run.weight) + run.spaced * [...run.text].length;
}

export function isInFont(character: string): boolean {
    return FONT_WIDTHS[400].characters.has(character);
}

function fractionWidth(widths: FontWidths, over: string, under: string): number {
    return [...over].reduce((sum, d) => sum + widths.numerators[Number(d)]!, 0)
        + characterWidth(widths, '\u2044')
        + [...under].reduce((sum, d) => sum + widths.denominators[Number(d)]!, 0);
}

/** Ideographs and pictures fill a square; marks stand over the letter before them; the rest is reckoned like a wide letter. */
function characterWidth(widths: FontWidths, character: string): number {
    const known = widths.characters.get(character);
    if (known !== undefined) return known;
    if (/\p{Mark}|\u200d/u.test(character)) return 0;
    return widths.unitsPerEm * (character.codePointAt(0)! >= 0x1100 ? 1.1 : 0.75);
}
