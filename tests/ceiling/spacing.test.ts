import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { printInches } from '../../src/quantity/print-length.ts';
import { TICKS_PER_INCH } from '../../src/quantity/ticks.ts';
import { checksOf } from '../data/published.ts';
import { divided } from '../support/divisions.ts';
import { ticksOf } from '../support/job-builder.ts';
import { runs } from '../support/full.ts';

const inches = (ticks: readonly number[]): string[] => ticks.map(printInches);
const kinds = (words: Parameters<typeof divided>[0]): string[] => divided(words).troubles.map(trouble => trouble.kind);

describe('gap spacing, against figures that others worked', () => {
    test.each(checksOf('gap-spacing', /^space\./))('%s: %s', (_id, _source, { inputs, expected, tolerance }) => {
        const { R, w, N } = inputs as Record<string, number>;
        const { coffers } = divided({ room: R! * TICKS_PER_INCH, widths: [w! * TICKS_PER_INCH], spacing: { coffers: N! + 1 } });
        expect(coffers).toHaveLength(N! + 1);
        for (const coffer of coffers) expect(Math.abs(coffer / TICKS_PER_INCH - expected)).toBeLessThanOrEqual(tolerance);
    });

    test.each(checksOf('gap-spacing', /^count\./))('%s: %s', (_id, _source, { inputs, expected }) => {
        const { R, w, g } = inputs as Record<string, number>;
        const gaps = (members: number): number =>
            Math.max(...divided({ room: R! * TICKS_PER_INCH, widths: [w! * TICKS_PER_INCH], spacing: { coffers: members + 1 } }).coffers);
        expect(gaps(expected)).toBeLessThanOrEqual(g! * TICKS_PER_INCH);
        expect(gaps(expected - 1)).toBeGreaterThan(g! * TICKS_PER_INCH);
    });

    test.each(checksOf('gap-spacing', /^wrong\./))('%s: %s, which does not follow from its rule', (_id, _source, { inputs, expected, tolerance }) => {
        const { R, w, N } = inputs as Record<string, number>;
        const { coffers } = divided({ room: R! * TICKS_PER_INCH, widths: [w! * TICKS_PER_INCH], spacing: { coffers: N! + 1 } });
        expect(Math.abs(coffers[0]! / TICKS_PER_INCH - expected)).toBeGreaterThan(tolerance);
        expect(inches(coffers)[0]).toBe('2 13/16"');
    });
});

describe('by number', () => {
    // 29 lines of 5" are more than any of these rooms. A coffer less than three beams wide is all beam: common practice, no source.
    // (105" - 3 x 7") / 4 = 21", which is three beams of 7"; a hair less room, and there are 3 of (104 7/8" - 14") / 3
    test('where they do not fit, the most that do is told, none less than three beams wide', () => {
        const fits = (room: string, widths = ['7"']) => divided({ room, widths, spacing: { coffers: 30 } }).troubles.map(trouble => (trouble.kind === 'grid-doesnt-close' ? trouble.fits : undefined));
        expect(fits('105"')).toEqual([{ coffers: 4, size: ticksOf('21"') }]);
        expect(fits('104 7/8"')).toMatchObject([{ coffers: 3 }]);
        // the wider of two beams counts: (105" - 7" - 2 x 5") / 4 = 22"
        expect(fits('105"', ['7"', '5"'])).toEqual([{ coffers: 4, size: ticksOf('22"') }]);
        expect(fits('101"', ['7"', '5"'])).toEqual([{ coffers: 4, size: ticksOf('21"') }]);
        expect(fits('100 7/8"', ['7"', '5"'])).toMatchObject([{ coffers: 3 }]);
        // of 48" two coffers have 20 1/2" each
        expect(fits('48"')).toEqual([undefined]);
    });
    // lines that run north-south stand along the wall to the north, and are counted there
    test('a count that is none is told of the wall that it is along', () => {
        expect(divided({ room: '100"', widths: ['7"'], spacing: { coffers: 0 } }).troubles).toMatchObject([{ kind: 'bad-count', what: 'coffers along the north wall' }]);
    });
    test('coffers are equal to a tick, and add up with the lines to the run exactly', () => {
        fc.assert(fc.property(fc.integer({ min: 1, max: 12 }), fc.integer({
            min: 1_000_000, max: 5_000_000,
        }), fc.array(fc.integer({ min: 1000, max: 50_000 }), { minLength: 1, maxLength: 12 }), fc.integer({ min: 0, max: 20_000 }),
            (n, room, widths, band) => {
                const { coffers, result } = divided({ room, band, widths, spacing: { coffers: n } });
                expect(coffers).toHaveLength(n);
                expect(Math.max(...coffers) - Math.min(...coffers)).toBeLessThanOrEqual(1);
                expect(coffers.reduce((sum, coffer) => sum + coffer, 0) + result!.widths.reduce((sum, width) => sum + width, 0) + 2 * band).toBe(room);
            }), { seed: 7, numRuns: runs(300) });
    });

    test('faces stand at start + round(i x free / n) + the widths before', () => {
        const { result } = divided({ room: 1001, band: 100, widths: [50, 70], spacing: { coffers: 3 } });
        // free: 1001 - 200 - 120 = 681, so 227 each
        expect(result?.lows).toEqual([327, 604]);
        expect(divided({ room: 1000, widths: [50], spacing: { coffers: 3 } }).result?.lows).toEqual([300, 650]);
        // free 899: 299 2/3, so faces at 300 (rounded from 299 2/3) and 599 (from 599 1/3) + 50
        expect(divided({ room: 999, widths: [50], spacing: { coffers: 3 } }).result?.lows).toEqual([300, 649]);
    });

    test('one coffer is the whole run', () => {
        expect(divided({ room: `10'`, band: '3/4"', widths: ['7"'], spacing: { coffers: 1 } })).toMatchObject({ coffers: [ticksOf('118 1/2"')], troubles: [] });
    });

    test.each([0, -3, 2.5, Number.NaN, Infinity])('%d coffers are no count', coffers => {
        expect(kinds({ room: `10'`, widths: ['7"'], spacing: { coffers } })).toEqual(['bad-count']);
    });
    test('a million coffers are told, and not worked out', () => {
        expect(divided({ room: `10'`, widths: ['7"'], spacing: { coffers: 1_000_000 } }).troubles).toMatchObject([{ kind: 'too-many-coffers', count: 1_000_000, most: 41 }]);
    });
    test('a coffer may be a single tick, and no less', () => {
        expect(divided({ room: 13, widths: [5], spacing: { coffers: 3 } }).coffers).toEqual([1, 1, 1]);
        expect(kinds({ room: 12, widths: [5], spacing: { coffers: 3 } })).toEqual(['grid-doesnt-close']);
    });
    test('beams wider than the room do not close', () => {
        expect(divided({ room: `10'`, band: '3/4"', widths: ['7"'], spacing: { coffers: 19 } }).troubles).toMatchObject([
            { kind: 'grid-doesnt-close', along: 'east-west', wanted: ticksOf('127 1/2"'), has: ticksOf('120"'), parts: `18 x beam 7" + 2 x band 3/4"` },
        ]);
    });
});

describe('by size', () => {
    test('the number whose coffers come nearest to the middle of the range', () => {
        // 220" with 7" beams: 4 coffers of 49 3/4", 5 of 38 2/5"
        expect(inches(divided({ room: '220"', widths: ['7"'], spacing: { size: ['40"', '54"'] } }).coffers)).toEqual(['49 3/4"', '49 3/4"', '49 3/4"', '49 3/4"']);
        expect(divided({ room: '220"', widths: ['7"'], spacing: { size: ['30"', '50"'] } }).coffers).toHaveLength(5);
        expect(divided({ room: '220"', widths: ['7"'], spacing: { size: ['38"', '51"'] } }).coffers).toHaveLength(4);
    });
    test('of two that are as near, the fewer', () => {
        // no width to speak of: 120" in 3 is 40", in 4 is 30"; the middle of 30" to 40" is 35"
        expect(divided({ room: '120"', widths: [1], spacing: { size: ['29 1/2"', '40 1/2"'] } }).coffers).toHaveLength(3);
    });
    test('of two that are exactly as near, the fewer', () => {
        // 1010 less one line of 10 is 2 x 500, less two 3 x 330; both are 85 from the middle of 330 to 500
        expect(divided({ room: 1010, widths: [10], spacing: { size: [330, 500] } }).coffers).toEqual([500, 500]);
    });
    // 220" less three lines of 7" are 4 x 49 3/4"; two lines leave 3 x 68 2/3", four lines 5 x 38 2/5"
    test('a range holds its own ends', () => {
        expect(divided({ room: '220"', widths: ['7"'], spacing: { size: ['49 3/4"', '60"'] } }).coffers).toHaveLength(4);
        expect(divided({ room: '220"', widths: ['7"'], spacing: { size: ['40"', '49 3/4"'] } }).coffers).toHaveLength(4);
        expect(divided({ room: '220"', widths: ['7"'], spacing: { size: ['49 3/4"', '49 3/4"'] } }).coffers).toHaveLength(4);
    });
    test('a range said the wrong way round is the same range', () => {
        expect(divided({ room: '220"', widths: ['7"'], spacing: { size: ['54"', '40"'] } }).coffers).toHaveLength(4);
    });
    test('none fits: the nearest on either side', () => {
        expect(divided({ room: '220"', widths: ['7"'], spacing: { size: ['40"', '45"'] } }).troubles).toMatchObject([{
            kind: 'no-coffer-size-fits', nearest: [{ coffers: 4, size: ticksOf('49 3/4"') }, { coffers: 5, size: ticksOf('38.4"') }],
        }]);
    });
    test('coffers no bigger than the beams\' own width, or none at all', () => {
        expect(kinds({ room: '220"', widths: ['7"'], spacing: { size: ['0"', '0"'] } })).toEqual(['not-positive']);
        expect(kinds({ room: `900'`, widths: ['7"'], spacing: { size: ['1"', '2"'] } })).toEqual(['too-many-coffers']);
    });
});

describe('by lines', () => {
    const room = '220"', band = '3/4"', widths = ['7"'];
    test('stand where they are said to, in the order of the room', () => {
        expect(inches(divided({ room, band, widths, spacing: { lines: ['110"', '53 5/8"', '166 3/8"'] } }).centers)).toEqual(['53 5/8"', '110"', '166 3/8"']);
        expect(inches(divided({ room, band, widths, spacing: { lines: ['53 5/8"', '100"'], from: 'north-east' } }).centers)).toEqual(['120"', '166 3/8"']);
    });
    test('half a tick is left to the west', () => {
        expect(divided({ room: 1000, widths: [51], spacing: { lines: [500] } }).result).toMatchObject({ lows: [474], sizes: [474.5, 474.5] });
    });
    test('lines that run into each other', () => {
        expect(divided({ room, widths, spacing: { lines: ['50"', '55"'] } }).troubles).toMatchObject([{ kind: 'lines-overlap', lines: ['1', '2'], by: ticksOf('2"') }]);
    });
    test('a line that has no room to the wall', () => {
        expect(divided({ room, band, widths, spacing: { lines: ['3"'] } }).troubles).toMatchObject([
            { kind: 'grid-doesnt-close', wanted: ticksOf('4 1/4"'), has: ticksOf('3"'), parts: 'half of the line 1 beam 3 1/2" + band 3/4"' },
        ]);
        expect(divided({ room, band, widths, spacing: { lines: [`19'`] } }).troubles).toMatchObject([{ kind: 'grid-doesnt-close', wanted: ticksOf('4 1/4"'), has: ticksOf('-8"') }]);
    });
});

describe('centered on a feature', () => {
    const room = '220"', widths = ['7"'];
    const middles = (coffers: number[], width = ticksOf('7"')): number[] => coffers.map((coffer, i) => coffers.slice(0, i).reduce((sum, c) => sum + c + width, 0) + coffer / 2);

    test('an inner coffer takes the feature, and the end coffers take the shift', () => {
        const { coffers } = divided({ room, widths, spacing: { coffers: 4 }, feature: '84"' });
        expect(inches(coffers)).toEqual(['52 1/8"', '49 3/4"', '49 3/4"', '47 3/8"']);
        expect(middles(coffers)[1]).toBe(ticksOf('84"'));
    });
    // lines of 7" and coffers of 6": round a lamp at 8" the first coffer would be 16" and take the last one's place, the second leaves 2" less than nothing
    test('where either end coffer would be less than nothing there is none', () => {
        const { result, troubles } = divided({ room: '32"', widths: ['7"'], spacing: { coffers: 3 }, feature: '8"' });
        expect(result).toBeUndefined();
        expect(troubles).toMatchObject([{ kind: 'not-supported', because: 'nothing would be left of a coffer at the end' }]);
    });
    test('near the wall it is the end coffer, twice as wide as the feature stands from the band', () => {
        const { coffers } = divided({ room, band: '3/4"', widths, spacing: { coffers: 4 }, feature: '25"' });
        expect(inches(coffers)).toEqual(['48 1/2"', '49 3/8"', '49 3/8"', '50 1/4"']);
        // as far from the other wall it is the other end coffer
        expect(inches(divided({ room, band: '3/4"', widths, spacing: { coffers: 4 }, feature: '195"' }).coffers)).toEqual(['50 1/4"', '49 3/8"', '49 3/8"', '48 1/2"']);
    });
    test('with a size, all coffers are within it', () => {
        const found = divided({ room, widths, spacing: { size: ['46"', '54"'] }, feature: '84"' });
        expect(found.coffers).toHaveLength(4);
        expect(divided({ room, widths, spacing: { size: ['49"', '51"'] }, feature: '84"' }).troubles.map(t => t.kind)).toEqual(['no-coffer-size-fits']);
    });
    test('one coffer, or a feature outside of the room', () => {
        expect(kinds({ room, widths, spacing: { coffers: 1 }, feature: '84"' })).toEqual(['not-supported']);
        expect(kinds({ room, widths, spacing: { coffers: 1 }, feature: '110"' })).toEqual([]);
        // in the band, at its face, and beyond the wall
        for (const feature of ['1/2"', '3/4"', '219 1/4"', '300"']) {
            expect(divided({ room, band: '3/4"', widths, spacing: { coffers: 4 }, feature }).troubles, feature).toMatchObject([{ kind: 'not-supported', what: expect.stringMatching(/outside the coffers$/) }]);
        }
        expect(kinds({ room, band: '3/4"', widths, spacing: { coffers: 4 }, feature: '1"' })).toEqual([]);
    });
    test('one coffer has its middle where it is, to half a tick', () => {
        const trouble = (feature: number): string[] => kinds({ room: 1001, widths: [10], spacing: { coffers: 1 }, feature });
        expect([499, 500, 501, 502].map(feature => trouble(feature).length)).toEqual([1, 0, 0, 1]);
    });
    test('lines at stated places stay there, and must agree with it', () => {
        expect(kinds({ room, widths, spacing: { lines: ['110"'] }, feature: '53 1/4"' })).toEqual([]);
        expect(kinds({ room, widths, spacing: { lines: ['110"'] }, feature: '60"' })).toEqual(['not-supported']);
    });
    test('anywhere in the room some coffer is centered on it to half a tick, and the inner coffers are equal', () => {
        fc.assert(fc.property(fc.integer({
            min: 2, max: 8,
        }), fc.integer({ min: 2_000_000, max: 5_000_000 }), fc.integer({ min: 10, max: 90 }), (n, length, share) => {
            const feature = Math.round(length * share / 100);
            const { coffers, troubles } = divided({ room: length, widths: [60_001], spacing: { coffers: n }, feature });
            if (coffers.length === 0) { expect(troubles).toHaveLength(1); return; }
            expect(new Set(coffers.slice(1, -1)).size).toBeLessThanOrEqual(1);
            expect(Math.min(...middles(coffers, 60_001).map(middle => Math.abs(middle - feature)))).toBeLessThanOrEqual(0.5);
            expect(coffers.reduce((sum, coffer) => sum + coffer + 60_001, -60_001)).toBe(length);
        }), { seed: 8, numRuns: runs(300) });
    });
});
