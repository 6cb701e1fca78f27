import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { itemsExtent } from '../../src/drawing/extent.ts';
import type { Group, Item } from '../../src/drawing/display-list.ts';
import { along, axisFor, exaggeration, marksOn } from '../../src/drawing/tolerance/axis.ts';
import { drawTolerance } from '../../src/drawing/tolerance/figure.ts';
import type { RunPart, ToleranceFigure } from '../../src/drawing/tolerance/model.ts';
import { drawRunStrip } from '../../src/drawing/tolerance/run-strip.ts';
import { textWidth } from '../../src/drawing/text/measure-text.ts';
import { toSvg } from '../../src/drawing/svg/svg.ts';
import { inches } from '../../src/quantity/rational.ts';
import { runs } from '../support/full.ts';

const figure = (least: number, most: number, nominal = (least + most) / 2): ToleranceFigure => ({
    id: 'tolerance.fit', title: 'Fit of the bottom', description: 'Play of the bottom.', wood: { left: { name: 'bottom', isSheet: false }, right: { name: 'side', isSheet: false } }, nominal,
    bars: [{ kind: 'worst', words: 'at worst', least, most, figures: ['-1/64"', '1/32"'] }, { kind: 'usual', words: 'root-sum-square', least: least * 0.7, most: most * 0.7, figures: ['-0.01"', '0.02"'] }],
    zones: [{ kind: 'wrong', words: 'jams', from: -Infinity, to: 0 }, { kind: 'asked', words: 'as asked', from: 0, to: inches('1/32') }, { kind: 'wrong', words: 'shows', from: inches('1/32'), to: Infinity }],
});
const groups = (items: readonly Item[]): Group[] => items.flatMap(item => item.kind === 'group' ? [item, ...groups(item.items)] : []);
const lengths = { least: fc.integer({ min: -20000, max: 0 }), span: fc.integer({ min: 0, max: 40000 }), width: fc.integer({ min: 250, max: 900 }) };

describe('a figure of tolerances', () => {
    test('stays on its ground, whatever the lengths, in both units', () => {
        fc.assert(fc.property(lengths.least, lengths.span, lengths.width, fc.constantFrom('feet-inches' as const, 'millimeters' as const), (least, span, width, show) => {
            const drawn = drawTolerance(figure(least, least + span), width, show);
            const { left, right, top, foot } = itemsExtent(drawn.items);
            expect(left).toBeGreaterThanOrEqual(0);
            expect(right).toBeLessThanOrEqual(drawn.paper.width);
            expect(top).toBeGreaterThanOrEqual(0);
            expect(foot).toBeLessThanOrEqual(drawn.paper.height);
            expect(toSvg(drawn)).not.toMatch(/NaN|Infinity/);
        }), { seed: 20251125, numRuns: runs(150) });
    });

    test('what jams is marked as wrong from zero to the worst, and nothing is where nothing jams', () => {
        const wrongOf = (least: number) => groups(drawTolerance(figure(least, inches('1/32')), 600, 'feet-inches').items).find(({ id }) => id === 'band.worst')!.items.filter(item => item.kind === 'polyline' && item.pen === 'wrong');
        const axis = axisFor(figure(-inches('1/64'), inches('1/32')), 84, 592, 'feet-inches');
        const [wrong] = wrongOf(-inches('1/64'));
        const { left, right } = itemsExtent([wrong!]);
        expect(left).toBeCloseTo(along(axis, -inches('1/64')), 6);
        expect(right).toBeCloseTo(along(axis, 0), 6);
        expect(wrongOf(0)).toEqual([]);
    });

    test('growth rings are drawn in wood, and none in a piece of sheet material', () => {
        const plain = figure(0, inches('1/32'));
        const drawn = drawTolerance({ ...plain, wood: { left: { name: 'bottom', isSheet: true }, right: { name: 'side', isSheet: false } } }, 600, 'feet-inches');
        const pens = (id: string) => new Set(groups(drawn.items).find(one => one.id === id)!.items.flatMap(item => 'pen' in item && item.pen ? [item.pen] : []));
        expect(pens('wood.left')).toContain('hatch');
        expect(pens('wood.left')).not.toContain('grain');
        expect(pens('wood.right')).toContain('grain');
        expect(pens('wood.right')).not.toContain('hatch');
    });

    test('figures of its rule keep apart, and lie where they say', () => {
        fc.assert(fc.property(lengths.least, lengths.span, lengths.width, fc.constantFrom('feet-inches' as const, 'millimeters' as const), (least, span, width, show) => {
            const axis = axisFor(figure(least, least + span), 8, width - 8, show), marks = marksOn(axis, 8.6, show);
            for (let i = 1; i < marks.length; i++) {
                const [a, b] = [marks[i - 1]!, marks[i]!];
                expect(b.at - a.at).toBeGreaterThan((textWidth(a.text, 8.6) + textWidth(b.text, 8.6)) / 2 + 4);
            }
            expect(marks.every(({ at }) => at >= 8 && at <= width - 8)).toBe(true);
        }), { seed: 20251125, numRuns: runs(150) });
    });

    test('says how much larger than true it is: an inch of 720 points is ten times an inch', () => {
        expect(exaggeration({ left: 0, right: 800, zero: 0, pointsPerTick: 720 / inches(1) })).toBe(10);
        expect(exaggeration({ left: 0, right: 800, zero: 0, pointsPerTick: 72 * 63.7 / inches(1) })).toBe(64);
        expect(exaggeration({ left: 0, right: 800, zero: 0, pointsPerTick: 72 * 4.4 / inches(1) })).toBe(4.5);
    });
});

describe('the strip of a run', () => {
    test('is to scale along its length, from wall to wall', () => {
        const parts: RunPart[] = [
            { kind: 'band', name: 'band', width: inches('3/4'), figure: '3/4"' }, { kind: 'coffer', name: '', width: inches(40), figure: '3\' 4"', differs: '+1/32"' },
            { kind: 'line', name: '1', width: inches(7), figure: '7"' }, { kind: 'coffer', name: '', width: inches(40), figure: '3\' 4"' }, { kind: 'band', name: 'band', width: inches('3/4'), figure: '3/4"' },
        ];
        const { items, paper } = drawRunStrip({ id: 'run', title: 'Along the north wall', description: '', parts }, 600);
        const shapes = groups(items).map(group => itemsExtent(group.items.filter(item => item.kind === 'polyline')));
        const k = (paper.width - 16) / inches('88 1/2');
        expect(shapes[2]!.right - shapes[2]!.left).toBeCloseTo(inches(7) * k, 6);
        expect(shapes[2]!.left).toBeCloseTo(8 + inches('40 3/4') * k, 6);
        expect(shapes.at(-1)!.right).toBeCloseTo(paper.width - 8, 6);
        const texts = groups(items).flatMap(group => group.items.flatMap(item => item.kind === 'text' ? [item.text] : []));
        expect(texts).toEqual(['3\' 4"', '+1⁄32"', '1', '3\' 4"']);
    });
});
