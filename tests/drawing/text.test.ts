import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { create } from 'fontkit';
import { describe, expect, test } from 'vitest';
import { countedFigures, drawnFractions, figure, figureWithUnit, sizeFigure, sizeWithUnit } from '../../src/drawing/figures.ts';
import { cleanText } from '../../src/text/clean-text.ts';
import { fitText, wrapText } from '../../src/drawing/text/fit-text.ts';
import { isInFont, textWidth } from '../../src/drawing/text/measure-text.ts';
import { ticksOf } from '../support/job-builder.ts';
import { drawn, ROOMS } from './support/rooms.ts';
import { texts } from './support/walk.ts';
import { runs } from '../support/full.ts';

const root = new URL('../..', import.meta.url);
const fontFile = (subset: string, weight: number) => readFileSync(new URL(`node_modules/@fontsource/barlow-semi-condensed/files/barlow-semi-condensed-${subset}-${weight}-normal.woff2`, root));
const FONTS = { 400: create(fontFile('latin', 400)), 600: create(fontFile('latin', 600)) };

test('widths agree with a font reader that lays the text out, kerning and fractions included', () => {
    const words = ['4\' 1 3\u20448"', '12\' 11 31\u204432"', '115\u2044128"', '1668.5', 'Reflected ceiling plan', 'Lines stand by their centers, from the west and the north wall.', '15\' 0 1\u20442" through', '0', 'Ceiling board, as found', '#8 × 2 1\u20442" every 16"'];
    for (const weight of [400, 600] as const) {
        for (const line of words) {
            const real = FONTS[weight].layout(line).advanceWidth / FONTS[weight].unitsPerEm;
            const reckoned = textWidth(line, 1, weight);
            // a space beside figures is set a little wider than reckoned
            expect(reckoned / real, line).toBeGreaterThan(0.985);
            expect(reckoned / real, line).toBeLessThan(1.05);
        }
    }
});

test('fractions are the font\'s own', () => {
    expect(FONTS[400].layout('4\' 1 3\u20448"').glyphs.map(glyph => glyph.name)).toEqual(expect.arrayContaining(['three.numr', 'fraction', 'eight.dnom']));
});

test('every character the drawings use of themselves has a glyph', () => {
    const ownRooms = Object.entries(ROOMS).filter(([name]) => name !== 'hostile');
    const used = new Set(ownRooms.flatMap(([, wishes]) => {
        return drawn(wishes).flatMap(sheet => texts(sheet.items).flatMap(run => [...run.text]));
    }));
    expect(used.size).toBeGreaterThan(60);
    for (const character of used) {
        expect(FONTS[400].hasGlyphForCodePoint(character.codePointAt(0)!), character).toBe(true);
        expect(isInFont(character), character).toBe(true);
    }
});

describe('lengths as drawings write them', () => {
    const table = [
        ['49 3/8"', `4' 1 3\u20448"`, `49 3\u20448"`], ['16\'', `16'`, `192"`], ['7 1/4"', '7 1\u20444"', '7 1\u20444"'], ['14\' 0 1/2"', `14' 0 1\u20442"`, '168 1\u20442"'], ['0"', '0"', '0"'],
    ] as const;
    test.each(table)('%s', (length, feet, inches) => {
        expect(figure(ticksOf(length), 'feet-inches')).toBe(feet);
        expect(figureWithUnit(ticksOf(length), 'feet-inches')).toBe(feet);
        expect(sizeFigure(ticksOf(length), 'feet-inches')).toBe(inches);
    });
    test('less than nothing, and what is no whole 128th', () => {
        expect(figure(-ticksOf('1/32"'), 'feet-inches')).toBe('-1\u204432"');
        expect(figure(ticksOf('4\' 1"') + 1, 'feet-inches')).toBe(`~4' 1"`);
    });
    test('millimeters', () => {
        expect(figure(ticksOf('1668.5 mm'), 'millimeters')).toBe('1668.5');
        expect(figureWithUnit(ticksOf('140 mm'), 'millimeters')).toBe('140 mm');
        expect(sizeWithUnit(ticksOf('19 mm'), 'millimeters')).toBe('19 mm');
    });
    test('counted, longest first', () => {
        const [long, short] = [ticksOf('50 7/8"'), ticksOf('50 1/8"')];
        expect(countedFigures([short, long, short], 'feet-inches')).toEqual([`1 at 4' 2 7\u20448"`, `2 at 4' 2 1\u20448"`]);
    });
    test('fractions in words, but not dates and paths', () => {
        expect(drawnFractions('1/4" and 13/16"')).toBe('1\u20444" and 13\u204416"');
        expect(drawnFractions('and/or')).toBe('and/or');
    });
});

describe('names as they may stand on a sheet', () => {
    test.each([
        ['one\r\nline\tonly', 'one line only'], ['half \uD800 a pair', 'half  a pair'], ['bell\u0007', 'bell'], ['turned \u202Eround', 'turned round'],
        ['e\u0301\u0301\u0301\u0301\u0301', 'e\u0301\u0301\u0301'], ['\u{1F468}\u200D\u{1F527} stays', '\u{1F468}\u200D\u{1F527} stays'], ['not a char \uFFFE', 'not a char '], ['plain', 'plain'],
    ])('%j', (given, wanted) => expect(cleanText(given)).toBe(wanted));

    test('what is fitted is never wider than its field, and cut only where it must be', () => {
        fc.assert(fc.property(fc.string({ unit: 'binary', maxLength: 80 }), fc.integer({ min: 20, max: 200 }), (words, width) => {
            const { text, size } = fitText(words, width, 13, 7, 600);
            expect(textWidth(text, size, 600)).toBeLessThanOrEqual(width + 1e-9);
            if (textWidth(cleanText(words).trim(), 7, 600) <= width) expect(text).toBe(cleanText(words).trim());
        }), { seed: 3, numRuns: runs(300) });
    });

    test('an ellipsis follows whole letters', () => {
        const family = '\u{1F468}\u200D\u{1F469}\u200D\u{1F467}';
        const { text } = fitText(family.repeat(30), 100, 10, 10);
        expect(text.endsWith('…')).toBe(true);
        expect(text.replace('…', '').replaceAll(family, '')).toBe('');
    });

    test('lines are wrapped at spaces, not before a fraction, and say everything', () => {
        const words = 'cut between: 4 at 50 7\u20448", 4 at 50 1\u20448" and so on for a while';
        const lines = wrapText(words, 70, 8);
        expect(lines.join(' ')).toBe(words);
        expect(lines.every(line => textWidth(line, 8) <= 70)).toBe(true);
        expect(lines.some(line => /^\d+\u2044/.test(line))).toBe(false);
    });
});
