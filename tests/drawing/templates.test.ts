import { describe, expect, test } from 'vitest';
import { drawTemplates } from '../../src/drawing/index.ts';
import type { Sheet } from '../../src/drawing/index.ts';
import { surveyedHall } from '../../src/rules/support/examples.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { surveyedOf } from '../../src/survey/survey.ts';
import { templatesOf } from '../../src/survey/templates.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { layoutsOf } from '../support/layouts-of.ts';
import { outside, touching } from './support/checks.ts';
import { groupOf, groups, leaves, texts } from './support/walk.ts';

/** The hall with a hump of 3/4" in its middle, its sides held level by its corners. */
const HUMP = surveyedHall('13 1/2"', '\n    plane  level at 14 1/4"');

async function drawn(text: string) {
    const [layout] = await layoutsOf(text), ceiling = layout!.ceiling!, surveyed = surveyedOf(ceiling, takeOff(ceiling))!;
    return { surveyed, sheets: drawTemplates(ceiling, surveyed) };
}
const rowsOf = (sheets: readonly Sheet[], piece: string) => sheets.flatMap(sheet => groups(sheet.items)).filter(group => group.piece === piece);
/** In inches of the paper. */
function spanOf(points: readonly (readonly [number, number])[], axis: 0 | 1): number {
    const all = points.map(point => point[axis]);
    return (Math.max(...all) - Math.min(...all)) / 72;
}

describe('templates', () => {
    test('are drawn at true size, row after row: as long as what is scribed and an inch at either end, as deep as it is', async () => {
        const { surveyed, sheets } = await drawn(HUMP), templates = templatesOf(surveyed);
        expect(templates.length).toBe(surveyed.sides.filter(({ scribes }) => scribes.length > 0).length);
        expect(templates.length).toBeGreaterThan(6);
        for (const { side, from, to, deepest } of templates) {
            const { piece, length } = side.under, rows = rowsOf(sheets, piece.id);
            const curves = rows.flatMap(row => row.items.flatMap(item => (item.kind === 'polyline' && !item.closed ? [item.points] : [])));
            expect(curves.reduce((sum, points) => sum + spanOf(points, 0), 0)).toBeCloseTo((to - from) / TICKS_PER_INCH, 4);
            expect(curves.every(points => spanOf(points, 0) <= 7 + 1e-9)).toBe(true);
            expect(Math.max(...curves.map(points => spanOf(points, 1)))).toBeLessThanOrEqual(deepest / TICKS_PER_INCH + 1e-4);
            const [first] = side.scribes, last = side.scribes.at(-1)!;
            expect([from, to]).toEqual([Math.max(0, first!.from - TICKS_PER_INCH), Math.min(Math.round(length), last.to + TICKS_PER_INCH)]);
        }
    });

    test('the line to cut to is where the ceiling is, at every place along the side', async () => {
        const { surveyed } = await drawn(HUMP);
        for (const { side, cut } of templatesOf(surveyed)) {
            const [, , last, first] = side.under.piece.corners;
            for (const { along, depth } of cut) {
                const share = along / side.under.length;
                const up = surveyed.surface.at({ x: first.x + (last.x - first.x) * share, y: first.y + (last.y - first.y) * share })!;
                const into = surveyed.chosen!.plane.at - side.under.heldDown - up;
                expect(Math.abs(depth - Math.max(0, into))).toBeLessThan(3);
            }
        }
    });

    test('are seen from the room: of a side that looks south the west end is at the left, of one that looks north at the right', async () => {
        const { surveyed } = await drawn(HUMP), begins = new Map(templatesOf(surveyed).map(({ side, beginsLeft }) => [side.under.piece.on, beginsLeft]));
        expect(Object.fromEntries(begins)).toEqual({ east: false, north: false, south: true, west: true });
    });

    test('stand within their sheet, no two texts touch, and each has a square of 2" to measure, or of 50 mm', async () => {
        const { sheets } = await drawn(HUMP);
        expect(sheets.length).toBeGreaterThan(1);
        for (const sheet of sheets) {
            expect(touching(sheet)).toEqual([]);
            expect(outside(sheet)).toEqual([]);
            const [box] = leaves([groupOf(sheet, 'square')]);
            expect(box?.kind === 'polyline' && [spanOf(box.points, 0), spanOf(box.points, 1)]).toEqual([2, 2]);
        }
        const metric = await drawn(`edition 1\n\njob "Quay 3" { show millimeters }\n${HUMP.replace('edition 1\n', '')}`), [box] = leaves([groupOf(metric.sheets[0]!, 'square')]);
        expect(metric.sheets[0]!.paper.name).toBe('A4');
        expect(box?.kind === 'polyline' && spanOf(box.points, 0) * 25.4).toBeCloseTo(50, 6);
        expect(texts(metric.sheets[0]!.items).some(run => run.text.includes('50 mm each way'))).toBe(true);
    });

    test('there are none where nothing is scribed', async () => {
        expect((await drawn(surveyedHall('14 1/4"'))).sheets).toEqual([]);
    });
});
