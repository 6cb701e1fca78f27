import latin400 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-400-normal.woff2';
import latin600 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-600-normal.woff2';
import extended400 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-ext-400-normal.woff2';
import extended600 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-ext-600-normal.woff2';
import { textRuns, type Sheet, type Weight } from '../display-list.ts';
import { FONT_FAMILY } from './style-sheet.ts';

const LATIN: Readonly<Record<Weight, string>> = { 400: latin400, 600: latin600 };
const EXTENDED: Readonly<Record<Weight, string>> = { 400: extended400, 600: extended600 };

/** Letters of the font's second file, which is worth its 20 kB only where a name uses them. */
export const EXTENDED_LETTERS = /[\u0100-\u0130\u0132-\u0151\u0154-\u02ba\u1e00-\u1eff]/u;
const EXTENDED_RANGE = 'U+100-130,U+132-151,U+154-2BA,U+1E00-1EFF';

/** `@font-face` rules with the font inside, for the weights and letters that the sheet uses: a drawing needs nothing from elsewhere. */
export function fontFaces(sheet: Sheet): string {
    const runs = textRuns(sheet.items);
    return ([400, 600] as const).flatMap(weight => {
        const used = runs.filter(run => run.weight === weight);
        if (used.length === 0) return [];
        return facesOf(weight, used.some(run => EXTENDED_LETTERS.test(run.text)));
    }).join('\n');
}

/** The rules for a page of words, in both weights. */
export function facesForWords(words: string): readonly string[] {
    const isExtended = EXTENDED_LETTERS.test(words);
    return ([400, 600] as const).flatMap(weight => facesOf(weight, isExtended));
}

function facesOf(weight: Weight, isExtended: boolean): readonly string[] {
    return [fontFace(weight, LATIN[weight], ''), ...isExtended ? [fontFace(weight, EXTENDED[weight], `;unicode-range:${EXTENDED_RANGE}`)] : []];
}

function fontFace(weight: Weight, base64: string, range: string): string {
    return `@font-face{font-family:'${FONT_FAMILY}';font-weight:${weight};src:url(data:font/woff2;base64,${base64}) format('woff2')${range}}`;
}
