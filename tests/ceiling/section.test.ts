import { describe, expect, test } from 'vitest';
import type { Derived, Section } from '../../src/ceiling/model.ts';
import { profileTroubles } from '../../src/ceiling/profile-troubles.ts';
import { isWhole, sectionOf } from '../../src/ceiling/section.ts';
import { tapeOf } from '../../src/job/tape.ts';
import { sumOf } from '../../src/provenance/why.ts';
import { whyText } from '../../src/provenance/why-text.ts';
import { printInches } from '../../src/quantity/print-length.ts';
import { rootSumSquare, worstCase } from '../../src/quantity/tolerance.ts';
import { jobBuilder, ticksOf, type ProfileWords, type StockWords } from '../support/job-builder.ts';

const b = jobBuilder();
const INCHES = tapeOf(b.settings());
const board = (name: string, words: StockWords = {}) => b.stock(name, { thickness: '3/4"', width: '5 1/2"', ...words });
function sectionWith(words: ProfileWords = {}, heldDown?: string): Section {
    const six = board('one-by-six');
    const profile = b.profile('beam', {
        blocking: { stock: six }, spacers: { stock: six, height: '5"' }, sides: { stock: board('one-by-eight', { width: '7 1/4"' }) },
        cleats: { stock: six, thickness: '3/4"', height: '3/4"' }, bottom: { stock: six }, trim: { stock: board('strip', { thickness: '1/2"', width: '1 1/2"' }) }, ...words,
    });
    return sectionOf(profile, heldDown === undefined ? undefined : b.said(b.measure(heldDown)));
}
const derived = (section: Section): [string, Derived][] => Object.entries(section).filter((entry): entry is [string, Derived] => typeof entry[1] === 'object' && 'why' in entry[1]);
const inch = (d: Derived | undefined): string | undefined => d && printInches(d.ticks);

describe('the section of a box beam', () => {
    test('depths down from the ceiling', () => {
        const s = sectionWith();
        expect(isWhole(s)).toBe(true);
        expect([s.innerWidth, s.outerWidth, s.depth, s.bottomTop, s.cleatTop, s.spacerRoom, s.fit, s.trimHeight].map(inch))
            .toEqual(['5 1/2"', '7"', '7 1/2"', '6 3/4"', '6"', '5 1/4"', '0"', '1 1/2"']);
    });
    test('a line\'s own held-down takes the place of the profile\'s', () => {
        expect(inch(sectionWith({}, '5/16"').depth)).toBe('7 9/16"');
    });
    test('every figure says why it is so, and the terms add up to it', () => {
        const all = derived(sectionWith({ bottom: { stock: board('narrow', { width: '5 7/16"' }) } }));
        expect(all.length).toBeGreaterThan(15);
        for (const [name, { ticks, why }] of all) expect(`${name} ${sumOf(why)}`).toBe(`${name} ${ticks}`);
        const { outerWidth, spacerRoom } = sectionWith();
        expect(whyText(outerWidth!.why, outerWidth!.ticks, INCHES)).toBe('blocking 5 1/2" + 2 x side 3/4" = 7"');
        expect(whyText(spacerRoom!.why, spacerRoom!.ticks, INCHES)).toBe('held down 1/4" + side 7 1/4" - bottom 3/4" - cleat 3/4" - blocking 3/4" = 5 1/4"');
    });
    test('without cleats the spacers have room down to the bottom', () => {
        expect(inch(sectionWith({ cleats: null }).spacerRoom)).toBe('6"');
    });
    test('a ripped width stands before the stock\'s', () => {
        const s = sectionWith({ bottom: { stock: board('wide', { width: '7 1/4"' }), rip: '5 7/16"' } });
        expect([inch(s.bottomWidth), inch(s.fit)]).toEqual(['5 7/16"', '1/16"']);
    });
});

describe('what may push the fit off', () => {
    const fit = (words: ProfileWords): Derived => sectionWith(words).fit!;
    const sixtyFourth = ticksOf('1/64"');

    test('boards of one stock are still different boards: both count', () => {
        const six = board('six', { widthOff: '1/64"' });
        const { tolerance } = fit({ blocking: { stock: six }, bottom: { stock: six } });
        expect(tolerance.map(t => t.cause)).toEqual(['blocking of six', 'bottom of six']);
        expect([worstCase(tolerance), Math.round(rootSumSquare(tolerance))]).toEqual([2 * sixtyFourth, Math.round(Math.SQRT2 * sixtyFourth)]);
    });
    test('ripped at one fence setting the error is shared, and cancels', () => {
        const six = board('six', { widthOff: '1/64"', rippedWith: 'fence A' });
        expect(fit({ blocking: { stock: six }, bottom: { stock: six } }).tolerance).toEqual([]);
        const eight = board('eight', { width: '7 1/4"' });
        expect(fit({ blocking: { stock: eight, rip: '5 1/2"', ripOff: '1/64"', ripWith: 'fence B' }, bottom: { stock: eight, rip: '5 7/16"', ripOff: '1/64"', ripWith: 'fence B' } }).tolerance).toEqual([]);
    });
    test('a stock ripped at a setting and a part ripped at the same one share it too', () => {
        const six = board('six', { widthOff: '1/64"', rippedWith: 'fence A' });
        expect(fit({ blocking: { stock: six }, bottom: { stock: six, rip: '5 7/16"', ripOff: '1/64"', ripWith: 'fence A' } }).tolerance).toEqual([]);
    });
    test('two settings are two errors, of stocks as of rips', () => {
        const [six, other] = [board('six', { widthOff: '1/64"', rippedWith: 'fence A' }), board('other', { widthOff: '1/64"', rippedWith: 'fence C' })];
        expect(fit({ blocking: { stock: six }, bottom: { stock: other } }).tolerance).toEqual([{ cause: 'set-up fence A', reach: sixtyFourth }, { cause: 'set-up fence C', reach: -sixtyFourth }]);
        const rips = { blocking: { stock: six, rip: '5 1/4"', ripOff: '1/64"', ripWith: 'fence B' }, bottom: { stock: six, rip: '5 3/16"', ripOff: '1/64"', ripWith: 'fence D' } };
        expect(worstCase(fit(rips).tolerance)).toBe(2 * sixtyFourth);
    });
    test('ripped without saying at which setting, each part has its own', () => {
        const eight = board('eight', { width: '7 1/4"', widthOff: '1/64"', rippedWith: 'fence A' });
        const { tolerance } = fit({ blocking: { stock: eight, rip: '5 1/2"', ripOff: '1/64"' }, bottom: { stock: eight, rip: '5 1/2"', ripOff: '1/64"' } });
        expect(tolerance).toEqual([{ cause: 'rip of the blocking', reach: sixtyFourth }, { cause: 'rip of the bottom', reach: -sixtyFourth }]);
    });
    test('the two sides of a beam are two boards', () => {
        const sides = { stock: board('side', { width: '7 1/4"', thicknessOff: '1/128"' }) };
        const { tolerance } = sectionWith({ sides }).outerWidth!;
        expect(tolerance.map(t => t.cause)).toEqual(['other side of side, thickness', 'side of side, thickness']);
        expect(worstCase(tolerance)).toBe(ticksOf('1/64"'));
    });
});

describe('what is not said, or not computed', () => {
    test.each([
        ['blocking', { blocking: null }], ['a stock\'s width', { bottom: { stock: b.stock('unknown', { thickness: '3/4"' }) } }],
        ['sides', { sides: undefined }], ['the bottom', { bottom: undefined }],
    ] as [string, ProfileWords][])('without %s there is no whole section, and nothing is complained of', (_, words) => {
        const s = sectionWith(words);
        expect(isWhole(s)).toBe(false);
        expect(profileTroubles(s)).toEqual([]);
    });
    test.each([
        ['a bottom let into sides without a rabbet', { bottom: { stock: board('a'), place: 'in-rabbets' } }],
        ['a box made at the bench, without spacers and with a bottom that may lie anywhere under its sides', { blocking: { stock: board('a'), fit: 'bench-box' }, spacers: null, bottom: { stock: board('wide', { width: '9 1/4"' }), place: 'under-sides' } }],
    ] as [string, ProfileWords][])('%s is no whole section', (_, part) => {
        expect(isWhole(sectionWith(part))).toBe(false);
    });
    // 9 1/4" less 1/2" that stands out and 3/4" of side, on either side
    test('a box made at the bench round nothing has no width: neither spacers nor a bottom say it', () => {
        const { innerWidth, outerWidth } = sectionWith({ blocking: { stock: board('a'), fit: 'bench-box' }, spacers: null, bottom: undefined });
        expect([innerWidth, outerWidth]).toEqual([undefined, undefined]);
    });
    test('a box made at the bench round a bottom under its sides is as wide inside as that leaves it', () => {
        const wide = board('wide', { width: '9 1/4"' });
        const s = sectionWith({ blocking: { stock: board('a'), fit: 'bench-box' }, spacers: null, bottom: { stock: wide, place: 'under-sides', overhang: '1/2"' } });
        expect([s.innerWidth, s.outerWidth].map(inch)).toEqual(['6 3/4"', '8 1/4"']);
    });
    // 5 1/2" less 1/4" in either rabbet, and 1/32" for it to move in
    test('a box made at the bench round a bottom in rabbets is as wide inside as the rabbets leave it', () => {
        const sides: ProfileWords['sides'] = { stock: board('one-by-eight', { width: '7 1/4"' }), rabbet: ['1/4"', '3/8"'] };
        const s = sectionWith({ blocking: { stock: board('a'), fit: 'bench-box' }, spacers: null, sides, bottom: { stock: board('b'), place: 'in-rabbets', gap: ['1/32"', '1/16"'] } });
        expect([s.innerWidth, s.outerWidth].map(inch)).toEqual(['5 1/32"', '6 17/32"']);
    });
    test('a timber has no sides and no inside, and what it is nothing of has its words all the same', () => {
        const s = sectionWith({ blocking: null, spacers: null, sides: undefined, cleats: null, bottom: undefined, solid: { stock: board('timber', { thickness: '5 1/2"', width: '7 1/2"' }) } });
        expect([s.innerWidth, s.outerWidth, s.depth, s.sideThickness, s.bottomThickness].map(inch)).toEqual(['5 1/2"', '5 1/2"', '7 1/2"', '0"', '0"']);
        for (const [name, { ticks, why }] of derived(s)) expect(`${name} ${sumOf(why)}`).toBe(`${name} ${ticks}`);
    });
    test('what is not computed leaves no depth', () => {
        const s = sectionWith();
        const { depth, spacerRoom, innerWidth } = sectionOf({ ...s.profile, notComputed: [b.at()] });
        expect([depth, spacerRoom, inch(innerWidth)]).toEqual([undefined, undefined, '5 1/2"']);
    });
    const a = board('a'), nails = { gauge: 18, length: '1 1/4"', every: 0 };
    test.each([
        ...(['blocking', 'spacers', 'sides', 'bottom', 'trim'] as const).map(part => [`the width of the ${part}`, { [part]: { stock: a, rip: 0, ...part === 'spacers' && { height: '5"' } } }]),
        ['the thickness of thin', { sides: { stock: board('thin', { thickness: 0 }) } }], ['the width of narrow', { trim: { stock: board('narrow', { width: 0 }) } }],
        ['the height of the spacers', { spacers: { stock: a, height: 0 } }],
        ['the distance between spacers', { spacers: { stock: a, height: '5"', every: 0 } }],
        ['the distance of the first spacer from the end', { spacers: { stock: a, height: '5"', fromEnd: -1 } }],
        ['what the sides are held down', { sides: { stock: a, heldDown: -1 } }],
        ['the thickness of the cleats', { cleats: { stock: a, thickness: 0, height: '3/4"' } }], ['the height of the cleats', { cleats: { stock: a, thickness: '3/4"', height: 0 } }],
        ['what the cleats are short at each end', { cleats: { stock: a, thickness: '3/4"', height: '3/4"', shortEachEnd: -1 } }],
        ['what the bottom is pressed by', { bottom: { stock: a, press: -1 } }],
        ['the distance between the screws of the blocking', { blocking: { stock: a, screws: { gauge: 8, length: '2"', every: 0 } } }],
        ['the distance between the nails of the sides', { sides: { stock: a, nails } }], ['the distance between the nails of the bottom', { bottom: { stock: a, nails } }],
        ['the distance between the nails of the cleats', { cleats: { stock: a, thickness: '3/4"', height: '3/4"', nails } }], ['the distance between the nails of the trim', { trim: { stock: a, nails } }],
    ] as [string, ProfileWords][])('%s that is nothing or less', (what, words) => {
        expect(profileTroubles(sectionWith(words))).toMatchObject([{ kind: 'not-positive', what }]);
    });
    test('nothing at all is said of what may be nothing, and of what is a tick', () => {
        const least: ProfileWords = {
            sides: { stock: a, heldDown: 0 }, bottom: { stock: a, press: 0 }, cleats: { stock: a, thickness: 1, height: 1, shortEachEnd: 0 },
            spacers: { stock: a, height: 1, every: 1, fromEnd: 0 },
        };
        expect(profileTroubles(sectionWith(least))).toEqual([]);
    });
    test.each([[0, 1], [-1, 1], [90, 1], [1, 0], [38, 0], [89, 0]])('a crown that leans %i degrees', (spring, count) => {
        const s = sectionWith(), trim = { ...s.profile.trim!, spring: b.said(spring) };
        expect(profileTroubles(sectionOf({ ...s.profile, trim })).map(trouble => trouble.kind === 'not-supported' && trouble.at === trim.spring.at)).toEqual(Array.from({ length: count }, () => true));
    });
});
