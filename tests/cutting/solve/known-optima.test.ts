import { describe, expect, test } from 'vitest';
import { FULL, some } from '../../support/full.ts';
import { checkLayouts } from './check-layouts.ts';
import { jobs, orLibrary, proved, quick, triplets, type Known } from './problems.ts';

function isFoundAndProved({ problem, optimum }: Known): void {
    const { layouts, cost, bound } = proved(problem);
    expect(checkLayouts(problem, layouts)).toBe(cost);
    expect(cost).toBe(optimum);
    expect(bound).toBe(optimum);
}

const all = jobs();
const ofSixty = all.filter(job => job.name.startsWith('job-60')).filter((_, i) => i % 6 === 0);
const ofFourHundred = all.filter(job => job.name.startsWith('job-400')).filter((_, i) => i % 8 === 1);

describe('the cheapest boards are found, and none cheaper is proved to exist', () => {
    test.each(some(ofSixty, 3))('$name', isFoundAndProved);
    test.each(some(ofFourHundred, 3))('$name', isFoundAndProved);
    // E. Falkenauer's class u120, from OR-Library; the fewest boards as published there
    test.each(some(orLibrary(), 4))('OR-Library $name', isFoundAndProved);
    test.each(FULL ? [triplets(20, 1), triplets(20, 2), triplets(40, 3)] : [triplets(20, 1), triplets(40, 4)])('$name', isFoundAndProved);
});

describe('the plan that is there at once', () => {
    test('is at most 2 % above the cheapest for each job, and 0.3 % on average', () => {
        const above = some(all, 4).map(({ problem, optimum }) => checkLayouts(problem, quick(problem)) / optimum - 1);
        expect(Math.max(...above)).toBeLessThan(0.02);
        expect(above.reduce((a, b) => a + b, 0) / above.length).toBeLessThan(0.003);
    });
});

describe('a search that is stopped', () => {
    test('knows less, claims less, and says the same every time', () => {
        const { problem, optimum } = ofFourHundred[0]!;
        for (const steps of [0, 1e5, 1e6]) {
            const standing = proved(problem, steps);
            expect(checkLayouts(problem, standing.layouts)).toBe(standing.cost);
            expect(standing.bound).toBeLessThanOrEqual(optimum);
            expect(standing.cost).toBeGreaterThanOrEqual(optimum);
            expect(proved(problem, steps)).toEqual(standing);
        }
    });
});
