import { create, type Bytes, type Font } from 'fontkit';
import type PDFDocument from 'pdfkit';
import latin400 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-400-normal.woff';
import latin600 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-600-normal.woff';
import extended400 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-ext-400-normal.woff';
import extended600 from '@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-latin-ext-600-normal.woff';
import type { Weight } from '../../drawing/display-list.ts';
import { isInFont } from '../../drawing/text/measure-text.ts';
import { EXTENDED_LETTERS } from '../../drawing/svg/fonts.ts';
import { cleanText } from '../../text/clean-text.ts';

type Doc = InstanceType<typeof PDFDocument>;

/** The drawings' letters. A file of PDF has no letters but those it carries, so what they have not got becomes a box. */
const FONTS: Readonly<Record<string, string>> = { 'latin-400': latin400, 'latin-600': latin600, 'extended-400': extended400, 'extended-600': extended600 };
const MISSING = '\u25a1';

/** The library keeps to the letters that are used, and reads nothing of a font before one is. */
export function useLetters(doc: Doc): void {
    for (const name of Object.keys(FONTS)) doc.registerFont(name, given(fontOf(name)));
}

/** The first font, for who makes the document: without one it would look for a font of its own on the disk. */
export function firstFont(): string {
    return given(fontOf('latin-400'));
}

/** The types know names and files of fonts alone; one that is open is taken as it is. */
function given(font: Font): string {
    return font as unknown as string;
}

const opened = new Map<string, Font>();

/** Open for all documents: what was looked up for one letter serves the next. */
function fontOf(name: string): Font {
    const font = opened.get(name) ?? inflatingOnce(create(bytesOf(FONTS[name]!)));
    opened.set(name, font);
    return font;
}

/** The reader of fonts inflates all outlines anew whenever it looks at a letter, which took most of the time that a page took. */
function inflatingOnce(font: Font): Font {
    const inflate = font._getTableStream, inflated = new Map<string, Bytes>();
    font._getTableStream = table => {
        const known = inflated.get(table);
        if (known) { known.pos = 0; return known; }
        const bytes = inflate.call(font, table);
        // a table that is not packed lies in the file itself, at its place
        if (bytes && bytes !== font.stream) inflated.set(table, bytes);
        return bytes;
    };
    return font;
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
