import fc from 'fast-check';
import { expect, test } from 'vitest';
import { layOut } from '../../src/ceiling/layout.ts';
import { dryFit } from '../../src/dryfit/dry-fit.ts';
import type { JobSettings } from '../../src/job/model.ts';
import type { Part } from '../../src/job/part.ts';
import { sumOf } from '../../src/provenance/why.ts';
import { inches } from '../../src/quantity/rational.ts';
import { takeOff } from '../../src/takeoff/take-off.ts';
import { given } from '../cutting/samples.ts';
import { runs } from '../support/full.ts';
import { ceilings } from './ceilings.ts';
import { told } from './told.ts';

const OF: readonly Part[] = ['cleat', 'spacer', 'blocking'];

test('hidden pieces that are pooled are shorter by the slack at the most, of fewest lengths, and dry-fit as clean as before', () => {
    let pooled = 0, saved = 0;
    fc.assert(fc.property(ceilings, fc.integer({ min: 1, max: 8 }), fc.subarray([...OF], { minLength: 1 }), (all, eighths, of) => {
        if (!all) return;
        const { room } = all.ceiling, slack = inches(`${eighths}/8`);
        const job: JobSettings = { ...room.job, poolHidden: given({ slack, of: new Set(of) }) };
        const { ceiling } = layOut({ ...room, job });
        const off = takeOff(ceiling!);
        expect(off.pieces.map(({ id }) => id)).toEqual(all.off.pieces.map(({ id }) => id));
        off.pieces.forEach((piece, i) => {
            const before = all.off.pieces[i]!, by = before.cutOverall - piece.cutOverall;
            if (by === 0) { expect(piece).toEqual({ ...before, stock: piece.stock }); return; }
            pooled++;
            expect(of).toContain(piece.part);
            expect(by).toBeGreaterThan(0);
            expect(by).toBeLessThanOrEqual(slack);
            expect(sumOf(piece.why)).toBe(piece.back);
            expect(piece.cutBack % job.cutTo.value).toBe(0);
        });
        const lengths = (pieces: typeof off.pieces): number => new Set(pieces.filter(({ part }) => of.includes(part)).map(({ part, cutOverall }) => `${part} ${cutOverall}`)).size;
        saved += lengths(all.off.pieces) - lengths(off.pieces);
        const clean = dryFit(all.ceiling, all.off).faults.map(told);
        expect(dryFit(ceiling!, off).faults.map(told)).toEqual(clean);
    }), { seed: 53, numRuns: runs(400, 40) });
    expect(pooled).toBeGreaterThan(20);
    expect(saved).toBeGreaterThan(5);
});
