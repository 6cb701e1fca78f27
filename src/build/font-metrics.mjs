// Writes src/drawing/generated/font-metrics.ts: how wide each character of the drawings' font is, so that drawings can measure
// text without carrying a font reader. ready.mjs runs it where the font has changed.
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { create } from 'fontkit';
import { isEntry, root } from './ready.mjs';

/** The font's two files of a weight: western European letters, and the rest of the Latin ones. */
function fontsOf(weight) {
    return ['latin', 'latin-ext'].map(subset => create(readFileSync(join(root, `node_modules/@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-${subset}-${weight}-normal.woff2`))));
}

/** Width of every character, the first file's where both have it, as lists of characters that are equally wide. */
function widthsOf(weight) {
    const widths = new Map();
    for (const font of fontsOf(weight)) {
        for (const code of font.characterSet) {
            if (code >= 0x20 && code < 0xfff0 && !widths.has(code)) widths.set(code, font.glyphForCodePoint(code).advanceWidth);
        }
    }
    const byWidth = new Map();
    for (const [code, width] of [...widths].sort(([a], [b]) => a - b)) byWidth.set(width, (byWidth.get(width) ?? '') + String.fromCodePoint(code));
    return [...byWidth].sort(([a], [b]) => a - b);
}

/** Digits above and below the bar of the font's own fractions. */
function fractionDigits(weight) {
    const [font] = fontsOf(weight);
    const glyphs = [...'0123456789'].map(digit => font.layout(`${digit}\u2044${digit}`).glyphs);
    return { over: glyphs.map(([over]) => over.advanceWidth), under: glyphs.map(([, , under]) => under.advanceWidth) };
}

const escaped = text => JSON.stringify(text).replace(/[^\x21-\x7e\p{Letter}]/gu, c => (c === ' ' ? c : `\\u${c.codePointAt(0).toString(16).padStart(4, '0')}`));

function weightText(weight) {
    const { over, under } = fractionDigits(weight);
    const [font] = fontsOf(weight);
    return [
        `    ${weight}: {`,
        `        unitsPerEm: ${font.unitsPerEm},`,
        `        numerators: [${over.join(', ')}],`,
        `        denominators: [${under.join(', ')}],`,
        '        characters: byCharacter([',
        ...widthsOf(weight).map(([width, characters]) => `            [${width}, ${escaped(characters)}],`),
        '        ]),',
        '    },',
    ].join('\n');
}

function metricsModule() {
    return `// Made by src/build/font-metrics.mjs from Barlow Semi Condensed (SIL Open Font License 1.1); not edited by hand.

/** Advance widths in font units. */
export interface FontWidths {
    readonly unitsPerEm: number;
    /** Of the digits 0 to 9 above and below a fraction's bar. */
    readonly numerators: readonly number[];
    readonly denominators: readonly number[];
    readonly characters: ReadonlyMap<string, number>;
}

function byCharacter(lists: readonly (readonly [number, string])[]): ReadonlyMap<string, number> {
    return new Map(lists.flatMap(([width, characters]) => [...characters].map(c => [c, width] as const)));
}

export const FONT_WIDTHS: Readonly<Record<400 | 600, FontWidths>> = {
${weightText(400)}
${weightText(600)}
};
`;
}

if (isEntry(import.meta.url)) writeFileSync(join(root, 'src/drawing/generated/font-metrics.ts'), metricsModule());
