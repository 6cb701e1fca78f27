import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import { told } from './told.ts';
import { ceilings } from './ceilings.ts';

test('random ceilings of every kind that the language can say dry-fit clean', () => {
    let tried = 0, built = 0, joints = 0;
    fc.assert(fc.property(ceilings, all => {
        tried++;
        if (!all) return;
        built++;
        const { faults, looked } = dryFit(all.ceiling, all.off);
        joints += looked.joints;
        expect(faults.map(told)).toEqual([]);
        expect(looked.pieces).toBe(all.off.pieces.length);
        expect(looked.coffers).toBe(all.ceiling.coffers.length);
    }), { seed: 51, numRuns: 250 });
    expect(built).toBeGreaterThan(tried * 0.6);
    expect(joints).toBeGreaterThan(built * 100);
});
