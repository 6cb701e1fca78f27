import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sectionOf } from '../../src/ceiling/section.ts';
import { drawSection, toSvg, type SectionContext } from '../../src/drawing/index.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { jobBuilder } from '../support/job-builder.ts';
import { linesThroughWords, outside, touching } from './support/checks.ts';
import { texts } from './support/walk.ts';
import { readXml } from './support/xml.ts';
import { runs } from '../support/full.ts';

const inches = (least: number, most: number) => fc.integer({ min: Math.round(least * 32), max: Math.round(most * 32) }).map(n => n * TICKS_PER_INCH / 32);
const nails = fc.option(fc.record({ gauge: fc.constantFrom(15, 16, 18, 23, 99), length: inches(0.5, 3), every: inches(4, 24) }), { nil: undefined });
const wishes = fc.record({
    board: inches(0.25, 1.5), width: inches(1.5, 16), deep: inches(2.5, 20), heldDown: inches(0, 0.75), bottomOff: inches(-0.25, 0.25),
    bottomThick: inches(0.25, 1.5),
    spacer: fc.option(inches(1, 12), { nil: undefined }), cleat: fc.option(fc.tuple(inches(0.25, 1.5), inches(0.25, 1.5)), { nil: undefined }),
    gauge: fc.option(inches(0.25, 1.5), { nil: undefined }), trim: fc.option(fc.tuple(inches(0.25, 1), inches(0.5, 6)), { nil: undefined }),
    rabbet: fc.option(fc.tuple(inches(0.06, 0.5), inches(0.06, 0.5)), { nil: undefined }), edge: fc.constantFrom('lower-back' as const, 'lower-front' as const, 'upper-back' as const, 'upper-front' as const),
    ease: fc.option(inches(0, 0.25), { nil: undefined }), nails,
    screws: fc.option(fc.record({ gauge: fc.constantFrom(6, 8, 10, 13), length: inches(1, 6), every: inches(8, 24) }), { nil: undefined }),
    covering: fc.option(fc.tuple(fc.constantFrom('gypsum', 'plaster', 'plywood', 'boards'), inches(0.25, 1.5)), { nil: undefined }),
    bandBelow: fc.option(inches(-1, 2), { nil: undefined }), crossed: fc.boolean(), lines: fc.integer({ min: 0, max: 60 }), metric: fc.boolean(), name: fc.string({ unit: 'grapheme', maxLength: 60 }),
});

test('any section is drawn with nothing on anything else, inside the border, and says so where it cannot be drawn', () => {
    let full = 0;
    fc.assert(fc.property(wishes, w => {
        const b = jobBuilder();
        const board = (thickness: number, width: number) => b.stock(`s${thickness}x${width}`, { thickness, width });
        const profile = b.profile(w.name, {
            blocking: { stock: board(w.board, w.width), ...(w.screws && { screws: w.screws }) },
            spacers: w.spacer === undefined ? null : { stock: board(w.board, w.width), height: w.spacer },
            sides: {
                stock: board(w.board, w.deep), heldDown: w.heldDown, edge: w.edge, ...(w.rabbet && { rabbet: w.rabbet }), ...(w.nails && { nails: w.nails }),
            },
            cleats: w.cleat === undefined ? null : {
                stock: board(w.board, w.width), thickness: w.cleat[0], height: w.cleat[1], ...(w.gauge && { gauge: w.gauge }),
                ...(w.nails && { nails: w.nails }),
            },
            bottom: { stock: board(w.bottomThick, w.width + w.bottomOff), ...(w.ease && { ease: w.ease }), ...(w.nails && { nails: w.nails }) },
            trim: w.trim === undefined ? null : { stock: board(w.trim[0], w.trim[1]), ...(w.nails && { nails: w.nails }) },
        });
        const section = sectionOf(profile);
        const context: SectionContext = {
            job: b.settings({ title: w.name, ...(w.metric ? { show: 'millimeters' as const } : {}) }), room: w.name, crossed: w.crossed, sheet: 'C-2',
            lines: Array.from({ length: w.lines }, (_, i) => String(i + 1)),
            ...(w.covering && { covering: { kind: b.said(w.covering[0]), thickness: b.said(w.covering[1]) } }),
            ...(w.bandBelow !== undefined && section.depth && { bandEdge: section.depth.ticks + w.bandBelow }),
        };
        const sheet = drawSection(section, context);
        expect(touching(sheet)).toEqual([]);
        expect(outside(sheet)).toEqual([]);
        expect(linesThroughWords(sheet)).toEqual([]);
        readXml(toSvg(sheet, { fonts: 'named' }));
        expect(drawSection(section, context)).toEqual(sheet);
        if (texts(sheet.items).some(run => run.text === 'WHAT FOLLOWS FROM THE PARTS')) full++;
    }), { seed: 5, numRuns: runs(120, 8) });
    expect(full).toBeGreaterThan(runs(90, 6));
});

test('a section that is not known is said not to be, and not guessed', () => {
    const b = jobBuilder();
    const sheet = drawSection(sectionOf(b.profile('half said', { sides: { heldDown: '1/4"' } })), { job: b.settings(), lines: [], crossed: false });
    expect(texts(sheet.items).map(run => run.text)).toContain('The section cannot be drawn yet: its text leaves out, or gets wrong, a size it needs.');
    expect(outside(sheet)).toEqual([]);
});
