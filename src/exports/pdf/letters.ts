import type PDFDocument from 'pdfkit';
import latin400 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-400-normal.woff';
import latin600 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-600-normal.woff';
import extended400 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-ext-400-normal.woff';
import extended600 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-ext-600-normal.woff';
import type { Weight } from '../../drawing/display-list.ts';
import { isInFont } from '../../drawing/text/measure-text.ts';
import { EXTENDED_LETTERS } from '../../drawing/svg/fonts.ts';
import { cleanText } from '../../drawing/text/clean-text.ts';

type Doc = InstanceType<typeof PDFDocument>;

/** The drawings' letters. A file of PDF has no letters but those it carries, so what they have not got becomes a box. */
const FONTS: Readonly<Record<string, string>> = { 'latin-400': latin400, 'latin-600': latin600, 'extended-400': extended400, 'extended-600': extended600 };
const MISSING = '\u25a1';

/** The library keeps to the letters that are used; four fonts cost nothing until one is. */
export function useLetters(doc: Doc): void {
    for (const [name, base64] of Object.entries(FONTS)) doc.registerFont(name, bytesOf(base64));
}

/** The first font, for who makes the document: without one it would look for a font of its own on the disk. */
export function firstFont(): Uint8Array {
    return bytesOf(latin400);
}

/** Stretches of a text that are set in one font each. */
export function stretchesOf(words: string, weight: Weight): { readonly font: string; readonly text: string }[] {
    const stretches: { font: string; text: string }[] = [];
    for (const letter of legible(words)) {
        const font = `${EXTENDED_LETTERS.test(letter) ? 'extended' : 'latin'}-${weight}`;
        const last = stretches.at(-1);
        if (last?.font === font) last.text += letter;
        else stretches.push({ font, text: letter });
    }
    return stretches;
}

function legible(words: string): string {
    return [...cleanText(words)].map(letter => isInFont(letter) || EXTENDED_LETTERS.test(letter) ? letter : isInFont(MISSING) ? MISSING : '?').join('');
}

function bytesOf(base64: string): Uint8Array {
    return Uint8Array.from(atob(base64), letter => letter.charCodeAt(0));
}
