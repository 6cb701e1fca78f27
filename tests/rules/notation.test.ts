import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { rulePage } from '../../src/rules/reference.ts';
import { RULES } from '../../src/rules/index.ts';

/**
 * One notation of lengths: feet, inches and fractions. Decimals stand where no tape has a mark, and whoever measures has something else in hand: below
 * 1/64" (a film of paint, by a gauge), and in what a caliper reads.
 */
const LEAST_MARK = 1 / 64;
const BY_CALIPER = new Set(['bit-crept', 'cutter-creeps']);
/** The words of the Standards themselves; a board of 140 mm in a job in inches, beside a width that it lacks a 64th of. */
const QUOTED = ['board-off-size: 0.025"', 'too-wide-for-stock: 5.512"'];

function decimals(rule: string, words: string): string[] {
    return [...words.matchAll(/(?<![\d/])(\d+\.\d+)"/g)].filter(([, inches]) => Number(inches) >= LEAST_MARK && !BY_CALIPER.has(rule)).map(([figure]) => `${rule}: ${figure}`)
        .filter(found => !QUOTED.includes(found));
}

test('the pages of the rules say lengths in fractions', () => {
    expect(RULES.length).toBeGreaterThan(100);
    expect(RULES.flatMap(rule => decimals(rule.name, rulePage(rule)))).toEqual([]);
});

test.each(['examples', 'fixtures', 'limits'])('what rules have told says lengths in fractions: %s', name => {
    const told = readFileSync(join(import.meta.dirname, `__snapshots__/${name}.test.ts.snap`), 'utf8');
    const messages = told.split('\n').flatMap(line => /\b(?:error|warning|hint) ([a-z-]+): (.*)$/.exec(line)?.slice(1) as [string, string] | undefined ?? []);
    expect(messages.length).toBeGreaterThan(20);
    const pairs = messages.flatMap((each, i) => (i % 2 === 0 ? [[each, messages[i + 1]!] as const] : []));
    expect(pairs.flatMap(([rule, words]) => decimals(rule, words))).toEqual([]);
});

test('the check sees a decimal', () => {
    expect(decimals('slots-wont-fit', 'takes 2 x 2.393" of slot, 0.012" of paint')).toEqual(['slots-wont-fit: 2.393"']);
});
