import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sectionOf } from '../../src/ceiling/section.ts';
import { drawSmallSection, toSvg } from '../../src/drawing/index.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { jobBuilder } from '../support/job-builder.ts';
import { readXml } from './support/xml.ts';
import { runs } from '../support/full.ts';

const inches = (least: number, most: number) => fc.integer({ min: Math.round(least * 32), max: Math.round(most * 32) }).map(n => n * TICKS_PER_INCH / 32);
const beams = fc.record({ board: inches(0.25, 1.5), width: inches(1.5, 16), deep: inches(2.5, 20), bottomOff: inches(-0.25, 0.25), metric: fc.boolean(), name: fc.string({ unit: 'grapheme', maxLength: 40 }) });

test('a beam of any size makes a small picture that is well-formed, and the same every time', () => {
    fc.assert(fc.property(beams, ({ board, width, deep, bottomOff, metric, name }) => {
        const b = jobBuilder();
        const stock = (title: string, w: number) => b.stock(title, { thickness: board, width: w });
        const section = sectionOf(b.profile(name, { blocking: { stock: stock('wide', width) }, sides: { stock: stock('deep', deep) }, bottom: { stock: stock('bottom', width + bottomOff) }, spacers: null, cleats: null, trim: null }));
        const sheet = drawSmallSection(section, metric ? 'millimeters' : 'feet-inches')!;
        expect(sheet.paper.width).toBeLessThan(320);
        expect(sheet.paper.height).toBeLessThan(220);
        const svg = toSvg(sheet, { theme: 'light', fonts: 'named', as: 'part of a page' });
        expect(svg.length).toBeLessThan(40_000);
        expect(() => readXml(svg)).not.toThrow();
        expect(toSvg(drawSmallSection(section, metric ? 'millimeters' : 'feet-inches')!, { theme: 'light', fonts: 'named', as: 'part of a page' })).toBe(svg);
    }), { seed: 5, numRuns: runs(60) });
});

test('no picture where a size is not known', () => {
    const b = jobBuilder();
    const stock = b.stock('poplar', { thickness: '3/4"', width: '5 1/2"' });
    const section = sectionOf(b.profile('box', { blocking: { stock }, sides: { stock }, bottom: { stock } }));
    expect(drawSmallSection(section, 'feet-inches')).toBeDefined();
    expect(drawSmallSection(sectionOf(b.profile('box', { blocking: { stock }, sides: { stock } })), 'feet-inches')).toBeUndefined();
});
