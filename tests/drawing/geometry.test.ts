import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { sectionOf } from '../../src/ceiling/section.ts';
import type { Item, Point, Polyline } from '../../src/drawing/display-list.ts';
import { clipToConvex } from '../../src/drawing/fill/clip.ts';
import { endGrain } from '../../src/drawing/fill/end-grain.ts';
import { hatch } from '../../src/drawing/fill/hatch.ts';
import { drawSection } from '../../src/drawing/index.ts';
import { sectionDimensions } from '../../src/drawing/section/section-dimensions.ts';
import { shapeOf } from '../../src/drawing/section/shape.ts';
import { sheetAfter } from '../../src/drawing/plan/plan.ts';
import { largestThatFits, planScales, pointsPerTick, sectionScales } from '../../src/drawing/scale.ts';
import { lastPart, sourceReference } from '../../src/drawing/source-reference.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { jobBuilder, ticksOf } from '../support/job-builder.ts';
import { groupOf, leaves } from './support/walk.ts';
import { drawn, laid, ROOMS } from './support/rooms.ts';
import { runs } from '../support/full.ts';

const SQUARE: readonly Point[] = [[0, 0], [10, 0], [10, 10], [0, 10]];
const inside = ([x, y]: Point, [left, top, right, foot]: readonly [number, number, number, number]) =>
    x >= left - 1e-6 && x <= right + 1e-6 && y >= top - 1e-6 && y <= foot + 1e-6;

describe('filling shapes', () => {
    test('a segment is clipped to what it crosses', () => {
        expect(clipToConvex([[-5, 5], [15, 5]], SQUARE)).toEqual([[0, 5], [10, 5]]);
        expect(clipToConvex([[-5, 5], [15, 5]], [...SQUARE].reverse())).toEqual([[0, 5], [10, 5]]);
        expect(clipToConvex([[2, 2], [3, 3]], SQUARE)).toEqual([[2, 2], [3, 3]]);
        expect(clipToConvex([[-5, -1], [15, -1]], SQUARE)).toBeNull();
    });
    test('hatches keep to their shape and their gap', () => {
        const lines = hatch(SQUARE, 2, true);
        // the diagonal of a 10 x 10 square is 14.14 long: seven gaps of 2
        expect(lines.length).toBeGreaterThanOrEqual(6);
        expect(lines.length).toBeLessThanOrEqual(8);
        expect(lines.flatMap(each => [each.from, each.to]).every(point => inside(point, [0, 0, 10, 10]))).toBe(true);
    });
    test('end grain stays in the board, and is the same each time', () => {
        fc.assert(fc.property(fc.double({ min: -60, max: 60, noNaN: true }), fc.string({ maxLength: 8 }), (aside, seed) => {
            const growth = { pith: [aside, 40] as Point, spacing: 3, seed };
            const rings = endGrain([SQUARE, [[10, 0], [14, 0], [14, 4], [10, 4]]], growth);
            expect(rings.flatMap(ring => ring.points).every(point => inside(point, [0, 0, 14, 10]))).toBe(true);
            expect(rings.length).toBeGreaterThan(2);
            expect(endGrain([SQUARE, [[10, 0], [14, 0], [14, 4], [10, 4]]], growth)).toEqual(rings);
        }), { seed: 4, numRuns: runs(60) });
    });
});

describe('pieces in plan', () => {
    test.each(['three by two', 'butted, no trim, no board named', 'metric', 'two sections'])('%s: each covers face and back times its thickness', name => {
        const { pieces } = laid(ROOMS[name]!);
        for (const piece of pieces.pieces.filter(each => each.part !== 'cleat')) {
            const { west, east, north, south } = piece.box;
            const [length, across] = piece.on === 'west' || piece.on === 'east' ? [south - north, east - west] : [east - west, south - north];
            const area = piece.on === null ? (east - west) * (south - north)
                : across * (length + (piece.face === piece.back ? length : length - (piece.back - piece.face))) / 2;
            expect(Math.abs(polygonArea(piece.corners.map(({ x, y }): Point => [x, y])) - area) / area).toBeLessThan(1e-9);
        }
    });
    test('a mitered side is short at the face, towards the coffer', () => {
        const { pieces } = laid(ROOMS['three by two']!);
        const side = pieces.pieces.find(piece => piece.id === 'parlor.side-A-2-north')!;
        const xs = (y: number) => side.corners.filter(point => point.y === y).map(point => point.x).sort((a, b) => a - b);
        const [face, back] = [xs(side.box.north), xs(side.box.south)];
        expect(face[1]! - face[0]!).toBeCloseTo(side.face, 3);
        expect(back[1]! - back[0]!).toBeCloseTo(side.back, 3);
    });
});

describe('true to scale', () => {
    test('the wall\'s inner face is the room, at the scale the sheet says', () => {
        const plan = drawn(ROOMS['three by two']!)[0]!;
        const face = leaves(groupOf(plan, 'walls').items).find(item => item.kind === 'polyline' && item.pen === 'cut') as Polyline;
        // 1/2" = 1'-0": 171 1/2" of room are 171.5 / 24 inches of paper
        expect(Math.max(...face.points.map(p => p[0])) - Math.min(...face.points.map(p => p[0]))).toBeCloseTo(171.5 / 24 * 72, 6);
        expect(leaves(plan.items).some(item => item.kind === 'text' && item.text === '1\u20442" = 1\'-0"')).toBe(true);
    });

    test('at full size a board is as thick on paper as at the bench, and gaps are drawn as they are', () => {
        const b = jobBuilder();
        const [wide, deep] = [b.stock('wide', { thickness: '3/4"', width: '5 1/2"' }), b.stock('deep', { thickness: '3/4"', width: '6"' })];
        const profile = b.profile('gapped', { blocking: { stock: wide }, sides: { stock: deep, heldDown: '5/16"' }, bottom: { stock: wide, rip: '5 3/8"' } });
        const sheet = drawSection(sectionOf(profile), { job: b.settings(), lines: ['1'], crossed: false });
        const extent = (id: string) => boundsOf(groupOf(sheet, id).items.filter(item => item.kind === 'polyline' && item.pen === 'cut'));
        const [left, right, bottom, blocking] = [extent('side.left'), extent('side.right'), extent('bottom'), extent('blocking')];
        expect(right.right - right.left).toBeCloseTo(0.75 * 72, 6);
        expect(right.top - blocking.top).toBeCloseTo(5 / 16 * 72, 6);
        expect(right.left - bottom.right).toBeCloseTo(1 / 16 * 72, 6);
        expect(bottom.left - left.right).toBeCloseTo(1 / 16 * 72, 6);
        expect(bottom.foot).toBeCloseTo(right.foot, 6);
    });

    test.each([['lower-back', 5], ['lower-front', 5], ['upper-back', 3], ['upper-front', 3]] as const)('a rabbet on %s: %i figures at the underside', (edge, figures) => {
        const b = jobBuilder();
        const [wide, deep] = [b.stock('wide', { thickness: '3/4"', width: '5 1/2"' }), b.stock('deep', { thickness: '3/4"', width: '6"' })];
        const profile = b.profile('rabbeted', { blocking: { stock: wide }, sides: { stock: deep, rabbet: ['1/4"', '3/8"'], edge }, bottom: { stock: wide } });
        const { foot } = sectionDimensions(shapeOf(sectionOf(profile))!, 'feet-inches', { across: ticks => ticks / 100, down: ticks => ticks / 100 });
        expect(foot.strings.find(({ string: { id } }) => id === 'dimensions.underside')?.string.figures).toHaveLength(figures);
    });

    test('a bottom that does not go in is drawn too wide, and marked', () => {
        const b = jobBuilder();
        const [wide, deep] = [b.stock('wide', { thickness: '3/4"', width: '5 1/2"' }), b.stock('deep', { thickness: '3/4"', width: '6"' })];
        const sheet = drawSection(sectionOf(b.profile('tight', { blocking: { stock: wide, rip: '5 7/16"' }, sides: { stock: deep }, bottom: { stock: wide } })), { job: b.settings(), lines: [], crossed: false });
        expect(groupOf(sheet, 'bottom').items.some(item => item.kind === 'polyline' && item.pen === 'wrong')).toBe(true);
        expect(leaves(sheet.items).some(item => item.kind === 'text' && item.text === 'does not go in: 1\u204416" too wide')).toBe(true);
    });
});

describe('scales', () => {
    test('what a draftsman\'s rule says', () => {
        const half = planScales('feet-inches').find(scale => scale.label === '1\u20442" = 1\'-0"')!;
        expect(pointsPerTick(half) * 12 * TICKS_PER_INCH).toBeCloseTo(36, 9);
        expect(pointsPerTick(sectionScales('feet-inches')[0]!) * TICKS_PER_INCH).toBeCloseTo(72, 9);
        expect(pointsPerTick(planScales('millimeters')[1]!) * ticksOf('1000 mm')).toBeCloseTo(50 / 25.4 * 72, 9);
    });
    test('the largest that fits; where none does, none is claimed', () => {
        const scales = planScales('feet-inches');
        expect(largestThatFits(scales, () => true)).toBe(scales[0]);
        expect(largestThatFits(scales, k => k <= pointsPerTick(scales[4]!))).toBe(scales[4]);
        expect(largestThatFits(scales, k => k < pointsPerTick(scales.at(-1)!) / 100).label).toBe('not to scale');
    });
});

test('sources are named by the file alone, lines and columns from one', () => {
    const source = { uri: 'file:///home/someone/My%20Jobs/parlor.coffer', range: { start: { line: 11, character: 2 }, end: { line: 11, character: 9 } } };
    expect(sourceReference(source, lastPart)).toBe('parlor.coffer:12:3');
    expect(lastPart('untitled:bad%ZZname')).toBe('untitled:bad%ZZname');
});

test('sheets are numbered on', () => {
    expect([sheetAfter('C-1', 1), sheetAfter('12', 3), sheetAfter('plan', 1)]).toEqual(['C-2', '15', 'plan-2']);
});

function polygonArea(points: readonly Point[]): number {
    return Math.abs(points.reduce((sum, [x, y], i) => sum + x * points[(i + 1) % points.length]![1] - points[(i + 1) % points.length]![0] * y, 0)) / 2;
}

function boundsOf(items: readonly Item[]): { left: number; right: number; top: number; foot: number } {
    const points = items.flatMap(item => (item.kind === 'polyline' ? item.points : []));
    return {
        left: Math.min(...points.map(p => p[0])), right: Math.max(...points.map(p => p[0])), top: Math.min(...points.map(p => p[1])),
        foot: Math.max(...points.map(p => p[1])),
    };
}
