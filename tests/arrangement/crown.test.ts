import { describe, expect, test } from 'vitest';
import { sawFlat } from '../../src/arrangement/crown.ts';

/**
 * Crown that lies flat, in a square corner. Published settings: the table for crown of 52/38 degrees and of 45 degrees in Makita's instruction
 * manual of the LS1017, to a tenth of a degree; Ridgid's manual of the MS1065LZ has 31.62 and 33.85 for 52/38 degrees.
 */
describe('what a saw is set to', () => {
    test.each([[38, 31.6, 33.9], [45, 35.3, 30]])('spring %s°: miter %s°, bevel %s°', (spring, miter, bevel) => {
        const set = sawFlat(spring, 90);
        expect([set.miter, set.bevel].map(angle => Math.round(angle * 10) / 10)).toEqual([miter, bevel]);
    });
    test('to a hundredth', () => {
        const { miter, bevel } = sawFlat(38, 90);
        expect(Math.abs(miter - 31.62)).toBeLessThan(0.005);
        expect(Math.abs(bevel - 33.85)).toBeLessThan(0.015);
    });
    test('an outside corner is set as the inside corner of the same boards', () => {
        for (const corner of [60, 80, 90, 120]) {
            const [inside, outside] = [sawFlat(38, corner), sawFlat(38, 360 - corner)];
            expect(outside.miter).toBeCloseTo(inside.miter, 9);
            expect(outside.bevel).toBeCloseTo(inside.bevel, 9);
        }
    });
});
