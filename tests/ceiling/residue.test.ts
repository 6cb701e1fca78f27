import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { residueOf } from '../../src/ceiling/residue.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { divided, type RunWords } from '../support/divisions.ts';
import { ticksOf } from '../support/job-builder.ts';
import { runs } from '../support/full.ts';

type Place = Parameters<typeof residueOf>[2];
function residue(words: RunWords, place: Place, step = '1/32"') {
    const { result } = divided(words);
    return residueOf({ start: ticksOf(words.band ?? 0), end: ticksOf(words.room) - ticksOf(words.band ?? 0) }, result!, place, ticksOf(step));
}
const cuts = (r: ReturnType<typeof residue>): string[] => r.cutCoffers.map(printInches);

describe('what rounding leaves in the run', () => {
    // three coffers of 53 2/3" in 161"
    const thirds: RunWords = { room: '161" ', widths: ['0"'], spacing: { coffers: 3 } };
    const run = { ...thirds, room: ticksOf('161"') };

    test('outer coffers: the odd step goes to the west or north', () => {
        const r = residue(run, 'outer-coffers');
        expect(cuts(r)).toEqual(['53 11/16"', '53 21/32"', '53 21/32"']);
        expect([r.ticks, r.rest].map(printInches)).toEqual(['1/32"', '0"']);
    });
    test('band: all coffers are equal, and it is left at the band', () => {
        const r = residue(run, 'band');
        expect(cuts(r)).toEqual(['53 21/32"', '53 21/32"', '53 21/32"']);
        expect([r.ticks, r.rest].map(printInches)).toEqual(['1/32"', '1/32"']);
    });
    test('band: it cannot give way, so coffers that come to too much are cut a step smaller, all of them', () => {
        // 160 27/32" in 3 is 53 39/64": at 53 5/8" they would be 1/32" longer than the room
        const r = residue({ ...run, room: ticksOf('160 27/32"') }, 'band');
        expect(cuts(r)).toEqual(['53 19/32"', '53 19/32"', '53 19/32"']);
        expect([r.ticks, r.rest].map(printInches)).toEqual(['1/16"', '1/16"']);
    });
    test('spread: each face at its nearest place', () => {
        const r = residue(run, 'spread');
        expect(cuts(r)).toEqual(['53 21/32"', '53 11/16"', '53 21/32"']);
        expect([r.ticks, r.rest]).toEqual([0, 0]);
    });
    test('too little is taken off the outer coffers', () => {
        // 161" less a 32nd in 3: 53 21/32" each would fit; 160 27/32" in 3 is 53 39/64", cut at 53 5/8" or 53 19/32"
        const r = residue({ ...run, room: ticksOf('160 27/32"') }, 'outer-coffers');
        expect(cuts(r)).toEqual(['53 19/32"', '53 5/8"', '53 5/8"']);
        expect(printInches(r.ticks)).toBe('-1/32"');
    });
    test('one coffer takes all of it', () => {
        expect(cuts(residue({ room: ticksOf('120 1/64"'), widths: ['0"'], spacing: { coffers: 1 } }, 'outer-coffers'))).toEqual(['120"']);
    });
    test('a run that is no whole number of steps leaves less than one', () => {
        const r = residue({ room: ticksOf('161"') + 100, widths: ['0"'], spacing: { coffers: 3 } }, 'outer-coffers');
        expect([cuts(r), r.rest]).toEqual([['53 11/16"', '53 21/32"', '53 21/32"'], 100]);
    });
    test('metric', () => {
        const r = residue({ room: '4270 mm', band: '19 mm', widths: ['140 mm'], spacing: { coffers: 4 } }, 'outer-coffers', '1 mm');
        expect(r.cutCoffers.map(coffer => coffer / 640)).toEqual([953, 953, 953, 953]);
    });

    test('whatever the run: coffers + lines + rest are the run, inner coffers are equal, and no face is off by more than a step', () => {
        const places = fc.constantFrom<Place>('outer-coffers', 'band', 'spread');
        fc.assert(fc.property(fc.integer({
            min: 1, max: 12,
        }), fc.integer({ min: 1_500_000, max: 5_000_000 }), fc.constantFrom(508, 1016, 320, 640), places, (n, room, step, place) => {
            const words: RunWords = { room, widths: [80_000, 70_000], spacing: { coffers: n } };
            const { result, coffers } = divided(words);
            const r = residueOf({ start: 0, end: room }, result!, place, step);
            const lines = result!.widths.reduce((sum, width) => sum + width, 0);
            expect(r.cutCoffers.reduce((sum, coffer) => sum + coffer, lines) + r.rest).toBe(room);
            expect(r.cutCoffers.every(coffer => coffer % step === 0)).toBe(true);
            if (place !== 'spread') expect(new Set(r.cutCoffers.slice(1, -1)).size).toBeLessThanOrEqual(1);
            expect(r.rest).toBeGreaterThanOrEqual(0);
            if (place !== 'band') expect(r.rest).toBeLessThan(step);
            else expect(r.rest).toBeLessThan(n * step);
            if (place === 'spread') r.cutCoffers.forEach((coffer, i) => expect(Math.abs(coffer - coffers[i]!)).toBeLessThanOrEqual(step + step / n + 1));
            if (place === 'outer-coffers') expect(Math.abs(r.cutCoffers[0]! - r.cutCoffers.at(-1)!)).toBeLessThanOrEqual(step);
        }), { seed: 9, numRuns: runs(400) });
    });
});
