import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Point } from '../../src/drawing/display-list.ts';
import { cover, uncovered, type Segment } from '../../src/exports/dxf/hidden-lines.ts';
import { plainText } from '../../src/text/dxf.ts';
import { runs } from '../support/full.ts';

const square: readonly Point[] = [[10, 10], [20, 10], [20, 20], [10, 20]];
/** An L: the upper right quarter is missing. */
const notched: readonly Point[] = [[10, 10], [15, 10], [15, 15], [20, 15], [20, 20], [10, 20]];
const lengthOf = (segments: readonly Segment[]) => segments.reduce((sum, [a, b]) => sum + Math.hypot(b[0] - a[0], b[1] - a[1]), 0);

describe('lines behind what is filled', () => {
    test.each<[string, readonly Point[], Segment, readonly Segment[]]>([
        ['through it: two ends are left', square, [[0, 15], [30, 15]], [[[0, 15], [10, 15]], [[20, 15], [30, 15]]]],
        ['beginning inside it', square, [[15, 15], [15, 40]], [[[15, 20], [15, 40]]]],
        ['wholly behind it', square, [[11, 11], [19, 19]], []],
        ['along its edge: seen', square, [[0, 10], [30, 10]], [[[0, 10], [30, 10]]]],
        ['along its edge from inside: only the way there is hidden', square, [[20, 12], [20, 18]], [[[20, 12], [20, 18]]]],
        ['touching a corner', square, [[0, 20], [20, 0]], [[[0, 20], [20, 0]]]],
        ['through a notch', notched, [[0, 12], [30, 12]], [[[0, 12], [10, 12]], [[15, 12], [30, 12]]]],
        ['across a notch: in, out, in', notched, [[8, 10], [20, 18]], [[[8, 10], [10, 11 + 1 / 3]], [[15, 14 + 2 / 3], [15.5, 15]]]],
    ])('%s', (_name, shape, segment, rest) => {
        const found = uncovered(segment, [cover(shape)]);
        expect(found.length).toBe(rest.length);
        found.forEach(([from, to], i) => {
            expect(from[0]).toBeCloseTo(rest[i]![0][0]); expect(from[1]).toBeCloseTo(rest[i]![0][1]);
            expect(to[0]).toBeCloseTo(rest[i]![1][0]); expect(to[1]).toBeCloseTo(rest[i]![1][1]);
        });
    });

    test('what nothing hides comes back as it is; earlier covers do not count', () => {
        const segment: Segment = [[0, 15], [30, 15]];
        expect(uncovered(segment, [cover([[0, 16], [30, 16], [30, 40]])])[0]).toBe(segment);
        expect(uncovered(segment, [cover(square)], 1)[0]).toBe(segment);
    });

    test('hidden and seen lengths add up, whatever lies over what', () => {
        const spot = fc.tuple(fc.integer({ min: 0, max: 40 }), fc.integer({ min: 0, max: 40 }));
        const box = fc.tuple(spot, fc.integer({ min: 1, max: 20 }), fc.integer({ min: 1, max: 20 }));
        fc.assert(fc.property(spot, spot, fc.array(box, { maxLength: 4 }), (from, to, boxes) => {
            fc.pre(from[0] !== to[0] || from[1] !== to[1]);
            const covers = boxes.map(([[x, y], w, h]) => cover([[x, y], [x + w, y], [x + w, y + h], [x, y + h]]));
            const seen = uncovered([from, to], covers);
            // counted in many small steps, by a test that knows only boxes
            const steps = 2000;
            const inside = Array.from({ length: steps }, (_, i) => {
                const t = (i + 0.5) / steps;
                const x = from[0] + t * (to[0] - from[0]);
                const y = from[1] + t * (to[1] - from[1]);
                return boxes.some(([[left, top], w, h]) => x > left + 1e-4 && x < left + w - 1e-4 && y > top + 1e-4 && y < top + h - 1e-4);
            }).filter(Boolean).length;
            const whole = lengthOf([[from, to]]);
            expect(Math.abs(lengthOf(seen) - whole * (1 - inside / steps))).toBeLessThan(whole * (2 * boxes.length + 1) / steps + 1e-3);
        }), { seed: 9, numRuns: runs(300) });
    });
});

describe('text for a drawing program', () => {
    test.each([
        ['4\' 1 3\u20448"', '4\' 1 3/8"'], ['17" × 11"', '17" x 11"'], ['the coffer’s edge…', 'the coffer\'s edge...'],
        ['100%%d', '100%%%%d'], ['up ^J down', 'up ^ J down'], ['C:\\U+0041', 'C:\\U+005CU+0041'], ['Łódź', 'Łódź'],
    ])('%s', (words, plain) => {
        expect(plainText(words)).toBe(plain);
    });
});
