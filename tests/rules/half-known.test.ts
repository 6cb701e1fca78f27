import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Profile, Room, Stock } from '../../src/job/model.ts';
import { inches } from '../../src/quantity/rational.ts';
import { build, findingsOf, fitFindingsOf } from './built.ts';
import { runs } from '../support/full.ts';

/** Jobs of which anything may be missing, zero, negative or absurd. */
const lengths = (...usual: string[]) => fc.oneof({
    weight: 30, arbitrary: fc.constantFrom(...usual.map(inches)),
}, fc.integer({ min: 1, max: 120_000 }), { weight: 1, arbitrary: fc.constantFrom(0, 1, -1, -9999, inches(1e9)) });
const ticks = lengths('1/16', '1/4', '3/8', '3/4', '1 1/4', '3 1/2', '5 1/2');
const maybe = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined, freq: 12 });
const stock: fc.Arbitrary<Stock> = fc.record({ width: maybe(lengths('1 1/2', '3 1/2', '5 1/2', '7 1/4')), thickness: maybe(lengths('3/4', '3/4', '11/16')), widthOff: maybe(fc.nat(400)), rippedWith: maybe(fc.constantFrom('A', 'B')) })
    .map(words => build.stock('some-stock', words));
const part = { stock: maybe(stock), rip: fc.option(lengths('1 1/2', '3 1/2', '5 7/16', '5 1/2', '7'), { nil: undefined, freq: 2 }), ripOff: maybe(fc.nat(400)), ripWith: maybe(fc.constantFrom('A', 'B')) };
const nails = maybe(fc.record({ gauge: fc.nat(30), length: ticks, every: ticks }));
const profile: fc.Arbitrary<Profile> = fc.record({
    blocking: maybe(fc.record({ ...part, fit: maybe(fc.constantFrom('full-width', 'full-width', 'full-width', 'bench-box')) })),
    spacers: maybe(fc.record({ ...part, height: maybe(ticks) })),
    sides: maybe(fc.record({
        ...part, heldDown: maybe(lengths('1/4', '3/8', '1/2')), rabbet: maybe(fc.tuple(ticks, ticks)), edge: maybe(fc.constantFrom('lower-back', 'lower-front', 'upper-back')),
        corners: maybe(fc.constantFrom('mitered', 'butted')), past: maybe(fc.constantFrom('north-south', 'east-west')), nails,
    })),
    cleats: maybe(fc.record({ stock: maybe(stock), thickness: maybe(ticks), height: maybe(ticks), gauge: maybe(ticks), nails })),
    bottom: maybe(fc.record({
        ...part, gap: maybe(fc.tuple(ticks, ticks)), ease: maybe(ticks), biscuits: maybe(fc.tuple(fc.integer({ min: -2, max: 1e6 }), fc.constantFrom('#0', '#10', '#20', '#99'))),
        press: maybe(ticks), nails,
    })),
    trim: maybe(fc.record({ ...part, nails })),
} as const).map(words => build.profile('some-box', words as Parameters<typeof build.profile>[1]));
const spacing = fc.oneof(
    fc.record({ coffers: fc.oneof({ weight: 20, arbitrary: fc.integer({ min: 1, max: 6 }) }, fc.constantFrom(2.5, 1e6, 0, -1)) }),
    fc.record({ size: fc.tuple(lengths('20', '30'), lengths('40', '50')) }),
    fc.record({ lines: fc.array(lengths('25', '50', '75', '100'), { minLength: 1, maxLength: 4 }) }),
);
const settings = fc.record({ show: fc.constantFrom('feet-inches', 'millimeters'), cutTolerance: maybe(ticks), cutTo: maybe(ticks) } as const).map(words => build.settings(words));
const room: fc.Arbitrary<Room> = fc.record({
    job: settings, width: maybe(lengths('100', '140')), length: maybe(lengths('100', '120 1/3')), north: maybe(spacing), east: maybe(spacing), beams: maybe(profile),
    through: maybe(fc.constantFrom('north-south', 'east-west')), band: maybe(fc.record({ stock: maybe(stock), rip: maybe(ticks), belowBeams: maybe(ticks) })),
    lines: fc.dictionary(fc.constantFrom('1', 'A', 'Z'), fc.record({ beams: maybe(profile), heldDown: fc.option(lengths('1/4', '3/8'), { nil: undefined, freq: 2 }), splices: fc.array(lengths('50', '60'), { maxLength: 2 }) })),
} as const).map(words => build.room('some-room', words as Parameters<typeof build.room>[1]));

describe('jobs that are only half known', () => {
    it('never throw, and are spoken of in figures', () => {
        const spoken = new Set<string>();
        fc.assert(fc.property(fc.array(profile, { maxLength: 2 }), fc.array(room, { maxLength: 2 }), settings, (profiles, drawn, job) => {
            const rooms = drawn.map(one => ({ ...one, job }));
            const foreign = job.show.value === 'millimeters' ? /\d["']/ : /\d mm/;
            for (const { rule, message, fixes, related } of [...findingsOf({ profiles, rooms, job }), ...fitFindingsOf({ rooms, job })]) {
                spoken.add(rule);
                const words = [message, ...related.map(place => place.message), ...fixes.flatMap(fix => [fix.title, ...fix.edits.map(edit => edit.text)])];
                for (const text of words) expect(text).not.toMatch(foreign);
                for (const text of words) expect(text).not.toMatch(/undefined|NaN|Infinity|\[object|no length| {2}|\.\.$/);
                expect(message).toMatch(/[.]$/);
            }
        }), { numRuns: runs(1500, 100), seed: 41 });
        expect(spoken.size, `only ${[...spoken].sort().join(', ')}`).toBeGreaterThan(runs(30, 10));
    });
});
