import { describe, expect, it } from 'vitest';
import type { Severity } from '../../src/findings/finding.ts';
import { slotLength, biscuitOf } from '../../src/data/biscuits.ts';
import { inches } from '../../src/quantity/rational.ts';
import type { Ticks } from '../../src/quantity/ticks.ts';
import type { ProfileWords, RoomWords } from '../support/job-builder.ts';
import { beam, beamFindings, board, build, named, roomFindings } from './built.ts';

/**
 * Every threshold from both sides: at the limit nothing is found, one tick beyond it is. `beyond` says which way that is.
 * Limits are in inches; a tick is 1/16256".
 */
interface Threshold<Words> { rule: string; limit: string; beyond: 1 | -1; severity: Severity; words: (at: Ticks) => Words; note?: string }

const cleats = (thickness: Ticks, height: Ticks | string = '3/4"') => ({ stock: board('1 1/2"'), thickness, height });
const nail = (length: Ticks) => ({ gauge: 18, length, every: '8"' });

const sections: Threshold<ProfileWords>[] = [
    { rule: 'bottom-wont-fit', limit: '5 1/2', beyond: 1, severity: 'error', words: rip => ({ bottom: { stock: board('7 1/4"'), rip } }) },
    { rule: 'bottom-wont-fit', limit: '5 31/64', beyond: 1, severity: 'warning', note: 'the least gap asked for', words: rip => ({ bottom: { rip, gap: ['1/64"', '1/16"'] } }) },
    { rule: 'bottom-gap-shows', limit: '5 15/32', beyond: -1, severity: 'warning', note: 'the greatest gap', words: rip => ({ bottom: { rip } }) },
    { rule: 'bottom-gap-shows', limit: '5 3/8', beyond: -1, severity: 'error', note: 'a greater gap that is asked for', words: rip => ({ bottom: { rip, gap: ['0"', '1/8"'] } }) },
    { rule: 'cleat-off-gauge', limit: '3/4', beyond: 1, severity: 'error', words: gauge => ({ cleats: { ...cleats(inches('3/4')), gauge } }) },
    { rule: 'cleat-off-gauge', limit: '3/4', beyond: -1, severity: 'error', words: gauge => ({ cleats: { ...cleats(inches('3/4')), gauge } }) },
    { rule: 'spacer-hits-cleat', limit: '5 1/4', beyond: 1, severity: 'error', words: height => ({ cleats: cleats(inches('3/4')), spacers: { stock: board('5 1/2"'), height } }) },
    { rule: 'spacer-hits-cleat', limit: '6', beyond: 1, severity: 'error', note: 'without cleats, down to the bottom', words: height => ({ spacers: { stock: board('5 1/2"'), height } }) },
    { rule: 'spacer-hits-cleat', limit: '6', beyond: 1, severity: 'error', note: 'cleats up into the blocking', words: height => ({ cleats: cleats(inches('3/4'), height) }) },
    { rule: 'trim-wont-cover', limit: '5/8', beyond: -1, severity: 'error', words: width => ({ trim: { stock: board(width) } }) },
    { rule: 'side-misses-blocking', limit: '3/8', beyond: 1, severity: 'error', words: heldDown => ({ sides: { heldDown } }) },
    { rule: 'groove-leaves-no-lip', limit: '3/8', beyond: 1, severity: 'error', words: width => ({ sides: { rabbet: [width, '1/4"'] } }) },
    { rule: 'groove-too-high-for-bottom', limit: '5/16', beyond: 1, severity: 'warning', words: height => ({ sides: { rabbet: ['1/4"', height] }, bottom: { ease: '1/16"' } }) },
    { rule: 'cleats-crowd-channel', limit: '2', beyond: 1, severity: 'warning', words: thickness => ({ cleats: cleats(thickness) }) },
    { rule: 'too-wide-for-stock', limit: '7 1/4', beyond: 1, severity: 'error', words: rip => ({ sides: { rip } }) },
    { rule: 'too-wide-for-stock', limit: '1 1/2', beyond: 1, severity: 'error', words: rip => ({ trim: { stock: board('1 1/2"'), rip } }) },
    { rule: 'nail-shows', limit: '1 3/8', beyond: 1, severity: 'error', words: length => ({ cleats: { ...cleats(inches('3/4')), nails: nail(length) } }) },
    { rule: 'nail-wont-hold', limit: '1 1/8', beyond: -1, severity: 'warning', note: 'cleats', words: length => ({ cleats: { ...cleats(inches('3/4')), nails: nail(length) } }) },
    { rule: 'nail-wont-hold', limit: '1 1/8', beyond: -1, severity: 'warning', note: 'sides', words: length => ({ sides: { nails: nail(length) } }) },
    { rule: 'nail-wont-hold', limit: '1 1/8', beyond: -1, severity: 'warning', note: 'bottom', words: length => ({ bottom: { nails: nail(length) } }) },
    { rule: 'nail-wont-hold', limit: '1 1/8', beyond: -1, severity: 'warning', note: 'trim', words: length => ({ trim: { stock: board('1 1/2"'), nails: nail(length) } }) },
    { rule: 'blocking-off-width', limit: '5 1/2', beyond: -1, severity: 'error', note: 'spacers narrower than the bottom', words: rip => ({ spacers: { stock: board('5 1/2"'), rip, height: '3"' } }) },
    { rule: 'blocking-off-width', limit: '5 17/32', beyond: 1, severity: 'error', note: 'spacers wider than the greatest gap', words: rip => ({ spacers: { stock: board('7 1/4"'), rip, height: '3"' } }) },
    { rule: 'cleat-off-stock', limit: '3/4', beyond: -1, severity: 'warning', words: thickness => ({ cleats: cleats(thickness, '1"') }) },
    { rule: 'cleat-off-stock', limit: '3/4', beyond: 1, severity: 'error', words: thickness => ({ cleats: cleats(thickness, '1"') }) },
    { rule: 'box-off-blocking', limit: '5 7/16', beyond: 1, severity: 'warning', note: 'a 16th narrower', words: rip => ({ blocking: { rip, fit: 'bench-box' } }) },
    { rule: 'box-off-blocking', limit: '5 3/8', beyond: -1, severity: 'warning', note: 'an 8th narrower', words: rip => ({ blocking: { rip, fit: 'bench-box' } }) },
    { rule: 'not-positive', limit: '0', beyond: -1, severity: 'error', words: heldDown => ({ sides: { heldDown } }) },
];

const withBand = (words: { belowBeams?: Ticks; rip?: Ticks; stock?: Ticks }): RoomWords => ({
    width: `13' 3 1/2"`, length: `9' 8 1/2"`, beams: beam({ trim: { stock: board('1 1/2"') } }),
    band: { stock: board(words.stock ?? '7 1/4"'), rip: words.rip, belowBeams: words.belowBeams },
});
const rooms: Threshold<RoomWords>[] = [
    { rule: 'band-top-shows', limit: '1 1/8', beyond: 1, severity: 'warning', words: top => withBand({ rip: inches(5), belowBeams: inches(5) - inches('7 1/2') + top }) },
    { rule: 'band-top-shows', limit: '1 1/2', beyond: 1, severity: 'error', note: 'bare wall', words: top => withBand({ rip: inches(5), belowBeams: inches(5) - inches('7 1/2') + top }) },
    { rule: 'band-hits-ceiling', limit: '7 1/2', beyond: 1, severity: 'error', words: rip => withBand({ stock: inches('9 1/4'), rip }) },
    { rule: 'end-coffers-differ', limit: '1/16', beyond: 1, severity: 'hint', note: 'lines on the thirds of the wall, and a band as thick as half a beam but for so much', words: off => ({ width: `13' 3"`, north: { lines: ['53"', '106"'] }, band: { stock: board('7 1/4"', inches('3 1/2') - off) } }) },
    { rule: 'rounding-left-over', limit: '2031/16256', beyond: 1, severity: 'warning', note: 'an eighth, less a hair, cut to eighths', words: off => ({ width: inches(158) + off, job: build.settings({ cutTo: inches('1/8') }) }) },
    { rule: 'splice-in-sight', limit: '54', beyond: -1, severity: 'warning', words: at => ({ lines: { 1: { splices: [{ at }] } } }) },
    { rule: 'splice-in-sight', limit: '61', beyond: 1, severity: 'warning', words: at => ({ lines: { 1: { splices: [{ at }] } } }) },
    { rule: 'press-adds-up', limit: '1/64', beyond: 1, severity: 'warning', note: 'four pieces', words: press => ({ width: `17' 9"`, north: { coffers: 4 }, beams: beam({ bottom: { press } }) }) },
    { rule: 'run-pinches-channel', limit: '1/32', beyond: 1, severity: 'warning', note: 'two coffers, one channel, 1/32" of play', words: cutTolerance => ({ job: build.settings({ cutTolerance }), beams: beam({ bottom: { rip: '5 15/32"', gap: ['0"', '1"'] } }) }) },
    { rule: 'run-pinches-channel', limit: '1/64', beyond: 1, severity: 'warning', note: 'a gap that is as wide as it may be already', words: cutTolerance => ({ job: build.settings({ cutTolerance }), beams: beam({ bottom: { rip: '5 7/16"', gap: ['0"', '1/16"'] } }) }) },
    { rule: 'thickness-mismatch-at-miter', limit: '49/64', beyond: 1, severity: 'hint', words: thickness => ({ lines: { A: { beams: beam({ sides: { stock: board('7 1/4"', thickness) } }) } } }) },
    { rule: 'grooves-dont-meet', limit: '1/4', beyond: 1, severity: 'error', words: width => ({ beams: beam({ sides: { rabbet: ['1/4"', '1/4"'] } }), lines: { A: { beams: beam({ sides: { rabbet: [width, '1/4"'] } }) } } }) },
    { rule: 'grooves-dont-meet', limit: '1/4', beyond: -1, severity: 'error', note: 'in height', words: height => ({ beams: beam({ sides: { rabbet: ['1/4"', '1/4"'] } }), lines: { A: { beams: beam({ sides: { rabbet: ['1/4"', height] } }) } } }) },
    { rule: 'depths-nearly-equal', limit: '1/4', beyond: 1, severity: 'warning', words: heldDown => ({ lines: { A: { heldDown } } }) },
];

describe.each(sections)('$rule beyond $limit" ($note)', ({ rule, limit, beyond, severity, words }) => {
    it('is silent at the limit', () => {
        expect(named(beamFindings(words(inches(limit))), rule).filter(finding => finding.severity === severity)).toEqual([]);
    });
    it('speaks one tick beyond', () => {
        expect(named(beamFindings(words(inches(limit) + beyond)), rule).map(finding => finding.severity)).toEqual([severity]);
    });
});

describe.each(rooms)('$rule beyond $limit" ($note)', ({ rule, limit, beyond, severity, words }) => {
    it('is silent at the limit', () => {
        expect(named(roomFindings(words(inches(limit))), rule).filter(finding => finding.severity === severity)).toEqual([]);
    });
    it('speaks one tick beyond', () => {
        const found = named(roomFindings(words(inches(limit) + beyond)), rule).map(finding => finding.severity);
        expect(found.length).toBeGreaterThan(0);
        expect(new Set(found)).toEqual(new Set([severity]));
    });
});

describe('biscuit slots', () => {
    // one slot and 3/16" at either edge
    const least = slotLength(biscuitOf('#20')!) + 2 * inches('3/16');
    it('fit to the tick', () => {
        const bottom = (width: Ticks) => ({ blocking: { stock: board(width) }, bottom: { stock: board(width), biscuits: [1, '#20'] as [number, string] } });
        expect(named(beamFindings(bottom(least)), 'slots-wont-fit')).toEqual([]);
        expect(named(beamFindings(bottom(least - 1)), 'slots-wont-fit').map(finding => finding.severity)).toEqual(['warning']);
        expect(named(beamFindings(bottom(slotLength(biscuitOf('#20')!))), 'slots-wont-fit').map(({ severity, message }) => `${severity}: ${message.split(':')[0]}`)).toEqual(['error: The slots come out at the edges']);
    });
});

it('rounding that the job places is silent as long as the coffers stay within 1/16"', () => {
    const over = (cutTo: string) => roomFindings({ width: inches('158 1/8'), residue: 'outer-coffers', job: build.settings({ cutTo: inches(cutTo) }) });
    expect(named(over('1/16'), 'rounding-left-over')).toEqual([]);                                     // 1/16" to each outer coffer
    expect(named(over('1/8'), 'rounding-left-over').map(finding => finding.severity)).toEqual(['warning']);       // 1/8" to one of them
});

// lines of 7" on the thirds of 159" leave 49 1/2", 46" and 49 1/2"; both moved east by a 32nd, the outer coffers differ by a 16th
it('outer coffers that nobody can have meant differ from the inner ones and not from each other, to the tick', () => {
    const moved = (by: Ticks) => named(roomFindings({ width: inches(159), north: { lines: [inches(53) + by, inches(106) + by] } }), 'end-coffers-differ');
    expect([moved(0), moved(inches('1/32')), moved(inches('1/32') + 1)].map(found => found.length)).toEqual([1, 1, 0]);
});

// the same lines, both moved outwards or inwards, stay 49 1/2" or so and 46" or so; by more than a 16th they divide nothing evenly
it('lines that are off the thirds by more than a 16th are meant so, to the tick', () => {
    const apart = (by: Ticks) => named(roomFindings({ width: inches(159), north: { lines: [inches(53) + by, inches(106) - by] } }), 'end-coffers-differ').length;
    expect([inches('1/16'), -inches('1/16'), inches('1/16') + 1, -inches('1/16') - 1].map(apart)).toEqual([1, 1, 0, 0]);
});

// 1/16" may show beside a bottom in 5 1/2": a gap that is wider, or none at all, is told of the bottom itself, and not of the cuts besides
it('what is open already, or does not go in, is told of the bottom alone', () => {
    const job = build.settings({ cutTolerance: inches('1/32') });
    const told = (rip: Ticks): number => named(roomFindings({ job, beams: beam({ bottom: { stock: board('7 1/4"'), rip, gap: ['0"', '1/16"'] } }) }), 'run-pinches-channel').length;
    expect([inches('5 7/16'), inches('5 7/16') - 1, inches('5 1/2'), inches('5 1/2') + 1].map(told)).toEqual([2, 0, 2, 0]);
});

it('a trim that is too low is ripped wider where its strip has the width, to the tick', () => {
    const fixes = (strip: string): string[] =>
        beamFindings({ trim: { stock: board(strip), rip: '9/16"' } }).filter(({ rule }) => rule === 'trim-wont-cover').flatMap(finding => finding.fixes.map(({ title }) => title));
    expect(fixes('5/8"')).toEqual(['Rip the trim to 5/8"']);
    expect(fixes('39/64"')).toEqual([]);
});
