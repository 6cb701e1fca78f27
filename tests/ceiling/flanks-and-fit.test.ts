import { expect, test } from 'vitest';
import { fitAsBuilt } from '../../src/ceiling/fit.ts';
import { bottomReachAt, lookOf, otherSideOf } from '../../src/ceiling/flanks.ts';
import { longestPiece } from '../../src/ceiling/longest.ts';
import type { Derived, Section, Trouble } from '../../src/ceiling/model.ts';
import type { LineSpec, Side } from '../../src/job/model.ts';
import { inches } from '../../src/quantity/rational.ts';
import { given, nowhere } from '../cutting/samples.ts';
import { jobBuilder } from '../support/job-builder.ts';

const { settings, said, stock } = jobBuilder();

// somebody who walks east has the north on the left
test.each<[string, [number, number], string, string]>([
    ['east', [1, 0], 'north', 'south'], ['south', [0, 1], 'east', 'west'], ['south-east', [1, 1], 'north-east', 'south-west'], ['north-east', [1, -1], 'north-west', 'south-east'],
])('the flanks of a line that runs %s look to the %s', (_, [x, y], left, right) => {
    expect([lookOf({ heading: { x, y } }, 'left'), lookOf({ heading: { x, y } }, 'right')]).toEqual([left, right]);
});

test.each<[string, 'north-south' | 'east-west', boolean, Side | undefined, 'left' | 'right' | undefined | null]>([
    ['is nowhere where both are alike', 'north-south', false, undefined, undefined],
    ['is to the east of one that runs south, unless it is said', 'north-south', true, undefined, 'left'], ['or to the south of one that runs east', 'east-west', true, undefined, 'right'],
    ['is where it is said', 'north-south', true, 'west', 'right'], ['is where it is said', 'north-south', true, 'east', 'left'], ['is where it is said', 'east-west', true, 'north', 'left'],
    ['has no flank there', 'north-south', true, 'north', null], ['has no flank there', 'east-west', true, 'west', null], ['is said of one whose flanks are alike', 'north-south', false, 'west', null],
])('the other side of a line %s', (_, runs, unlike, at, flank) => {
    const troubles: Trouble[] = [], other = unlike ? {} as Section : undefined;
    expect(otherSideOf('1', runs, other ? { other } : {}, at && { otherSide: given(at) } as unknown as LineSpec, troubles)).toBe(flank);
    const has = unlike ? { has: runs === 'north-south' ? ['west', 'east'] : ['north', 'south'] } : {};
    expect(troubles).toEqual(flank === null ? [{ kind: 'no-other-side', of: 'line', line: '1', runs, ...has, said: at, at: nowhere }] : []);
});

// an inside of 3 1/2" between sides of 3/4": the edge of a bottom is half its width from the middle, wherever it lies
test.each<[string, string, string, number]>([
    ['between the sides', 'between-sides', '3 7/16', 0], ['let into rabbets of 1/4"', 'in-rabbets', '3 15/16', 0.25], ['under the sides', 'under-sides', '6', 0],
])('half the width of a bottom %s is from the middle to its edge', (_, place, bottom, rabbet) => {
    const width = Number(inches(bottom)), of = (ticks: number): { ticks: number } => ({ ticks }), inner = Number(inches('3 1/2'));
    const section = {
        innerWidth: of(inner), sideThickness: of(Number(inches('3/4'))), outerWidth: of(Number(inches(5))), bottomWidth: of(width), fit: of(inner + 2 * Number(inches(rabbet)) - width),
        profile: { bottom: { place: given(place) }, sides: { rabbet: given({ width: of(Number(inches(rabbet))) }) } },
    };
    expect(bottomReachAt({ section } as unknown as Parameters<typeof bottomReachAt>[0], 'left')).toBe(width / 2);
});

/**
 * Play of 100, off by 30 and by 40: 70 at worst, 50 as root-sum-square. Two edges of paint of 4 to 6 take 8 to 12 of it, both alike; so the
 * middle is 90, and the paint is off by 2 either way.
 */
test('the play of a bottom as it is built: at worst, and as root-sum-square', () => {
    const fit = (tolerance: readonly number[]): Derived => ({ ticks: 100, tolerance: tolerance.map((reach, i) => ({ cause: `board ${i}`, reach })), why: { terms: [] } });
    const film = (isSaid: boolean) => ({ paintFilm: { ...given({ least: 4, most: 6 }), said: isSaid } });
    expect(fitAsBuilt(fit([30, -40]), film(false))).toMatchObject({ paint: { least: 8, most: 12 }, paintCounts: true, worst: { least: 18, most: 162 } });
    const { usual } = fitAsBuilt(fit([30, -40]), film(false));
    expect([usual.least, usual.most]).toEqual([90 - Math.hypot(50, 2), 90 + Math.hypot(50, 2)]);
    expect(fitAsBuilt(fit([]), film(true))).toMatchObject({ paintCounts: true, worst: { least: 88, most: 92 }, usual: { least: 88, most: 92 } });
    // where nobody says how far anything may be off, paint does not count
    expect(fitAsBuilt(fit([]), film(false))).toMatchObject({ paintCounts: false, worst: { least: 100, most: 100 }, usual: { least: 100, most: 100 } });
});

// an inch is cut off the ends of every board
test.each<[string, string[] | undefined, { board?: string; piece?: string; trim?: string }, string | number]>([
    ['the longest that is sold', ["8'", "12'", "10'"], {}, '143'], ['the longest that may come in', ["8'", "12'"], { board: "10'" }, '95'], ['as long as may just come in', ["8'", "12'"], { board: "12'" }, '143'],
    ['none, where all are too long', ["8'", "12'"], { board: "6'" }, -Infinity], ['what may come in, where nobody says what is sold', [], { board: "10'" }, '119'],
    ['anything, where nothing is known', [], {}, Infinity], ['the same without a stock', undefined, {}, Infinity], ['what gets up the stair, boards may be longer', ["12'"], { piece: "7'" }, '84'],
    ['no longer than the board, whatever gets up the stair', ["8'"], { piece: "9'" }, '95'], ['an end trim that is less than nothing adds nothing', ["8'"], { trim: '-2"' }, '96'],
])('the longest piece: %s', (_, lengths, { board, piece, trim }, most) => {
    const job = settings({ ...board && { longestBoard: ticks(board) }, ...trim && { endTrim: ticks(trim) } });
    const found = longestPiece(lengths && stock('any', { lengths }), { ...job, ...piece && { longestPiece: said(ticks(piece)) } });
    expect(found).toBe(typeof most === 'string' ? Number(inches(most)) : most);
});
function ticks(words: string): number {
    return words.endsWith("'") ? Number(inches(12 * Number(words.slice(0, -1)))) : Number(inches(Number(words.slice(0, -1))));
}
